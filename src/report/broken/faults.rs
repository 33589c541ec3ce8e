//! The sentence for each fault that the checker can find. `sentence` sorts the faults into
//! groups without leaving one out; each group's function words its own.

mod figures;
mod people;
mod places;
mod references;
mod seedlings;
mod steps;

use crate::checker::{Difference, Fault, Named};

use crate::words::Words;

/// One fault as a sentence.
pub(super) fn sentence(fault: &Fault, words: Words) -> String {
    let worded = match fault {
        Fault::Unknown { .. }
        | Fault::Number { .. }
        | Fault::PromiseList { .. }
        | Fault::TooLittle { .. }
        | Fault::TooRarely { .. }
        | Fault::Aim { .. } => figures::sentence(fault, words),
        Fault::Place { .. }
        | Fault::StripTakenTwice { .. }
        | Fault::Rotation { .. }
        | Fault::FamilyAgain { .. } => places::sentence(fault, words),
        Fault::ShelfClosed { .. }
        | Fault::ShelfFull { .. }
        | Fault::Mat { .. }
        | Fault::NeverUp { .. }
        | Fault::Age { .. }
        | Fault::HardensUnattended { .. } => seedlings::sentence(fault, words),
        Fault::NoSession { .. }
        | Fault::NobodyThere { .. }
        | Fault::Visits { .. }
        | Fault::SessionOverfull { .. }
        | Fault::Hands { .. }
        | Fault::Grade { .. }
        | Fault::SecondGrade { .. }
        | Fault::GradesLeftOut { .. }
        | Fault::NoVisit { .. } => people::sentence(fault, words),
        Fault::Method { .. } | Fault::Steps { .. } | Fault::Day { .. } => {
            steps::sentence(fault, words)
        }
    };
    // A group that does not word one of its faults still shows what the checker saw.
    worded.unwrap_or_else(|| format!("{fault:?}"))
}

/// A figure that is another now.
pub(super) fn difference(difference: &Difference, words: Words) -> String {
    figures::difference(difference, words)
}

/// What kind of thing a name stands for.
pub(super) fn named(kind: Named) -> &'static str {
    figures::named(kind)
}
