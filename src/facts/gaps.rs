//! Days on which plants need daily care and nobody is on site: when, in which break, which plants.

use crate::calendar::Date;
use crate::garden::Break;
use crate::plan::StepKind;

use super::known::Known;

/// Days for which somebody must be found.
#[derive(Debug, Clone, PartialEq)]
pub struct OpenGap<'a> {
    /// Which of the plan's gaps, counted from 0 in order of time.
    pub number: usize,
    /// The first day without anyone.
    pub from: Date,
    /// The last day without anyone.
    pub to: Date,
    /// Days for which someone has to be found, beyond the two of a weekend.
    pub unattended_days: u32,
    /// The break in it.
    pub pause: Option<&'a Break>,
    /// What needs care, by ingredient.
    pub needs: Vec<Need<'a>>,
}

/// Plants that need daily care.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Need<'a> {
    /// The ingredient's name.
    pub ingredient: &'a str,
    /// The step whose result needs it: after sowing a seedbed or seedlings, after potting up pots.
    pub after: StepKind,
    /// True if the ingredient is sown on the shelf.
    pub on_shelf: bool,
}

/// The gaps of a plan, in order of time.
pub(super) fn gaps<'a>(known: &Known<'a>) -> Vec<OpenGap<'a>> {
    let breaks = &known.garden.school_year.breaks;
    let need = |(ingredient, after): &'a (String, StepKind)| Need {
        ingredient,
        after: *after,
        on_shelf: known
            .plantings_named(ingredient)
            .any(|p| p.method.is_on_shelf()),
    };
    let unattended = known.replay.unattended.iter().enumerate();
    unattended
        .map(|(number, seen)| OpenGap {
            number,
            from: seen.gap.from,
            to: seen.gap.to,
            unattended_days: seen.gap.unattended_days(),
            pause: breaks.iter().find(|b| seen.gap.touches(b.from, b.to)),
            needs: seen.needs.iter().map(need).collect(),
        })
        .collect()
}
