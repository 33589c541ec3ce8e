//! The way from a garden to a checked plan: decide, check, count what it promises; or read what was saved.

mod decide;
mod in_turn;
mod season;
mod unfold;

use std::path::Path;
use std::thread;

use crate::checker::CheckedPlan;
use crate::disk;
use crate::garden::Garden;
use crate::model::Options;
use crate::plan::Plan;
use crate::plan::saved::season::Season;
use crate::plan::saved::{self, SavedError, SavedPlan, Since};

pub use decide::{NoPlan, decide, decide_where, decide_with_programs};
pub use in_turn::is_counted_in_turn;
pub use season::in_season;
pub use unfold::{Unfolded, unfold};

/// Decides a plan, has it checked, and counts what it promises on years that it was not chosen on.
///
/// # Errors
/// Why there is none.
pub fn plan(garden: &Garden, options: &Options) -> Result<CheckedPlan, NoPlan> {
    let checked = decide(garden, &options_of_search(garden, options))?;
    Ok(counted(garden, options, checked, side_by_side()))
}

/// So many plans of one record are made side by side, for each takes some twenty megabytes.
const AT_ONCE: usize = 2;

/// How many threads `counted` may have where nothing else is done.
#[must_use]
pub fn side_by_side() -> usize {
    thread::available_parallelism().map_or(1, |cores| AT_ONCE.min(cores.get()))
}

/// The options of the search for the plan itself: on a record half of the time is for the plans that
/// tell what it promises. What the search leaves over is theirs, too.
#[must_use]
pub fn options_of_search(garden: &Garden, options: &Options) -> Options {
    match is_counted_in_turn(garden) {
        true => Options {
            deadline: options.deadline.shared_by(2),
            ..*options
        },
        false => *options,
    }
}

/// Counts what a plan that was made with these options promises, with so many threads. On a record that takes
/// as many further plans as it has parts; where the time does not last for all, nothing is counted.
#[must_use]
pub fn counted(
    garden: &Garden,
    options: &Options,
    checked: CheckedPlan,
    threads: usize,
) -> CheckedPlan {
    match in_turn::in_turn(garden, options, threads) {
        Some(unseen) => checked.saying(garden, &unseen),
        None => checked.counted(garden),
    }
}

/// Largest saved plan, in bytes: room for thousands of plantings.
pub const PLAN_LIMIT: u64 = 8 << 20;

/// Why a saved plan cannot be read.
#[derive(Debug)]
pub enum Unreadable {
    /// The file itself.
    File(std::io::Error),
    /// What is in it.
    Content(SavedError),
}

/// A saved plan, in the garden of its season.
#[derive(Debug)]
pub struct Opened {
    /// The garden, in the season in which the plan was made.
    pub garden: Garden,
    /// The plan.
    pub plan: Plan,
    /// What happened since it was saved.
    pub since: Since,
}

/// Reads the plan that was saved for a garden, and tells what happened since.
///
/// # Errors
/// The first thing that is wrong with the file or with what is in it.
pub fn read_saved(garden: Garden, path: &Path) -> Result<Opened, Unreadable> {
    let text = disk::read_text(path, PLAN_LIMIT).map_err(Unreadable::File)?;
    let saved = saved::read(&text).map_err(Unreadable::Content)?;
    opened(garden, saved).map_err(Unreadable::Content)
}

/// Reads a saved plan as what was printed, whatever has become of the project since, its day included.
///
/// # Errors
/// The first thing that is wrong with the file or with what is in it.
pub fn read_printed(path: &Path) -> Result<(Plan, Option<Season>), Unreadable> {
    let text = disk::read_text(path, PLAN_LIMIT).map_err(Unreadable::File)?;
    let saved = saved::read(&text).map_err(Unreadable::Content)?;
    Ok((saved.plan, saved.season))
}

fn opened(garden: Garden, saved: SavedPlan) -> Result<Opened, SavedError> {
    let season = saved.season.clone();
    let (plan, since) = saved.for_garden(&garden)?;
    let garden = match &season {
        Some(own) => {
            let own = own.in_garden(&garden)?;
            in_season(garden, own)
        }
        None => garden,
    };
    Ok(Opened {
        garden,
        plan,
        since,
    })
}
