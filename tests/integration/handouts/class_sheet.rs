//! The sheet of a class: every lesson while there is something to tend, each once, and of a missed lesson only what the
//! replay of the plan says.

use std::collections::BTreeSet;

use tureen::explain;
use tureen::facts::Facts;
use tureen::facts::class_sheet::Entry;
use tureen::facts::missed::if_missed;
use tureen::garden::{Garden, HandOver};
use tureen::plan::Planting;

use super::pictures::planned;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

fn plantings(garden: &Garden) -> Vec<Planting> {
    tiny_plan(garden).plantings
}

#[test]
fn every_lesson_stands_there_once() {
    let garden = tiny_garden();
    let checked = planned(&garden, plantings(&garden));
    let slack = explain::slack(&garden, &checked);
    let facts = Facts::new(&garden, &checked);
    let mut seen = 0;
    for grade in garden.grade_positions() {
        let ours = facts.ours(grade);
        let between = facts.between(&ours).unwrap();
        for sheet in facts.class_sheets(&ours, &slack) {
            let busy: BTreeSet<_> = jobs(&sheet.entries).collect();
            let quiet: Vec<_> = quiet(&sheet.entries).collect();
            let listed: BTreeSet<_> = busy.iter().chain(&quiet).copied().collect();
            assert_eq!(
                listed.len(),
                busy.len() + quiet.len(),
                "a lesson stands twice"
            );
            for lesson in garden.sessions(sheet.class) {
                let tended = (between.from..=between.to).contains(&lesson);
                assert_eq!(listed.contains(&lesson), tended, "{lesson}");
            }
            let days: Vec<_> = sheet.entries.iter().map(Entry::day).collect();
            assert!(days.is_sorted(), "{days:?}");
            for entry in &sheet.entries {
                if let Entry::Job(job) = entry {
                    assert_eq!(job.if_missed, if_missed(job.task, &slack));
                    seen += 1;
                }
            }
        }
    }
    assert!(seen > 6, "{seen}");
}

fn jobs<'e>(entries: &'e [Entry<'_>]) -> impl Iterator<Item = tureen::calendar::Date> + 'e {
    let jobs = entries
        .iter()
        .filter(|entry| matches!(entry, Entry::Job(_)));
    jobs.map(Entry::day)
}

fn quiet<'e>(entries: &'e [Entry<'_>]) -> impl Iterator<Item = tureen::calendar::Date> + 'e {
    let quiet = entries
        .iter()
        .filter(|entry| matches!(entry, Entry::Quiet(..)));
    quiet.map(Entry::day)
}

#[test]
fn the_day_of_moving_up_parts_the_sheet_where_something_comes_after_it() {
    let mut garden = tiny_garden();
    for grade in &mut garden.grades {
        grade.hand_over = HandOver::SameChildren;
    }
    let moves_up = |entries: &[Entry<'_>]| {
        let mut rules = entries
            .iter()
            .filter(|entry| matches!(entry, Entry::MovesUp(_)));
        rules.next().map(Entry::day)
    };
    for (on, expected) in [(None, None), (Some("2027-05-01"), Some(day("2027-05-01")))] {
        garden.school_year.moves_up = on.map(day);
        let checked = planned(&garden, plantings(&garden));
        let slack = explain::slack(&garden, &checked);
        let facts = Facts::new(&garden, &checked);
        for grade in garden.grade_positions() {
            let ours = facts.ours(grade);
            for sheet in facts.class_sheets(&ours, &slack) {
                assert_eq!(moves_up(&sheet.entries), expected);
            }
        }
    }
}
