//! What a plan is worth in its garden: just made, saved, edited, or of a project that has changed.

use crate::plan::saved::Since;

use super::fault::{Quantity, Subject, Violation};

/// What a plan is worth in its garden.
#[derive(Debug, Clone, PartialEq)]
pub enum Standing {
    /// It was made just now.
    Planned,
    /// It was saved, and nothing has changed since: what was proved of it was proved for this
    /// garden.
    Saved,
    /// Its file was edited: it claims nothing of its aims.
    Edited,
    /// The project, or the program, has changed since it was made: it claims nothing of its aims,
    /// and what follows from the project was derived anew.
    Changed(Changed),
}

/// What has changed since a plan was made.
#[derive(Debug, Clone, PartialEq)]
pub struct Changed {
    /// What: where nothing seems to have changed, it is the program.
    pub since: Since,
    /// The figures that were derived anew, the most important first.
    pub differences: Vec<Difference>,
}

/// A figure of a plan that is another now.
#[derive(Debug, Clone, PartialEq)]
pub struct Difference {
    /// Whose figure.
    pub of: Subject,
    /// Which figure.
    pub what: Quantity,
    /// As it stood in the plan.
    pub was: f64,
    /// As it is now.
    pub is: f64,
}

/// A saved plan that breaks rules.
#[derive(Debug, Clone, PartialEq)]
pub struct Refused {
    /// What became of it since it was made.
    pub standing: Standing,
    /// What it breaks; only the names that the project does not know, where there are such.
    pub violations: Vec<Violation>,
}
