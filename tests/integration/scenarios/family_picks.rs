//! What families pick week after week is one row of a grade's page, and no day of it is lost.

use tureen::calendar::{Date, plus_days};
use tureen::facts::Facts;
use tureen::plan::{StepKind, When};
use tureen::report;
use tureen::words::Words;
use tureen::words::view::View;

use super::planned;
use crate::report::plain;

/// The days that a row names: its own, and each week up to the last one.
fn days_of(row: &str, days: &[Date], words: Words) -> Vec<Date> {
    let told = row.split(" families ").next().unwrap_or_default();
    let day = |text: &str| {
        let mut days = days.iter();
        *days
            .find(|d| words.day(**d) == text)
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
                    .map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "))
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
