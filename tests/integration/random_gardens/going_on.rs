//! Random gardens in the middle of their season: where nothing has happened the plan that was printed is among what can
//! still be done, day after day, and planning again moves nothing.

use tureen::calendar::{Date, plus_days};
use tureen::candidates::Candidates;
use tureen::checker::check;
use tureen::garden::{Garden, PrintedAt, Source};
use tureen::model::{Outcome, solve};
use tureen::pipeline::{Unfolded, unfold};
use tureen::plan::{Aim, Plan};
use tureen::project::diary::{Diary, Entry, Happened};

use super::begun::{garden_turned_over, garden_with_seedlings};
use super::dice::Dice;
use super::make::{LARGER, TINY, TINY_CHOICE, garden, shared_garden};
use super::{SHORT, options};

/// The season by a day on which nothing was written down but words.
pub fn quiet(garden: &Garden, plan: &Plan, on: Date) -> Option<Unfolded> {
    let entry = Entry {
        on: garden.school_year.start,
        by: None,
        what: Happened::Words("Nothing".to_owned()),
    };
    let diary = Diary {
        entries: vec![(1, entry)],
        sections: 1,
    };
    unfold(garden, (plan, None), &diary, on).unwrap()
}

/// The printed plantings of which no candidate has all their dates.
fn lacking(garden: &Garden) -> Vec<String> {
    let season = garden.season.as_ref().unwrap();
    let all = Candidates::enumerate(garden).all;
    let printed = season.printed.iter().enumerate();
    let lacking = printed.filter(|(which, printed)| {
        let begun = printed.begun(season.as_of);
        let given = begun.then_some(PrintedAt(*which));
        let mut own = all.iter().filter(|c| {
            (c.ingredient, c.team, c.given) == (printed.ingredient, printed.team, given)
        });
        !own.any(|c| c.method == printed.method && c.moves.dates == 0)
    });
    lacking
        .map(|(_, printed)| format!("as of {}: {printed:?}", season.as_of))
        .collect()
}

/// The same season with all that is sown a little quicker, as a school may write it down in between: pick windows that are
/// made anew are others then.
fn a_little_quicker(garden: &Garden) -> Garden {
    let mut garden = garden.clone();
    let all = garden.ingredients.iter_mut();
    for ingredient in all.filter(|i| i.source == Source::Sown) {
        ingredient.crop.ripening = ingredient.crop.ripening.taking(0.9);
    }
    garden
}

/// Days of the season of a plan, each some days after the one before.
fn days(garden: &Garden, apart: i64) -> Vec<Date> {
    let first = garden.school_year.start;
    let days = (1..).map(|k| plus_days(first, k * apart));
    days.take_while(|day| *day <= garden.last_day()).collect()
}

/// Looks at gardens until so many have a plan; gives on how many days their seasons were under way.
fn every_day(wanted: u32, garden: impl Fn(u64) -> Garden) -> u32 {
    let (mut gardens, mut days_seen) = (0, 0);
    let mut wrong = Vec::new();
    for seed in 0.. {
        if gardens == wanted {
            break;
        }
        let garden = garden(seed);
        let Outcome::Planned(plan) = solve(&garden, &options(seed, SHORT)) else {
            continue;
        };
        gardens += 1;
        for on in days(&garden, 3) {
            let Some(unfolded) = quiet(&garden, &plan, on) else {
                continue;
            };
            days_seen += 1;
            for garden in [&unfolded.garden, &a_little_quicker(&unfolded.garden)] {
                let lacking = lacking(garden).into_iter();
                wrong.extend(lacking.map(|what| format!("seed {seed}, {what}")).take(1));
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} of them:\n{}",
        wrong.len(),
        wrong[..wrong.len().min(3)].join("\n")
    );
    days_seen
}

#[test]
fn what_was_printed_can_still_be_done_on_every_day() {
    let days = every_day(20, |seed| garden(seed, &TINY));
    assert!(days > 300, "{days}");
}

#[test]
fn what_grades_share_goes_on_as_printed_on_every_day() {
    let days = every_day(20, |seed| shared_garden(seed, &TINY_CHOICE));
    assert!(days > 300, "{days}");
}

#[test]
fn begun_seedlings_go_on_as_printed_on_every_day() {
    let days = every_day(12, |seed| garden_with_seedlings(seed, &TINY));
    assert!(days > 200, "{days}");
}

#[test]
fn what_stood_in_beds_goes_on_as_printed_on_every_day() {
    let days = every_day(20, |seed| garden_turned_over(seed, &TINY));
    assert!(days > 300, "{days}");
}

/// Gardens about as large as a school's, planned again on one day each: every plan is sound, and moves nothing where dates
/// were looked at to the end.
#[test]
fn larger_gardens_are_planned_again_without_a_move() {
    let (mut planned, mut wrong) = (0, Vec::new());
    for seed in 0..12 {
        let garden = garden(seed, &LARGER);
        let Outcome::Planned(plan) = solve(&garden, &options(seed, SHORT)) else {
            continue;
        };
        let all = days(&garden, 1);
        let on = all[Dice::new(seed).below(all.len())];
        let Some(unfolded) = quiet(&garden, &plan, on) else {
            continue;
        };
        let lacking = lacking(&unfolded.garden).into_iter();
        wrong.extend(lacking.map(|what| format!("seed {seed}, {what}")));
        let Outcome::Planned(again) = solve(&unfolded.garden, &options(seed, SHORT)) else {
            continue;
        };
        planned += 1;
        let dates = again.aims.iter().find(|r| r.aim == Aim::MovedDates);
        if dates.is_some_and(|dates| dates.proved() && dates.value > 0.0) {
            wrong.push(format!("seed {seed}, as of {on}: {dates:?}"));
        }
        if let Err(violations) = check(&unfolded.garden, again) {
            wrong.push(format!("seed {seed}, as of {on}: {violations:?}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(planned > 5, "{planned}");
}
