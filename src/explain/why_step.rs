//! Why one step of a plan is when it is: what forbids the rounds beside it, and what it would
//! cost to hold it to other rounds and plan all anew.

use crate::calendar::Date;
use crate::candidates::{Candidate, Candidates, PickDay, Round, Thinning};
use crate::checker::{CheckedPlan, Edit, Harvest, StepAt, Violation};
use crate::garden::{Garden, IngredientAt, Method};
use crate::growth::{CropSeason, Loss};
use crate::model::Options;
use crate::pipeline::{NoPlan, plan_where};
use crate::plan::{Planting, Step, StepKind, Visit, When};

use super::slack::{Bench, StepSlack, same_days};

/// All that is said of one step.
#[derive(Debug, Clone, PartialEq)]
pub struct WhyStep {
    /// Which step.
    pub at: StepAt,
    /// What it bears.
    pub slack: StepSlack,
    /// What comes of a start in the bed on the planned days, if it is one.
    pub start: Option<Start>,
    /// The step alone on other days: the round before and the one after it, and where these do
    /// as well, the first one further on that does not.
    pub beside: Vec<Beside>,
    /// The nearest earlier and the nearest later round for which another plan exists; not of
    /// thinning.
    pub held: Vec<Held>,
}

/// The step alone on other days, all others as planned.
#[derive(Debug, Clone, PartialEq)]
pub struct Beside {
    /// The days.
    pub when: When,
    /// True if they would do.
    pub does: bool,
    /// The rules that forbid them.
    pub violations: Vec<Violation>,
    /// What it would bring.
    pub harvest: Harvest,
}

/// The whole planned anew with the step held to other days.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// True for an earlier round.
    pub earlier: bool,
    /// The days with their plan; `None` if no round of the few that were tried has one.
    pub plan: Option<(When, CheckedPlan)>,
    /// How many rounds nearer to the planned one have no plan.
    pub without_plan: usize,
    /// How many of these were not settled in the time allowed.
    pub unsettled: usize,
}

/// What comes of a start in the bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Start {
    /// Weather years.
    pub years: usize,
    /// Years in which the ground can be worked then and the crop comes up.
    pub up_years: usize,
    /// The day on which it is up in the median year.
    pub up: Option<Date>,
    /// The day on which it is ripe in the median year.
    pub ripe: Option<Date>,
    /// Years in which frost ends it before it is ripe.
    pub frost_years: usize,
}

/// So many rounds on either side are tried.
const MOST_ROUNDS: usize = 8;

/// Looks at one step of a plan; `None` for what goes with other steps.
#[must_use]
pub fn why_step(
    garden: &Garden,
    checked: &CheckedPlan,
    at: StepAt,
    options: &Options,
) -> Option<WhyStep> {
    let bench = Bench::new(garden, checked);
    let planting = checked.plan().plantings.get(at.planting)?;
    let step = planting.steps.get(at.step)?;
    let choices = bench.choices(planting, step)?;
    let other = |when: &&When| !same_days(when, &step.when);
    let (mut earlier, later): (Vec<&When>, Vec<&When>) = choices
        .iter()
        .filter(other)
        .partition(|when| when.first() < step.when.first());
    earlier.reverse();
    let hold = Hold {
        garden,
        checked,
        at,
        ingredient: garden
            .ingredient_positions()
            .find(|i| garden[*i].name == planting.ingredient)?,
        all: Candidates::enumerate(garden),
        options,
    };
    // A plan thins in the first round that comes in time, so no other is planned anew.
    let held = match step.kind {
        StepKind::Thin => Vec::new(),
        _ => {
            let side = |(earlier, side): (bool, &[&When])| hold.nearest(earlier, side);
            let (before, after) = rayon::join(|| side((true, &earlier)), || side((false, &later)));
            vec![before, after]
        }
    };
    let beside = [&earlier, &later]
        .into_iter()
        .flat_map(|side| beside(&bench, at, side));
    Some(WhyStep {
        at,
        slack: bench.slack_of(at)?,
        start: start(garden, planting, step),
        beside: beside.collect(),
        held,
    })
}

/// The first round of a side, and where it does, the first that does not.
fn beside(bench: &Bench<'_>, at: StepAt, side: &[&When]) -> Vec<Beside> {
    let look = |when: &When| {
        let edit = Edit::Moved(at, when.clone());
        let (violations, harvest) = bench.faults(&edit);
        Beside {
            does: bench.bears(&edit),
            when: when.clone(),
            violations,
            harvest,
        }
    };
    let mut rounds = side.iter().map(|when| look(when));
    let Some(first) = rounds.next() else {
        return Vec::new();
    };
    let further = match first.does {
        true => rounds.find(|round| !round.does),
        false => None,
    };
    [Some(first), further].into_iter().flatten().collect()
}

/// A step that is held to other days while all is planned anew.
struct Hold<'a> {
    garden: &'a Garden,
    checked: &'a CheckedPlan,
    at: StepAt,
    ingredient: IngredientAt,
    all: Candidates,
    options: &'a Options,
}

impl Hold<'_> {
    /// The nearest round of a side for which a plan exists.
    fn nearest(&self, earlier: bool, side: &[&When]) -> Held {
        let (mut without_plan, mut unsettled) = (0, 0);
        for when in side.iter().take(MOST_ROUNDS) {
            let holds = |c: &Candidate| c.ingredient == self.ingredient && self.is_on(c, when);
            let there = self.all.all.iter().any(holds);
            let plan =
                there.then(|| plan_where(self.garden, self.options, |c| self.keeps(c, when)));
            match plan {
                Some(Ok(plan)) if self.holds(&plan, when) => {
                    return Held {
                        earlier,
                        plan: Some(((*when).clone(), plan)),
                        without_plan,
                        unsettled,
                    };
                }
                Some(Err(NoPlan::OutOfTime)) => unsettled += 1,
                _ => {}
            }
            without_plan += 1;
        }
        Held {
            earlier,
            plan: None,
            without_plan,
            unsettled,
        }
    }

    /// True for candidates of other ingredients, for those on the days, and for those of the
    /// ingredient's other sowings.
    fn keeps(&self, candidate: &Candidate, when: &When) -> bool {
        let kind = self.kind();
        let other_sowings = || {
            let plantings = self.checked.plan().plantings.iter().enumerate();
            let name = &self.garden[self.ingredient].name;
            let others = plantings.filter(|(k, p)| *k != self.at.planting && p.ingredient == *name);
            others
                .flat_map(|(_, p)| &p.steps)
                .filter(|s| Some(s.kind) == kind)
                .any(|s| self.is_on(candidate, &s.when))
        };
        candidate.ingredient != self.ingredient || self.is_on(candidate, when) || other_sowings()
    }

    fn kind(&self) -> Option<StepKind> {
        let planting = self.checked.plan().plantings.get(self.at.planting)?;
        Some(planting.steps.get(self.at.step)?.kind)
    }

    /// True if a candidate's step of this kind is on some days; for a pick, if it is one of them.
    fn is_on(&self, candidate: &Candidate, when: &When) -> bool {
        let steps = &candidate.steps;
        let round = |round: &Option<Round>| {
            round
                .as_ref()
                .is_some_and(|r| same_days(&self.when(r), when))
        };
        match self.kind() {
            Some(StepKind::Sow) => round(&steps.sow),
            Some(StepKind::PotUp) => round(&steps.pot_up),
            Some(StepKind::PlantOut) => round(&steps.plant_out),
            Some(StepKind::Thin) => match &steps.thin {
                Some(Thinning::Round(r)) => same_days(&self.when(r), when),
                Some(Thinning::Adult(day)) => *when == When::Adult(*day),
                Some(Thinning::Families(day)) => *when == When::Families(*day),
                None => false,
            },
            Some(StepKind::Pick) => steps.picks.iter().any(|pick| match pick {
                PickDay::Round(r) => same_days(&self.when(r), when),
                PickDay::Families(day) => *when == When::Families(*day),
            }),
            _ => false,
        }
    }

    fn when(&self, round: &Round) -> When {
        let visit = |(class, date): &(_, Date)| Visit {
            class: self.garden.class(*class).name.clone(),
            date: *date,
        };
        When::Sessions(round.visits.iter().map(visit).collect())
    }

    /// True if a plan has the step on the days.
    fn holds(&self, plan: &CheckedPlan, when: &When) -> bool {
        let name = &self.garden[self.ingredient].name;
        let plantings = plan
            .plan()
            .plantings
            .iter()
            .filter(|p| p.ingredient == *name);
        let mut steps = plantings.flat_map(|p| &p.steps);
        steps.any(|s| Some(s.kind) == self.kind() && same_days(&s.when, when))
    }
}

/// What comes of a start in the bed on the days of a step, if it is one.
fn start(garden: &Garden, planting: &Planting, step: &Step) -> Option<Start> {
    let as_plants = match (planting.method, step.kind) {
        (Method::Direct | Method::Pieces, StepKind::Sow) => false,
        (Method::Indoor | Method::Bought, StepKind::PlantOut) => true,
        _ => return None,
    };
    let horizon = garden.horizon();
    let day = horizon.day_number(step.when.first()?)?;
    let ingredient = garden
        .ingredients
        .iter()
        .find(|i| i.name == planting.ingredient)?;
    let place = planting.places.first()?;
    let bed = garden.beds.iter().find(|bed| bed.id == place.bed)?;
    let years = garden.weather.years(horizon);
    let fates: Vec<_> = years
        .iter()
        .map(|year| {
            let climate = bed.microclimate();
            let season = CropSeason::new(&ingredient.crop, climate, year, garden.latitude, horizon);
            match as_plants {
                true => season.planted(day),
                false => season.sown(day),
            }
        })
        .collect();
    let median = |days: Vec<Option<usize>>| {
        let mut days: Vec<usize> = days.into_iter().map(|d| d.unwrap_or(usize::MAX)).collect();
        days.sort_unstable();
        let middle = days
            .get(days.len() / 2)
            .filter(|day| **day < horizon.days())?;
        Some(horizon.date(*middle))
    };
    Some(Start {
        years: fates.len(),
        up_years: fates.iter().filter(|fate| fate.up.is_some()).count(),
        up: median(fates.iter().map(|fate| fate.up).collect()),
        ripe: median(fates.iter().map(|fate| fate.ripe).collect()),
        frost_years: fates
            .iter()
            .filter(|f| f.ripe.is_none() && f.gone.is_some_and(|(_, why)| why == Loss::Frost))
            .count(),
    })
}
