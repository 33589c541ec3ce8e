//! What planning again changes of a plan that was printed: dates that move, with the entry of the diary from which
//! that follows, and ready years.

use std::collections::BTreeSet;

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::garden::Method;
use crate::pipeline::Unfolded;
use crate::plan::{By, Plan, Planting, StepKind};
use crate::project::diary::{Entry, Happened};

/// Something that changes of an ingredient.
#[derive(Debug, Clone, PartialEq)]
pub struct Change<'a> {
    /// Of which ingredient.
    pub ingredient: &'a str,
    /// The id of the grade that grows it now, or did.
    pub grades: &'a [String],
    /// What changes.
    pub moved: Moved,
    /// The last entry about the ingredient that changes something.
    pub cause: Option<&'a Entry>,
}

/// What changes of a planting.
#[derive(Debug, Clone, PartialEq)]
pub enum Moved {
    /// It is grown in another way: sown anew, or bought as plants.
    Way {
        /// The way that was printed.
        was: Method,
        /// The way now.
        is: Method,
    },
    /// Steps move, come or fall away, or other classes do them.
    Days {
        /// How it is grown where the step stands.
        method: Method,
        /// What is done.
        kind: StepKind,
        /// The days as they were printed, in order.
        was: Vec<Date>,
        /// The days as they are now.
        is: Vec<Date>,
    },
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

/// All that changes, in the order of the plan.
#[must_use]
pub fn changes<'a>(unfolded: &'a Unfolded, now: &'a Plan) -> Vec<Change<'a>> {
    let mut all = Vec::new();
    for (was, is) in pairs(&unfolded.before, now) {
        let Some(any) = is.or(was) else { continue };
        let mut add = |moved| {
            all.push(Change {
                ingredient: &any.ingredient,
                grades: &any.grades,
                moved,
                cause: cause(unfolded, &any.ingredient),
            });
        };
        if let (Some(was), Some(is)) = (was, is)
            && was.method != is.method
        {
            let (was, is) = (was.method, is.method);
            add(Moved::Way { was, is });
        }
        for kind in StepKind::ALL.iter().filter(|kind| !kind.is_span()) {
            let (before, after) = (dates(was, *kind), dates(is, *kind));
            // A step that falls away is called as it was printed.
            let of = if after.is_empty() { was } else { is };
            if let Some(of) = of
                && before != after
            {
                add(Moved::Days {
                    method: of.method,
                    kind: *kind,
                    was: days(&before),
                    is: days(&after),
                });
            }
        }
    }
    all
}

/// Ready years that change, the whole dish first, which is always told.
#[must_use]
pub fn years<'a>(unfolded: &'a Unfolded, now: &'a CheckedPlan) -> Vec<Years<'a>> {
    let (was, is) = (&unfolded.promise, &now.plan().promise);
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
fn dates(planting: Option<&Planting>, kind: StepKind) -> BTreeSet<(By<'_>, Date)> {
    let steps = planting.into_iter().flat_map(|p| p.steps_of(kind));
    steps.flat_map(|step| step.when.turns()).collect()
}

/// The days alone, each once.
fn days(dates: &BTreeSet<(By<'_>, Date)>) -> Vec<Date> {
    let days: BTreeSet<Date> = dates.iter().map(|(_, day)| *day).collect();
    days.into_iter().collect()
}

fn cause<'a>(unfolded: &'a Unfolded, name: &str) -> Option<&'a Entry> {
    let about = |entry: &&Entry| entry.what.ingredient() == Some(name);
    let of_all = |entry: &&Entry| {
        matches!(
            entry.what,
            Happened::Closed { .. } | Happened::NoLesson { .. }
        )
    };
    let entries = || unfolded.counted.iter().rev().map(|(_, entry)| entry);
    entries().find(about).or_else(|| entries().find(of_all))
}
