//! The program of an aim as a file that other solvers read: the MPS format with fields parted
//! by spaces, and the section OBJSENSE for the direction.

use std::fmt::Write;

use crate::disk::Author;
use crate::facts::program::Program;
use crate::garden::Garden;
use crate::plan::Aim;
use crate::report::marked::{author, marked};
use crate::report::program::{self, OPENING};

/// The name of the objective among the rows.
const OBJECTIVE: &str = "aim";
/// The name of the set of bounds.
const BOUND: &str = "BOUND";

/// The name of the file of an aim's program, in the order of the aims: `01-in-the-pot.mps`.
#[must_use]
pub fn file_name(aim: Aim) -> String {
    let before = Aim::ALL.iter();
    let before = before.filter(|other| **other < aim && !other.is_about_dates());
    format!("{:02}-{}.mps", before.count() + 1, aim.name())
}

/// The file of an aim's program. Lines that begin with a star are for people.
#[must_use]
pub fn mps(garden: &Garden, solved: &Program<'_>) -> String {
    let mut text = String::new();
    // Writing to a string cannot fail.
    let _ = head(&mut text, garden, solved);
    let _ = rows(&mut text, solved);
    let _ = columns(&mut text, solved);
    let _ = right_sides(&mut text, solved);
    let _ = bounds(&mut text, solved);
    text.push_str("ENDATA\n");
    marked(OPENING, &text)
}

/// Whose a file of a program is.
#[must_use]
pub fn author_of(bytes: &[u8]) -> Author {
    author(bytes, OPENING)
}

/// A line for people.
fn comment(text: &mut String, words: &str) -> std::fmt::Result {
    match words {
        "" => writeln!(text, "*"),
        _ => writeln!(text, "* {words}"),
    }
}

/// What people read first, the name and the direction.
fn head(text: &mut String, garden: &Garden, solved: &Program<'_>) -> std::fmt::Result {
    for line in program::head(garden, solved) {
        comment(text, &line)?;
    }
    let aim = solved.result.aim;
    writeln!(text, "NAME {}", aim.name())?;
    let direction = if aim.more_is_better() { "MAX" } else { "MIN" };
    writeln!(text, "OBJSENSE\n    {direction}")
}

/// The objective and all rows, each section after what it is there for.
fn rows(text: &mut String, solved: &Program<'_>) -> std::fmt::Result {
    writeln!(text, "ROWS\n N {OBJECTIVE}")?;
    let mut rows = solved.rows.iter();
    for (what_for, n) in &solved.sections {
        comment(text, &program::meaning(*what_for))?;
        for row in rows.by_ref().take(*n) {
            writeln!(text, " L {}", row.name)?;
        }
    }
    Ok(())
}

/// The weights of all columns, the objective's first. Every column stands there, if need be
/// with a weight of zero.
fn columns(text: &mut String, solved: &Program<'_>) -> std::fmt::Result {
    writeln!(text, "COLUMNS")?;
    let mut whole = false;
    for column in &solved.columns {
        if column.whole != whole {
            whole = column.whole;
            let marker = if whole { "INTORG" } else { "INTEND" };
            writeln!(text, "    MARKER 'MARKER' '{marker}'")?;
        }
        writeln!(text, "    {} {OBJECTIVE} {}", column.name, column.aim)?;
        for (at, weight) in &column.weights {
            writeln!(
                text,
                "    {} {} {weight}",
                column.name, solved.rows[*at].name
            )?;
        }
    }
    if whole {
        writeln!(text, "    MARKER 'MARKER' 'INTEND'")?;
    }
    Ok(())
}

fn right_sides(text: &mut String, solved: &Program<'_>) -> std::fmt::Result {
    writeln!(text, "RHS")?;
    for row in solved.rows.iter().filter(|row| row.limit != 0.0) {
        writeln!(text, "    RHS {} {}", row.name, row.limit)?;
    }
    Ok(())
}

fn bounds(text: &mut String, solved: &Program<'_>) -> std::fmt::Result {
    writeln!(text, "BOUNDS")?;
    for column in &solved.columns {
        writeln!(text, " LO {BOUND} {} {}", column.name, column.lo)?;
        writeln!(text, " UP {BOUND} {} {}", column.name, column.hi)?;
    }
    Ok(())
}
