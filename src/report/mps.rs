//! The program of an aim as a file that other solvers read: the MPS format with fields parted
//! by spaces, and the section OBJSENSE for the direction.

use std::fmt::Write;
use std::path::Path;

use crate::disk::Author;
use crate::facts::program::{For, MayBeMade, Program};
use crate::facts::record::grown_through;
use crate::garden::Garden;
use crate::harmless::{self, plain};
use crate::plan::Aim;

use super::aims::name;
use super::marked::{author, marked};
use super::rule_words::rule_sentence;
use super::step_words;
use crate::words::{count, list};

/// The name of the objective among the rows.
const OBJECTIVE: &str = "aim";
/// How every file opens.
const OPENING: &str = "* Written by `tureen plan`";
/// Comments are cut off after this many letters.
const LONGEST_COMMENT: usize = 200;

/// The name of the file of an aim's program, in the order of the aims: `01-in-the-pot.mps`.
#[must_use]
pub fn mps_file(aim: Aim) -> String {
    let before = Aim::ALL.iter().take_while(|other| **other < aim);
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
pub fn mps_author(bytes: &[u8]) -> Author {
    author(bytes, OPENING)
}

/// What the file is about, what was found, and what the names mean.
fn head(text: &mut String, garden: &Garden, solved: &Program<'_>) -> std::fmt::Result {
    let result = &solved.result;
    let years = grown_through(garden).years;
    let (great, bound) = if result.aim.more_is_better() {
        ("great", "at most")
    } else {
        ("small", "at least")
    };
    let project = in_a_comment(&garden.name);
    writeln!(
        text,
        "* {project}: the arithmetic behind one aim of the plan."
    )?;
    writeln!(text, "* Aim: {}.", name(garden, years, result.aim))?;
    writeln!(
        text,
        "* It is made as {great} as can be; the aims before it are held."
    )?;
    writeln!(text, "* Value found: {}", result.value + 0.0)?;
    writeln!(text, "* Possible, {bound}: {}", result.bound + 0.0)?;
    writeln!(
        text,
        "* Proved best: {}",
        if result.proved() { "yes" } else { "no" }
    )?;
    writeln!(
        text,
        "*\n* Names: made.carrot.3 is 1 if the third planting of carrots is made, and"
    )?;
    writeln!(
        text,
        "* blocks.carrot.3 is how large it is. Rows begin with the rule that they keep."
    )?;
    writeln!(text, "* The plantings, with the first day of each step:")?;
    for planting in &solved.plantings {
        let meaning = what_it_is(garden, planting);
        writeln!(text, "* {}", in_a_comment(&meaning))?;
    }
    writeln!(text, "NAME {}", result.aim.name())?;
    let direction = if result.aim.more_is_better() {
        "MAX"
    } else {
        "MIN"
    };
    writeln!(text, "OBJSENSE\n    {direction}")
}

/// Words for a comment: a line break would end it, and some readers take long lines for two.
fn in_a_comment(words: &str) -> String {
    plain(words).chars().take(LONGEST_COMMENT).collect()
}

/// `carrot.3: Sow in bed 2027-05-19, Thin 2027-06-09, Pick 2027-08-30; bed 2`.
fn what_it_is(garden: &Garden, planting: &MayBeMade<'_>) -> String {
    let days = planting.first_days.iter();
    let days: Vec<String> = days
        .map(|(kind, day)| format!("{} {day}", step_words::name(planting.method, *kind)))
        .collect();
    let beds = planting.beds.iter();
    let ids: Vec<&str> = beds.map(|bed| garden[*bed].id.as_str()).collect();
    let name = planting.name;
    match ids[..] {
        [] => format!("{name}: {}", days.join(", ")),
        _ => format!("{name}: {}; bed {}", days.join(", "), list(&ids)),
    }
}

/// The objective and all rows, each section after what it is there for.
fn rows(text: &mut String, solved: &Program<'_>) -> std::fmt::Result {
    writeln!(text, "ROWS\n N {OBJECTIVE}")?;
    let mut rows = solved.rows.iter();
    for (what_for, n) in &solved.sections {
        let meaning = match what_for {
            For::Rule(rule) => rule_sentence(*rule).to_owned(),
            For::Held(aim) => format!("An earlier aim is held: {}.", aim.name()),
            For::Forbidden => "Plantings that cannot be laid out together.".to_owned(),
        };
        writeln!(text, "* {meaning}")?;
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
        writeln!(text, " LO BOUND {} {}", column.name, column.lo)?;
        writeln!(text, " UP BOUND {} {}", column.name, column.hi)?;
    }
    Ok(())
}

/// What `tureen plan --write-program` adds.
#[must_use]
pub fn programs_written(folder: &Path, files: usize) -> String {
    format!(
        "\nThe arithmetic behind the plan: {} in {}, one for each aim that was followed.\n",
        count(files, "file"),
        harmless::path(folder)
    )
}
