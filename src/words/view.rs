//! The facts of a plan together with the school's way of writing dates and amounts.

use std::ops::Deref;

use crate::facts::Facts;
use crate::garden::Garden;
use crate::units::Latitude;

use super::Words;

/// What a report reads: the facts, and how they are written.
#[derive(Clone, Copy)]
pub struct View<'a> {
    facts: &'a Facts<'a>,
    /// How dates and amounts are written.
    pub words: Words,
}

impl<'a> Deref for View<'a> {
    type Target = Facts<'a>;

    fn deref(&self) -> &Facts<'a> {
        self.facts
    }
}

impl<'a> View<'a> {
    /// Looks at the facts of a plan.
    #[must_use]
    pub fn of(facts: &'a Facts<'a>) -> Self {
        Self {
            facts,
            words: Words::of(facts.garden),
        }
    }

    /// The facts, for as long as they are there.
    #[must_use]
    pub fn facts(&self) -> &'a Facts<'a> {
        self.facts
    }

    /// `past years` or `generated weather years`.
    #[must_use]
    pub fn kind_of_years(&self) -> &'static str {
        kind_of_years(self.garden)
    }
}

/// `past years`, or `generated weather years` where no thermometer saw them.
pub(crate) fn kind_of_years(garden: &Garden) -> &'static str {
    if garden.weather.is_generated() {
        "generated weather years"
    } else {
        "past years"
    }
}

/// `44.3 degrees north`, `the equator`.
pub(crate) fn latitude(latitude: Latitude) -> String {
    if latitude.0 == 0.0 {
        return "the equator".to_owned();
    }
    let side = if latitude.0 < 0.0 { "south" } else { "north" };
    format!("{} degrees {side}", latitude.0.abs())
}
