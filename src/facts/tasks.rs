//! All that is done for a plan as one plain list: which step of which planting, on which days,
//! where, by whom, in how long, with how much. Every reader of dates takes it from here.

use crate::calendar::{Date, Time};
use crate::garden::{ClassAt, Ingredient, Team};
use crate::plan::{Planting, PlantingAt, Site, Step, StepAt, StepKind, Visit, When};
use crate::units::Minutes;

use super::known::Known;
use super::sowings::Sowing;
use super::things::{Thing, shared_out};

/// Who does a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Doer {
    /// A class in its session.
    Class(ClassAt),
    /// Families, in a break in which they care.
    Families,
    /// An adult of the school.
    Adult,
    /// Whoever is there, day by day.
    Anyone,
}

/// Where a task is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spot {
    /// At the seedling shelf.
    Shelf,
    /// Outdoors, near the shelf.
    NearShelf,
    /// Where the harvest dries.
    DryingPlace,
    /// On the planting's strips.
    Strips,
    /// At a patch, which has no strips.
    Patch,
}

/// A class's part of what is handed out in a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// What this class gets, a begun one counts; the parts can add up to a little more.
    pub part: u32,
    /// What all classes get together.
    pub total: u32,
    /// What it is.
    pub thing: Thing,
}

/// One of several days set aside for one harvest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Chance {
    /// Which, counted from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

/// One thing to do, by one class or one sort of people.
#[derive(Debug, Clone, PartialEq)]
pub struct Task<'a> {
    /// Which step of which planting.
    pub at: StepAt,
    /// Which of the step's visits, from 0; 0 for what is done in no session.
    pub visit: usize,
    /// What is done.
    pub kind: StepKind,
    /// To which planting.
    pub planting: &'a Planting,
    /// Its ingredient.
    pub ingredient: &'a Ingredient,
    /// Which sowing of the ingredient it is.
    pub sowing: Sowing,
    /// Who grows the planting.
    pub team: Team,
    /// Who does it.
    pub who: Doer,
    /// The day, or the first of several.
    pub from: Date,
    /// The last day.
    pub to: Date,
    /// When the class's session begins, where the project says so.
    pub begins: Option<Time>,
    /// How long the class's session is.
    pub session: Option<Minutes>,
    /// Minutes that the task takes of the session.
    pub takes: Option<Minutes>,
    /// The class's part of what is handed out.
    pub part: Option<Part>,
    /// Which of several chances to pick; `None` for all else, and where there is only one.
    pub chance: Option<Chance>,
    /// Where it is done.
    pub spot: Spot,
}

impl Doer {
    /// What tells a class that is called like the families from the families.
    #[must_use]
    pub fn key(self) -> &'static str {
        match self {
            Self::Class(_) => "class",
            Self::Families => "families",
            Self::Adult => "adult",
            Self::Anyone => "anyone",
        }
    }

    /// The class, if it is one.
    #[must_use]
    pub fn class(self) -> Option<ClassAt> {
        match self {
            Self::Class(class) => Some(class),
            Self::Families | Self::Adult | Self::Anyone => None,
        }
    }
}

impl Task<'_> {
    /// Minutes of the session that it takes; a begun minute counts.
    #[must_use]
    pub fn whole_minutes(&self) -> Option<u32> {
        self.takes
            .map(|takes| (takes.0 - 1e-9).ceil().max(0.0) as u32)
    }
}

/// All tasks of a plan, in order of time; on one day in the order of classes and plantings.
pub(super) fn tasks<'a>(known: &Known<'a>) -> Vec<Task<'a>> {
    let plantings = known.plan.numbered();
    let mut all: Vec<Task<'a>> = plantings
        .flat_map(|(at, planting)| of_planting(known, at, planting))
        .collect();
    all.sort_by_key(|task| (task.from, task.who, task.at));
    all
}

/// The tasks of one planting, in the order of its steps.
fn of_planting<'a>(known: &Known<'a>, at: PlantingAt, planting: &'a Planting) -> Vec<Task<'a>> {
    let Some(ingredient) = known.ingredient_of(planting) else {
        return Vec::new();
    };
    let grown = (ingredient, known.team_of(planting));
    let steps = planting.steps.iter().enumerate();
    steps
        .flat_map(|(step, done)| {
            let at = StepAt { planting: at, step };
            of_step(known, (at, planting, done), grown)
        })
        .collect()
}

fn of_step<'a>(
    known: &Known<'a>,
    (at, planting, step): (StepAt, &'a Planting, &Step),
    (ingredient, team): (&'a Ingredient, Team),
) -> Vec<Task<'a>> {
    let garden = known.garden;
    let task = |who: Doer, from: Date, to: Date| Task {
        at,
        visit: 0,
        kind: step.kind,
        planting,
        ingredient,
        sowing: known.sowing(at.planting),
        team,
        who,
        from,
        to,
        begins: None,
        session: None,
        takes: None,
        part: None,
        chance: chance(planting, at.step),
        spot: spot(planting, step.kind),
    };
    match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .enumerate()
            .filter_map(|(n, visit)| {
                let class = garden.class_named(&visit.class)?;
                let slot = garden.class(class).slot_on(&garden.school_year, visit.date);
                Some(Task {
                    visit: n,
                    begins: slot.at,
                    session: Some(slot.minutes),
                    takes: Some(step.minutes),
                    part: part(known, planting, step, visit, visits),
                    ..task(Doer::Class(class), visit.date, visit.date)
                })
            })
            .collect(),
        When::Families(day) => vec![task(Doer::Families, *day, *day)],
        When::Adult(day) => vec![task(Doer::Adult, *day, *day)],
        When::Daily { from, to } => vec![task(Doer::Anyone, *from, *to)],
    }
}

/// Where a step is done (hardening off and drying by common practice).
fn spot(planting: &Planting, kind: StepKind) -> Spot {
    match (kind.facts().site)(planting.method) {
        Site::Shelf => Spot::Shelf,
        Site::BesideShelf => Spot::NearShelf,
        Site::DryingPlace => Spot::DryingPlace,
        Site::Bed if planting.places.is_empty() => Spot::Patch,
        Site::Bed => Spot::Strips,
    }
}

/// Which of several picks a step is.
pub(super) fn chance(planting: &Planting, step: usize) -> Option<Chance> {
    let is_pick = |s: &&Step| s.kind.is_harvest();
    let picks = planting.steps.iter().filter(is_pick).count();
    let wanted = planting.steps.get(step).filter(is_pick).is_some() && picks > 1;
    wanted.then(|| Chance {
        number: planting.steps.iter().take(step + 1).filter(is_pick).count(),
        of: picks,
    })
}

/// A class's part of the seeds or plants, by its children.
fn part(
    known: &Known<'_>,
    planting: &Planting,
    step: &Step,
    visit: &Visit,
    visits: &[Visit],
) -> Option<Part> {
    let (total, thing) = shared_out(planting, step)?;
    let children = |name: &str| {
        let class = known.garden.class_named(name);
        class.map_or(0, |class| known.garden.class(class).children)
    };
    let all: u32 = visits.iter().map(|v| children(&v.class)).sum();
    let part = f64::from(total) * f64::from(children(&visit.class)) / f64::from(all.max(1));
    Some(Part {
        part: part.ceil() as u32,
        total,
        thing,
    })
}
