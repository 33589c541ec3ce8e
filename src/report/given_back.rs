//! What a plan gave back of the years that were possible, and what was bought with it.

use crate::checker::CheckedPlan;
use crate::explain::{GivenBack, YearsBack};
use crate::facts::compared::{Gain, gains};
use crate::plan::{Aim, AimResult};
use crate::units::{Share, rounded};

use crate::page::Page;
use crate::words::{count, list, sentence};

/// So many gains are told.
const MOST_GAINS: usize = 3;

/// What `tureen plan` adds where something was given back.
#[must_use]
pub fn given_back(checked: &CheckedPlan, back: &GivenBack) -> Page {
    let mut page = Page::new();
    page.heading("What was given back");
    page.line(&format!(
        "{}. {}",
        sentence(&years(&back.aims)),
        bought(checked, back)
    ));
    page
}

/// `one year of the whole dish (22 are possible, 21 are kept)`.
pub(super) fn years(back: &[YearsBack]) -> String {
    let one = |b: &YearsBack| {
        let of = match b.aim {
            Aim::WholeDish => "of the whole dish",
            Aim::AllIngredients => "of all ingredients, added up",
            _ => "of the most doubtful ingredient",
        };
        let n = b.best - b.kept;
        format!(
            "{} {of} ({} possible, {} kept)",
            count(n, "year"),
            b.best,
            b.kept
        )
    };
    list(&back.iter().map(one).collect::<Vec<_>>())
}

/// What the later aims have from it.
fn bought(checked: &CheckedPlan, back: &GivenBack) -> String {
    let Some(without) = &back.without else {
        return "What was bought with it was not settled in the time allowed.".to_owned();
    };
    let gains = gains(checked, without, &back.aims);
    let proved = without.plan().aims.iter().all(AimResult::proved);
    let unless = if proved {
        ""
    } else {
        " The plan that gives nothing back is the best found in the time allowed."
    };
    match gains.as_slice() {
        [] => format!("Nothing that is counted was bought with it.{unless}"),
        gains => format!(
            "Bought with it: {} (found by planning again with nothing to give back).{unless}",
            gains
                .iter()
                .take(MOST_GAINS)
                .map(what)
                .collect::<Vec<_>>()
                .join("; ")
        ),
    }
}

/// `days for which someone must be found, 5 instead of 7`.
fn what(gain: &Gain) -> String {
    let Gain { aim, with, without } = *gain;
    let name = match aim {
        Aim::AllIngredients => "ready years of all ingredients, added up",
        Aim::WholeDish => "years of the whole dish",
        Aim::LeastGrownShare => {
            return format!(
                "least part grown in a poor year, {} instead of {}",
                Share(with),
                Share(without)
            );
        }
        Aim::ExpectedAmounts => {
            return format!(
                "parts grown in an ordinary year, added up, {} instead of {}",
                Share(with),
                Share(without)
            );
        }
        Aim::MovedDates => "printed dates that move",
        Aim::MovedDays => "days by which printed dates move",
        Aim::Slack => "steps that one cancelled session would lose",
        Aim::Children => "steps not done by the children who sowed",
        Aim::UnattendedDays => "days for which someone must be found",
        Aim::Evenness => "second jobs in one session",
        _ => "weeks of waiting and sowings",
    };
    format!(
        "{name}, {} instead of {}",
        rounded(with, 0),
        rounded(without, 0)
    )
}
