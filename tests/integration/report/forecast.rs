//! What a forecast asks for, on the tiny plan: bean sown on 16 and 18 March and picked from 11 May on, tomato planted
//! out on 19 April, in beds B and A, which have no cover.

use tureen::calendar::{Date, plus_days};
use tureen::facts::Facts;
use tureen::facts::forecast::{Ahead, DOUBT, Expected, HOT};
use tureen::garden::{Cover, Garden};
use tureen::plan::StepKind;
use tureen::units::{Celsius, Millimetres};
use tureen::words::Words;
use tureen::words::forecast::ahead as told;

use super::tiny;
use crate::support::day;

fn night(on: &str, low: f64) -> (Date, Expected) {
    let low = Some(Celsius(low));
    (
        day(on),
        Expected {
            low,
            ..Expected::default()
        },
    )
}

/// What is asked for, and its sentences, in a garden that may have been changed.
fn ahead(
    change: impl Fn(&mut Garden),
    forecast: &[(Date, Expected)],
    look: impl Fn(&Ahead<'_>),
) -> String {
    let (mut garden, checked) = tiny();
    change(&mut garden);
    let facts = Facts::new(&garden, &checked);
    let ahead = facts.ahead(forecast);
    look(&ahead);
    told(&ahead, Words::of(&garden))
        .join(" ")
        .replace('\u{a0}', " ")
}

#[test]
fn a_frost_is_told_with_what_stands_then_and_only_that() {
    let (garden, checked) = tiny();
    let limits: Vec<Celsius> = garden
        .ingredients
        .iter()
        .map(|i| i.crop.frost_limit)
        .collect();
    let planted = checked.plan().plantings[1]
        .steps
        .iter()
        .find(|s| s.kind == StepKind::PlantOut);
    assert_eq!(planted.unwrap().when.first(), Some(day("2027-04-19")));
    let names = |on: &str, low: Celsius| {
        let mut names = Vec::new();
        let facts = Facts::new(&garden, &checked);
        let ahead = facts.ahead(&[night(on, low.0)]);
        assert!(ahead.cold.len() <= 1, "{:?}", ahead.cold);
        for one in ahead.cold.into_iter().flat_map(|cold| cold.in_danger) {
            let bed = if one.ingredient == "bean" { "B" } else { "A" };
            assert_eq!((one.open, one.covered), (vec![bed], vec![]));
            names.push((one.ingredient.to_owned(), one.ripe));
        }
        names
    };
    let bean = |ripe| ("bean".to_owned(), ripe);
    let tomato = |ripe| ("tomato".to_owned(), ripe);
    let cold = limits[0].min(limits[1]);
    assert_eq!(names("2027-04-20", cold), [tomato(false), bean(false)]);
    // A week before the first pick it is time to pick.
    assert_eq!(names("2027-05-03", cold), [tomato(false), bean(false)]);
    assert_eq!(names("2027-05-04", cold), [tomato(false), bean(true)]);
    // Before it is planted out, and after the last pick, it is not there.
    assert_eq!(names("2027-04-18", cold), [bean(false)]);
    assert_eq!(names("2027-05-28", cold), [tomato(true)]);
    assert_eq!(names("2027-01-10", cold), []);
    // Two degrees above what it bears count as that, and nothing from there on.
    let warm = limits[0] + DOUBT;
    assert_eq!(names("2027-04-18", warm - Celsius(0.1)).len(), 1);
    assert_eq!(names("2027-04-18", warm), []);
}

#[test]
fn its_sentences_say_who_goes_out_with_what() {
    let text = ahead(|_| (), &[night("2027-05-10", -1.5)], |_| ());
    for part in [
        "Frost: -1.5 C (29 F) in the night to Mon 10 May.",
        "Pick before it all that can be used: bean.",
        "Before dusk cover tomato (bed A) and bean (bed B) with fleece or old sheets",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    assert!(
        !text.contains("Close the covers") && !text.contains("count "),
        "{text}"
    );
    // With a cover over the bed it is only to be closed.
    let cover = |garden: &mut Garden| {
        for bed in &mut garden.beds {
            bed.cover = Some(Cover {
                name: "fleece".to_owned(),
                keeps_off: Celsius(2.0),
                warms_soil: Celsius(1.0),
            });
        }
    };
    let text = ahead(cover, &[night("2027-05-10", -1.5)], |_| ());
    assert!(
        text.contains("Close the covers over tomato (bed A) and bean (bed B)."),
        "{text}"
    );
    assert!(!text.contains("Before dusk"), "{text}");
    let text = ahead(|_| (), &[night("2027-05-10", -6.0)], |_| ());
    assert!(
        text.contains(
            "colder than a cloth or a cover keeps off: count tomato (bed A) and bean (bed B) as lost."
        ),
        "{text}"
    );
    // Hardening off from 12 to 18 April.
    let text = ahead(|_| (), &[night("2027-04-14", 1.0)], |_| ());
    assert!(
        text.contains("Bring in what hardens off: tomato."),
        "{text}"
    );
    let text = ahead(|_| (), &[night("2027-04-12", 1.9)], |_| ());
    assert!(!text.contains("Bring in"), "{text}");
}

#[test]
fn every_night_that_asks_for_something_is_told_and_nights_in_a_row_are_one() {
    let nights = [
        night("2027-01-10", -9.0),
        night("2027-05-10", -1.0),
        night("2027-05-11", -1.5),
        night("2027-05-12", -1.5),
        night("2027-05-14", -1.0),
        night("2027-05-15", -6.0),
    ];
    // What stands in no bed then, the coldest night of all, is not told beside those that are dangerous; what
    // is lost in one night only is told of that night.
    let text = ahead(
        |_| (),
        &nights,
        |ahead| {
            let days: Vec<_> = ahead.cold.iter().map(|cold| cold.days).collect();
            let expected = [
                ("2027-05-10", "2027-05-12"),
                ("2027-05-14", "2027-05-14"),
                ("2027-05-15", "2027-05-15"),
            ];
            assert_eq!(days, expected.map(|(from, to)| (day(from), day(to))));
            let lows: Vec<_> = ahead.cold.iter().map(|cold| cold.low).collect();
            assert_eq!(lows, [-1.5, -1.0, -6.0].map(Celsius));
        },
    );
    assert!(
        text.contains("in the nights to Mon 10 May until that to Wed 12 May."),
        "{text}"
    );
    assert_eq!(text.matches("as lost").count(), 1, "{text}");
    let text = ahead(|_| (), &nights[..1], |_| ());
    assert!(
        text.contains("Nothing that stands in the beds then is killed by that."),
        "{text}"
    );
    assert_eq!(ahead(|_| (), &[night("2027-05-10", 2.1)], |_| ()), "");
}

#[test]
fn what_a_night_above_freezing_kills_is_told_too() {
    let tender = |garden: &mut Garden| {
        for ingredient in &mut garden.ingredients {
            if ingredient.name == "tomato" {
                ingredient.crop.frost_limit = Celsius(2.0);
            }
        }
    };
    let text = ahead(tender, &[night("2027-05-10", 3.0)], |_| ());
    assert!(
        text.starts_with("Cold: 3 C (37 F) in the night to Mon 10 May."),
        "{text}"
    );
    assert!(text.contains("cover tomato (bed A) with fleece"), "{text}");
    assert!(!text.contains("bean"), "{text}");
    assert_eq!(ahead(tender, &[night("2027-05-10", 4.0)], |_| ()), "");
}

#[test]
fn heat_and_rain_are_told_from_their_limits_on() {
    let hot = |high: Celsius| Expected {
        high: Some(high),
        ..Expected::default()
    };
    let on = day("2027-04-25");
    let text = ahead(
        |_| (),
        &[(on, hot(HOT)), (plus_days(on, 1), hot(HOT))],
        |_| (),
    );
    assert!(
        text.contains("Heat: 30 C (86 F) on Sun 25 Apr and 1 day more."),
        "{text}"
    );
    assert!(
        text.contains("Shade what was set out lately: tomato (bed A)."),
        "{text}"
    );
    assert!(text.contains("the school's rule for heat"), "{text}");
    assert_eq!(ahead(|_| (), &[(on, hot(HOT - Celsius(0.1)))], |_| ()), "");
    let later = ahead(|_| (), &[(day("2027-05-05"), hot(HOT))], |_| ());
    assert!(!later.contains("Shade what"), "{later}");
    let rain = |mm: f64, days: i64| {
        let expected = Expected {
            rain: Some(Millimetres(mm / days as f64)),
            ..Expected::default()
        };
        let days: Vec<(Date, Expected)> = (0..days).map(|n| (plus_days(on, n), expected)).collect();
        ahead(|_| (), &days, |_| ())
    };
    assert_eq!(rain(0.0, 2), "");
    assert_eq!(
        rain(4.0, 4),
        "Dry until Wed 28 Apr: water as in a dry week."
    );
    assert!(rain(8.0, 4).contains("take that off"), "{}", rain(8.0, 4));
    assert!(
        rain(30.0, 4).contains("wait with watering"),
        "{}",
        rain(30.0, 4)
    );
}
