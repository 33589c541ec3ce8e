//! The order in which terms, breaks, what grows and seedlings stand in the file means nothing, and what is wrong
//! between two that are not neighbours there is found as well.

use std::path::Path;

use tureen::garden::{Garden, Reached};
use tureen::project::{self, Change};

use super::{FULL, MINIMAL, catalogue, day, load, steady_weather};

const TERMS: &str = "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 }]";

fn with_terms(spans: &[(&str, &str, &str)], key: &str) -> String {
    let span = |(name, from, to): &(&str, &str, &str)| {
        format!("{{ name = \"{name}\", from = {from}, to = {to} }}")
    };
    let spans = spans.iter().map(span).collect::<Vec<_>>().join(", ");
    match key {
        "terms" => MINIMAL.replacen(TERMS, &format!("terms = [{spans}]"), 1),
        _ => MINIMAL.replacen(TERMS, &format!("{TERMS}\n{key} = [{spans}]"), 1),
    }
}

fn told(text: &str) -> String {
    load(text).expect_err(text).render(false, 100)
}

#[test]
fn terms_and_breaks_may_stand_in_any_order() {
    let one = ("one", "2027-08-30", "2027-09-30");
    let two = ("two", "2027-10-01", "2027-10-31");
    let three = ("three", "2027-11-01", "2027-12-17");
    let sorted = |text: &str| load(text).unwrap_or_else(|found| panic!("{found}"));
    let terms = sorted(&with_terms(&[one, two, three], "terms"))
        .school_year
        .terms;
    let names: Vec<&str> = terms.iter().map(|term| term.name.as_str()).collect();
    assert_eq!(names, ["one", "two", "three"]);
    let short = |name, from, to| (name, from, to);
    let (a, b, c) = (
        short("a", "2027-09-06", "2027-09-07"),
        short("b", "2027-10-11", "2027-10-12"),
        short("c", "2027-11-08", "2027-11-09"),
    );
    let breaks = sorted(&with_terms(&[a, b, c], "breaks")).school_year.breaks;
    assert_eq!(breaks.len(), 3);
    for order in [[2, 1, 0], [1, 2, 0], [2, 0, 1], [0, 2, 1], [1, 0, 2]] {
        let of = |all: [(&'static str, &'static str, &'static str); 3]| order.map(|k| all[k]);
        let found = sorted(&with_terms(&of([one, two, three]), "terms"));
        assert_eq!(found.school_year.terms, terms, "{order:?}");
        let found = sorted(&with_terms(&of([a, b, c]), "breaks"));
        assert_eq!(found.school_year.breaks, breaks, "{order:?}");
    }
}

#[test]
fn spans_that_share_a_day_are_told_wherever_they_stand() {
    let one = ("one", "2027-08-30", "2027-09-30");
    let two = ("two", "2027-10-01", "2027-10-31");
    let both = ("both", "2027-09-30", "2027-09-30");
    for key in ["terms", "breaks"] {
        let cause = format!("the {key} \"one\" and \"both\" overlap");
        for spans in [[one, both, two], [one, two, both], [two, one, both]] {
            let told = told(&with_terms(&spans, key));
            assert!(told.contains(&cause), "{spans:?}\n{told}");
            assert!(told.ends_with("1 error in garden.toml\n"), "{told}");
        }
    }
}

/// The smallest file with sections [[growing]] for as many dishes of carrot, each from a strip on.
fn growing(places: &[(u32, u32)]) -> String {
    let mut text = MINIMAL.replacen(
        "crop = \"carrot\"",
        "crop = \"carrot\"\nname = \"carrot 0\"",
        1,
    );
    for (k, (first, strips)) in places.iter().enumerate() {
        if k > 0 {
            text += &format!(
                "\n[[dish.ingredient]]\ncrop = \"carrot\"\nname = \"carrot {k}\"\ngrams_per_portion = 25\n"
            );
        }
        text += &format!(
            "\n[[growing]]\ncrop = \"carrot\"\nbed = \"1\"\nfirst_strip = {first}\nstrips = {strips}\n\
             sown = 2027-08-30\nfor = \"carrot {k}\"\n"
        );
    }
    text
}

/// The bed has twelve strips.
#[test]
fn what_grows_on_one_strip_is_told_wherever_it_stands() {
    for places in [
        &[(1, 4), (5, 4), (9, 4)][..],
        &[(9, 4), (5, 4), (1, 4)],
        &[(5, 4), (9, 4), (1, 4)],
        &[(12, 1), (1, 11)],
    ] {
        let found = load(&growing(places));
        let garden = found.unwrap_or_else(|found| panic!("{places:?}: {found}"));
        assert_eq!(garden.begun.len(), places.len());
    }
    for places in [
        &[(1, 4), (4, 4)][..],
        &[(4, 4), (1, 4)],
        &[(5, 4), (1, 4), (8, 2)],
        &[(8, 2), (1, 4), (5, 4)],
        &[(5, 4), (1, 4), (5, 4)],
    ] {
        let told = told(&growing(places));
        assert!(
            told.contains("two [[growing]] sections stand on the same strip"),
            "{told}"
        );
        assert!(told.ends_with("1 error in garden.toml\n"), "{told}");
    }
    for (places, last) in [([(12, 2)], 13), ([(1, 13)], 13)] {
        let told = told(&growing(&places));
        assert!(
            told.contains(&format!(
                "this reaches to strip {last}, but bed \"1\" has 12"
            )),
            "{told}"
        );
    }
}

/// Flats add up over all sections; the last of them is pointed at.
#[test]
fn too_many_seedlings_are_told_at_the_last_section() {
    let shelf = "\n[shelf]\nflats = 4\n";
    let dish = |k: u32| {
        format!(
            "\n[[dish.ingredient]]\ncrop = \"tomato\"\nname = \"tomato {k}\"\ngrams_per_portion = 25\n"
        )
    };
    let seedlings = |k: u32, count: u32| {
        format!(
            "\n[[seedlings]]\ncrop = \"tomato\"\ncount = {count}\nsown = 2027-08-30\nfor = \"tomato {k}\"\n"
        )
    };
    let text = |counts: [u32; 2]| {
        let parts = [
            dish(1),
            dish(2),
            shelf.to_owned(),
            seedlings(1, counts[0]),
            seedlings(2, counts[1]),
        ];
        format!("{MINIMAL}{}", parts.concat())
    };
    // A flat holds 72 of them.
    for counts in [[144, 144], [72, 216], [216, 72], [1, 1]] {
        let garden = load(&text(counts)).unwrap_or_else(|found| panic!("{found}"));
        assert!(
            garden
                .begun
                .iter()
                .all(|begun| begun.reached == Reached::Sown)
        );
    }
    for counts in [[144, 145], [145, 144], [288, 1]] {
        let text = text(counts);
        let last = text.lines().collect::<Vec<_>>();
        let last = last
            .iter()
            .rposition(|line| *line == "[[seedlings]]")
            .unwrap()
            + 1;
        let told = told(&text);
        assert!(
            told.contains("the seedlings take 5 flats, and the shelf holds 4"),
            "{told}"
        );
        assert!(
            told.contains(&format!("--> garden.toml:{last}:1")),
            "{told}"
        );
    }
}

/// Loads the file with every key, with the feast some days later.
fn other_day(days: i64) -> Garden {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("other-day");
    std::fs::create_dir_all(&folder).unwrap();
    let path = folder.join("garden.toml");
    std::fs::write(&path, FULL).unwrap();
    std::fs::write(folder.join("weather.csv"), steady_weather(3 * 365)).unwrap();
    project::load_changed(&path, &[Change::OtherDay(days)], catalogue())
        .unwrap_or_else(|found| panic!("{found}"))
}

/// All days of the feast move with it; the rain date is gone.
#[test]
fn what_is_meant_for_the_feast_moves_with_it() {
    for (days, feast, deliver_by, buy_by) in [
        (0, "2027-10-08", "2027-10-06", "2027-09-24"),
        (7, "2027-10-15", "2027-10-13", "2027-10-01"),
        (-14, "2027-09-24", "2027-09-22", "2027-09-10"),
        (35, "2027-11-12", "2027-11-10", "2027-10-29"),
    ] {
        let garden = other_day(days);
        assert_eq!(garden.feast.day, day(feast));
        assert_eq!(garden.feast.deliver_by, day(deliver_by));
        assert_eq!(garden.feast.rain_date, None);
        let fallback = garden.ingredients[0].fallback.as_ref().unwrap();
        assert_eq!(fallback.buy_by, day(buy_by), "{days} days");
        let harvest = garden.school_year.harvest_days[0].day;
        assert_eq!(harvest.succ_opt(), Some(day(deliver_by)), "{days} days");
        // Nothing else does.
        assert_eq!(garden.school_year.terms[1].to, day("2027-12-17"));
        assert_eq!(garden.patches[0].pick_from, day("2027-09-01"));
        assert_eq!(garden.shelf.until, Some(day("2027-05-30")));
    }
}
