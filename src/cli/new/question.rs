//! A question of a talk, and what is said around it.

use crate::catalogue::{Catalogue, Dish};
use crate::garden::Locale;
use crate::project::draft::{Draft, Measures};
use crate::units::{MILE, Metres};
use crate::words::Words;

/// What answers are read with.
pub(super) struct Known<'a> {
    pub catalogue: &'a Catalogue,
    pub dishes: &'a [Dish],
}

/// One question.
pub(super) struct Question {
    /// The question, with an example.
    pub ask: fn(&Draft, &Known<'_>) -> String,
    /// Reads a line of an answer.
    pub take: fn(&mut Draft, &Known<'_>, &str) -> Result<(), String>,
    /// What holds as things stand, said or not.
    pub told: fn(&Draft) -> String,
    /// Of an answer of several lines: forgets those of an earlier one.
    pub lines: Option<fn(&mut Draft)>,
}

/// How the words of answers are written.
pub(super) fn words(draft: &Draft) -> Words {
    Words::in_locale(match draft.measures {
        Measures::Metric => Locale::British,
        Measures::Feet => Locale::American,
    })
}

/// A distance in the person's unit.
pub(super) fn far_away(draft: &Draft, far: Metres) -> String {
    match draft.measures {
        Measures::Metric => format!("{:.0} km", far.0 / 1000.0),
        Measures::Feet => format!("{:.0} miles", far.0 / MILE),
    }
}
