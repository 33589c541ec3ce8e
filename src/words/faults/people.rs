//! Grades, classes, sessions, families and adults.

use crate::checker::Fault;

use super::references::{planting, step};
use super::told::Told;
use crate::units::Minutes;
use crate::words::{Words, choice, count, list, minutes};

/// The words of a fault of this group.
pub(super) fn told(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::NoSession {
            step: s,
            class,
            day,
        } => Told::of(
            &step(s),
            format!("class {class} does not meet on {}", words.day(*day)),
        ),
        Fault::NobodyThere { step: s, day } => Told::of(
            &step(s),
            format!("on {} there is nobody who could do it", words.day(*day)),
        ),
        Fault::Visits {
            step: s,
            class,
            expected,
            got,
        } => Told::of(&step(s), visits(class, *expected, *got)),
        Fault::SessionOverfull {
            class,
            day,
            expected,
            got,
        } => Told::alone(format!(
            "class {class} has {} of work on {}, in a session of {}",
            minutes(Minutes(*got)),
            words.day(*day),
            minutes(Minutes(*expected))
        )),
        Fault::Hands { step: s } => Told::of(
            &step(s),
            "it is given to people who may not do it (children, families, an adult)",
        ),
        Fault::NoVisit { step: s } => Told::of(
            &step(s),
            "no class of the school does it on a day of the plan",
        ),
        _ => return of_grades(fault),
    };
    Some(told)
}

/// Who grows what.
fn of_grades(fault: &Fault) -> Option<Told> {
    let told = match fault {
        Fault::Team {
            planting: p,
            expected,
            got,
        } => Told::of(
            &planting(p),
            format!(
                "it is grown by {}; the file allows {}",
                grades(got),
                choice(&expected.iter().map(|team| list(team)).collect::<Vec<_>>())
            ),
        ),
        Fault::SecondTeam {
            planting: p,
            expected,
            got,
        } => Told::of(
            &planting(p),
            format!(
                "it is grown by {}; another planting of it is grown by {}",
                grades(got),
                grades(expected)
            ),
        ),
        Fault::GradesLeftOut {
            expected,
            got,
            idle,
        } => Told::alone(format!(
            "only {got} grades grow something, and {expected} can; nothing is grown by grade {}",
            choice(idle)
        )),
        _ => return None,
    };
    Some(told)
}

/// `grade 4`, `grades 1 and 4`.
fn grades(ids: &[String]) -> String {
    match ids {
        [one] => format!("grade {one}"),
        _ => format!("grades {}", list(ids)),
    }
}

fn visits(class: &str, expected: u32, got: u32) -> String {
    match (expected, got) {
        (0, _) => format!("it is not the turn of class {class}"),
        (_, 0) => format!("class {class} does not take part"),
        _ => format!("class {class} comes {}", count(got, "time")),
    }
}
