//! Projects as people begin them: answers in the forms in which they are typed, and the files that come of
//! them, which pass the same checks as any other.

use tureen::calendar::Date;
use tureen::catalogue::{Dish, dishes};
use tureen::garden::{Care, Garden};
use tureen::project;
use tureen::project::draft::{self, Draft, Element, Measures};
use tureen::units::Latitude;
use tureen::weather::normals::{Longitude, nearest};

use super::{catalogue, day};

const TODAY: &str = "2026-11-29";

fn today() -> Date {
    day(TODAY)
}

fn fresh(dish: &Dish) -> Draft {
    Draft::new(today(), dish.clone())
}

fn all_dishes() -> Vec<Dish> {
    dishes().expect("the dishes load")
}

#[track_caller]
fn loaded(draft: &Draft) -> Garden {
    let text = draft.text();
    project::load_text("garden.toml", &text, None, catalogue())
        .unwrap_or_else(|found| panic!("{text}\n{}", found.render(false, 100)))
}

#[test]
fn days_are_read_in_any_clear_form() {
    let metric = |text: &str| draft::day(text, today(), Measures::Metric);
    for text in [
        "2027-10-08",
        "8 October 2027",
        "8 Oct 2027",
        "Oct 8, 2027",
        "8 October",
        "8.10.2027",
        "8/10/2027",
    ] {
        assert_eq!(metric(text), Ok(day("2027-10-08")), "{text}");
    }
    let american = draft::day("10/8/2027", today(), Measures::Feet);
    assert_eq!(american, Ok(day("2027-10-08")));
    // Without a year, the next one.
    assert_eq!(metric("1 December"), Ok(day("2026-12-01")));
    assert_eq!(metric("28 November"), Ok(day("2027-11-28")));
    for text in ["", "soon", "31 June 2027", "2027-02-29", "8", "October"] {
        assert!(metric(text).is_err(), "{text}");
    }
}

#[test]
fn spans_are_read_with_and_without_years_and_names() {
    let read = |text: &str| draft::span(text, "Term 1", today(), Measures::Metric);
    for (text, name, from, to) in [
        (
            "Spring: 11 Jan 2027 - 18 Jun 2027",
            "Spring",
            "2027-01-11",
            "2027-06-18",
        ),
        (
            "Spring: 11 Jan - 18 Jun 2027",
            "Spring",
            "2027-01-11",
            "2027-06-18",
        ),
        ("11 Jan to 18 Jun", "Term 1", "2027-01-11", "2027-06-18"),
        (
            "2027-01-11 - 2027-06-18",
            "Term 1",
            "2027-01-11",
            "2027-06-18",
        ),
        (
            "Autumn: 30 Aug - 17 Dec 2026",
            "Autumn",
            "2026-08-30",
            "2026-12-17",
        ),
        (
            "Winter: 12 Dec - 9 Jan",
            "Winter",
            "2026-12-12",
            "2027-01-09",
        ),
    ] {
        let span = read(text).unwrap_or_else(|wrong| panic!("{text}: {wrong}"));
        assert_eq!(
            (span.name.as_str(), span.from, span.to),
            (name, day(from), day(to)),
            "{text}"
        );
    }
    for text in [
        "Spring",
        "11 Jan 2027",
        "18 Jun 2027 - 11 Jan 2027",
        "x - y",
    ] {
        assert!(read(text).is_err(), "{text}");
    }
    let off = |text: &str| draft::time_off(text, today(), Measures::Metric);
    let (summer, care) = off("Summer: 19 Jun - 29 Aug 2027, Families").expect("a break");
    assert_eq!(
        (summer.name.as_str(), summer.to, care),
        ("Summer", day("2027-08-29"), Care::Families)
    );
    assert_eq!(off("5 Apr - 9 Apr").map(|(_, care)| care), Ok(Care::Nobody));
    assert!(off("Summer: 19 Jun - 29 Aug, the neighbour").is_err());
}

#[test]
fn classes_are_read() {
    let class = draft::class("3a 22 tuesday 10:15 every 2").expect("a class");
    assert_eq!(
        (
            class.name.as_str(),
            class.grade(),
            class.children,
            class.day,
            class.every
        ),
        ("3a", "3", 22, chrono::Weekday::Tue, 2)
    );
    assert_eq!(
        draft::class("Kestrels, 18, Fri").expect("a class").grade(),
        "Kestrels"
    );
    assert_eq!(
        draft::class("10 18 Fri 2pm").expect("a class").grade(),
        "10"
    );
    for text in [
        "",
        "3a",
        "3a many Tue",
        "3a 22",
        "3a 22 Sat",
        "3a 0 Tue",
        "3a 22 Tue late",
        "3a 22 Tue every 3",
    ] {
        assert!(draft::class(text).is_err(), "{text}");
    }
}

#[test]
fn beds_and_places_are_read() {
    let size =
        |text: &str, measures| draft::beds(text, measures).map(|b| (b.count, b.length, b.width));
    for text in [
        "4 beds 3.6 x 1.2",
        "4 x 3.6 m x 1.2 m",
        "4 beds 3,6 x 1,2 m",
        "4 beds of 1.2 by 3.6",
        "4 beds 360 cm x 120 cm",
    ] {
        assert_eq!(size(text, Measures::Metric), Ok((4, 3.6, 1.2)), "{text}");
    }
    assert_eq!(size("12 x 4", Measures::Feet), Ok((1, 12.0, 4.0)));
    assert_eq!(
        size("12 ft x 4 ft", Measures::Metric),
        Ok((1, 3.658, 1.219))
    );
    assert_eq!(size("6 beds 12x4", Measures::Feet), Ok((6, 12.0, 4.0)));
    for text in [
        "",
        "4 beds",
        "0 beds 3 x 1",
        "2.5 beds 3 x 1",
        "99 beds 3 x 1",
        "3 kg x 1 kg",
        "3 x -1",
    ] {
        assert!(size(text, Measures::Metric).is_err(), "{text}");
    }
    let place = |text: &str| draft::place(text);
    for (text, degrees) in [
        ("44.3", (44.3, None)),
        ("44.3 N", (44.3, None)),
        ("-33.9", (-33.9, None)),
        ("33.9\u{b0} S", (-33.9, None)),
        ("44.3 N 93.2 W", (44.3, Some(-93.2))),
        ("44.3N, 93.2W", (44.3, Some(-93.2))),
        ("44.3, -93.2", (44.3, Some(-93.2))),
        ("33.9S 18.4E", (-33.9, Some(18.4))),
        ("\u{2212}33.9 18.4", (-33.9, Some(18.4))),
    ] {
        assert_eq!(place(text), Ok(degrees), "{text}");
    }
    for text in ["", "north", "70 N", "44 E 7 7", "44 N 200 E", "44 N x"] {
        assert!(place(text).is_err(), "{text}");
    }
}

#[test]
fn a_dish_of_ones_own_is_read_in_grams_and_ounces() {
    let read = |text: &str, measures| draft::parts(text, catalogue(), measures);
    let metric = read("carrots 25, potato 60 g", Measures::Metric);
    assert_eq!(
        metric,
        Ok(vec![
            ("carrot".to_owned(), 25.0),
            ("potato".to_owned(), 60.0)
        ])
    );
    let ounces = read("carrot 1, potato 60 g", Measures::Feet).expect("a dish");
    // NIST SP 811: an ounce is 28.349523125 g.
    assert!(
        (ounces[0].1 - 28.35).abs() < 1e-9 && ounces[1].1 == 60.0,
        "{ounces:?}"
    );
    for (text, told) in [
        ("carot 25", "did you mean \"carrot\"?"),
        ("carrot", "how much of carrot"),
        ("carrot 25 cm", "no unit of weight"),
        ("  ", "write them with their amounts"),
    ] {
        let wrong = read(text, Measures::Metric).expect_err(text);
        assert!(wrong.contains(told), "{text}: {wrong}");
    }
}

#[test]
fn means_are_read_as_they_are_pasted() {
    let rows = [
        ("-9 -8 -4 1 7 12 15 14 9 4 -1 -6", Measures::Metric),
        (
            "-9, -8, -4, 1, 7, 12, 15, 14, 9, 4, -1, -6",
            Measures::Metric,
        ),
        ("-9,-8,-4,1,7,12,15,14,9,4,-1,-6", Measures::Metric),
        (
            "\u{2212}9;\u{2212}8;\u{2212}4;1;7;12;15;14;9;4;\u{2212}1;\u{2212}6",
            Measures::Metric,
        ),
        (
            "-9,0 -8,0 -4,0 1,0 7,0 12,0 15,0 14,0 9,0 4,0 -1,0 -6,0",
            Measures::Metric,
        ),
        (
            "-9\t-8\t-4\t1\t7\t12\t15\t14\t9\t4\t-1\t-6 C",
            Measures::Metric,
        ),
        (
            "15.8 17.6 24.8 33.8 44.6 53.6 59 57.2 48.2 39.2 30.2 21.2 F",
            Measures::Metric,
        ),
    ];
    let low = [
        -9.0, -8.0, -4.0, 1.0, 7.0, 12.0, 15.0, 14.0, 9.0, 4.0, -1.0, -6.0,
    ];
    let dish = &all_dishes()[0];
    for (text, measures) in rows {
        let mut draft = fresh(dish);
        draft
            .means
            .take(Element::Low, text, measures)
            .unwrap_or_else(|wrong| panic!("{text}: {wrong}"));
        assert_eq!(draft.means.low, Some(low), "{text}");
        // What the other rows hold is of no place, and what was said stays.
        draft.measures = measures;
        assert_eq!(draft.rows()[0], low);
        assert!(!draft.means.is_said());
        assert!(draft.means.take(Element::High, "1 2 3", measures).is_err());
        assert!(
            draft
                .means
                .take(Element::High, &"-20 ".repeat(12), measures)
                .is_err(),
            "under the lowest"
        );
        assert!(
            draft
                .means
                .take(Element::Rain, &format!("{}kg", "3 ".repeat(12)), measures)
                .is_err()
        );
    }
}

#[test]
fn every_dish_is_a_sound_project_at_once_in_both_halves_and_both_systems() {
    for dish in &all_dishes() {
        let grams: f64 = dish.ingredients.iter().map(|(_, grams)| grams).sum();
        assert!((50.0..=300.0).contains(&grams), "{}: {grams} g", dish.name);
        assert!(dish.ingredients.len() >= 4, "{}", dish.name);
        for (latitude, measures) in [
            (44.0, Measures::Metric),
            (44.0, Measures::Feet),
            (-34.0, Measures::Metric),
        ] {
            let mut draft = fresh(dish);
            draft.latitude = Some(latitude);
            draft.measures = measures;
            let garden = loaded(&draft);
            let month = chrono::Datelike::month(&garden.feast.day);
            assert!(
                dish.suits(month, draft.south()),
                "{}: {}",
                dish.name,
                garden.feast.day
            );
            assert_eq!(garden.ingredients.len(), dish.ingredients.len());
            for (ours, (name, grams)) in garden.ingredients.iter().zip(&dish.ingredients) {
                assert_eq!(&ours.name, name);
                let off = (ours.grams_per_portion - grams).abs();
                assert!(
                    off < 0.2,
                    "{name}: {grams} g become {}",
                    ours.grams_per_portion
                );
            }
        }
    }
}

#[test]
fn what_is_said_stands_in_the_file() {
    let mut draft = fresh(&all_dishes()[0]);
    let (metric, after) = (Measures::Metric, today());
    draft.school = Some("The \"Larch\\Hill\" School".to_owned());
    draft.feast = draft::day("8 October 2027", after, metric).ok();
    for term in [
        "Spring: 11 Jan - 18 Jun 2027",
        "Autumn: 30 Aug - 17 Dec 2027",
    ] {
        draft
            .terms
            .push(draft::span(term, "", after, metric).expect("a term"));
    }
    draft.breaks.push(
        draft::time_off("Summer: 19 Jun - 29 Aug 2027, families", after, metric).expect("a break"),
    );
    for class in ["3a 22 Tue 10:15", "3b 21 Thu every 2", "4a 24 Wed"] {
        draft.classes.push(draft::class(class).expect("a class"));
    }
    draft.beds = vec![
        draft::beds("6 beds 3.6 x 1.2", metric).expect("beds"),
        draft::beds("2.4 x 1", metric).expect("a bed"),
    ];
    (draft.trellises, draft.flats, draft.portions) = (Some(2), Some(8), Some(150));
    let garden = loaded(&draft);
    assert_eq!(garden.school.as_deref(), Some("The \"Larch\\Hill\" School"));
    assert_eq!(garden.feast.day, day("2027-10-08"));
    assert_eq!(garden.feast.portions, 150);
    assert_eq!(garden.school_year.moves_up, Some(day("2027-08-30")));
    assert_eq!(garden.school_year.breaks[0].care, Care::Families);
    assert_eq!(garden.grades.len(), 2);
    assert_eq!(garden.grades[0].classes.len(), 2);
    assert_eq!(garden.beds.len(), 7);
    let with_trellis = garden.beds.iter().filter(|bed| bed.trellis.0 > 0.0);
    assert_eq!(with_trellis.count(), 2);
    assert_eq!(garden.shelf.flats, 8);
    draft.flats = Some(0);
    assert_eq!(loaded(&draft).shelf.flats, 0);
}

#[test]
fn means_of_a_station_hold_until_others_are_said() {
    let mut draft = fresh(&all_dishes()[0]);
    draft.latitude = Some(51.5);
    draft.near = nearest(Latitude(51.5), Longitude(-0.4), 3);
    let station = draft.near[0].1.clone();
    let garden = loaded(&draft);
    let means = garden.weather.means().expect("monthly means");
    assert_eq!(
        (means.tmin, means.tmax, means.rain),
        (station.low, station.high, station.rain)
    );
    assert_eq!(Some(means.rain_days), station.rain_days);
    assert!(!draft.is_of_no_place() && draft.text().contains(station.name));
    // In degrees F the same, to the tenth that is written.
    draft.measures = Measures::Feet;
    let feet = loaded(&draft).weather.means().expect("monthly means").tmin;
    let off = feet.iter().zip(station.low).map(|(f, c)| (f.0 - c.0).abs());
    assert!(off.fold(0.0, f64::max) < 0.05);
    draft.station = 2;
    assert!(draft.text().contains(draft.near[2].1.name));
    draft
        .means
        .take(Element::Low, &"1 ".repeat(12), Measures::Feet)
        .expect("means");
    assert_eq!(draft.rows()[0], [1.0; 12]);
}
