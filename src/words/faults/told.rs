//! A fault in words, in two parts, so that who stands before the fault and who knows already of what it
//! is read the same.

use crate::words::sentence as capital;

/// A fault in words.
pub(crate) struct Told {
    /// What has the fault, if what is wrong does not name it: `step 2 (pot up) of planting 3 (carrot)`.
    pub of: Option<String>,
    /// What is wrong, without capital and full stop.
    pub wrong: String,
}

impl Told {
    /// What is wrong with one thing.
    pub(super) fn of(of: &str, wrong: impl Into<String>) -> Self {
        let of = Some(of.to_owned());
        Self {
            of,
            wrong: wrong.into(),
        }
    }

    /// What is wrong, and names itself what has the fault.
    pub(super) fn alone(wrong: impl Into<String>) -> Self {
        Self {
            of: None,
            wrong: wrong.into(),
        }
    }

    /// The whole sentence: `Planting 3 (carrot): bed North has no strip 9.`
    pub(crate) fn sentence(&self) -> String {
        match &self.of {
            Some(of) => format!("{}: {}.", capital(of), self.wrong),
            None => format!("{}.", capital(&self.wrong)),
        }
    }
}
