//! What the program chose because the file does not say it, gathered for the reports.

use crate::garden::Assumption;

/// Names that are told of one assumption; the rest is only counted.
const MOST_NAMES: usize = 6;

/// Assumptions in the order in which they were first made.
#[derive(Debug, Default)]
pub struct Assumed {
    list: Vec<(Assumption, Vec<String>)>,
}

impl Assumed {
    /// Notes an assumption.
    pub fn note(&mut self, what: impl Into<String>, why: impl Into<String>) {
        let (what, why) = (what.into(), why.into());
        self.list.push((Assumption { what, why }, Vec::new()));
    }

    /// Notes an assumption for one of several things; those with the same words are told once.
    pub fn note_for(&mut self, whom: &str, what: impl Into<String>, why: &str) {
        let what = what.into();
        match self
            .list
            .iter_mut()
            .find(|(a, _)| a.what == what && a.why == why)
        {
            Some((_, whose)) => whose.push(whom.to_owned()),
            None => {
                let why = why.to_owned();
                self.list
                    .push((Assumption { what, why }, vec![whom.to_owned()]));
            }
        }
    }

    /// All of them.
    pub fn into_list(self) -> Vec<Assumption> {
        self.list
            .into_iter()
            .map(|(assumption, whose)| named(assumption, &whose))
            .collect()
    }
}

/// The assumption with the names of those whom it concerns.
fn named(assumption: Assumption, whose: &[String]) -> Assumption {
    if whose.is_empty() {
        return assumption;
    }
    let shown: Vec<&str> = whose.iter().take(MOST_NAMES).map(String::as_str).collect();
    let more = match whose.len().saturating_sub(MOST_NAMES) {
        0 => String::new(),
        n => format!(" and {n} more"),
    };
    Assumption {
        what: assumption.what,
        why: format!("{} ({}{more})", assumption.why, shown.join(", ")),
    }
}
