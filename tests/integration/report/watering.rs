//! The watering list: litres of the tiny garden worked by hand, whole gardens under other
//! skies, and what stands in the weeks of a break.

use proptest::prelude::*;
use tureen::checker::{CheckedPlan, WaterNeed, Watering, check};
use tureen::facts::Facts;
use tureen::garden::{Break, Care, Garden, SeedSize, Tongue};
use tureen::growth::water::reference_evapotranspiration;
use tureen::plan::{StepKind, When};
use tureen::report;
use tureen::report::handouts::Reader;
use tureen::units::{Celsius, Latitude, Metres, Millimetres};
use tureen::weather::{Daily, Record};
use tureen::words::view::View;

use super::{plain, screens::compare, tiny};
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{step, tiny_plan};

#[test]
fn the_list() {
    let (garden, checked) = tiny();
    compare(
        "water",
        &report::watering(&garden, &checked).text(plain(100)),
    );
}

/// What grass loses in a week of the tiny garden in its year of 15 or 19 C.
fn grass(week: usize, tmin: f64, tmax: f64) -> f64 {
    let first = tiny_garden()
        .horizon()
        .day_number(day("2027-04-19"))
        .unwrap()
        / 7
        + week
        - 1;
    let horizon = tiny_garden().horizon();
    (first * 7..first * 7 + 7)
        .map(|n| chrono::Datelike::ordinal(&horizon.date(n)))
        .map(|n| reference_evapotranspiration(Latitude(0.0), n, Celsius(tmin), Celsius(tmax)).0)
        .sum()
}

/// The tomato stands on four strips, 1.44 m2, from 19 April to 7 June: 50 days. Its initial
/// stage, a quarter of them, covers the first week, so its coefficient is 0.7. No rain falls.
/// Of four years with the weeks around, the seventh of twelve is the year of 15 C in the week
/// with the least sun, the eleventh that of 19 C in the middle one.
#[test]
fn the_first_week_of_the_tomato_by_hand() {
    let (garden, checked) = tiny();
    let watering = checked.watering(&garden);
    let week = garden.horizon().day(day("2027-04-19")) / 7;
    let need = watering.beds[0][week].unwrap();
    let mut ordinary: Vec<f64> = (0..3).map(|w| grass(w, 10.0, 20.0)).collect();
    let mut dry: Vec<f64> = (0..3).map(|w| grass(w, 14.0, 24.0)).collect();
    ordinary.sort_by(f64::total_cmp);
    dry.sort_by(f64::total_cmp);
    assert!((need.ordinary.0 - 0.7 * 1.44 * ordinary[0]).abs() < 1e-9);
    assert!((need.dry.0 - 0.7 * 1.44 * dry[1]).abs() < 1e-9);
    // Before it stands there is nothing to water, and on its last day one day of it.
    assert_eq!(watering.beds[0][week - 1], None);
    let last = watering.beds[0][garden.horizon().day(day("2027-06-07")) / 7].unwrap();
    assert!(last.dry.0 > 0.0 && last.dry.0 < need.dry.0 / 3.0);
    assert!((watering.planted[0].0 - 1.44).abs() < 1e-9);
}

/// The bean is sown on 16 and 18 March and comes up five days later at 15 C and above, at 13.5
/// C a day later: that is the median, the later of the two in the middle.
#[test]
fn the_seedbed_of_the_tiny_garden() {
    let (garden, checked) = tiny();
    let seedbeds = checked.watering(&garden).seedbeds;
    assert_eq!(seedbeds.len(), 1, "seedlings on the shelf have none");
    assert_eq!(seedbeds[0].ingredient, "bean");
    assert_eq!(seedbeds[0].from, day("2027-03-16"));
    assert!(seedbeds[0].up > day("2027-03-22") && seedbeds[0].up < day("2027-03-26"));
    assert!(!seedbeds[0].lies_deep);
    let list = report::watering(&garden, &checked).text(plain(400));
    assert!(
        list.contains("a little every day from Tue 16 Mar"),
        "{list}"
    );
    // Large seed is not watered every day, but somebody looks at it: the plan counts on it.
    let mut large = tiny_garden();
    large.ingredients[0].crop.seed_size = SeedSize::Large;
    let checked = check(&large, tiny_plan(&large)).unwrap();
    assert!(checked.watering(&large).seedbeds[0].lies_deep);
    let list = report::watering(&large, &checked).text(plain(400));
    assert!(list.contains("look every day from Tue 16 Mar"), "{list}");
    assert!(!list.contains("a little every day"), "{list}");
}

/// Middle figures of weeks do not add up to that of the year, up or down.
#[test]
fn the_weeks_are_told_beside_the_year_as_they_are() {
    let (garden, checked) = tiny();
    let watering = checked.watering(&garden);
    let list = report::watering(&garden, &checked).text(plain(400));
    let tens = |litres: f64| (litres / 10.0).round() * 10.0;
    let told = |weeks: f64, whole: f64| match tens(weeks) - tens(whole) {
        0.0 => "as much".to_owned(),
        d if d < 0.0 => format!("less ({})", tens(weeks)),
        _ => format!("more ({})", tens(weeks)),
    };
    let ordinary = watering.weeks.iter().map(|w| w.ordinary.0).sum();
    let dry = watering.weeks.iter().map(|w| w.dry.0).sum();
    let line = format!(
        "The ordinary weeks alone add up to {}, the dry weeks to {}.",
        told(ordinary, watering.whole.ordinary.0),
        told(dry, watering.whole.dry.0)
    );
    assert!(list.contains(&line), "{line}\n{list}");
}

/// Families pick the bean in a week of May in which there is no school.
fn with_families() -> (Garden, CheckedPlan) {
    let mut garden = tiny_garden();
    garden.school_year.breaks.push(Break {
        name: "May break".to_owned(),
        from: day("2027-05-10"),
        to: day("2027-05-14"),
        care: Care::Families,
    });
    let mut plan = tiny_plan(&garden);
    let bean = &mut plan.plantings[0].steps;
    let first_pick = bean.iter().position(|s| s.kind == StepKind::Pick).unwrap();
    bean[first_pick] = step(StepKind::Pick, When::Families(day("2027-05-12")));
    let checked = check(&garden, plan).unwrap();
    (garden, checked)
}

#[test]
fn a_week_of_families_says_what_to_pick_and_has_room_for_a_name() {
    let (garden, checked) = with_families();
    let list = report::watering(&garden, &checked).text(plain(120));
    let line = "    > May break: families water. Pick if ripe and still there: bean on Wed 12 May (bed B). \
                Name: ____________________\n";
    let (before, _) = list.split_once(line).expect(&list);
    let row = before.lines().next_back().unwrap();
    assert!(row.starts_with("  10 May  "), "{row}");
    assert!(list.contains("> Spring break: NOBODY IS ON SITE, find someone."));
    // Above all stands what families are asked for, with the cans of a dry year of that week.
    let cans = row.split_whitespace().nth(3).unwrap();
    let most = cans.split('-').next_back().unwrap();
    let asked = format!(
        "Families, please water in May break (Mon 10 May to Fri 14 May): a name for its week, up to {most} cans."
    );
    let all = list.split_whitespace().collect::<Vec<_>>().join(" ");
    let (before, _) = all
        .split_once(&asked)
        .unwrap_or_else(|| panic!("{asked}\n{list}"));
    assert!(!before.contains("60-85"), "{list}");
    let (garden, checked) = tiny();
    let alone = report::watering(&garden, &checked).text(plain(120));
    assert!(!alone.contains("Families, please"), "{alone}");
}

/// All figures of a list.
fn needs(watering: &Watering) -> Vec<WaterNeed> {
    let beds = watering.beds.iter().flatten().flatten();
    let all = beds.chain(&watering.weeks).chain([&watering.whole]);
    all.copied().collect()
}

/// The tiny garden with rain of its own on every day of a fortnight.
fn rained_on(rain: &[f64], factor: f64) -> Garden {
    let garden = tiny_garden();
    let days = garden.weather.days().iter().zip(rain.iter().cycle());
    let days = days.map(|(day, rain)| Daily {
        rain: Millimetres(rain * factor),
        ..*day
    });
    Garden {
        weather: Record::new(garden.weather.first(), days.collect(), false),
        ..garden
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn more_rain_never_needs_more_water(
        rain in prop::collection::vec(0.0..8.0f64, 14), factor in 1.0..4.0f64,
    ) {
        let (_, checked) = tiny();
        let now = needs(&checked.watering(&rained_on(&rain, 1.0)));
        let more = needs(&checked.watering(&rained_on(&rain, factor)));
        prop_assert_eq!(now.len(), more.len());
        for (now, more) in now.iter().zip(&more) {
            prop_assert!(more.ordinary <= now.ordinary && more.dry <= now.dry);
            prop_assert!(now.ordinary <= now.dry);
        }
    }

    #[test]
    fn a_wider_bed_needs_as_much_more(
        rain in prop::collection::vec(0.0..8.0f64, 14), factor in 0.5..4.0f64,
    ) {
        let (_, checked) = tiny();
        let garden = rained_on(&rain, 1.0);
        let mut wide = garden.clone();
        for bed in &mut wide.beds {
            bed.width = Metres(bed.width.0 * factor);
        }
        let (now, wide) = (needs(&checked.watering(&garden)), needs(&checked.watering(&wide)));
        for (now, wide) in now.iter().zip(&wide) {
            prop_assert!((wide.dry.0 - now.dry.0 * factor).abs() < 1e-6);
            prop_assert!((wide.ordinary.0 - now.ordinary.0 * factor).abs() < 1e-6);
        }
    }
}

/// The list in Spanish has the same rows and figures as the English one, and no English word is left in
/// it but the names that the project gives.
#[test]
fn the_list_in_spanish_has_the_same_figures_and_no_english() {
    for (name, garden, checked) in crate::scenarios::planned() {
        let garden = Garden {
            families_also: Some(Tongue::Spanish),
            ..garden.clone()
        };
        let facts = Facts::new(&garden, checked);
        let all = report::handouts::all(&View::of(&facts), &[], None);
        let page = |wanted: fn(&Reader) -> bool| {
            let found = all.iter().find(|handout| wanted(&handout.reader));
            found.unwrap().page.text(plain(160))
        };
        let english = page(|reader| *reader == Reader::Helpers);
        let spanish = page(|reader| matches!(reader, Reader::HelpersIn(_)));
        // Rows of the table, without their first column, which is a date.
        let figures = |text: &str| -> Vec<Vec<String>> {
            let is_figure =
                |word: &&str| word.chars().all(|c| c.is_ascii_digit() || "-.".contains(c));
            let rows = text.lines().map(|line| line.split_whitespace().skip(2));
            let rows = rows.map(|words| words.collect::<Vec<_>>());
            rows.filter(|row| row.len() > 2 && row.iter().all(is_figure))
                .map(|row| row.into_iter().map(str::to_owned).collect())
                .collect()
        };
        let table = |text: &str, end: &str| {
            let before = text.find(end).unwrap();
            figures(&text[..before])
        };
        let own = table(&english, "All weeks together");
        assert!(own.len() > 5, "{name}: {english}");
        assert_eq!(own, table(&spanish, "Todas las semanas juntas"), "{name}");
        let names: Vec<String> = (garden.ingredients.iter().map(|i| i.name.clone()))
            .chain(garden.school_year.breaks.iter().map(|b| b.name.clone()))
            .chain([garden.name.clone()])
            .chain(garden.school.clone())
            .map(|name| name.to_lowercase())
            .collect();
        for word in [
            "the", "and", "of", "week", "bed", "beds", "water", "year", "day", "on", "Mon", "Jun",
        ] {
            let is_there = spanish
                .split(|c: char| !c.is_alphanumeric())
                .any(|w| w == word);
            let named = names.iter().any(|name| name.split(' ').any(|w| w == word));
            assert!(!is_there || named, "{name}: {word} in {spanish}");
        }
        assert!(spanish.contains("Traducción sin revisar"), "{name}");
    }
}
