//! The pages of the grades of all scenarios: what is said once there, so that a page goes on one sheet,
//! is all said.

use tureen::calendar::{Date, plus_days};
use tureen::facts::Facts;
use tureen::plan::{StepKind, When};
use tureen::report;
use tureen::words::Words;
use tureen::words::view::View;

use super::planned;
use crate::report::plain;

/// With no run of spaces and no space that holds words together.
fn plain_space(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The days that a row names: its own, and each week up to the last one.
fn days_of(row: &str, days: &[Date], words: Words) -> Vec<Date> {
    let told = row.split(" families ").next().unwrap_or_default();
    let day = |text: &str| {
        let mut days = days.iter();
        *days
            .find(|d| plain_space(&words.day(**d)) == text)
            .unwrap_or_else(|| panic!("{row}"))
    };
    match told.split_once(", weekly to ") {
        None => vec![day(told)],
        Some((first, last)) => {
            let weeks = (0..).map(|week| plus_days(day(first), 7 * week));
            weeks.take_while(|d| *d <= day(last)).collect()
        }
    }
}

#[test]
fn every_day_on_which_families_pick_is_in_a_row() {
    let (mut rows, mut days_in_rows) = (0, 0);
    for (name, garden, checked) in planned() {
        let facts = Facts::new(garden, checked);
        let words = View::of(&facts).words;
        for grade in garden.grade_positions() {
            for (planting, ingredient) in facts.ours(grade).own {
                let steps = planting.steps.iter();
                let families = steps.filter_map(|step| match (step.kind, &step.when) {
                    (StepKind::Pick, When::Families(day)) => Some(*day),
                    _ => None,
                });
                let mut days: Vec<Date> = families.collect();
                if days.is_empty() {
                    continue;
                }
                days.sort_unstable();
                let page = report::grade(garden, checked, grade).text(plain(1000));
                let tail = format!(" families Pick: {}", ingredient.name);
                let mut told: Vec<Date> = page
                    .lines()
                    .map(plain_space)
                    .filter(|row| row.contains(&tail))
                    .inspect(|_| rows += 1)
                    .flat_map(|row| days_of(&row, &days, words))
                    .collect();
                told.sort_unstable();
                assert_eq!(told, days, "{name}: {}\n{page}", ingredient.name);
                days_in_rows += days.len();
            }
        }
    }
    assert!(rows > 0 && rows < days_in_rows, "{rows} {days_in_rows}");
}

#[test]
fn how_crops_are_taken_alike_is_said_once_on_a_page() {
    let (mut alike, mut apart) = (0, 0);
    for (name, garden, checked) in planned() {
        for grade in garden.grade_positions() {
            let page = plain_space(&report::grade(garden, checked, grade).text(plain(1000)));
            for way in [
                "An adult lifts it with a digging fork",
                "Children cut with school scissors",
                "An adult cuts with a knife",
            ] {
                assert!(page.matches(way).count() < 2, "{name}: {page}");
            }
            let picks = page.matches("Pick when ").count();
            match page.matches("Take it like ").count() {
                0 => apart += usize::from(picks > 1),
                again => {
                    assert!(again < picks, "{name}: {page}");
                    alike += 1;
                }
            }
        }
    }
    assert!(alike > 0 && apart > 0, "{alike} {apart}");
}
