//! The words for each fault that the checker can find. `told` sorts the faults into
//! groups without leaving one out; each group's function words its own.

mod figures;
mod people;
mod places;
mod references;
mod seedlings;
mod steps;
mod told;

use crate::checker::{Difference, Fault, Named};

use crate::words::Words;

pub(crate) use told::Told;

/// One fault in words.
pub(crate) fn told(fault: &Fault, words: Words) -> Told {
    let worded = match fault {
        Fault::Unknown { .. }
        | Fault::Number { .. }
        | Fault::PromiseList { .. }
        | Fault::TooLittle { .. }
        | Fault::TooRarely { .. }
        | Fault::Aim { .. } => figures::told(fault, words),
        Fault::Place { .. }
        | Fault::StripTakenTwice { .. }
        | Fault::Rotation { .. }
        | Fault::FamilyAgain { .. } => places::told(fault, words),
        Fault::ShelfClosed { .. }
        | Fault::ShelfFull { .. }
        | Fault::Mat { .. }
        | Fault::NeverUp { .. }
        | Fault::TooFewSeedlings { .. }
        | Fault::Age { .. }
        | Fault::HardensUnattended { .. } => seedlings::told(fault, words),
        Fault::NoSession { .. }
        | Fault::NobodyThere { .. }
        | Fault::Visits { .. }
        | Fault::SessionOverfull { .. }
        | Fault::Hands { .. }
        | Fault::Team { .. }
        | Fault::SecondTeam { .. }
        | Fault::GradesLeftOut { .. }
        | Fault::NoVisit { .. } => people::told(fault, words),
        Fault::Method { .. }
        | Fault::Steps { .. }
        | Fault::Day { .. }
        | Fault::NotAsBegun { .. }
        | Fault::GoneBy { .. } => steps::told(fault, words),
    };
    // A group that does not word one of its faults still shows what the checker saw.
    worded.unwrap_or_else(|| Told::alone(format!("{fault:?}")))
}

/// A figure that is another now.
pub(crate) fn difference(difference: &Difference, words: Words) -> String {
    figures::difference(difference, words)
}

/// What kind of thing a name stands for.
pub(crate) fn named(kind: Named) -> &'static str {
    figures::named(kind)
}
