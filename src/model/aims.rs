//! The aims as objectives, and what it means to hold one.

use crate::candidates::Candidate;
use crate::garden::{Garden, IngredientAt, PrintedYears};
use crate::plan::{Aim, AimResult};

use super::program::{Program, Terms, negated};
use super::setting::Setting;
use super::solver::Objective;

/// The objective of an aim.
#[must_use]
pub fn objective(aim: Aim, setting: &Setting<'_>) -> Objective {
    let Setting {
        garden,
        candidates,
        columns,
    } = setting;
    let per_candidate = |weight: fn(&Candidate) -> u32| -> Terms {
        let made = columns.made.iter().zip(&candidates.all);
        let weighted = made.map(|(col, c)| (*col, f64::from(weight(c))));
        weighted.filter(|(_, weight)| *weight > 0.0).collect()
    };
    let terms = match aim {
        Aim::InThePot => columns.in_pot.iter().map(|col| (*col, 1.0)).collect(),
        Aim::WorstIngredient => vec![(columns.worst_years, 1.0)],
        Aim::AllIngredients => garden
            .ingredient_positions()
            .flat_map(|at: IngredientAt| columns.ready_years(candidates, at))
            .collect(),
        Aim::WholeDish => vec![(columns.dish_years, 1.0)],
        Aim::MovedDates => per_candidate(|c| c.moves.dates),
        Aim::MovedDays => per_candidate(|c| c.moves.days),
        Aim::LeastGrownShare => vec![(columns.least_share, 1.0)],
        Aim::ExpectedAmounts => columns
            .expected_share
            .iter()
            .map(|col| (*col, 1.0))
            .collect(),
        Aim::Slack => per_candidate(|c| c.fragile),
        Aim::Children => per_candidate(|c| c.by_others),
        Aim::UnattendedDays => {
            let gaps = garden.gaps();
            let days = gaps.iter().map(|gap| f64::from(gap.unattended_days()));
            columns.gap_used.iter().copied().zip(days).collect()
        }
        Aim::Evenness => columns
            .second_steps
            .values()
            .map(|col| (*col, 1.0))
            .collect(),
        Aim::Tidiness => per_candidate(|c| c.idle_weeks + 1),
    };
    Objective {
        terms,
        maximise: aim.more_is_better(),
    }
}

/// Holds an aim at a value, less what it may give back.
pub fn hold(program: &mut Program, aim: Aim, objective: Objective, value: f64, concession: f64) {
    let slack = if aim.is_whole() { 0.0 } else { 1e-6 };
    if objective.maximise {
        program.at_most(negated(objective.terms), -(value - concession) + slack);
    } else {
        program.at_most(objective.terms, value + concession + slack);
    }
}

/// How many of the weather years that an aim has reached may be given back to later ones. Where the season is under
/// way they are no more than what the plan as it was printed lacks of them: else each time of planning again would
/// give back a little more.
#[must_use]
pub fn concession(garden: &Garden, result: &AimResult, years: u32) -> f64 {
    let printed = |has: fn(&PrintedYears) -> u32| {
        let season = garden.season.as_ref();
        let lacks = season.map(|s| (result.value - f64::from(has(&s.years))).max(0.0));
        lacks.map_or(f64::from(years), |lacks| lacks.min(f64::from(years)))
    };
    match result.aim {
        Aim::WorstIngredient => printed(|years| years.worst),
        Aim::AllIngredients => printed(|years| years.all),
        Aim::WholeDish => printed(|years| years.dish),
        _ => 0.0,
    }
}
