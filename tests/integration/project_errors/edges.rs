//! Figures, days and lists at the very edge of what a file may say, and one step beyond.

use tureen::calendar::plus_days;
use tureen::garden::Garden;
use tureen::project;

use super::{MINIMAL, catalogue, day, load, steady_weather};

const FEAST: &str = "feast = 2027-10-08";
pub(super) const WIDTH: &str = "width_m = 1.2";

pub(super) fn loaded(text: &str) -> Garden {
    load(text).unwrap_or_else(|found| panic!("{text}\n{found}"))
}

pub(super) fn told(text: &str) -> String {
    load(text).expect_err(text).render(false, 100)
}

/// The smallest file with something else in the place of one of its lines.
pub(super) fn with(right: &str, other: &str) -> String {
    assert!(MINIMAL.contains(right), "{right}");
    MINIMAL.replacen(right, other, 1)
}

pub(super) fn assumed(garden: &Garden) -> Vec<&str> {
    garden.assumed.iter().map(|a| a.what.as_str()).collect()
}

#[test]
fn a_trellis_is_as_long_as_its_bed_at_the_most() {
    let trellis = |metres: &str| with(WIDTH, &format!("{WIDTH}\ntrellis_m = {metres}"));
    assert_eq!(loaded(&trellis("3.6")).beds[0].trellis.0, 3.6);
    let told = told(&trellis("3.61"));
    assert!(
        told.contains("the trellis is longer than the bed"),
        "{told}"
    );
}

#[test]
fn what_a_bed_carried_is_told_once_and_backward() {
    let grew = "grew = { 2024 = [\"tomato\"], 2026 = [\"potato\", \"tomato\", \"carrot\"], 2025 = [\"garlic\"] }";
    let garden = loaded(&with(WIDTH, &format!("{WIDTH}\n{grew}")));
    let grew = &garden.beds[0].grew;
    let years: Vec<i32> = grew.iter().map(|(year, _)| *year).collect();
    assert_eq!(years, [2026, 2025, 2024]);
    // Potato and tomato are of one family.
    assert_eq!(grew[0].1.len(), 2, "{grew:?}");
    assert!(
        grew[0].1.is_sorted() && grew[0].1.contains(&grew[2].1[0]),
        "{grew:?}"
    );
    for (year, sound) in [(1900, true), (2200, true), (1899, false), (2201, false)] {
        let text = with(
            WIDTH,
            &format!("{WIDTH}\ngrew = {{ {year} = [\"tomato\"] }}"),
        );
        assert_eq!(load(&text).is_ok(), sound, "{year}");
    }
}

#[test]
fn fifty_beds_are_a_project_and_one_more_is_not() {
    let beds = |n: u32| {
        let bed = |k: u32| format!("\n[[bed]]\nid = \"more {k}\"\nlength_m = 1\nwidth_m = 1\n");
        format!("{MINIMAL}{}", (1..n).map(bed).collect::<String>())
    };
    assert_eq!(loaded(&beds(50)).beds.len(), 50);
    let told = told(&beds(51));
    assert!(
        told.contains("at most 50 beds") && told.contains("there are 51"),
        "{told}"
    );
}

/// 8 October 2027 is a Friday; the term begins on Monday 30 August.
#[test]
fn the_days_of_the_feast_are_in_order_and_may_be_one() {
    for (days, sound) in [
        ("deliver_by = 2027-10-08", true),
        ("deliver_by = 2027-10-09", false),
        ("deliver_by = 2027-08-30", true),
        ("deliver_by = 2027-08-29", false),
        ("rain_date = 2027-10-08", true),
        ("rain_date = 2027-10-11", true),
        ("rain_date = 2027-10-07", false),
    ] {
        let text = with(FEAST, &format!("{FEAST}\n{days}"));
        assert_eq!(load(&text).is_ok(), sound, "{days}");
    }
}

#[test]
fn the_kitchen_has_two_school_days_where_there_are_two() {
    for (feast, off, deliver_by) in [
        ("2027-10-08", "", "2027-10-06"),
        ("2027-10-11", "", "2027-10-07"),
        ("2027-10-12", "", "2027-10-08"),
        ("2027-10-12", "2027-10-08", "2027-10-07"),
        ("2027-09-01", "", "2027-08-30"),
        ("2027-08-31", "", "2027-08-31"),
        ("2027-08-30", "", "2027-08-30"),
    ] {
        let text = with(FEAST, &format!("feast = {feast}"));
        let text = text.replacen(
            "[calendar]\n",
            &format!("[calendar]\ndays_off = [{off}]\n"),
            1,
        );
        let garden = loaded(&text);
        assert_eq!(garden.feast.deliver_by, day(deliver_by), "{feast}");
        assert!(assumed(&garden).contains(&format!("deliver_by = {deliver_by}").as_str()));
    }
}

/// Of two school days as near the earlier one is named.
#[test]
fn the_nearest_school_day_is_named() {
    for (feast, why, near) in [
        ("2027-10-09", "it is a Saturday", "2027-10-08"),
        ("2027-10-10", "it is a Sunday", "2027-10-11"),
        ("2027-10-20", "it is one of `days_off`", "2027-10-18"),
        ("2027-12-18", "it lies in no term", "2027-12-17"),
        ("2028-01-14", "it lies in no term", "2027-12-17"),
    ] {
        let text = with(FEAST, &format!("feast = {feast}"));
        let off = "days_off = [2027-10-19, 2027-10-20, 2027-10-21]";
        let text = text.replacen("[calendar]\n", &format!("[calendar]\n{off}\n"), 1);
        let told = told(&text);
        assert!(told.contains(why), "{told}");
        assert!(told.contains(&format!("the nearest is {near}")), "{told}");
    }
    // None within four weeks.
    let told = told(&with(FEAST, "feast = 2028-01-15"));
    assert!(told.contains("or extend the terms"), "{told}");
}

#[test]
fn portions_are_all_children_and_the_adults() {
    for (given, portions) in [
        ("", 20),
        ("adults = 0", 20),
        ("adults = 3", 23),
        ("portions = 7", 7),
    ] {
        let garden = loaded(&with(FEAST, &format!("{FEAST}\n{given}")));
        assert_eq!(garden.feast.portions, portions, "{given}");
    }
}

/// The smallest file with monthly means, over New Year if it begins in the autumn before.
fn with_means(start: &str, low: f64, rain: f64, more: &str) -> String {
    let list = |figure: f64| vec![figure.to_string(); 12].join(", ");
    let means = format!(
        "\n[place.monthly]\ntmin_c = [{}]\ntmax_c = [{}]\nrain_mm = [{}]\n{more}",
        list(low),
        list(15.0),
        list(rain)
    );
    let text = with("weather = \"autumn.csv\"", &means);
    let term =
        format!("{{ name = \"Before\", from = {start}, to = {start} }}, {{ name = \"Autumn\"");
    match start {
        "2027-08-30" => text,
        _ => text
            .replacen("start = 2027-08-30", &format!("start = {start}"), 1)
            .replacen("{ name = \"Autumn\"", &term, 1),
    }
}

#[test]
fn as_many_weather_years_are_made_as_are_asked_for() {
    for start in ["2027-08-30", "2026-11-02"] {
        for (more, years) in [("", 30), ("years = 10\n", 10), ("years = 31\n", 31)] {
            let garden = loaded(&with_means(start, 5.0, 60.0, more));
            let found = garden.weather.years(garden.horizon()).len();
            assert_eq!(found, years, "{start} {more}");
        }
    }
    let monthly = |rain: f64| {
        let garden = loaded(&with_means("2027-08-30", 5.0, rain, ""));
        garden.weather.origin().unwrap().means.rain_days[3]
    };
    // Six millimetres on a day with rain, up to 25 days.
    assert_eq!(
        [60.0, 150.0, 156.0, 900.0].map(monthly),
        [10.0, 25.0, 25.0, 25.0]
    );
    assert!(load(&with_means("2027-08-30", 15.0, 60.0, "")).is_ok());
    let told = told(&with_means("2027-08-30", 15.1, 60.0, ""));
    assert!(
        told.contains("in month 1 the lowest temperature is above"),
        "{told}"
    );
}

/// Fewer than ten weather years are mentioned.
#[test]
fn few_weather_years_are_mentioned() {
    let of = |days: i64| {
        let weather = steady_weather(days);
        project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue())
            .unwrap_or_else(|found| panic!("{found}"))
    };
    // The plan spans autumn only, so 2014 counts when its autumn is over.
    for (years, mention) in [
        (1, Some("only 1 weather year")),
        (2, Some("only 2 weather years")),
        (9, Some("only 9 weather years")),
        (10, None),
    ] {
        let days = (day("2014-01-01") + chrono::Months::new(12 * years)) - day("2014-01-01");
        let garden = of(days.num_days());
        assert_eq!(garden.weather.years(garden.horizon()).len(), years as usize);
        let told = assumed(&garden);
        let found = told.into_iter().find(|what| what.starts_with("only "));
        assert_eq!(found, mention);
    }
}

/// Weather of 2014 from the first of January on; some lines stand otherwise.
fn weather_with(change: impl Fn(i64) -> Option<String>) -> Result<Garden, String> {
    let lines = (0..365).map(|n| {
        let date = plus_days(day("2014-01-01"), n);
        change(n).unwrap_or_else(|| format!("{date},{},15,1", 5.0 + (n % 7) as f64 / 10.0))
    });
    let lines: Vec<String> = lines.filter(|line| !line.is_empty()).collect();
    let weather = format!("date,tmin_c,tmax_c,rain_mm\n{}\n", lines.join("\n"));
    project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue())
        .map_err(|found| found.render(false, 100))
}

#[test]
fn weather_at_its_limits_is_read_and_beyond_them_refused() {
    for (line, sound) in [
        ("2014-01-03,-60,15,1", true),
        ("2014-01-03,-60.1,15,1", false),
        ("2014-01-03,5,60,1", true),
        ("2014-01-03,5,60.1,1", false),
        ("2014-01-03,5,15,0", true),
        ("2014-01-03,5,15,-0.1", false),
        ("2014-01-03,5,15,1000", true),
        ("2014-01-03,5,15,1000.1", false),
        ("2014-01-03,15,15,1", true),
        ("2014-01-03,15.1,15,1", false),
        ("2014-01-3,5,15,1", false),
        ("2014-01-03,5,15", false),
        ("2014-01-03,5,15,1,2", false),
        ("2014-01-03,5,nan,1", false),
        ("2014-01-02,5,15,1", false),
        ("2014-01-04,5,15,1", false),
    ] {
        let found = weather_with(|n| (n == 2).then(|| line.to_owned()));
        assert_eq!(found.is_ok(), sound, "{line}: {:?}", found.err());
    }
}

/// Five days may lack in a row; they lie on a straight line between their neighbours, without rain.
#[test]
fn a_gap_of_five_days_is_filled_and_one_of_six_is_not() {
    let gap = |missing: i64| {
        weather_with(move |n| match n {
            10 => Some("2014-01-11,0,12,3".to_owned()),
            n if n == 11 + missing => {
                let date = plus_days(day("2014-01-01"), n);
                Some(format!("{date},6,18,3"))
            }
            n if (11..11 + missing).contains(&n) => Some(String::new()),
            _ => None,
        })
    };
    for missing in 0..=5 {
        let garden = gap(missing).unwrap_or_else(|told| panic!("{told}"));
        let days = garden.weather.days();
        assert_eq!(days.len(), 365);
        for k in 0..=missing + 1 {
            let part = k as f64 / (missing + 1) as f64;
            let found = &days[(10 + k) as usize];
            assert!((found.tmin.0 - 6.0 * part).abs() < 1e-9, "{missing} {k}");
            assert!(
                (found.tmax.0 - 12.0 - 6.0 * part).abs() < 1e-9,
                "{missing} {k}"
            );
            let rain = if k == 0 || k == missing + 1 { 3.0 } else { 0.0 };
            assert_eq!(found.rain.0, rain, "{missing} {k}");
        }
    }
    let told = gap(6).unwrap_err();
    assert!(
        told.contains("6 days are missing: 2014-01-12 to 2014-01-17"),
        "{told}"
    );
}

/// Two figures or days of which one must not pass the other may mostly be alike; no crop grows at the
/// temperature at which it stops growing.
#[test]
fn figures_and_days_in_order_may_be_alike() {
    let carrot = |figures: &str| format!("{MINIMAL}\n[crop.carrot]\n{figures}\n");
    let class = |from: &str| with("day = \"Tue\"", &format!("day = \"Tue\", from = {from}"));
    let buy_by = |day: &str| {
        let grams = "grams_per_portion = 25";
        with(
            grams,
            &format!("{grams}\nif_it_fails = {{ buy_by = {day} }}"),
        )
    };
    for (text, sound) in [
        (carrot("base_c = 10\nreference_c = 10"), false),
        (carrot("base_c = 10\nreference_c = 10.5"), true),
        (carrot("base_c = 10\nreference_c = 9.5"), false),
        (carrot("base_c = 12\nreference_c = 20\nupper_c = 12"), false),
        (
            carrot("base_c = 12\nreference_c = 20\nupper_c = 12.5"),
            true,
        ),
        (carrot("yield_low_kg = 0.1\nyield_expected_kg = 0.1"), true),
        (
            carrot("yield_low_kg = 0.11\nyield_expected_kg = 0.1"),
            false,
        ),
        (class("2027-10-08"), true),
        (class("2027-10-09"), false),
        (buy_by("2027-10-08"), true),
        (buy_by("2027-10-09"), false),
    ] {
        let found = load(&text);
        assert_eq!(found.is_ok(), sound, "{text}\n{:?}", found.err());
    }
}

/// A slot of a term takes from the class what it does not give itself.
#[test]
fn a_slot_of_a_term_is_that_of_the_class_but_for_what_it_gives() {
    let terms = "terms = [{ name = \"Early\", from = 2027-08-30, to = 2027-09-10 }, { name = \"Autumn\", \
                 from = 2027-09-11, to = 2027-12-17 }]";
    let slots = |own: &str, of_term: &str| {
        let class = format!("day = \"Tue\"{own}, in_term = {{ Autumn = {{ {of_term} }} }}");
        let text = with(
            "terms = [{ name = \"Autumn\", from = 2027-08-30, to = 2027-12-17 }]",
            terms,
        );
        let text = text.replacen("day = \"Tue\"", &class, 1);
        let slots = &loaded(&text).grades[0].classes[0].slots;
        let told = |slot: &tureen::garden::Slot| {
            (
                slot.day.to_string(),
                slot.every_weeks,
                slot.from,
                slot.minutes.0,
            )
        };
        (told(&slots[0]), told(&slots[1]))
    };
    let slot =
        |of: &str, every: u32, from: &str, minutes: f64| (of.to_owned(), every, day(from), minutes);
    let usual = slot("Tue", 1, "2027-08-30", 40.0);
    assert_eq!(slots("", ""), (usual.clone(), usual.clone()));
    assert_eq!(
        slots("", "day = \"Fri\", minutes = 55"),
        (usual.clone(), slot("Fri", 1, "2027-08-30", 55.0))
    );
    assert_eq!(
        slots("", "every = 2, from = 2027-09-14"),
        (usual, slot("Tue", 2, "2027-09-14", 40.0))
    );
    assert_eq!(
        slots(", every = 2, from = 2027-08-31, minutes = 30", "every = 1"),
        (
            slot("Tue", 2, "2027-08-31", 30.0),
            slot("Tue", 1, "2027-08-31", 30.0)
        )
    );
}
