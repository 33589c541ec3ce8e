//! What each aim counts, and how much it has.

use crate::garden::Garden;
use crate::plan::Aim;
use crate::units::{Share, rounded};

/// What an aim counts; `years` weather years.
#[must_use]
pub fn name(garden: &Garden, years: usize, aim: Aim) -> String {
    let ingredients = garden.ingredients.len();
    match aim {
        Aim::InThePot => format!("Ingredients in the pot, of {ingredients}"),
        Aim::WorstIngredient => {
            format!("Years in which the most doubtful ingredient is ready, of {years}")
        }
        Aim::AllIngredients => format!(
            "Ready years of all ingredients added up, of {}",
            years * ingredients
        ),
        Aim::WholeDish => format!("Years in which the whole dish is ready, of {years}"),
        Aim::MovedDates => "Dates that move of those that were printed".to_owned(),
        Aim::MovedDays => "Days by which they move, added up".to_owned(),
        Aim::LeastGrownShare => {
            "Least part of its target that any ingredient reaches in a poor year".to_owned()
        }
        Aim::ExpectedAmounts => format!(
            "Parts of their targets that the ingredients reach in an ordinary year, added up, \
             of {ingredients}"
        ),
        Aim::Slack => "Steps that one cancelled session would lose".to_owned(),
        Aim::Children => {
            "Sowing, potting up, planting, thinning or picking not done by the children who sowed"
                .to_owned()
        }
        Aim::UnattendedDays => "Days for which someone must be found".to_owned(),
        Aim::Evenness => "Sessions' second jobs (one class, two jobs on one day)".to_owned(),
        Aim::Tidiness => {
            "Weeks that seedlings or the harvest wait, and sowings, added up".to_owned()
        }
    }
}

/// Its value.
#[must_use]
pub fn figure(aim: Aim, value: f64) -> String {
    match aim {
        Aim::LeastGrownShare => Share(value).to_string(),
        Aim::ExpectedAmounts => rounded(value, 1),
        _ => rounded(value.abs(), 0),
    }
}
