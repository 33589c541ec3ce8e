//! Ladders about lessons and the pick window: longer sessions, more of them, a day of the
//! harvest for all classes, a later day by which the kitchen wants it.

use crate::calendar::{Date, days_between};
use crate::explain::kind::Kind;
use crate::explain::rung::{Ladder, Rung};
use crate::garden::{Garden, GradeAt};
use crate::project::Change;

/// Minutes that a session might still grow by, and the steps.
const MOST_MINUTES: u32 = 30;
const MINUTES: usize = 5;

/// School days before the delivery that are tried as a day of the harvest.
const HARVEST_DAYS: usize = 5;

/// The grades that grow something.
fn growing(garden: &Garden) -> impl Iterator<Item = GradeAt> {
    let grows = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.may_be_grown_by(*grade));
    garden.grade_positions().filter(grows)
}

/// One ladder a grade that grows something.
pub fn longer(garden: &Garden) -> Vec<Ladder> {
    let ladder = |at: GradeAt| {
        let grade = &garden[at];
        let rungs = (MINUTES as u32..=MOST_MINUTES)
            .step_by(MINUTES)
            .map(|minutes| Rung {
                kind: Kind::LongerSessions {
                    grade: grade.id.clone(),
                    minutes,
                },
                changes: grade
                    .classes
                    .iter()
                    .map(|class| {
                        let way = ["grade", &grade.id, "classes", &class.name, "minutes"];
                        let now = class.slots.first().map_or(0.0, |slot| slot.minutes.0);
                        Change::set(&way, &(now + f64::from(minutes)).to_string())
                    })
                    .collect(),
            });
        Ladder {
            rungs: rungs.collect(),
            rising: true,
        }
    };
    growing(garden).map(ladder).collect()
}

/// One ladder a grade of which some class meets every second week: every week in one term, the
/// last first, then in all.
pub fn every_week(garden: &Garden) -> Vec<Ladder> {
    let ladder = |at: GradeAt| {
        let terms = &garden.school_year.terms;
        let mut rungs: Vec<Rung> = (0..terms.len())
            .rev()
            .filter_map(|term| every_week_in(garden, at, &[term]))
            .collect();
        if rungs.len() > 1 {
            let all: Vec<usize> = (0..terms.len()).collect();
            rungs.extend(every_week_in(garden, at, &all));
        }
        Ladder {
            rungs,
            // A round that takes a week less is another round.
            rising: false,
        }
    };
    growing(garden).map(ladder).collect()
}

/// Sessions every week in some terms; `None` if that is nothing new.
fn every_week_in(garden: &Garden, at: GradeAt, terms: &[usize]) -> Option<Rung> {
    let names = &garden.school_year.terms;
    let mut changed = garden.clone();
    let mut changes = Vec::new();
    let grade = changed.grades.get_mut(at.0)?;
    for class in &mut grade.classes {
        let way = ["grade", &grade.id, "classes", &class.name];
        for term in terms {
            let (Some(slot), Some(name)) = (class.slots.get_mut(*term), names.get(*term)) else {
                continue;
            };
            if slot.every_weeks == 1 {
                continue;
            }
            slot.every_weeks = 1;
            // What is not needed of the two is left out again.
            if names.len() == 1 {
                changes.push(Change::set(&[&way[..], &["every"]].concat(), "1"));
            }
            let in_term = ["in_term", &name.name, "every"];
            changes.push(Change::set(&[&way[..], &in_term].concat(), "1"));
        }
    }
    let sessions = |garden: &Garden| -> usize {
        let classes = garden.classes_of(at);
        classes.map(|class| garden.sessions(class).len()).sum()
    };
    let more = sessions(&changed).saturating_sub(sessions(garden));
    (more > 0).then(|| Rung {
        kind: Kind::EveryWeek {
            grade: garden[at].id.clone(),
            term: match terms {
                [one] if names.len() > 1 => names.get(*one).map(|term| term.name.clone()),
                _ => None,
            },
            more: u32::try_from(more).unwrap_or(u32::MAX),
        },
        changes,
    })
}

/// The school days after the one by which the kitchen wants the harvest, up to the feast.
pub fn later_delivery(garden: &Garden) -> Ladder {
    let from = garden.feast.deliver_by;
    let rungs = days_between(from, garden.feast.day)
        .skip(1)
        .filter(|day| garden.school_year.school_is_in(*day))
        .map(|to| Rung {
            kind: Kind::LaterDelivery { from, to },
            changes: vec![Change::set(&["project", "deliver_by"], &to.to_string())],
        });
    Ladder {
        rungs: rungs.collect(),
        rising: false,
    }
}

/// The last school days by which the kitchen still takes the harvest, the last first, with a session as long as the
/// longest lesson; `None` where the file gives such days already.
pub fn harvest_day(garden: &Garden) -> Option<Ladder> {
    let year = &garden.school_year;
    if !year.harvest_days.is_empty() {
        return None;
    }
    let classes = garden.grades.iter().flat_map(|grade| &grade.classes);
    let minutes = classes
        .flat_map(|class| &class.slots)
        .map(|slot| slot.minutes.0);
    let minutes = minutes.fold(0.0, f64::max);
    let first = garden.as_of();
    let mut days: Vec<Date> = days_between(first, garden.feast.deliver_by)
        .filter(|day| year.school_is_in(*day))
        .collect();
    days.reverse();
    days.truncate(HARVEST_DAYS);
    let rungs = days.into_iter().map(|day| Rung {
        kind: Kind::HarvestDay { day, minutes },
        changes: vec![Change::set(
            &["calendar", "harvest_days"],
            &format!("[{{ day = {day}, minutes = {minutes} }}]"),
        )],
    });
    Some(Ladder {
        rungs: rungs.collect(),
        rising: false,
    })
}
