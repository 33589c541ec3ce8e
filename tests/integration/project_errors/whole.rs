//! Whole files: the smallest that loads, one with every key, and what is assumed of each.

use chrono::Weekday;
use tureen::garden::{
    BedAt, BedKind, BegunAt, Care, Class, Garden, GradeAt, HandOver, Locale, Method, PatchAt,
    Reached, Runs, Seedlings, Slot, Source, StripAt, Sun,
};
use tureen::project;
use tureen::units::{Celsius, Centimetres, Kilograms, Metres, Minutes, Share};

use super::{AUTUMN, FULL, MINIMAL, catalogue, day, folder, load, steady_weather};

/// The file with every key, through three years of weather.
fn full() -> Garden {
    let weather = steady_weather(3 * 365);
    project::load_text("garden.toml", FULL, Some(&weather), catalogue())
        .unwrap_or_else(|problems| panic!("{problems}"))
}

fn what_is_assumed(garden: &Garden) -> Vec<&str> {
    garden.assumed.iter().map(|a| a.what.as_str()).collect()
}

#[test]
fn the_smallest_file_loads_and_tells_what_it_assumes() {
    let garden = project::load(&folder().join("minimal.toml"), catalogue())
        .unwrap_or_else(|problems| panic!("{problems}"));
    assert_eq!(garden.name, "Carrot day");
    assert_eq!(garden.school, None);
    assert_eq!(garden.locale, Locale::British);
    assert_eq!(garden.feast.portions, 20);
    assert_eq!(garden.feast.deliver_by, day("2027-10-06"));
    assert_eq!(garden.feast.rain_date, None);
    assert_eq!(garden.shelf.flats, 0);
    assert_eq!(garden.grades[0].name, "Grade 2");
    assert_eq!(garden.ingredients[0].least_share, Share(0.3));
    assert_eq!(garden.weather.years(garden.horizon()).len(), 1);
    let expected = [
        "grade = \"2\"",
        "each_child_sows = 1",
        "least_share = 0.3",
        "soil_cm = 30",
        "sun = \"full\"",
        "minutes = 40",
        "every = 1",
        "portions = 20",
        "deliver_by = 2027-10-06",
        "no [shelf]",
        "only 1 weather year",
    ];
    let mut assumed = what_is_assumed(&garden);
    let mut expected = expected.to_vec();
    assumed.sort_unstable();
    expected.sort_unstable();
    assert_eq!(assumed, expected);
}

#[test]
fn no_key_of_the_smallest_file_can_be_left_out() {
    let lines: Vec<&str> = MINIMAL.lines().collect();
    for (n, line) in lines
        .iter()
        .enumerate()
        .filter(|(_, line)| line.contains('='))
    {
        let mut rest = lines.clone();
        rest.remove(n);
        assert!(load(&rest.join("\n")).is_err(), "loads without: {line}");
    }
}

#[test]
fn the_order_of_sections_does_not_matter() {
    for text in [MINIMAL, FULL] {
        let weather = steady_weather(3 * 365);
        let load = |text: &str| {
            project::load_text("garden.toml", text, Some(&weather), catalogue())
                .unwrap_or_else(|problems| panic!("{problems}"))
        };
        // Sections of one kind keep their order; the kinds are told backward.
        let sections: Vec<String> = format!("\n{text}")
            .split("\n[")
            .skip(1)
            .map(|section| format!("[{section}\n"))
            .collect();
        let heading = |section: &String| section.lines().next().map(str::to_owned);
        let mut kinds: Vec<Option<String>> = sections.iter().map(heading).collect();
        kinds.dedup();
        let backward: String = kinds
            .iter()
            .rev()
            .flat_map(|kind| sections.iter().filter(move |s| heading(s) == *kind))
            .map(String::as_str)
            .collect();
        assert_ne!(backward, text);
        assert_eq!(load(&backward), load(text));
    }
}

#[test]
fn the_full_file_gives_its_school() {
    let garden = full();
    assert_eq!(garden.name, "Soup day");
    assert_eq!(garden.school.as_deref(), Some("Larch Hill School"));
    assert_eq!(garden.locale, Locale::American);
    assert_eq!(garden.feast.day, day("2027-10-08"));
    assert_eq!(garden.feast.rain_date, Some(day("2027-10-15")));
    assert_eq!(garden.feast.deliver_by, day("2027-10-06"));
    assert_eq!(garden.feast.portions, 260);
    assert_eq!(garden.latitude.0, 44.3);
    let year = &garden.school_year;
    assert_eq!(year.start, day("2027-01-11"));
    assert_eq!(year.moves_up, Some(day("2027-08-30")));
    let terms: Vec<&str> = year.terms.iter().map(|t| t.name.as_str()).collect();
    assert_eq!(terms, ["Spring", "Autumn"]);
    let cares: Vec<Care> = year.breaks.iter().map(|b| b.care).collect();
    assert_eq!(cares, [Care::Staff, Care::Families]);
    assert_eq!(year.days_off, [day("2027-02-15"), day("2027-05-31")]);
    let hands: Vec<HandOver> = garden.grades.iter().map(|g| g.hand_over).collect();
    let leaves = HandOver::Leaves {
        adopter: GradeAt(1),
    };
    assert_eq!(hands, [HandOver::SameChildren, HandOver::SameGrade, leaves]);
    let slot = |day, every_weeks, from, minutes, at: Option<&str>| Slot {
        day,
        every_weeks,
        from,
        minutes: Minutes(minutes),
        at: at.map(|at| at.parse().expect("a time")),
    };
    let second_b = Class {
        name: "2b".to_owned(),
        children: 21,
        slots: vec![
            slot(Weekday::Thu, 1, day("2027-01-21"), 30.0, Some("08:05:00")),
            slot(Weekday::Mon, 2, day("2027-08-30"), 45.0, Some("23:30:00")),
        ],
        falls_out: Vec::new(),
    };
    assert_eq!(garden.grades[0].classes[1], second_b);
    let fridays = slot(Weekday::Fri, 1, day("2027-01-11"), 40.0, None);
    assert_eq!(garden.grades[2].classes[0].slots, [fridays, fridays]);
}

#[test]
fn the_full_file_gives_its_dish() {
    let garden = full();
    let [carrot, garlic, berries, bean, tomato] = garden.ingredients.as_slice() else {
        panic!("five ingredients");
    };
    assert_eq!(carrot.methods, [Method::Direct]);
    assert_eq!(carrot.source, Source::Sown);
    assert_eq!(carrot.grams_per_portion, 25.0);
    assert_eq!(carrot.least_share, Share(0.5));
    assert_eq!((carrot.each_child_sows, carrot.max_sowings), (2, 2));
    let fallback = carrot.fallback.expect("a fallback");
    assert_eq!(fallback.buy_by, day("2027-09-24"));
    assert_eq!(fallback.cost, Some(18.0));
    assert_eq!(garlic.source, Source::Begun(BegunAt(0)));
    assert_eq!(tomato.source, Source::Begun(BegunAt(1)));
    assert_eq!(berries.name, "berries");
    assert_eq!(berries.source, Source::Patch(PatchAt(0)));
    assert_eq!(berries.teams, [GradeAt(2).into()]);
    let known = catalogue().get("dry bean").expect("a known crop");
    let mut own = known.clone();
    // 90 days in the place of 85; the short end of 85 days moves with them.
    own.ripening.days_from_sowing = own.ripening.days_from_sowing.map(|_| 90.0);
    own.ripening.short_from_sowing = Some(90.0);
    own.kitchen.crate_holds = Kilograms(28.0);
    own.ripening.days_from_planting = own.ripening.days_from_planting.map(|_| 90.0);
    own.ripening.thermal_from_sowing = None;
    own.ripening.reference = Celsius(18.5);
    assert_ne!(&own, known);
    assert_eq!(bean.crop, own);
}

#[test]
fn the_full_file_gives_whose_a_bed_is_and_what_stands_there_for_no_ingredient() {
    let garden = full();
    assert_eq!(garden.beds[0].of, [GradeAt(2)]);
    assert_eq!(garden.beds[1].of, []);
    let ids: Vec<&str> = garden.beds.iter().map(|bed| bed.id.as_str()).collect();
    assert_eq!(ids, ["3", "pot", "wall", "wall along the trellis"]);
    let rye = &garden.former[0];
    assert_eq!((rye.name.as_str(), rye.family.as_str()), ("rye", "grass"));
    assert_eq!(
        (rye.bed, rye.strips.first, rye.strips.count),
        (BedAt(0), StripAt(6), 2)
    );
    assert_eq!(rye.free_from(), day("2027-04-24"));
}

#[test]
fn the_full_file_gives_its_garden() {
    let garden = full();
    let [bed, pot, ..] = garden.beds.as_slice() else {
        panic!("two beds");
    };
    assert_eq!((bed.kind, pot.kind), (BedKind::Bed, BedKind::Container));
    assert_eq!((bed.length, bed.width), (Metres(3.6), Metres(1.2)));
    assert_eq!((bed.soil, bed.sun), (Centimetres(40.0), Sun::Part));
    assert_eq!((bed.strips(), bed.trellis_strips()), (12, 4));
    assert_eq!(bed.microclimate().frost_kept_off, Celsius(2.0));
    assert_eq!(bed.microclimate().soil_bonus, Celsius(3.5));
    assert_eq!(pot.microclimate().frost_kept_off, Celsius(4.0));
    assert_eq!(pot.cover.as_ref().map(|c| c.name.as_str()), Some("glass"));
    assert_eq!(bed.free_from, Some(day("2027-07-10")));
    let families = |year, names: &[&str]| (year, names.iter().map(|n| n.to_string()).collect());
    assert_eq!(
        bed.grew,
        [
            families(2026, &["legume", "onion"]),
            families(2025, &["nightshade"])
        ]
    );
    assert_eq!(
        bed.at.map(|at| (at.x, at.y)),
        Some((Metres(0.0), Metres(4.2)))
    );
    assert_eq!((bed.runs, pot.runs), (Runs::NorthSouth, Runs::EastWest));
    assert_eq!(bed.extent(), (Metres(1.2), Metres(3.6)));
    let begun = &garden.begun[0];
    let (at, strips) = begun.in_bed().expect("a bed");
    assert_eq!((at, strips.first, strips.count), (BedAt(0), StripAt(2), 4));
    assert_eq!(begun.since, day("2026-10-12"));
    assert_eq!(begun.reached, Reached::Sown);
    assert_eq!(begun.on_shelf(), None);
    let seedlings = Seedlings {
        count: 40,
        sown: day("2027-03-15"),
        potted_up: Some(day("2027-04-12")),
    };
    assert_eq!(garden.begun[1].on_shelf(), Some(seedlings));
    assert_eq!(garden.begun[1].in_bed(), None);
    // The plan begins where the garlic was planted, not with what is for no ingredient.
    assert_eq!(garden.horizon().first(), day("2026-10-12"));
    let patch = &garden.patches[0];
    assert_eq!(
        (patch.low, patch.expected),
        (Kilograms(1.5), Kilograms(3.0))
    );
    assert_eq!(patch.size, Some((Metres(4.0), Metres(1.0))));
    assert_eq!(garden.areas[0].name, "seating");
    let shelf = garden.shelf;
    assert_eq!((shelf.flats, shelf.warm_flats), (6, 2));
    assert_eq!(shelf.room, Celsius(18.0));
    assert_eq!(shelf.from, day("2027-01-18"));
    assert_eq!(shelf.until, Some(day("2027-05-30")));
}

#[test]
fn comments_before_the_header_change_no_day_and_tell_whether_the_days_were_generated() {
    let read = |comments: &str| {
        let weather = format!("{comments}{AUTUMN}");
        project::load_text("garden.toml", MINIMAL, Some(&weather), catalogue())
            .unwrap_or_else(|problems| panic!("{comments}: {problems}"))
            .weather
    };
    let plain = read("");
    assert!(!plain.is_generated());
    for (comments, generated) in [
        ("# generated\n", true),
        ("# generated by a rule, one year\r\n# second\r\n", true),
        ("\u{feff}# generated\n\n#\n", true),
        ("# our gauge\n# generated\n", false),
        ("#\n#generated\n", false),
    ] {
        let record = read(comments);
        assert_eq!(record.is_generated(), generated, "{comments}");
        assert_eq!(record.first(), plain.first(), "{comments}");
        assert_eq!(record.days(), plain.days(), "{comments}");
        assert!(record.origin().is_none(), "{comments}");
    }
}

#[test]
fn monthly_means_give_as_many_weather_years_as_asked_for() {
    let means = "monthly = { tmin_c = [-7, -6, -2, 5, 12, 17, 20, 19, 15, 8, 1, -4], \
                 tmax_c = [-1, 1, 6, 13, 20, 25, 28, 27, 22, 15, 7, 1], \
                 rain_mm = [40, 35, 50, 60, 300, 90, 80, 75, 70, 60, 50, 45], years = 12, seed = 7 }";
    let text = MINIMAL.replace("weather = \"autumn.csv\"", means);
    let garden = project::load_text("garden.toml", &text, None, catalogue())
        .unwrap_or_else(|problems| panic!("{problems}"));
    assert!(garden.weather.is_generated());
    assert_eq!(garden.weather.years(garden.horizon()).len(), 12);
    assert!(what_is_assumed(&garden).contains(&"weather from monthly means"));
    // The plan runs over New Year: one calendar year more is made.
    let text = text
        .replace("start = 2027-08-30", "start = 2026-11-02")
        .replace("from = 2027-08-30", "from = 2026-11-02");
    let garden = project::load_text("garden.toml", &text, None, catalogue())
        .unwrap_or_else(|problems| panic!("{problems}"));
    assert_eq!(garden.weather.years(garden.horizon()).len(), 12);
}

/// The smallest file with three grades, of these ages if any, and these lines for its carrot.
fn carrot_of(ages: [Option<u32>; 3], carrot: &str) -> Garden {
    let section = |(n, age): (usize, &Option<u32>)| {
        let age = age.map_or_else(String::new, |age| format!("age = {age}\n"));
        format!(
            "[[grade]]\nid = \"{n}\"\n{age}classes = [{{ name = \"{n}a\", children = 20, day = \"Tue\" }}]\n"
        )
    };
    let grades: String = (1..).zip(&ages).map(section).collect();
    let from = MINIMAL.find("[[grade]]").expect("a grade");
    let to = MINIMAL.find("[[dish.ingredient]]").expect("a dish");
    let text = [&MINIMAL[..from], &grades, &MINIMAL[to..]].concat();
    let text = text.replace(
        "crop = \"carrot\"\n",
        &format!("crop = \"carrot\"\n{carrot}"),
    );
    load(&text).unwrap_or_else(|problems| panic!("{problems}"))
}

/// The grades that may grow the carrot, and what is said of that.
fn grades_of_carrot(ages: [Option<u32>; 3], carrot: &str) -> (Vec<usize>, Option<String>) {
    let garden = carrot_of(ages, carrot);
    let grades = garden.ingredients[0]
        .teams
        .iter()
        .flat_map(|team| team.grades().map(|g| g.0 + 1));
    let mut assumed = garden.assumed.iter();
    let said = assumed.find(|a| a.what.starts_with("grade = "));
    let said = said.map(|a| format!("{}: {}", a.what, a.why));
    (grades.collect(), said)
}

#[test]
fn an_ingredient_without_a_grade_may_be_grown_by_all_that_are_old_enough() {
    let said = |text: &str| Some(text.to_owned());
    let none = [None; 3];
    assert_eq!(
        grades_of_carrot(none, ""),
        (
            vec![1, 2, 3],
            said(
                "grade = [\"1\", \"2\", \"3\"]: the program chooses; by common practice children \
                 are 7 and older to sow fine seed, but no grade has an `age` in the file (carrot)"
            )
        )
    );
    assert_eq!(
        grades_of_carrot([Some(6), None, Some(8)], ""),
        (
            vec![2, 3],
            said(
                "grade = [\"2\", \"3\"]: by common practice children are 7 and older to sow fine \
                 seed; the program chooses among these (carrot)"
            )
        )
    );
    assert_eq!(
        grades_of_carrot([Some(7), Some(8), Some(9)], "").1,
        said("grade = [\"1\", \"2\", \"3\"]: the program chooses (carrot)")
    );
    assert_eq!(
        grades_of_carrot([Some(4), Some(6), Some(5)], ""),
        (
            vec![2],
            said(
                "grade = \"2\": by common practice children are 7 and older to sow fine seed; no \
                 grade is, so the oldest (carrot)"
            )
        )
    );
}

#[test]
fn what_the_file_says_of_grades_comes_before_ages() {
    let ages = [Some(5), Some(6), Some(8)];
    assert_eq!(grades_of_carrot(ages, "grade = \"1\"\n"), (vec![1], None));
    let list = "grade = [\"3\", \"1\", \"3\"]\n";
    assert_eq!(grades_of_carrot(ages, list), (vec![1, 3], None));
    // Bought plants need no hands for fine seed, nor do the school's own figures.
    let own = "\n[crop.carrot]\nsowing_age = 6\n\n[[bed]]";
    let text = MINIMAL.replace("\n[[bed]]", own);
    assert_eq!(load(&text).unwrap().ingredients[0].least_age(), Some(6));
    let none = text.replace("sowing_age = 6", "sowing_age = 0");
    assert_eq!(load(&none).unwrap().ingredients[0].least_age(), None);
    let leek = catalogue().get("leek").expect("a known crop");
    assert_eq!(leek.ages.least(&leek.methods), Some(7));
    assert_eq!(leek.ages.least(&[Method::Bought]), None);
    let cabbage = catalogue().get("cabbage").expect("a known crop");
    assert_eq!(cabbage.ages.least(&[Method::Bought]), Some(9));
}
