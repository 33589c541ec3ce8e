//! Names, numbers, amounts and aims that are not what the plan says.

use crate::checker::{AimFault, Difference, Fault, Named, Quantity, Subject};
use crate::plan::Aim;
use crate::units::{Kilograms, rounded};

use super::references::{planting, step};
use super::told::Told;
use crate::words::{Words, list, sentence as capital};

/// The words of a fault of this group.
pub(super) fn told(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::Unknown { kind, name } => Told::alone(format!(
            "the project file knows no {} \"{name}\"",
            named(*kind)
        )),
        Fault::Number {
            of,
            what,
            expected,
            got,
        } => number(of, *what, [*expected, *got], words),
        Fault::PromiseList { expected, got } => Told::alone(format!(
            "the plan promises {}; the dish is {}",
            if got.is_empty() {
                "nothing".to_owned()
            } else {
                list(got)
            },
            list(expected)
        )),
        Fault::TooLittle {
            ingredient,
            expected,
            got,
        } => Told::of(
            ingredient,
            format!(
                "{} in a poor year; its least share is {}",
                words.exact_mass(Kilograms(*got)),
                words.exact_mass(Kilograms(*expected))
            ),
        ),
        Fault::TooRarely {
            of,
            expected,
            got,
            years,
        } => Told::of(
            &subject(of),
            format!(
                "it is ready in {got} of {years} weather years, and what is ready in fewer than \
                 {expected} is not sown"
            ),
        ),
        Fault::Aim { aim, why } => Told::alone(aim_fault(*aim, *why)),
        _ => return None,
    };
    Some(told)
}

pub(super) fn named(kind: Named) -> &'static str {
    match kind {
        Named::Bed => "bed",
        Named::Class => "class",
        Named::Grade => "grade",
        Named::Ingredient => "ingredient",
    }
}

fn subject(of: &Subject) -> String {
    match of {
        Subject::Planting(p) => planting(p),
        Subject::Step(s) => step(s),
        Subject::Ingredient(name) => name.clone(),
        Subject::Dish => "the whole dish".to_owned(),
    }
}

fn number(of: &Subject, what: Quantity, figures: [f64; 2], words: Words) -> Told {
    let [expected, got] = figures.map(|figure| in_unit(what, figure, words));
    Told::of(
        &subject(of),
        format!(
            "in {} the plan says {}, right is {}",
            quantity(what, words),
            figure(got),
            figure(expected)
        ),
    )
}

/// A figure that is another now.
pub(super) fn difference(difference: &Difference, words: Words) -> String {
    let Difference { of, what, was, is } = difference;
    let [was, is] = [was, is].map(|value| figure(in_unit(*what, *value, words)));
    let name = capital(&subject(of));
    format!("{name}, {}: {was} -> {is}.", quantity(*what, words))
}

/// A figure in the reader's unit.
fn in_unit(what: Quantity, value: f64, words: Words) -> f64 {
    match what {
        Quantity::LowKilograms | Quantity::ExpectedKilograms => words.mass_unit(Kilograms(value)).0,
        _ => value,
    }
}

/// A whole number as such, any other with two digits.
fn figure(value: f64) -> String {
    if (value - value.round()).abs() < 1e-9 {
        rounded(value, 0)
    } else {
        rounded(value, 2)
    }
}

fn quantity(what: Quantity, words: Words) -> String {
    let unit = words.mass_unit(Kilograms(0.0)).1;
    let text = match what {
        Quantity::Plants => "plants",
        Quantity::Seeds => "seeds (pieces, bought plants)",
        Quantity::FlatsSown => "flats before potting up",
        Quantity::FlatsKept => "flats after potting up",
        Quantity::Minutes => "minutes",
        Quantity::LowKilograms => return format!("{unit} in a poor year"),
        Quantity::ExpectedKilograms => return format!("{unit} in an ordinary year"),
        Quantity::Plantings => "sowings",
        Quantity::ReadyYears => "ready years",
        Quantity::WeatherYears => "weather years",
    };
    text.to_owned()
}

fn aim_fault(aim: Aim, why: AimFault) -> String {
    let name = aim_name(aim);
    match why {
        AimFault::Order => format!("the aim \"{name}\" stands twice or out of its order"),
        AimFault::ValueBeyondBound { value, bound } => format!(
            "the aim \"{name}\" is said to reach {}, which is better than the best that is said \
             to be possible, {}",
            figure(value),
            figure(bound)
        ),
        AimFault::PlanBeyondBound { reached, bound } => format!(
            "the plan reaches {} in the aim \"{name}\", more than the best that is said to be \
             possible, {}",
            figure(reached),
            figure(bound)
        ),
        AimFault::Value { expected, got } => format!(
            "the plan says {} for the aim \"{name}\"; it reaches {}",
            figure(got),
            figure(expected)
        ),
    }
}

fn aim_name(aim: Aim) -> &'static str {
    match aim {
        Aim::InThePot => "ingredients in the pot",
        Aim::WorstIngredient => "years of the most doubtful ingredient",
        Aim::AllIngredients => "ready years of all ingredients",
        Aim::WholeDish => "years of the whole dish",
        Aim::MovedDates => "dates that move",
        Aim::MovedDays => "days by which dates move",
        Aim::LeastGrownShare => "least share grown in a poor year",
        Aim::ExpectedAmounts => "shares grown in an ordinary year",
        Aim::Slack => "steps that one cancelled session would lose",
        Aim::Children => "steps not done by the children who sowed",
        Aim::UnattendedDays => "days for which someone must be found",
        Aim::Evenness => "second jobs in one session",
        Aim::Tidiness => "waiting seedlings and sowings",
    }
}
