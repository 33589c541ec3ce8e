//! Time: one deadline for a whole command, and what is said where it ran out.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::{Duration, Instant};

use rayon::prelude::*;
use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::explain::{slack, slack_within};
use tureen::model::{Options, Outcome, solve};
use tureen::page::Look;
use tureen::plan::Aim;
use tureen::report;

use super::{GENEROUS, sown_often};
use crate::cli::{Folder, text};
use crate::scenarios;
use crate::support::gardens::tiny_garden;

const LOOK: Look = Look {
    width: 100,
    color: false,
};

/// Every command that plans, or replays for long, knows the limit, and with no time at all it ends
/// at once: with what needs no planning, or with exit code 5.
#[test]
fn every_command_that_plans_ends_where_there_is_no_time() {
    let folder = Folder::new("limits-no-time");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    for (arguments, code) in [
        (&["plan", "garden.toml"][..], 5),
        (&["plan", "garden.toml", "--write-program", "mps"], 5),
        (&["why", "garden.toml"], 5),
        (&["why", "garden.toml", "radish sow"], 5),
        (&["days", "garden.toml"], 0),
        (&["ideas", "garden.toml"], 0),
        (&["try", "garden.toml", "--set", "shelf.flats=2"], 0),
        (&["show", "garden.toml"], 0),
        (&["show", "garden.toml", "--space"], 0),
        (&["show", "garden.toml", "--slack"], 0),
        (
            &["handouts", "garden.toml", "--out", "pages", "--least-space"],
            0,
        ),
    ] {
        let begun = Instant::now();
        let output = folder.run(&[arguments, &["--time-limit", "0"]].concat());
        assert!(begun.elapsed() < GENEROUS, "{arguments:?}");
        let told = text(&output.stdout) + &text(&output.stderr);
        assert_eq!(output.status.code(), Some(code), "{arguments:?}: {told}");
        let handouts = arguments.first() == Some(&"handouts");
        assert!(handouts || told.contains("ime"), "{arguments:?}: {told}");
    }
}

/// A search that would go on for long, because all may be sown four times, ends, and the head of the plan
/// says so. The multiple is generous, for tests share their machine.
#[test]
fn a_plan_whose_search_was_ended_says_so_at_its_head() {
    let folder = sown_often("limits-head");
    let begun = Instant::now();
    let answer = folder.answer(&["plan", "garden.toml", "--time-limit", "15"]);
    assert!(
        begun.elapsed() < Duration::from_secs(60),
        "{:?}",
        begun.elapsed()
    );
    let head: String = answer
        .split("WHO GROWS WHAT")
        .next()
        .unwrap()
        .replace('\n', " ");
    assert!(head.contains("Time ran out after 15 seconds"), "{head}");
    assert!(head.contains("at most "), "{head}");
}

/// Far more is wanted than there are strips. With two sowings of everything, too, that is known without a long
/// search, and told with the reasons, not as time that ran out.
#[test]
fn what_can_never_fit_is_ruled_out_with_two_sowings_too() {
    let scenario = |file: &str| scenarios::text("soup-day-as-a-cook-would", file);
    let folder = Folder::with("limits-cook", |_| {
        let twice = "[[dish.ingredient]]\nmax_sowings = 2";
        let text = scenario("garden.toml").replace("[[dish.ingredient]]", twice);
        text.replace("../soup-day/weather.csv", "weather.csv")
    });
    let weather = scenarios::text("soup-day", "weather.csv");
    std::fs::write(folder.path("weather.csv"), weather).unwrap();
    let output = folder.run(&["plan", "garden.toml"]);
    let told = text(&output.stdout) + &text(&output.stderr);
    assert_eq!(output.status.code(), Some(4), "{told}");
    for part in ["strips", "tomato", "dry bean", "potato"] {
        assert!(told.contains(part), "\"{part}\" is missing in\n{told}");
    }
}

/// What more time could bring is the least that is known: no more than the worst ingredient's bound,
/// and no more than the dish's own where all before it is proved. Where all is, nothing is said.
#[test]
fn the_head_tells_the_bound_of_the_years() {
    let garden = tiny_garden();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("no plan");
    };
    // Two of four years, for the worst ingredient and for the dish.
    for (worst, dish, told) in [
        (
            3.0,
            2.0,
            Some("at most 3 of 4 years of the whole dish instead of 2"),
        ),
        (
            4.0,
            3.0,
            Some("at most 4 of 4 years of the whole dish instead of 2"),
        ),
        (2.0, 3.0, Some("no more years of the whole dish")),
        (2.0, 2.0, None),
    ] {
        let mut open = plan.clone();
        for (aim, bound) in [(Aim::WorstIngredient, worst), (Aim::WholeDish, dish)] {
            let result = open.aims.iter_mut().find(|a| a.aim == aim).unwrap();
            assert_eq!(result.value, 2.0);
            result.bound = bound;
        }
        let checked = check(&garden, open).unwrap();
        let ten = Some(Duration::from_secs(10));
        let page = report::plan_with(&garden, &checked, &[], ten).text(LOOK);
        let page = page.replace('\n', " ");
        assert_eq!(
            page.contains("Time ran out after 10 seconds"),
            told.is_some()
        );
        assert!(told.is_none_or(|told| page.contains(told)), "{page}");
    }
}

/// Steps that there was no time for are marked, not left blank as if there were none.
#[test]
fn steps_that_were_not_looked_at_are_marked() {
    let garden = tiny_garden();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("no plan");
    };
    let checked = check(&garden, plan).unwrap();
    let none = slack_within(&garden, &checked, &Deadline::after(Duration::ZERO));
    assert_eq!(none, []);
    let all = slack_within(&garden, &checked, &Deadline::never());
    assert_eq!(all, slack(&garden, &checked));
    assert!(!all.is_empty());
    let page = |slack: &[_]| report::plan_with(&garden, &checked, slack, None).text(LOOK);
    assert!(
        page(&none).contains("?: there was no time"),
        "{}",
        page(&none)
    );
    assert!(!page(&all).contains("?: there was no time"));
}

#[test]
fn shares_of_a_deadline_end_no_later_than_it() {
    let whole = Deadline::after(Duration::from_secs(100));
    assert!(whole.left() <= Duration::from_secs(100));
    for n in [1, 2, 7] {
        assert!(whole.shared_by(n).left() <= whole.left() / n as u32 + Duration::from_millis(1));
    }
    assert!(whole.at_most(Duration::from_secs(1)).left() <= Duration::from_secs(1));
    let all = whole.at_most(Duration::from_secs(1_000)).left();
    assert!(all <= whole.left() + Duration::from_millis(100));
    assert!(whole.left_for_bounds() > whole.left());
    assert!(whole.for_the_answer().left() <= Duration::from_secs(110));
    let over = Deadline::after(Duration::ZERO);
    assert!(over.is_over() && over.shared_by(2).is_over());
    assert!(!Deadline::never().is_over());
}

/// Other days are asked for within the calendar; both ends are told at once, before any work.
#[test]
fn days_outside_the_calendar_are_a_usage_error() {
    let folder = Folder::new("limits-days");
    for (from, to) in [
        ("0001-01-01", "9999-12-31"),
        ("-9999-01-01", "+99999-01-01"),
        ("2026-01-01", "2029-01-01"),
    ] {
        let span = [format!("--from={from}"), format!("--to={to}")];
        let output = folder.run(&["days", "garden.toml", &span[0], &span[1]]);
        let error = text(&output.stderr);
        assert_eq!(output.status.code(), Some(2), "{error}");
        assert_eq!(text(&output.stdout), "");
        if !error.contains("error:") {
            assert!(
                error.contains("--from") && error.contains("--to"),
                "{error}"
            );
            assert!(error.contains("Give days from 2027-"), "{error}");
        }
    }
}

/// What is done side by side has its time to itself: no thread begins the next thing while it waits for a part of this one.
#[test]
fn no_more_things_are_begun_than_there_are_threads() {
    let (now, most) = (AtomicUsize::new(0), AtomicUsize::new(0));
    let one = |thing: usize, _: Deadline| {
        most.fetch_max(now.fetch_add(1, Ordering::SeqCst) + 1, Ordering::SeqCst);
        let parts = (0..64_usize).into_par_iter().map(|part| {
            std::thread::sleep(Duration::from_micros(200));
            part
        });
        let sum: usize = parts.sum();
        now.fetch_sub(1, Ordering::SeqCst);
        thing + sum
    };
    let done = Deadline::never().side_by_side((0..24).collect(), one);
    assert_eq!(
        done,
        (0..24).map(|thing| thing + 64 * 63 / 2).collect::<Vec<_>>()
    );
    assert!(most.into_inner() <= rayon::current_num_threads());
}
