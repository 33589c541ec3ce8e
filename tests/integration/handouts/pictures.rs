//! The pictures, read again as drawings: everything is at its place, nothing lies on anything
//! else, nothing passes what there is, names are harmless.

mod drawing;
pub mod full;
mod hand_worked;
mod whole;

use tureen::checker::{CheckedPlan, check, promise};
use tureen::facts::life::Whose;
use tureen::garden::Garden;
use tureen::handouts::pictures::{self, Drawn};
use tureen::plan::{Plan, Planting};
use tureen::words::view::View;

use crate::support::plans::fill_in;

/// A checked plan of plantings, with amounts filled in and what it promises.
pub fn planned(garden: &Garden, mut plantings: Vec<Planting>) -> CheckedPlan {
    for planting in &mut plantings {
        fill_in(garden, planting);
    }
    let mut plan = Plan {
        plantings,
        promise: tureen::plan::Promise {
            weather_years: 0,
            whole_dish_years: 0,
            ingredients: Vec::new(),
        },
        aims: Vec::new(),
        unseen: None,
    };
    plan.promise = promise(garden, &plan);
    check(garden, plan).unwrap_or_else(|found| panic!("{found:?}"))
}

/// All pictures of a plan, with those of every grade.
fn all(view: &View<'_>) -> Vec<Drawn> {
    let grades = || view.garden.grade_positions();
    let whole = [
        pictures::timeline(view, Whose::All),
        pictures::beds(view),
        pictures::space(view),
        pictures::map(view, None),
        pictures::poster(view),
    ];
    let timelines = grades().map(|grade| pictures::timeline(view, Whose::Of(grade)));
    let maps = grades().map(|grade| pictures::map(view, Some(grade)));
    let patterns = grades().map(|grade| pictures::planting(view, grade));
    whole
        .into_iter()
        .chain(timelines)
        .chain(maps)
        .chain(patterns)
        .flatten()
        .collect()
}
