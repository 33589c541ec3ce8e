//! What is said in a sentence of one fact, worked by hand on the tiny garden: shares of years, days of the last fortnight,
//! what a class reads on its sheet, what children read.

use tureen::calendar::Date;
use tureen::checker::CheckedPlan;
use tureen::explain::IfMissed;
use tureen::facts::Facts;
use tureen::facts::class_sheet::Quiet;
use tureen::facts::fortnight::Event;
use tureen::facts::tasks::{Chance, Task};
use tureen::facts::verdict::{CountedOn, Readiness};
use tureen::garden::{Garden, GradeAt, HandOver};
use tureen::plan::StepKind;
use tureen::words::answers::about;
use tureen::words::view::View;
use tureen::words::{children, fortnight, lessons};

use super::hand_over::handed_over;
use super::tiny;
use crate::support::day;

/// What is said, with plain spaces.
fn plainly(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

fn share(ready: usize, years: usize) -> &'static str {
    about(Readiness {
        ready,
        years,
        on: CountedOn::Own,
    })
}

/// The share of years that a phrase names, in hundredths; `None` for one that only bounds it.
fn named(phrase: &str) -> Option<f64> {
    match phrase {
        "in every year that was counted" => Some(100.0),
        "in nearly 9 years of 10" => Some(90.0),
        "in about half of all years" => Some(50.0),
        "in none of the years that were counted" => Some(0.0),
        "in at least 9 years of 10" | "in few years" => None,
        about => {
            let figures = about.split(' ').filter_map(|word| word.parse::<f64>().ok());
            let [part, whole] = figures.collect::<Vec<_>>()[..] else {
                panic!("{about}")
            };
            Some(100.0 * part / whole)
        }
    }
}

#[test]
fn the_share_of_years_that_is_said_is_never_more_than_five_of_a_hundred_away() {
    for ready in 0..=100 {
        let said = share(ready, 100);
        match named(said) {
            Some(named) => assert!((named - ready as f64).abs() <= 5.0, "{ready}: {said}"),
            None if ready >= 90 => assert_eq!(said, "in at least 9 years of 10"),
            None => assert!((1..15).contains(&ready), "{ready}: {said}"),
        }
    }
    assert_eq!(share(40, 100), "in about 2 years of 5");
    assert_eq!(share(25, 100), "in about 1 year of 4");
    // 26 of 29 years are 89.7 of a hundred: that rounds to 90 and is not 9 of 10.
    assert_eq!(share(26, 29), "in nearly 9 years of 10");
    assert_eq!(share(27, 30), "in at least 9 years of 10");
}

/// The task of a kind that one class of the tiny garden has on a day.
fn task<'f, 'a>(facts: &'f Facts<'a>, kind: StepKind, on: Date) -> &'f Task<'a> {
    let mut tasks = facts.tasks.iter();
    tasks.find(|t| t.kind == kind && t.from == on).unwrap()
}

/// Asks something of the tiny garden.
fn of_tiny<T>(ask: impl Fn(&View<'_>) -> T) -> T {
    let (garden, checked): (Garden, CheckedPlan) = tiny();
    let facts = Facts::new(&garden, &checked);
    ask(&View::of(&facts))
}

#[test]
fn what_is_picked_on_a_day_is_told_before_the_kitchen_has_it() {
    of_tiny(|view| {
        let pick = task(view.facts(), StepKind::Pick, day("2027-06-07"));
        let said = |events: &[Event<'_>]| plainly(&fortnight::in_words(view, events));
        let whole = "Pick: tomato (2a). All is in the kitchen.";
        assert_eq!(said(&[Event::Deliver, Event::Task(pick)]), whole);
        assert_eq!(said(&[Event::Task(pick), Event::Deliver]), whole);
        assert_eq!(
            said(&[Event::Feast, Event::Task(pick)]),
            "Pick: tomato (2a). The day: cook, serve and eat."
        );
    });
}

#[test]
fn the_last_fortnight_of_the_tiny_garden() {
    of_tiny(|view| {
        let days = view.fortnight();
        let told = |on: &str| plainly(&fortnight::in_words(view, &days[&day(on)]));
        assert_eq!(told("2027-05-31"), "Pick: tomato (2a).");
        assert_eq!(told("2027-06-09"), "All is in the kitchen.");
        assert_eq!(told("2027-06-11"), "The day: cook, serve and eat.");
    });
}

#[test]
fn a_lesson_tells_where_how_much_and_how_long() {
    of_tiny(|view| {
        let facts = view.facts();
        let said = |kind, on: &str| plainly(&lessons::details(view, task(facts, kind, day(on))));
        // 4 tomatoes on the 4 strips of bed A with a trellis. Ten minutes around the work and half a minute for each
        // plant among 20 children are 10.1, told as 11.
        assert_eq!(
            said(StepKind::PlantOut, "2027-04-19"),
            "In bed A (strips 1 to 4), 4 plants. 11 of 45 min."
        );
        // Where it is picked is seen.
        assert_eq!(said(StepKind::Pick, "2027-06-07"), "11 of 45 min.");
    });
}

#[test]
fn a_lesson_tells_which_chance_it_is_and_what_its_loss_costs() {
    let chance = |number, of| lessons::chance(Chance { number, of });
    assert_eq!(chance(1, 3), "First of 3 days: only if it is ripe.");
    assert_eq!(chance(2, 3), "Second of 3 days: only if it is ripe.");
    assert_eq!(chance(3, 3), "Last of 3 days, unless it was picked before.");
    of_tiny(|view| {
        let pick = task(view.facts(), StepKind::Pick, day("2027-06-07"));
        let costs = |missed| plainly(&lessons::if_cancelled(view, pick, missed));
        assert_eq!(
            costs(IfMissed::Nothing),
            "If it is cancelled: nothing is lost."
        );
        assert_eq!(
            costs(IfMissed::MadeUp(day("2027-06-08"))),
            "If it is cancelled: make it up on Tue 8 Jun."
        );
        // Ready in three of its four years.
        assert_eq!(
            costs(IfMissed::Little { ready_years: 2 }),
            "If it is cancelled: ready in 2 years, not 3."
        );
        assert_eq!(costs(IfMissed::Lost), "No other day makes up for it.");
    });
    assert_eq!(lessons::legend(&[]), "");
    assert_eq!(
        lessons::legend(&[IfMissed::Lost]),
        "A bar before the day: if this lesson is cancelled, tell the coordinator the same day."
    );
    assert_eq!(
        lessons::quiet(Quiet::KeepPicked),
        "Pick all that is ripe: so it goes on bearing."
    );
}

#[test]
fn the_day_of_moving_up_tells_who_goes_on() {
    let (mut garden, checked) = handed_over();
    let said = |garden: &Garden, adopted: &[&str]| {
        let facts = Facts::new(garden, &checked);
        let view = View::of(&facts);
        let adopted: Vec<String> = adopted.iter().map(|name| (*name).to_owned()).collect();
        lessons::moves_up(&view, view.handed_over(GradeAt(1)), &adopted)
    };
    assert_eq!(said(&garden, &[]), "From this day Grade 1 takes over.");
    garden.grades[1].hand_over = HandOver::SameChildren;
    assert_eq!(
        said(&garden, &["leek of Grade 6"]),
        "From this day these children are one grade up and carry on. And you also look after leek of Grade 6."
    );
    garden.grades[1].hand_over = HandOver::SameGrade;
    assert_eq!(
        said(&garden, &[]),
        "From this day the children who then enter Grade 2 carry on."
    );
}

#[test]
fn children_read_what_they_do_and_no_more() {
    let lines = |garden: &Garden, checked: &CheckedPlan, grade| {
        let facts = Facts::new(garden, checked);
        let view = View::of(&facts);
        let lines = children::steps(&view, &view.ours(grade));
        lines.iter().map(|line| plainly(line)).collect::<Vec<_>>()
    };
    let (garden, checked) = tiny();
    assert_eq!(
        lines(&garden, &checked, GradeAt(1)),
        [
            "We sow tomato: 8 Mar.",
            "We pot up tomato: 29 Mar.",
            "We plant out tomato: 19 Apr.",
            "We pick tomato: 31 May - 7 Jun.",
            "We eat it together: 11 Jun!",
        ]
    );
    // Grade 2 leaves on 24 May, and grade 1 picks after that.
    let (garden, checked) = handed_over();
    assert_eq!(
        lines(&garden, &checked, GradeAt(1)),
        [
            "We sow tomato: 8 Mar.",
            "We pot up tomato: 29 Mar.",
            "We plant out tomato: 19 Apr.",
            "Grade 1 takes over: 24 May.",
            "The school eats it: 11 Jun!",
        ]
    );
}
