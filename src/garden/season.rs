//! The season as it has gone so far: what was printed, what of it has begun, and what is lost. Days before
//! `as_of` are given: the plan goes on from there, and the checker asks nothing about them.

use crate::calendar::{Date, plus_days};
use crate::units::Share;

use super::at::{BedAt, ClassAt, IngredientAt};
use super::method::Method;
use super::shut::Shut;
use super::strips::Strips;
use super::team::Team;

/// Days that a bed takes to be cleared after the last pick, or after a loss (common practice: within the week).
pub const CLEARING_DAYS: i64 = 7;

/// Who does a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Turn {
    /// A class.
    Class(ClassAt),
    /// Families.
    Families,
    /// An adult.
    Adult,
}

/// The days of one step: each turn with its day.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Turns(pub Vec<(Turn, Date)>);

impl Turns {
    /// The first day.
    #[must_use]
    pub fn first(&self) -> Option<Date> {
        self.0.iter().map(|(_, day)| *day).min()
    }

    /// True if somebody did it before a day: then it goes on as it was begun.
    #[must_use]
    pub fn begun(&self, as_of: Date) -> bool {
        self.first().is_some_and(|first| first < as_of)
    }
}

/// One planting as it was printed. Steps that have begun stand as they were done, all others as they were printed.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    /// Of which ingredient.
    pub ingredient: IngredientAt,
    /// Who grows it.
    pub team: Team,
    /// How it is grown.
    pub method: Method,
    /// True if its flats stand on the heat mat until the seed is up.
    pub on_mat: bool,
    /// Where it stands, or shall stand.
    pub places: Vec<(BedAt, Strips)>,
    /// Sowing.
    pub sow: Option<Turns>,
    /// Potting up.
    pub pot_up: Option<Turns>,
    /// Planting out.
    pub plant_out: Option<Turns>,
    /// Thinning.
    pub thin: Option<Turns>,
    /// The picks, in order of time.
    pub picks: Vec<Turns>,
    /// The part of it that is not lost.
    pub left: Share,
}

impl Printed {
    /// All its steps, in order.
    pub fn steps(&self) -> impl Iterator<Item = &Turns> {
        let once = [&self.sow, &self.pot_up, &self.plant_out, &self.thin];
        once.into_iter().flatten().chain(&self.picks)
    }

    /// True if any of its steps has begun.
    #[must_use]
    pub fn begun(&self, as_of: Date) -> bool {
        self.steps().any(|step| step.begun(as_of))
    }

    /// The step that brings it into its bed; `None` for what stood there before the plan.
    #[must_use]
    pub fn bedding(&self) -> Option<&Turns> {
        match self.method.starts_as_plants() {
            true => self.plant_out.as_ref(),
            false => self.sow.as_ref(),
        }
    }

    /// How many strips it takes.
    #[must_use]
    pub fn strips(&self) -> u32 {
        self.places.iter().map(|(_, strips)| strips.count).sum()
    }
}

/// What was lost wholly.
#[derive(Debug, Clone, PartialEq)]
pub struct Gone {
    /// As it was printed.
    pub what: Printed,
    /// The day on which it was lost.
    pub on: Date,
}

/// Strips on which something was lost, until they are cleared.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clearing {
    /// The bed.
    pub bed: BedAt,
    /// Its strips.
    pub strips: Strips,
    /// The first day on which something new may come.
    pub free_from: Date,
}

impl Gone {
    /// The strips that are to be cleared of it; none where it was lost before it came into a bed.
    pub fn clearing(&self) -> impl Iterator<Item = Clearing> {
        let bedding = self.what.bedding().and_then(Turns::first);
        let stood = bedding.is_some_and(|first| first <= self.on);
        let places = self.what.places.iter().filter(move |_| stood);
        places.map(|(bed, strips)| Clearing {
            bed: *bed,
            strips: *strips,
            free_from: plus_days(self.on, CLEARING_DAYS),
        })
    }
}

/// In how many weather years the printed plan is ready: no more is given up for dates that stay.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PrintedYears {
    /// The ingredient that is ready least often.
    pub worst: u32,
    /// All ingredients, added up.
    pub all: u32,
    /// The whole dish.
    pub dish: u32,
}

/// A season that is under way.
#[derive(Debug, Clone, PartialEq)]
pub struct Season {
    /// The day from which on there is something to plan.
    pub as_of: Date,
    /// The number of the last entry of the diary that it knows.
    pub entries: usize,
    /// The plan before, without what is gone.
    pub printed: Vec<Printed>,
    /// What is lost wholly.
    pub gone: Vec<Gone>,
    /// The strips that are still to be cleared of it, whatever is wanted now.
    pub clearing: Vec<Clearing>,
    /// School that falls out.
    pub shut: Shut,
    /// How often that plan is ready.
    pub years: PrintedYears,
    /// The mark of the garden without its season, by which a saved plan knows for which it was made.
    pub made_for: String,
}

/// Which planting of those that were printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct PrintedAt(pub usize);

impl Season {
    /// The printed plantings of an ingredient, with their positions.
    pub fn printed_of(&self, at: IngredientAt) -> impl Iterator<Item = (PrintedAt, &Printed)> {
        let all = self.printed.iter().enumerate();
        all.filter(move |(_, printed)| printed.ingredient == at)
            .map(|(k, printed)| (PrintedAt(k), printed))
    }

    /// The same for some of the ingredients, in their order.
    #[must_use]
    pub fn of_some(&self, some: &[IngredientAt]) -> Self {
        let new = |at: IngredientAt| some.iter().position(|other| *other == at).map(IngredientAt);
        let renamed = |printed: &Printed| {
            Some(Printed {
                ingredient: new(printed.ingredient)?,
                ..printed.clone()
            })
        };
        let gone = self.gone.iter().filter_map(|gone| {
            let what = renamed(&gone.what)?;
            Some(Gone { what, on: gone.on })
        });
        Self {
            printed: self.printed.iter().filter_map(renamed).collect(),
            gone: gone.collect(),
            ..self.clone()
        }
    }

    /// The same without a word of an ingredient: as if none of it had been printed.
    #[must_use]
    pub fn without(&self, at: IngredientAt) -> Self {
        let other = |printed: &Printed| printed.ingredient != at;
        let gone = self.gone.iter().filter(|gone| other(&gone.what));
        Self {
            printed: self.printed.iter().filter(|p| other(p)).cloned().collect(),
            gone: gone.cloned().collect(),
            ..self.clone()
        }
    }

    /// The first day on which it may end: that as of which is planned, or the last of a step that has begun.
    #[must_use]
    pub fn goes_on_until(&self) -> Date {
        let steps = self.printed.iter().flat_map(Printed::steps);
        let begun = steps.filter(|step| step.begun(self.as_of));
        let days = begun.flat_map(|step| step.0.iter().map(|(_, day)| *day));
        days.fold(self.as_of, Date::max)
    }

    /// Those that have begun.
    pub fn begun_of(&self, at: IngredientAt) -> impl Iterator<Item = (PrintedAt, &Printed)> {
        let all = self.printed_of(at);
        all.filter(|(_, printed)| printed.begun(self.as_of))
    }
}

impl std::ops::Index<PrintedAt> for Season {
    type Output = Printed;

    fn index(&self, PrintedAt(at): PrintedAt) -> &Printed {
        &self.printed[at]
    }
}
