//! All that is done for a plan as one plain list: which step of which planting, on which days,
//! by whom, in how long, with how much. Every reader of dates takes it from here.

use crate::calendar::{Date, Time};
use crate::checker::CheckedPlan;
use crate::garden::{ClassAt, Garden, GradeAt, Ingredient};
use crate::plan::{Planting, PlantingAt, Site, Step, StepAt, StepKind, Visit, When};
use crate::units::Minutes;

use super::view::View;
use super::words::count;
use super::{cautions, places, step_words, steps, timeline};

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

/// A class's part of what is handed out in a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Part {
    /// What this class gets, a begun one counts; the parts can add up to a little more.
    pub part: u32,
    /// What all classes get together.
    pub total: u32,
    /// What it is: `seed`, `seed piece`, `bought plant`, `plant`.
    pub thing: &'static str,
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
pub struct Task {
    /// Which step of which planting.
    pub at: StepAt,
    /// Which of the step's visits, from 0; 0 for what is done in no session.
    pub visit: usize,
    /// What is done.
    pub kind: StepKind,
    /// The same in words: `Sow indoors`.
    pub name: &'static str,
    /// The ingredient's name.
    pub ingredient: String,
    /// Which sowing of the ingredient, counted from 1.
    pub sowing: usize,
    /// How many sowings it has.
    pub sowings: usize,
    /// `Sow in bed: carrot, second sowing`.
    pub title: String,
    /// The grade that grows the planting.
    pub grade: GradeAt,
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
    /// Where it is done: at the shelf, where the harvest dries, else where the planting stands;
    /// empty for a patch.
    pub place: String,
    /// The caution that goes with the ingredient.
    pub caution: Option<String>,
}

impl Task {
    /// Who does it: a class's name, `families`, `an adult`, `whoever is there`.
    #[must_use]
    pub fn who(&self, garden: &Garden) -> String {
        match self.who {
            Doer::Class(class) => garden.class(class).name.clone(),
            Doer::Families => "families".to_owned(),
            Doer::Adult => "an adult".to_owned(),
            Doer::Anyone => "whoever is there".to_owned(),
        }
    }

    /// Minutes of the session that it takes; a begun minute counts.
    #[must_use]
    pub fn whole_minutes(&self) -> Option<u32> {
        self.takes
            .map(|takes| (takes.0 - 1e-9).ceil().max(0.0) as u32)
    }
}

impl Part {
    /// `217 seeds`, or `about 109 of 217 seeds` where it is not all.
    #[must_use]
    pub fn words(&self) -> String {
        let total = count(self.total, self.thing);
        if self.part >= self.total {
            total
        } else {
            format!("about {} of {total}", self.part)
        }
    }
}

/// All tasks of a plan, in order of time; on one day in the order of classes and plantings.
#[must_use]
pub fn tasks(garden: &Garden, checked: &CheckedPlan) -> Vec<Task> {
    let view = View::new(garden, checked);
    let mut all: Vec<Task> = view
        .plan
        .numbered()
        .flat_map(|(at, planting)| of_planting(&view, at, planting))
        .collect();
    all.sort_by_key(|task| (task.from, task.who, task.at));
    all
}

/// The tasks of one planting, in the order of its steps.
pub(super) fn of_planting(view: &View<'_>, at: PlantingAt, planting: &Planting) -> Vec<Task> {
    let known = view.ingredient_of(planting).zip(view.grade_of(planting));
    let Some((ingredient, grade)) = known else {
        return Vec::new();
    };
    let steps = planting.steps.iter().enumerate();
    steps
        .flat_map(|(step, done)| {
            let at = StepAt { planting: at, step };
            of_step(view, (at, planting, done), ingredient, grade)
        })
        .collect()
}

fn of_step(
    view: &View<'_>,
    (at, planting, step): (StepAt, &Planting, &Step),
    ingredient: &Ingredient,
    grade: GradeAt,
) -> Vec<Task> {
    let plantings = &view.plan.plantings;
    let same = |p: &&Planting| p.ingredient == planting.ingredient;
    let name = step_words::name(planting.method, step.kind);
    let which = timeline::sowing(view, planting).map_or_else(String::new, |w| format!(", {w}"));
    let task = |who: Doer, from: Date, to: Date| Task {
        at,
        visit: 0,
        kind: step.kind,
        name,
        ingredient: ingredient.name.clone(),
        sowing: plantings
            .iter()
            .take(at.planting.number())
            .filter(same)
            .count(),
        sowings: plantings.iter().filter(same).count(),
        title: format!("{name}: {}{which}", ingredient.name),
        grade,
        who,
        from,
        to,
        begins: None,
        session: None,
        takes: None,
        part: None,
        chance: chance(planting, at.step),
        place: place(view, planting, step.kind),
        caution: cautions::of(ingredient),
    };
    match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .enumerate()
            .filter_map(|(n, visit)| {
                let class = view.garden.class_named(&visit.class)?;
                let slot = view.garden.class(class);
                let slot = slot.slot_on(&view.garden.school_year, visit.date);
                Some(Task {
                    visit: n,
                    begins: slot.at,
                    session: Some(slot.minutes),
                    takes: Some(step.minutes),
                    part: part(view, planting, step, visit, visits),
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
fn place(view: &View<'_>, planting: &Planting, kind: StepKind) -> String {
    match (kind.facts().site)(planting.method) {
        Site::Shelf => "seedling shelf".to_owned(),
        Site::BesideShelf => "outdoors, near the seedling shelf".to_owned(),
        Site::DryingPlace => "a dry, airy place".to_owned(),
        Site::Bed => places::in_words(view.garden, &planting.places),
    }
}

/// Which of several picks a step is.
fn chance(planting: &Planting, step: usize) -> Option<Chance> {
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
    view: &View<'_>,
    planting: &Planting,
    step: &Step,
    visit: &Visit,
    visits: &[Visit],
) -> Option<Part> {
    let (total, thing) = steps::counted(planting, step)?;
    let children = |name: &str| {
        let class = view.garden.class_named(name);
        class.map_or(0, |class| view.garden.class(class).children)
    };
    let all: u32 = visits.iter().map(|v| children(&v.class)).sum();
    let part = f64::from(total) * f64::from(children(&visit.class)) / f64::from(all.max(1));
    Some(Part {
        part: part.ceil() as u32,
        total,
        thing,
    })
}
