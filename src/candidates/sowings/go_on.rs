//! Candidates of plantings that have begun by a printed plan, beside those that are new: their steps that have begun are
//! given, and so is where they stand.

use crate::garden::Method;
use crate::growth::{least_ready_years, printed_plants};

use super::{BedClass, Candidate, DropReason, Dropped, Round, Search, Setting, Steps, refuse};
use crate::candidates::candidate::Task;
use crate::candidates::going_on::{GoingOn, PrintedPicks};
use crate::candidates::nursery::{Nursery, nurseries, nurseries_after};
use crate::candidates::takes::tasks;
use crate::candidates::windows::{Beginning, Seasons, Window, windows};

impl Search<'_> {
    /// All candidates that go on with what has begun in the beds or on the shelf.
    pub fn go_on(&self, going_on: &GoingOn<'_>, dropped: &mut Dropped, found: &mut Vec<Candidate>) {
        let garden = self.context.garden;
        let (crop, printed) = (&self.ingredient.crop, going_on.printed);
        if matches!(printed.method, Method::Growing | Method::Patch) {
            return;
        }
        let amounts = match going_on.amounts(garden, (crop, self.plots)) {
            Ok(amounts) => amounts,
            Err(reason) => return refuse(dropped, reason),
        };
        let least = self.ingredient.least(garden.feast.portions);
        let all = amounts.low * f64::from(amounts.blocks.0);
        let alone = self.ingredient.most_plantings() == 1;
        if alone && all.0 + 1e-9 < least.0 {
            return refuse(dropped, DropReason::BedsTooSmall);
        }
        let Some((bed, _)) = printed.places.first() else {
            return refuse(dropped, DropReason::NoBed);
        };
        let class = BedClass {
            rows: garden[*bed].rows(),
            microclimate: garden[*bed].microclimate(),
        };
        let as_plants = printed.method.starts_as_plants();
        let setting = Setting {
            method: printed.method,
            class: &class,
            amounts,
            seasons: &Seasons::new(garden, crop, class.microclimate, as_plants),
        };
        let begun = match as_plants {
            true => going_on.plant_out(),
            false => going_on.sow(),
        };
        let starts = begun.map_or_else(|| self.rounds.clone(), |start| vec![start]);
        for start in &starts {
            self.start(&setting, start, dropped, found);
        }
    }

    /// The pick windows of what starts in the bed in a round, each ready often enough; what has begun is not sown
    /// for nothing any more, so of it every year counts.
    pub fn windows(&self, seasons: &Seasons, start: &Round) -> Vec<Window> {
        let mut printed = self.printed_picks.iter();
        let printed = printed.find(|(own, _)| own.as_ref().is_none_or(|own| own == start));
        let none = PrintedPicks::default();
        let printed = printed.map_or(&none, |(_, picks)| picks);
        let days = (printed, &self.pick_days[..]);
        let mut windows = windows(seasons, Beginning::Start(start), days);
        if self.going_on.is_none() {
            let least = least_ready_years(seasons.years());
            windows.retain(|w| w.ready.len() as usize >= least);
        }
        windows
    }

    /// The work of steps. Of what has begun it is known how many plants there are.
    pub fn tasks(&self, method: Method, steps: &Steps) -> Vec<Task> {
        let garden = self.context.garden;
        let mut tasks = tasks(garden, self.ingredient, method, steps);
        let plants = self
            .going_on
            .and_then(|g| printed_plants(garden, g.printed));
        if let Some(plants) = plants {
            for task in &mut tasks {
                task.effort = task.effort.of(plants);
            }
        }
        tasks
    }

    /// The ways to raise the plants that are planted out in a round.
    pub fn nurseries(&self, start: &Round, dropped: &mut Dropped) -> Vec<Nursery> {
        match &self.going_on {
            Some(going_on) => {
                let after = (self.at, going_on);
                let found = nurseries_after(self.context, after, &self.rounds, start);
                if found.is_empty() {
                    refuse(dropped, DropReason::NoSession);
                }
                found
            }
            None => nurseries(self.context, self.at, &self.rounds, start, dropped),
        }
    }
}
