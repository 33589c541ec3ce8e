//! Whether the plantings of a point can really be laid out.

use crate::candidates::Candidate;

use super::board::Board;
use super::layout::{Chosen, GaveUp, Parts, lay_out};
use super::point::chosen;

/// How plantings fit into the beds.
#[derive(Debug, Clone, PartialEq)]
pub enum Fit {
    /// They can be laid out.
    LaidOut,
    /// They cannot, not even with the fewest blocks of each.
    Never(Vec<Candidate>),
    /// They cannot with so many blocks, or it is not known whether they can.
    NotFound,
}

/// The plantings of a point and the parts of plots on which they stand; `None` if they do not
/// fit.
///
/// # Errors
/// It is not known whether they fit.
pub fn layout(board: &Board<'_>, values: &[f64]) -> Result<Option<(Vec<Chosen>, Parts)>, GaveUp> {
    let chosen = chosen(&board.candidates, &board.columns, values);
    let parts = lay_out(board.garden, &board.candidates, &chosen)?;
    Ok(parts.map(|parts| (chosen, parts)))
}

/// How the plantings of a point fit.
#[must_use]
pub fn fit(board: &Board<'_>, values: &[f64]) -> Fit {
    if matches!(layout(board, values), Ok(Some(_))) {
        return Fit::LaidOut;
    }
    let all = &board.candidates.all;
    let fewest = |c: Chosen| Chosen {
        blocks: all[c.candidate].amounts.blocks.0,
        ..c
    };
    let made = chosen(&board.candidates, &board.columns, values);
    let least: Vec<Chosen> = made.into_iter().map(fewest).collect();
    match lay_out(board.garden, &board.candidates, &least) {
        Ok(None) => Fit::Never(least.iter().map(|c| all[c.candidate].clone()).collect()),
        Ok(Some(_)) | Err(_) => Fit::NotFound,
    }
}
