//! Whether the plantings of a point can really be laid out.

use crate::candidates::Candidate;

use super::board::Board;
use super::layout::{Chosen, GaveUp, Ground, MOST_STEPS, Packed, Parts, lay_out, pack};
use super::point::chosen;
use super::too_much::too_much;

/// How plantings fit into the beds.
#[derive(Debug, Clone, PartialEq)]
pub enum Fit {
    /// They can be laid out.
    LaidOut,
    /// They cannot: these clash with the fewest blocks that they have here.
    Never(Vec<Candidate>),
    /// It is not known whether they can.
    NotKnown,
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
    let chosen = chosen(&board.candidates, &board.columns, values);
    let Board {
        garden, candidates, ..
    } = board;
    match pack(&Ground::of(garden, candidates, &chosen), MOST_STEPS) {
        Packed::Found(_) => Fit::LaidOut,
        Packed::Impossible => Fit::Never(too_much(garden, candidates, &chosen)),
        Packed::Unknown => Fit::NotKnown,
    }
}
