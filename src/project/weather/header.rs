//! The line that names the columns of a weather file. Where it is another one, the whole file is told at
//! once, and no line of it is read.

use crate::diagnostic::{Code, Findings, Problem, Read, Span};

use super::super::meant;
use super::cells::{COMMENT, HEADER, cells};

/// How a table is saved that this program can read.
pub const AS_COMMAS: &str = "save it as CSV with commas between the columns and points in numbers; in a spreadsheet, \
                             choose this when you export it, or set its language to English first";

/// Reports a first line that is not the one wanted.
pub fn check(line: &str, span: Span, findings: &mut Findings) -> Read<()> {
    let names: Vec<String> = cells(line, span)
        .iter()
        .map(|(name, _)| name.to_lowercase())
        .collect();
    if names == HEADER {
        return Ok(());
    }
    let (cause, remedy) = told(line, &names);
    let problem = Problem::new(Code::WeatherHeader, cause).at(span, "");
    Err(findings.report(problem.remedy(remedy)))
}

/// What is wrong with the line, and what to do.
fn told(line: &str, names: &[String]) -> (&'static str, String) {
    let header = HEADER.join(",");
    let other = [
        (';', "the columns are parted by semicolons"),
        ('\t', "the columns are parted by tabs"),
    ];
    if let Some((_, cause)) = other.iter().find(|(sign, _)| line.contains(*sign)) {
        return (
            cause,
            format!("{AS_COMMAS}; the first line is then `{header}`"),
        );
    }
    let bare: Vec<&str> = names
        .iter()
        .map(|name| name.trim_matches(['"', '\'']))
        .collect();
    if bare == HEADER {
        let remedy = format!("write `{header}`, and no quotes around values either");
        return ("the names of the columns stand in quotes", remedy);
    }
    let mut sorted = bare.clone();
    sorted.sort_unstable();
    let mut wanted = HEADER;
    wanted.sort_unstable();
    if sorted == wanted {
        let remedy = format!("put them in this order: `{header}`");
        return ("the columns are in another order", remedy);
    }
    let is_day = names.first().is_some_and(|first| {
        first.starts_with(|c: char| c.is_ascii_digit()) && !meant::dates(first).is_empty()
    });
    if is_day {
        let remedy = format!("put the line `{header}` before it");
        return (
            "the first line is a day, and does not name the columns",
            remedy,
        );
    }
    let remedy = format!(
        "it should be `{header}`, with commas, in this order, in degrees Celsius and millimetres; \
         only comments, which begin with {COMMENT}, may stand before it"
    );
    ("the first line should name the columns", remedy)
}
