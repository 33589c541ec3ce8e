//! Where the time ran out: that it did, and what more time could bring at most.

use std::time::Duration;

use crate::explain::Trial;
use crate::facts::verdict::{most_years, open_years};
use crate::pipeline::NoPlan;
use crate::plan::AimResult;

use crate::page::Page;
use crate::words::view::View;
use crate::words::{count, list};

/// The head of a plan whose search was ended; nothing where all was proved all the same.
pub(super) fn of_a_plan(view: &View<'_>, limit: Duration) -> Option<String> {
    let ready = view.replay.whole_dish_years();
    if view.plan.aims.iter().all(AimResult::proved) {
        return None;
    }
    let most = most_years(&view.plan.aims, view.years());
    let more = match most {
        Some(most) if most > ready => format!(
            "More time could bring at most {most} of {} years of the whole dish instead of {ready}.",
            view.years()
        ),
        _ => "More time could bring no more years of the whole dish, but better amounts or less \
              that hangs on a single session."
            .to_owned(),
    };
    Some(format!(
        "Time ran out after {}, before the search was done. {more} (--time-limit gives it more.)",
        seconds(limit)
    ))
}

/// `10 seconds`.
pub(super) fn seconds(limit: Duration) -> String {
    count(limit.as_secs(), "second")
}

/// Of several trials, those whose search was ended early: the name of each, with the most years
/// of the whole dish that are possible.
pub(super) fn of_trials<'a>(trials: impl Iterator<Item = (String, &'a Trial)>, page: &mut Page) {
    let open: Vec<String> = trials
        .filter_map(|(name, trial)| Some(format!("{name} ({})", open(trial)?)))
        .collect();
    if !open.is_empty() {
        page.paragraph(&format!(
            "Time ran out: not searched to the end, so that more may be possible: {}. \
             --time-limit gives more time.",
            list(&open)
        ));
    }
}

/// What is open about a trial; `None` if nothing is about its years.
fn open(trial: &Trial) -> Option<String> {
    let checked = match &trial.outcome {
        Ok(checked) => checked,
        Err(NoPlan::OutOfTime) => return Some("no plan found yet".to_owned()),
        Err(_) => return None,
    };
    let most = open_years(&checked.plan().aims, checked.replay().years.len())?;
    Some(format!("at most {most}"))
}
