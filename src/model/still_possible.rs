//! Which candidates can still be part of a plan that keeps the aims so far: what they bring,
//! together with the best that their partners may bring, reaches what is held.

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
    held: &[AimResult],
    concession_years: u32,
) -> Candidates {
    let held_at = |aim: Aim| held.iter().find(|r| r.aim == aim);
    let given_back = |r: &AimResult| concession(garden, r, concession_years);
    let least = |aim: Aim| held_at(aim).map_or(0.0, |r| r.value - given_back(r));
    let most = |aim: Aim| held_at(aim).map_or(f64::INFINITY, |r| r.value);
    let dates = Least::of(garden, candidates, |c| c.moves.dates);
    let days = Least::of(garden, candidates, |c| c.moves.days);
    let years = Years::of(garden, candidates);
    let slack = Least::of(garden, candidates, |c| c.fragile);
    let children = Least::of(garden, candidates, |c| c.by_others);
    let gaps = garden.gaps();
    let unattended = |c: &Candidate| {
        c.gaps
            .iter()
            .map(|g| gaps[*g].unattended_days())
            .sum::<u32>()
    };
    candidates.only(|c: &Candidate| {
        let once = garden[c.ingredient].most_plantings() == 1;
        let target = garden[c.ingredient].target(garden.feast.portions);
        let greatest_share = c.amounts.low * f64::from(c.amounts.blocks.1) / target;
        // Of several sowings another may bring what this one lacks, so only a single one is judged by years.
        let in_time = !once
            || f64::from(c.ready.len()) >= least(Aim::WorstIngredient)
                && f64::from(years.all_with(c)) >= least(Aim::AllIngredients)
                && f64::from(years.dish_with(c)) >= least(Aim::WholeDish)
                && greatest_share >= least(Aim::LeastGrownShare) - 1e-6;
        in_time
            && f64::from(dates.with(c, c.moves.dates)) <= most(Aim::MovedDates)
            && f64::from(days.with(c, c.moves.days)) <= most(Aim::MovedDays)
            && f64::from(slack.with(c, c.fragile)) <= most(Aim::Slack)
            && f64::from(children.with(c, c.by_others)) <= most(Aim::Children)
            && f64::from(unattended(c)) <= most(Aim::UnattendedDays)
    })
}

/// The best ready years of each ingredient.
pub struct Years {
    ever: Vec<YearSet>,
    most: Vec<u32>,
}

impl Years {
    /// Of all candidates of a garden.
    #[must_use]
    pub fn of(garden: &Garden, candidates: &Candidates) -> Self {
        let none = YearSet::of(candidates.years, |_| false);
        let ever: Vec<YearSet> = garden
            .ingredient_positions()
            .map(|at| of(candidates, at).fold(none.clone(), |ever, (_, c)| ever.or(&c.ready)))
            .collect();
        let most = garden
            .ingredient_positions()
            .map(|at| match garden[at].most_plantings() {
                1 => of(candidates, at)
                    .map(|(_, c)| c.ready.len())
                    .max()
                    .unwrap_or(0),
                // Several sowings may be ready in different years, so at best in all in which any is.
                _ => ever[at.0].len(),
            })
            .collect();
        Self { ever, most }
    }

    /// Most ready years of the ingredient that has fewest.
    #[must_use]
    pub fn most_of_worst(&self) -> u32 {
        self.most.iter().copied().min().unwrap_or(0)
    }

    /// Most ready years of all ingredients together.
    #[must_use]
    pub fn most_of_all(&self) -> u32 {
        self.most.iter().sum()
    }

    /// Most years of the whole dish.
    #[must_use]
    pub fn most_of_dish(&self) -> u32 {
        let ready = self.ever.iter().cloned();
        let dish = ready.reduce(|dish, ready| dish.and(&ready));
        dish.map_or(0, |dish| dish.len())
    }

    /// Most ready years of all ingredients together with a planting.
    fn all_with(&self, c: &Candidate) -> u32 {
        self.most.iter().sum::<u32>() - self.most[c.ingredient.0] + c.ready.len()
    }

    /// Most years of the whole dish with a planting.
    fn dish_with(&self, c: &Candidate) -> u32 {
        let others = self
            .ever
            .iter()
            .enumerate()
            .filter(|(at, _)| *at != c.ingredient.0);
        others
            .fold(c.ready.clone(), |dish, (_, ready)| dish.and(ready))
            .len()
    }
}

/// The least that each ingredient adds to a sum over plantings.
struct Least {
    of_ingredient: Vec<u32>,
}

impl Least {
    fn of(garden: &Garden, candidates: &Candidates, weight: impl Fn(&Candidate) -> u32) -> Self {
        let least = |at: IngredientAt| {
            of(candidates, at)
                .map(|(_, c)| weight(c))
                .min()
                .unwrap_or(0)
        };
        Self {
            of_ingredient: garden.ingredient_positions().map(least).collect(),
        }
    }

    /// The least sum with a planting of a weight.
    fn with(&self, c: &Candidate, weight: u32) -> u32 {
        self.of_ingredient.iter().sum::<u32>() - self.of_ingredient[c.ingredient.0] + weight
    }
}
