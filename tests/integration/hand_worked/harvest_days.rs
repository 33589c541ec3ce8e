//! Days of the harvest, on which all classes meet: rounds by themselves, as long as they say, by hand.

use tureen::candidates::{Candidates, Context, DropReason, rounds};
use tureen::catalogue::Catalogue;
use tureen::garden::{ClassAt, Garden, GradeAt, HarvestDay, Method};
use tureen::units::{Minutes, Share};

use crate::support::climates::mediterranean;
use crate::support::day;
use crate::support::gardens::{bed, ingredient, tiny_garden};

/// The tiny garden with a day of the harvest.
fn with(date: &str, minutes: f64) -> Garden {
    let mut garden = tiny_garden();
    garden.school_year.harvest_days.push(HarvestDay {
        day: day(date),
        minutes: Minutes(minutes),
    });
    garden
}

fn class(grade: usize, class: usize) -> ClassAt {
    let grade = GradeAt(grade);
    ClassAt { grade, class }
}

#[test]
fn it_is_one_round_more_and_takes_none_away() {
    // Grade 1 meets on Tuesdays and Thursdays of every second week, last on 8 and 10 June.
    let usual = tiny_garden();
    let of = |garden: &Garden| rounds(&Context::new(garden), GradeAt(0).into());
    let before = of(&usual);
    for date in ["2027-06-07", "2027-06-09", "2027-06-01"] {
        let garden = with(date, 60.0);
        let mut more = of(&garden);
        let harvest = |round: &tureen::candidates::Round| {
            (round.first(), round.last()) == (day(date), day(date))
        };
        assert_eq!(
            more.iter().filter(|round| harvest(round)).count(),
            1,
            "{date}"
        );
        more.retain(|round| !harvest(round));
        assert_eq!(more, before, "{date}");
    }
}

#[test]
fn a_session_is_as_long_as_its_day_or_as_the_lesson_that_it_takes_in() {
    // A lesson has 45 minutes. 9 June is a Wednesday, 7 June a Monday, on which class 2a meets anyway.
    for (date, minutes, of_1a, of_2a) in [
        ("2027-06-09", 60.0, 60.0, 60.0),
        ("2027-06-09", 30.0, 30.0, 30.0),
        ("2027-06-07", 60.0, 60.0, 60.0),
        ("2027-06-07", 30.0, 30.0, 45.0),
    ] {
        let garden = with(date, minutes);
        let long = |at| garden.session_minutes(at, day(date)).0;
        assert_eq!(
            (long(class(0, 0)), long(class(1, 0))),
            (of_1a, of_2a),
            "{date}"
        );
        assert!(garden.sessions(class(0, 1)).contains(&day(date)), "{date}");
    }
    // Every class meets on it once.
    let mondays = with("2027-06-07", 60.0).sessions(class(1, 0));
    assert_eq!(mondays, tiny_garden().sessions(class(1, 0)));
}

/// A school 39 degrees north that eats sweet corn on Friday 16 July. All classes meet on Thursdays, and the kitchen
/// needs the harvest on Wednesday; corn keeps for three days.
fn corn() -> Garden {
    let mut garden = tiny_garden();
    (garden.latitude, garden.weather) = mediterranean(30);
    garden.school_year.terms[0].to = day("2027-07-23");
    garden.grades.truncate(1);
    garden.grades[0].classes.truncate(1);
    garden.grades[0].classes[0].slots[0].day = chrono::Weekday::Thu;
    garden.grades[0].classes[0].slots[0].every_weeks = 1;
    let crop = Catalogue::load()
        .unwrap()
        .get("sweet corn")
        .unwrap()
        .clone();
    let mut corn = ingredient(crop, GradeAt(0), 20.0);
    corn.methods.retain(|method| *method == Method::Direct);
    corn.least_share = Share(0.2);
    garden.ingredients = vec![corn];
    garden.beds = vec![bed("A", 20, 0)];
    garden.feast.day = day("2027-07-16");
    garden.feast.deliver_by = day("2027-07-14");
    garden
}

#[test]
fn corn_for_a_friday_with_lessons_on_thursdays_can_be_picked_on_one() {
    let garden = corn();
    let without = Candidates::enumerate(&garden);
    assert!(without.all.is_empty());
    assert!(
        without.dropped[0].contains_key(&DropReason::NoPickSession),
        "{:?}",
        without.dropped
    );
    // One day is one chance, and ripe corn is good for eight days; a second day, the day before, does no harm.
    let ready_on = |days: &[&str]| {
        let mut garden = corn();
        let days = days.iter().map(|date| HarvestDay {
            day: day(date),
            minutes: Minutes(60.0),
        });
        garden.school_year.harvest_days = days.collect();
        let all = Candidates::enumerate(&garden).all;
        all.iter().map(|c| c.ready.len()).max().unwrap_or(0)
    };
    let one = ready_on(&["2027-07-14"]);
    assert!(one >= 10, "{one} of 30");
    let two = ready_on(&["2027-07-13", "2027-07-14"]);
    assert!(two >= one, "{two} and {one} of 30");
}
