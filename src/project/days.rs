//! The days that several sections need, as the file gives them.

use crate::calendar::Date;
use crate::diagnostic::{Findings, Given, Read, peek};
use crate::garden::{Begun, Shelf};

use super::assumed::Assumed;
use super::crop_names::Crops;
use super::document::Document;
use super::seedlings::{self, RawSeedlings};
use super::shelf::{self, RawShelf};

/// The section [shelf], and all sections [[seedlings]], as given.
type GivenShelf = Read<Option<Given<RawShelf>>>;
type GivenSeedlings = Read<Vec<Given<RawSeedlings>>>;

/// The days that several sections need, as given.
pub struct Days {
    pub start: Read<Given<Date>>,
    pub feast: Read<Given<Date>>,
    pub rain_date: Read<Option<Given<Date>>>,
    pub moves_up: Read<Option<Given<Date>>>,
    pub harvest: Vec<Given<Date>>,
}

impl Days {
    /// As the document has them.
    pub fn of(raw: &Document) -> Self {
        let (project, calendar) = (peek(&raw.project), peek(&raw.calendar));
        Self {
            start: calendar.and_then(|raw| raw.start),
            feast: project.and_then(|raw| raw.feast),
            rain_date: project.and_then(|raw| raw.rain_date),
            moves_up: calendar.and_then(|raw| raw.moves_up),
            harvest: harvest_days(raw),
        }
    }

    /// The start and the days of the harvest, to which the feast is held.
    pub fn for_feast(&self) -> (Read<Given<Date>>, &[Given<Date>]) {
        (self.start, &self.harvest)
    }

    /// The shelf and the seedlings on it.
    pub fn on_shelf(
        &self,
        (shelf, seedlings): (GivenShelf, GivenSeedlings),
        crops: Crops<'_>,
        findings: &mut Findings,
        assumed: &mut Assumed,
    ) -> (Read<Shelf>, Read<Vec<Begun>>) {
        let shelf = shelf.and_then(|raw| shelf::check(raw, self.start, findings, assumed));
        let around = seedlings::Around {
            crops,
            shelf: peek(&shelf),
            start: self.start,
            feast: self.feast,
        };
        let seedlings = seedlings.and_then(|raw| seedlings::check(&raw, &around, findings));
        (shelf, seedlings)
    }

    /// The last day that matters.
    pub fn last(&self) -> Read<Given<Date>> {
        Ok(self.rain_date?.unwrap_or(self.feast?))
    }

    /// The day of moving up, if it falls within the plan.
    pub fn moves_up_within(&self) -> Option<Date> {
        let (start, last) = (self.start.ok()?.value, self.last().ok()?.value);
        let day = self.moves_up.ok()??.value;
        (start < day && day <= last).then_some(day)
    }
}

/// The days of the harvest that are dates.
fn harvest_days(raw: &Document) -> Vec<Given<Date>> {
    let calendar = raw.calendar.as_ref().ok();
    let days = calendar.and_then(|raw| raw.harvest_days.as_ref().ok()?.as_ref());
    let days = days.into_iter().flat_map(|days| &days.value);
    days.filter_map(|harvest| harvest.value.day.ok()).collect()
}
