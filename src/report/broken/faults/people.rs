//! Grades, classes, sessions, families and adults.

use crate::checker::Fault;

use super::references::{planting, step};
use crate::units::Minutes;
use crate::words::{Words, choice, count, minutes, sentence as capital};

/// The sentence of a fault of this group.
pub(super) fn sentence(fault: &Fault, words: Words) -> Option<String> {
    let text = match fault {
        Fault::NoSession {
            step: s,
            class,
            day,
        } => format!(
            "{}: class {class} does not meet on {}.",
            capital(&step(s)),
            words.day(*day)
        ),
        Fault::NobodyThere { step: s, day } => format!(
            "{}: on {} there is nobody who could do it.",
            capital(&step(s)),
            words.day(*day)
        ),
        Fault::Visits {
            step: s,
            class,
            expected,
            got,
        } => visits(&capital(&step(s)), class, *expected, *got),
        Fault::SessionOverfull {
            class,
            day,
            expected,
            got,
        } => format!(
            "Class {class} has {} of work on {}; its session lasts {}.",
            minutes(Minutes(*got)),
            words.day(*day),
            minutes(Minutes(*expected))
        ),
        Fault::Hands { step: s } => format!(
            "{} is given to people who may not do it (children, families, an adult).",
            capital(&step(s))
        ),
        Fault::NoVisit { step: s } => format!(
            "{}: no class of the school does it on a day of the plan.",
            capital(&step(s))
        ),
        _ => return of_grades(fault),
    };
    Some(text)
}

/// Who grows what.
fn of_grades(fault: &Fault) -> Option<String> {
    let text = match fault {
        Fault::Grade {
            planting: p,
            expected,
            got,
        } => format!(
            "{} is grown by grade {got}; the file allows {}.",
            capital(&planting(p)),
            choice(expected)
        ),
        Fault::SecondGrade {
            planting: p,
            expected,
            got,
        } => format!(
            "{} is grown by grade {got}; another planting of it is grown by grade {expected}.",
            capital(&planting(p))
        ),
        Fault::GradesLeftOut {
            expected,
            got,
            idle,
        } => format!(
            "Only {got} grades grow something; {expected} can. Nothing is grown by grade {}.",
            choice(idle)
        ),
        _ => return None,
    };
    Some(text)
}

fn visits(step: &str, class: &str, expected: u32, got: u32) -> String {
    match (expected, got) {
        (0, _) => format!("{step}: it is not the turn of class {class}."),
        (_, 0) => format!("{step}: class {class} does not take part."),
        _ => format!("{step}: class {class} comes {}.", count(got, "time")),
    }
}
