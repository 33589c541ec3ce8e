//! What forbids other days for a step, in the words of someone who stands in the garden.

use crate::checker::{DayLimit, Fault, Violation};
use crate::plan::{StepKind, TiedTo};

use super::faults;
use super::step_words;
use super::view::View;

/// The sentences of all that forbids some days for a step of a kind, each once.
pub(crate) fn sentences(view: &View<'_>, kind: StepKind, violations: &[Violation]) -> Vec<String> {
    let mut found: Vec<String> = Vec::new();
    for violation in violations {
        let text = match &violation.fault {
            Fault::Day {
                step,
                limit: DayLimit::Order,
                ..
            } if step.kind.facts().tied_to == Some(TiedTo::Before(kind)) => {
                let tied = step_words::of(step.kind).doing;
                format!("{tied} would begin before the step before it is over")
            }
            Fault::Day {
                step,
                limit: DayLimit::Order,
                ..
            } if step.kind != kind => {
                format!(
                    "it would not be over before \"{}\"",
                    step_words::of(step.kind).plain
                )
            }
            fault => faults::told(fault, view.words).wrong,
        };
        if !found.contains(&text) {
            found.push(text);
        }
    }
    found
}
