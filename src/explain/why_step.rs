//! Why one step of a plan is when it is: what forbids the rounds beside it, and what it would
//! cost to hold it to other rounds and plan all anew.

use crate::calendar::Date;
use crate::candidates::{Candidate, Candidates, Seasons};
use crate::checker::{CheckedPlan, Edit, Harvest, Violation};
use crate::garden::{Garden, IngredientAt, Method};
use crate::growth::{Fate, Loss};
use crate::model::Options;
use crate::pipeline::{NoPlan, decide_where};
use crate::plan::{Planting, Step, StepAt, StepKind, When};

use super::bench::{Bench, same_days};
use super::slack::StepSlack;

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
    /// Years in which heat does.
    pub hot_years: usize,
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
    let (planting, step) = checked.plan().step(at)?;
    let choices = bench.choices(at.planting, planting, step)?;
    let other = |when: &&When| !same_days(when, &step.when);
    let (mut earlier, later): (Vec<&When>, Vec<&When>) = choices
        .iter()
        .filter(other)
        .partition(|when| when.first() < step.when.first());
    earlier.reverse();
    let hold = Hold::new(garden, checked, at, options)?;
    // A plan thins in the first round that comes in time, so no other is planned anew.
    let held = match step.kind.facts().counted_from {
        Some(_) => Vec::new(),
        None => {
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
        let (violations, harvest, does) = bench.replay(&Edit::Moved(at, when.clone()));
        Beside {
            does,
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
    ingredient: IngredientAt,
    kind: StepKind,
    /// When the ingredient's other sowings have this step.
    other_sowings: Vec<&'a When>,
    all: Candidates,
    options: &'a Options,
}

impl<'a> Hold<'a> {
    /// Holds a step of a plan; `None` if there is no such step.
    fn new(
        garden: &'a Garden,
        checked: &'a CheckedPlan,
        at: StepAt,
        options: &'a Options,
    ) -> Option<Self> {
        let (planting, step) = checked.plan().step(at)?;
        let kind = step.kind;
        let others = checked.plan().numbered();
        let others =
            others.filter(|(k, p)| *k != at.planting && p.ingredient == planting.ingredient);
        let steps = others.flat_map(|(_, p)| &p.steps);
        Some(Self {
            garden,
            ingredient: garden.ingredient_named(&planting.ingredient)?,
            kind,
            other_sowings: steps.filter(|s| s.kind == kind).map(|s| &s.when).collect(),
            all: Candidates::within(garden, &options.deadline).ok()?,
            options,
        })
    }

    /// The nearest round of a side for which a plan exists.
    fn nearest(&self, earlier: bool, side: &[&When]) -> Held {
        let (mut without_plan, mut unsettled) = (0, 0);
        for (tried, when) in side.iter().take(MOST_ROUNDS).enumerate() {
            let holds = |c: &Candidate| c.ingredient == self.ingredient && self.is_on(c, when);
            let there = self.all.all.iter().any(holds);
            // What one round leaves over of its share of the time is there for the next.
            let options = Options {
                deadline: self
                    .options
                    .deadline
                    .shared_by(side.len().min(MOST_ROUNDS) - tried),
                ..*self.options
            };
            let plan = there.then(|| decide_where(self.garden, &options, |c| self.keeps(c, when)));
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
        let mut days = self.other_sowings.iter().copied().chain([when]);
        candidate.ingredient != self.ingredient || days.any(|day| self.is_on(candidate, day))
    }

    /// True if a candidate's step of this kind is on some days; for a pick, if it is one of them.
    fn is_on(&self, candidate: &Candidate, when: &When) -> bool {
        let mut days = candidate.steps.of_kind(self.kind);
        days.any(|done| same_days(&done.when(self.garden), when))
    }

    /// True if a plan has the step on the days.
    fn holds(&self, plan: &CheckedPlan, when: &When) -> bool {
        let name = &self.garden[self.ingredient].name;
        let plantings = plan.plan().plantings.iter();
        let own = plantings.filter(|p| p.ingredient == *name);
        let mut steps = own.flat_map(|p| &p.steps);
        steps.any(|s| s.kind == self.kind && same_days(&s.when, when))
    }
}

/// What comes of a start in the bed on the days of a step, if it is one.
fn start(garden: &Garden, planting: &Planting, step: &Step) -> Option<Start> {
    if StepKind::into_bed(planting.method) != Some(step.kind) {
        return None;
    }
    let as_plants = matches!(
        planting.method,
        Method::Indoor | Method::Bought | Method::Seedlings
    );
    let horizon = garden.horizon();
    let crop = &garden[garden.ingredient_named(&planting.ingredient)?].crop;
    let bed = garden.bed_with_id(&planting.places.first()?.bed)?;
    let seasons = Seasons::new(garden, crop, garden[bed].microclimate(), as_plants);
    let fates = seasons.fates(step.when.first()?);
    let median = |days: Vec<Option<usize>>| {
        let mut days: Vec<usize> = days.into_iter().map(|d| d.unwrap_or(usize::MAX)).collect();
        days.sort_unstable();
        let middle = days
            .get(days.len() / 2)
            .filter(|day| **day < horizon.days())?;
        Some(horizon.date(*middle))
    };
    let ended = |why| {
        let ended = |fate: &&Fate| fate.ripe.is_none() && fate.gone.is_some_and(|(_, w)| w == why);
        fates.iter().filter(ended).count()
    };
    Some(Start {
        years: fates.len(),
        up_years: fates.iter().filter(|fate| fate.up.is_some()).count(),
        up: median(fates.iter().map(|fate| fate.up).collect()),
        ripe: median(fates.iter().map(|fate| fate.ripe).collect()),
        frost_years: ended(Loss::Frost),
        hot_years: ended(Loss::Heat),
    })
}
