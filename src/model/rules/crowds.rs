//! Plantings of which each wants strips of its own in a set of plots, as rows: all together take
//! at most the strips of the set (Hall's condition for sharing plots out).

use crate::candidates::{Candidate, CandidateAt, PlotSet, greatest_use, unions, usable_strips};
use crate::garden::IngredientAt;
use crate::model::program::{Col, Program};
use crate::model::setting::Setting;

use super::capacity::{Capacities, rounded};

/// More unions of plot sets than this are not looked at one by one.
const MOST_UNIONS: usize = 512;

/// Plantings that may stand only within a set of plots and of which no two can have the same
/// strip.
pub struct Crowd {
    set: PlotSet,
    strips: u32,
    who: Who,
}

/// Why no two of a crowd can have the same strip.
pub enum Who {
    /// They stand there on one day.
    On(usize),
    /// They are sowings of these ingredients, whose family must wait as long as the plan.
    Of(Vec<IngredientAt>),
}

impl Who {
    fn has(&self, c: &Candidate) -> bool {
        match self {
            Who::On(day) => c.bed_days.0 <= *day && *day <= c.bed_days.1,
            Who::Of(ingredients) => ingredients.contains(&c.ingredient),
        }
    }
}

impl Crowd {
    /// The crowd, if strips can run short for it.
    #[must_use]
    pub fn new(setting: &Setting<'_>, set: PlotSet, who: Who) -> Option<Self> {
        let all = &setting.candidates.all;
        let mut crowd = Self {
            set,
            strips: 0,
            who,
        };
        let own = all.iter().filter(|c| crowd.has(c));
        let blocks = own.map(|c| c.amounts.block.strips);
        crowd.strips = usable_strips(&setting.candidates.plots, set, blocks);
        let most = |c: &Candidate| match crowd.has(c) {
            true => c.amounts.blocks.1 * c.amounts.block.strips,
            false => 0,
        };
        (greatest_use(setting.garden, all, most) > crowd.strips).then_some(crowd)
    }

    /// True if a candidate belongs to it.
    #[must_use]
    pub fn has(&self, c: &Candidate) -> bool {
        confined(c, self.set) && self.who.has(c)
    }

    /// The strips for all of it.
    #[must_use]
    pub fn strips(&self) -> u32 {
        self.strips
    }

    /// The candidates of the crowd, with their positions.
    pub fn own<'a>(
        &'a self,
        setting: &Setting<'a>,
    ) -> impl Iterator<Item = (CandidateAt, &'a Candidate)> {
        let all = setting.candidates.numbered();
        all.filter(|(_, c)| self.has(c))
    }
}

/// True if a candidate may stand only within a set of plots.
#[must_use]
pub fn confined(candidate: &Candidate, set: PlotSet) -> bool {
    !candidate.plots.is_empty() && set.covers(candidate.plots)
}

/// The unions of the sets of plots on which candidates may stand.
#[must_use]
pub fn plot_sets(setting: &Setting<'_>) -> Vec<PlotSet> {
    let all = setting.candidates.all.iter();
    unions(all.map(|c| c.plots), MOST_UNIONS)
}

/// Adds the rows of crowds, with their rounded companions.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>, crowds: &[Crowd]) {
    let mut rows = Capacities::default();
    let mut companions = Capacities::default();
    for crowd in crowds {
        let used: Vec<(Col, u32)> = crowd
            .own(setting)
            .map(|(k, c)| match setting.columns.blocks[k.0] {
                Some(blocks) => (blocks, c.amounts.block.strips),
                None => (setting.columns.made[k.0], c.amounts.least_strips()),
            })
            .collect();
        for (row, rhs) in rounded(&used, crowd.strips) {
            companions.push(row, rhs);
        }
        rows.push(used, crowd.strips);
    }
    rows.add_rows(program);
    companions.add_rows(program);
    let all = setting.candidates.all.iter();
    let fewest: Vec<u32> = all.map(|c| c.amounts.blocks.0).collect();
    add_rounded(program, setting, crowds, &fewest);
}

/// Adds rounded rows, given the fewest blocks of each candidate that is made.
pub fn add_rounded(program: &mut Program, setting: &Setting<'_>, crowds: &[Crowd], fewest: &[u32]) {
    let mut companions = Capacities::default();
    for crowd in crowds {
        let least: Vec<(Col, u32)> = crowd
            .own(setting)
            .map(|(k, c)| {
                (
                    setting.columns.made[k.0],
                    fewest[k.0] * c.amounts.block.strips,
                )
            })
            .collect();
        for (row, rhs) in rounded(&least, crowd.strips) {
            companions.push(row, rhs);
        }
    }
    companions.add_rows(program);
}
