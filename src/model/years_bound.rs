//! Which candidates can still be part of a plan that keeps the aims about years: their own
//! ready years, together with the best that their partners may add, reach what is held.

use crate::candidates::{Candidate, Candidates, YearSet};
use crate::garden::{Garden, IngredientAt};
use crate::plan::{Aim, AimResult};

use super::aims::concession;
use super::columns::of;

/// The candidates that may still be made.
#[must_use]
pub fn still_possible(
    garden: &Garden,
    candidates: &Candidates,
    years: &[AimResult],
    concession_years: u32,
) -> Candidates {
    let held = |aim: Aim| {
        let result = years.iter().find(|r| r.aim == aim);
        result.map_or(0.0, |r| r.value - concession(aim, concession_years))
    };
    let ever: Vec<YearSet> = garden
        .ingredient_positions()
        .map(|at| ever_ready(candidates, at))
        .collect();
    let most: Vec<u32> = garden
        .ingredient_positions()
        .map(|at| match garden[at].most_plantings() {
            1 => of(candidates, at)
                .map(|(_, c)| c.ready.len())
                .max()
                .unwrap_or(0),
            _ => ever[at.0].len(),
        })
        .collect();
    candidates.only(|c: &Candidate| {
        if garden[c.ingredient].most_plantings() > 1 {
            return true;
        }
        let own = c.ready.len();
        let all: u32 = most.iter().sum::<u32>() - most[c.ingredient.0] + own;
        let dish = ever
            .iter()
            .enumerate()
            .filter(|(at, _)| *at != c.ingredient.0)
            .fold(c.ready.clone(), |dish, (_, ready)| dish.and(ready));
        f64::from(own) >= held(Aim::WorstIngredient)
            && f64::from(all) >= held(Aim::AllIngredients)
            && f64::from(dish.len()) >= held(Aim::WholeDish)
    })
}

/// The years in which some candidate of an ingredient is ready.
fn ever_ready(candidates: &Candidates, at: IngredientAt) -> YearSet {
    let none = YearSet::of(candidates.years, |_| false);
    of(candidates, at).fold(none, |ever, (_, c)| ever.or(&c.ready))
}
