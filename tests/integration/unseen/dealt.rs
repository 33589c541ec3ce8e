//! The years dealt a second time, by leaving calendar years out of the record: the tiny garden's plans begin
//! and end in one.

use std::ops::Range;
use std::time::Duration;

use chrono::Datelike;
use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline::{self, plan};
use tureen::weather::Record;

use super::{mixed, on, on_mixed};
use crate::support::day;
use crate::support::weather::{daily, steady_years};

/// The positions of a calendar year in a record from 2001.
fn calendar_year(year: i32) -> Range<usize> {
    let at = |year: i32| (day(&format!("{year}-01-01")) - day("2001-01-01")).num_days() as usize;
    at(year)..at(year + 1)
}

/// The garden on only some of the years.
fn on_only(garden: &Garden, years: &[i32], keep: impl Fn(i32) -> bool) -> Garden {
    let gone = (2001..=*years.last().unwrap()).filter(|year| !years.contains(year) || !keep(*year));
    let gone = gone.map(calendar_year).collect();
    let all = &garden.weather;
    let weather = Record::new(all.first(), all.days().to_vec(), false).leaving_out(gone);
    Garden {
        weather,
        ..garden.clone()
    }
}

/// Years in which the dish and each ingredient are ready with plans of the other parts.
fn dealt(garden: &Garden, years: &[i32], parts: usize) -> (usize, Vec<usize>, usize) {
    let (mut dish, mut each, mut without) = (0, vec![0; garden.ingredients.len()], 0);
    for part in 0..parts {
        let is_own = |year: i32| years.iter().position(|own| *own == year).unwrap() % parts == part;
        let seen = on_only(garden, years, |year| !is_own(year));
        let held = on_only(garden, years, is_own);
        let Outcome::Planned(plan) = solve(&seen, &Options::default()) else {
            without += 1;
            continue;
        };
        let harvest = check(&seen, plan).unwrap().grown_in(&held);
        let own: Vec<i32> = years.iter().copied().filter(|year| is_own(*year)).collect();
        assert_eq!(harvest.years, own);
        dish += harvest.whole_dish_years();
        for (sum, own) in each.iter_mut().zip(&harvest.ingredients) {
            *sum += own.ready_years();
        }
    }
    (dish, each, without)
}

#[test]
fn each_year_is_counted_with_a_plan_that_was_made_without_it() {
    let mut too_rosy = 0;
    // Under ten years each is a part; from ten on there are five.
    for (count, parts) in [(5, 5), (7, 7), (9, 9), (10, 5), (12, 5), (23, 5)] {
        let garden = on_mixed(count);
        let years: Vec<i32> = (2001..).take(count as usize).collect();
        let checked = plan(&garden, &Options::default()).unwrap();
        let unseen = checked.unseen().unwrap();
        assert!(!unseen.fresh);
        assert_eq!(unseen.years, years.len());
        let (dish, each, without) = dealt(&garden, &years, parts);
        println!(
            "{count} years: {} of its own, {dish} unseen; {without} parts without a plan",
            checked.replay().whole_dish_years()
        );
        assert_eq!((unseen.dish, &unseen.ingredients), (dish, &each), "{count}");
        too_rosy += checked.replay().whole_dish_years() - dish;
    }
    // These years differ so much that a plan's own are no measure for others.
    assert!(too_rosy > 0);
}

/// The years of a record with a gap are dealt as they follow one another, as if there were none.
#[test]
fn a_year_that_is_left_out_is_of_no_part() {
    let whole = on_mixed(13);
    let years: Vec<i32> = (2001..=2013)
        .filter(|year| ![2004, 2005].contains(year))
        .collect();
    let garden = on_only(&whole, &years, |_| true);
    let labels: Vec<i32> = garden
        .weather
        .years(garden.horizon())
        .iter()
        .map(|y| y.label)
        .collect();
    assert_eq!(labels, years);
    let checked = plan(&garden, &Options::default()).unwrap();
    let unseen = checked.unseen().unwrap();
    assert_eq!(unseen.years, 11);
    let (dish, each, _) = dealt(&garden, &years, 5);
    assert_eq!((unseen.dish, &unseen.ingredients), (dish, &each));
}

/// Of five years one is warm enough. Without it there is no plan, and with it none that is ready in another.
#[test]
fn years_for_which_there_is_no_plan_count_as_not_ready() {
    let cold = daily(-2.0, 8.0);
    let garden = on(steady_years(&[cold, cold, daily(10.0, 20.0), cold, cold]));
    let checked = plan(&garden, &Options::default()).unwrap();
    assert_eq!(checked.replay().whole_dish_years(), 1);
    let years: Vec<i32> = (2001..=2005).collect();
    assert_eq!(dealt(&garden, &years, 5), (0, vec![0, 0], 1));
    let unseen = checked.unseen().unwrap();
    assert_eq!((unseen.years, unseen.dish), (5, 0));
    assert_eq!(unseen.ingredients, [0, 0]);
}

#[test]
fn the_number_of_threads_changes_nothing() {
    let garden = on_mixed(12);
    let decided = pipeline::decide(&garden, &Options::default()).unwrap();
    let with = |threads| pipeline::counted(&garden, &Options::default(), decided.clone(), threads);
    let one = with(1);
    assert!(one.unseen().is_some());
    for threads in [0, 2, 5, 8] {
        assert_eq!(with(threads), one, "{threads}");
    }
}

/// A year that is withheld is no weather year, and nothing else of the record changes.
#[test]
fn what_is_withheld_is_passed_over() {
    let garden = on_mixed(8);
    let all = garden.weather.years(garden.horizon());
    let less = garden.weather.clone().withholding(vec![2003, 2008]);
    let years = less.years(garden.horizon());
    assert!(years.iter().all(|year| all.contains(year)));
    assert_eq!(years.len(), 6);
    assert!(years.iter().all(|year| ![2003, 2008].contains(&year.label)));
    assert!(less.held().eq(garden.weather.held()));
    assert_eq!(less.first().year(), 2001);
}

/// Where the time does not last for all parts nothing is counted, not what was done by then.
#[test]
fn without_time_nothing_is_counted() {
    let garden = on_mixed(12);
    let options = Options::until(Deadline::after(Duration::ZERO));
    let decided = pipeline::decide(&garden, &Options::default()).unwrap();
    assert_eq!(decided.unseen(), None);
    let checked = pipeline::counted(&garden, &options, decided.clone(), 2);
    assert_eq!(checked, decided);
}

/// Made-up years, and fewer than five, are not dealt.
#[test]
fn only_a_record_of_five_years_or_more_is_dealt() {
    let record = steady_years(&mixed(12));
    let made_up = on(Record::new(record.first(), record.days().to_vec(), true));
    for garden in [made_up, on_mixed(4)] {
        let checked = plan(&garden, &Options::default()).unwrap();
        assert_eq!(checked.unseen(), None);
        assert_eq!(checked.plan().unseen, None);
    }
}
