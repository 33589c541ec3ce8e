//! The search over groups. Each sowing that an ingredient may have is one of its candidates, or none:
//! they are a group. The search goes depth first over the groups, then over numbers of blocks; before
//! each step every row of the program closes what it does not allow.

mod at;
mod domains;
mod grades;
mod leaf;
mod linear;
mod local;
mod never;
mod notes;
mod order;
mod rows;
mod setup;
mod sowings;
mod state;
mod tree;
mod years;

use super::board::Board;

pub use state::{Goal, Limit, Searched};

use state::Search;

/// Searches a board whose plots are not named. What it rests on:
///
/// - A row's least sum is the sum of the least that each group can take (`linear`). What passes the
///   right side with all else at its least cannot be part of any point, so closing it loses nothing. A
///   group's least cannot rise while a way that takes so little is open, so the row waits at that (`notes`).
/// - The objective is a row, too: better than the best so far. What it closes stays closed.
/// - Groups of one ingredient hold the same candidates, and a later one comes later in their order, so no
///   set of sowings is met twice and none is missed (`order`).
/// - Of an ingredient no more years are ready than of its best planting, or pair of them (`years`), and
///   no more grades grow something than a greatest matching has (`grades`). A second sowing that adds no
///   year can be left out of any point, and no year is lost, so while only years count it is not looked at.
/// - Where plantings and blocks are decided, all other columns follow from them (`point::values`),
///   so a leaf is a point or none. It counts if all rows hold and its plantings can be laid out.
/// - What cannot be laid out is reduced to the few plantings, blocks and days that clash
///   (`too_much`), and these are a row of their own from then on (`never`).
/// - Its limit is in steps, terms of rows looked at, so that a busy machine finds the same.
#[must_use]
pub fn search(board: &Board<'_>, goal: &Goal<'_>, limit: &Limit) -> Searched {
    let mut search = Search::new(board, goal, *limit);
    search.run();
    Searched {
        best: search.best.map(|(_, values)| values),
        complete: search.sure && !search.over_limit,
        learned: search.learned,
        steps: search.rows.steps,
    }
}
