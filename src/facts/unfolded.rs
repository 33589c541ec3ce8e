//! What planning again changes of a plan that was printed: dates that move, with the entry of the diary from which
//! that follows, and ready years.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::garden::Method;
use crate::pipeline::Unfolded;
use crate::plan::{Plan, Planting, StepKind, When};
use crate::project::diary::{Entry, Happened};

/// First and last day of the steps of a kind.
pub type Days = (Date, Date);

/// Days of a kind of step that move, come or fall away.
#[derive(Debug, Clone, PartialEq)]
pub struct Change<'a> {
    /// Of which ingredient.
    pub ingredient: &'a str,
    /// The id of the grade that does it now, or did.
    pub grade: &'a str,
    /// What is done.
    pub kind: StepKind,
    /// The days as they were printed.
    pub was: Option<Days>,
    /// The days as they are now.
    pub is: Option<Days>,
    /// The last entry about the ingredient that changes something.
    pub cause: Option<&'a Entry>,
}

/// Another way of growing an ingredient: sown anew, or bought as plants.
#[derive(Debug, Clone, PartialEq)]
pub struct OtherWay<'a> {
    /// The ingredient.
    pub ingredient: &'a str,
    /// The id of the grade that grows it now.
    pub grade: &'a str,
    /// The way that was printed.
    pub was: Method,
    /// The way now.
    pub is: Method,
    /// The last entry about the ingredient that changes something.
    pub cause: Option<&'a Entry>,
}

/// Ready years in the plan before and now.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Years<'a> {
    /// The ingredient; `None` for the whole dish.
    pub ingredient: Option<&'a str>,
    /// In the plan before.
    pub was: u32,
    /// Now.
    pub is: u32,
}

/// All days that change, in the order of the plan.
#[must_use]
pub fn changes<'a>(unfolded: &'a Unfolded, now: &'a Plan) -> Vec<Change<'a>> {
    let mut all = Vec::new();
    for (was, is) in pairs(&unfolded.before, now) {
        let Some(any) = is.or(was) else { continue };
        for kind in StepKind::ALL.iter().filter(|kind| !kind.is_span()) {
            if was.map(|p| dates(p, *kind)) == is.map(|p| dates(p, *kind)) {
                continue;
            }
            let (was, is) = (span(was, *kind), span(is, *kind));
            if was.or(is).is_some() {
                all.push(Change {
                    ingredient: &any.ingredient,
                    grade: &any.grade,
                    kind: *kind,
                    was,
                    is,
                    cause: cause(unfolded, &any.ingredient),
                });
            }
        }
    }
    all
}

/// All plantings that are grown in another way, in the order of the plan.
#[must_use]
pub fn other_ways<'a>(unfolded: &'a Unfolded, now: &'a Plan) -> Vec<OtherWay<'a>> {
    let both = pairs(&unfolded.before, now).into_iter();
    let both = both.filter_map(|(was, is)| Some((was?, is?)));
    let other = both.filter(|(was, is)| was.method != is.method);
    other
        .map(|(was, is)| OtherWay {
            ingredient: &is.ingredient,
            grade: &is.grade,
            was: was.method,
            is: is.method,
            cause: cause(unfolded, &is.ingredient),
        })
        .collect()
}

/// Ready years that change, the whole dish first, which is always told.
#[must_use]
pub fn years<'a>(unfolded: &'a Unfolded, now: &'a CheckedPlan) -> Vec<Years<'a>> {
    let (was, is) = (&unfolded.before.promise, &now.plan().promise);
    let dish = Years {
        ingredient: None,
        was: was.whole_dish_years,
        is: is.whole_dish_years,
    };
    let each = was.ingredients.iter().filter_map(|was| {
        let mut now = is.ingredients.iter();
        let is = now.find(|is| is.ingredient == was.ingredient)?;
        Some(Years {
            ingredient: Some(&was.ingredient),
            was: was.ready_years,
            is: is.ready_years,
        })
    });
    let changed = each.filter(|years| years.was != years.is);
    [dish].into_iter().chain(changed).collect()
}

/// A planting before, and now.
type Pair<'a> = (Option<&'a Planting>, Option<&'a Planting>);

/// Plantings that are the same: those that began on the same days, then the others of an ingredient in order.
fn pairs<'a>(before: &'a Plan, now: &'a Plan) -> Vec<Pair<'a>> {
    let mut left: Vec<&Planting> = before.plantings.iter().collect();
    let begins = |p: &Planting| p.steps.first().map(|step| step.when.clone());
    let mut pairs: Vec<Pair<'_>> = Vec::new();
    for planting in &now.plantings {
        let same =
            |p: &&Planting| p.ingredient == planting.ingredient && begins(p) == begins(planting);
        let at = left.iter().position(same);
        pairs.push((at.map(|at| left.remove(at)), Some(planting)));
    }
    for (was, is) in &mut pairs {
        let Some(planting) = is.filter(|_| was.is_none()) else {
            continue;
        };
        let at = left
            .iter()
            .position(|p| p.ingredient == planting.ingredient);
        *was = at.map(|at| left.remove(at));
    }
    pairs.extend(left.into_iter().map(|gone| (Some(gone), None)));
    pairs
}

/// Who comes on which days for a kind of step.
fn dates(planting: &Planting, kind: StepKind) -> BTreeSet<(String, Date)> {
    let of = |when: &When| match when {
        When::Sessions(visits) => {
            let visits = visits.iter().map(|visit| (visit.class.clone(), visit.date));
            visits.collect::<Vec<_>>()
        }
        When::Families(day) | When::Adult(day) => vec![(String::new(), *day)],
        When::Daily { .. } => Vec::new(),
    };
    planting
        .steps_of(kind)
        .flat_map(|step| of(&step.when))
        .collect()
}

fn span(planting: Option<&Planting>, kind: StepKind) -> Option<Days> {
    let dates = dates(planting?, kind);
    let days = || dates.iter().map(|(_, day)| *day);
    Some((days().min()?, days().max()?))
}

fn cause<'a>(unfolded: &'a Unfolded, name: &str) -> Option<&'a Entry> {
    let about = |entry: &&Entry| match &entry.what {
        Happened::Done { ingredient, .. }
        | Happened::Missed { ingredient, .. }
        | Happened::Up { ingredient, .. }
        | Happened::Lost { ingredient, .. } => ingredient == name,
        Happened::Weather { .. } | Happened::Words(_) | Happened::TakenBack(_) => false,
    };
    let mut entries = unfolded.counted.iter().rev().map(|(_, entry)| entry);
    entries.find(about)
}
