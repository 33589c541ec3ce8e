//! The facts of a plan together with the school's way of writing dates and amounts.

use std::ops::Deref;

use crate::facts::Facts;
use crate::facts::verdict::{CountedOn, Readiness};
use crate::garden::{Garden, IngredientAt, Team};
use crate::units::Latitude;

use super::{Words, list};

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

    /// `Grade 4`, `Grade 1 and Grade 4`: who grows something together.
    #[must_use]
    pub fn team_name(&self, team: Team) -> String {
        list(&self.names_of(team))
    }

    /// `68/100`: how often an ingredient is ready, for a column.
    #[must_use]
    pub fn ready_cell(&self, at: IngredientAt) -> String {
        readiness(self.promised_of(at)).replace(" of ", "/")
    }

    /// `68 of 100 years`, or `21 of 30 past years`: how often an ingredient is ready, in a sentence.
    #[must_use]
    pub fn ready_in_years(&self, at: IngredientAt) -> String {
        let promised = self.promised_of(at);
        let kind = match promised.on {
            CountedOn::Fresh => "years",
            CountedOn::Own | CountedOn::InTurn => self.kind_of_years(),
        };
        format!("{} {kind}", readiness(promised))
    }

    /// Of how many years a column tells: `100 made-up years that the plan was not made for`, `30 past years`.
    #[must_use]
    pub fn years_of_column(&self) -> String {
        let promised = self.promised();
        let years = match promised.on {
            CountedOn::Fresh => 100,
            CountedOn::Own | CountedOn::InTurn => promised.years,
        };
        format!("{years} {}", kind_of_promise(self.garden, promised.on))
    }

    /// `30 years`, of those that the plan was made for; `the plan's own 30 years` where what leads is of as many others.
    #[must_use]
    pub fn own_years(&self) -> String {
        let own = match self.promised().on {
            CountedOn::InTurn => "the plan's own ",
            CountedOn::Fresh | CountedOn::Own => "",
        };
        format!("{own}{} years", self.years())
    }

    /// `past years` or `generated weather years`.
    #[must_use]
    pub fn kind_of_years(&self) -> &'static str {
        kind_of_years(self.garden)
    }
}

/// `53 of 100`, of fresh years; `20 of 30`, of past ones.
pub(crate) fn readiness(readiness: Readiness) -> String {
    match readiness.on {
        CountedOn::Fresh => format!("{} of 100", readiness.of_hundred()),
        CountedOn::Own | CountedOn::InTurn => format!("{} of {}", readiness.ready, readiness.years),
    }
}

/// The first figure of `readiness`, for tables that tell of how many years.
pub(crate) fn figure(readiness: Readiness) -> String {
    match readiness.on {
        CountedOn::Fresh => readiness.of_hundred().to_string(),
        CountedOn::Own | CountedOn::InTurn => readiness.ready.to_string(),
    }
}

/// `made-up years that the plan was not made for`, `past years`: on which years something was counted.
pub(crate) fn kind_of_promise(garden: &Garden, on: CountedOn) -> &'static str {
    match on {
        CountedOn::Fresh => "made-up years that the plan was not made for",
        CountedOn::InTurn => "past years, each with a plan that was not made for it,",
        CountedOn::Own => kind_of_years(garden),
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
