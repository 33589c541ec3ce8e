//! Reports: the range of further years, words, frosts, and whole screens of the
//! tiny garden kept as text.

mod climate;
mod crops;
mod decisions;
mod due;
mod faults;
mod figures;
mod forecast;
mod frosts;
mod grades;
pub mod hand_over;
mod how;
mod how_sure;
mod interval;
mod lists;
mod locales;
mod names;
mod no_plan;
mod places;
mod said;
mod screens;
mod short;
mod truths;
mod watering;
mod widths;
mod words;

use tureen::checker::{CheckedPlan, check};
use tureen::garden::Garden;
use tureen::page::Look;

use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

/// A page without colour.
pub fn plain(width: usize) -> Look {
    Look {
        width,
        color: false,
    }
}

/// The tiny garden with its checked plan.
pub fn tiny() -> (Garden, CheckedPlan) {
    let garden = tiny_garden();
    let plan = tiny_plan(&garden);
    let checked = check(&garden, plan).unwrap();
    (garden, checked)
}
