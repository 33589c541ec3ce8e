//! The sheet of a class: every lesson while there is something to tend, each once, and of a missed lesson only what the
//! replay of the plan says.

use std::collections::BTreeSet;

use tureen::explain::{self, IfMissed};
use tureen::facts::Facts;
use tureen::facts::class_sheet::Entry;
use tureen::garden::{Garden, GradeAt, HandOver};
use tureen::plan::Planting;

use super::pictures::planned;
use crate::report::hand_over::handed_over;
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
    let mut seen = Vec::new();
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
                    let (class, on) = (job.task.who.class().unwrap(), job.task.from);
                    seen.push((garden.class(class).name.as_str(), on, job.if_missed));
                }
            }
        }
    }
    assert!(seen.len() > 6, "{seen:?}");
    let missed = |class: &str, on: &str| {
        let mut jobs = seen.iter();
        let job = jobs.find(|job| (job.0, job.1) == (class, day(on)));
        job.unwrap().2
    };
    // The dish is ready in the years of 15 and 19 C. In that of 15 C only the second round of picking finds the bean
    // ripe, and a bean of 8 June would not be dry on the 9th.
    assert_eq!(missed("1a", "2027-05-25"), Some(IfMissed::Lost));
    // On 7 June alone the tomato is ripe in the year of 13.5 C; one ready year in ten is borne, and it has three.
    assert_eq!(missed("2a", "2027-06-07"), Some(IfMissed::Lost));
    // Unthinned rows are only crowded; its next lesson, on 27 April, is too late to thin them.
    assert_eq!(missed("1a", "2027-04-13"), Some(IfMissed::Crowded));
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

#[test]
fn the_sheet_of_a_grade_that_leaves_ends_before_another_takes_over() {
    let (garden, checked) = handed_over();
    let slack = explain::slack(&garden, &checked);
    let facts = Facts::new(&garden, &checked);
    let ours = facts.ours(GradeAt(1));
    // Picked on 25 and 27 May by grade 1; grade 2 meets for the last time on Monday 17 May.
    let between = facts.between(&ours).unwrap();
    assert_eq!(
        (between.from, between.to),
        (day("2027-03-08"), day("2027-05-23"))
    );
    let sheets = facts.class_sheets(&ours, &slack);
    let [sheet] = sheets.as_slice() else {
        panic!("one class")
    };
    let idle: Vec<_> = quiet(&sheet.entries).collect();
    let expected = [
        "03-15", "03-22", "04-12", "04-26", "05-03", "05-10", "05-17",
    ];
    assert_eq!(idle, expected.map(|on| day(&format!("2027-{on}"))));
    assert_eq!(between.free, [(sheet.class, 7)]);
    assert_eq!(
        sheet.entries.last().map(Entry::day),
        Some(day("2027-05-24"))
    );
    assert!(matches!(sheet.entries.last(), Some(Entry::MovesUp(_))));
}
