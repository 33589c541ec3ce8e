//! What kind of table a file is, told by its first lines and not by its name.

use crate::diagnostic::{Code, Problem, Read};

use super::super::names::{listed, quote};
use super::asked::Asked;
use super::cells::{Separator, cells};
use super::excerpt::Excerpt;
use super::fixed;
use super::header::Twice;
use super::intake::Intake;
use super::lines::Line;
use super::long::Long;
use super::order::{self, Order};
use super::table::Table;
use super::units::Units;

/// A kind of table.
pub enum Layout {
    /// GHCN-Daily's months of fixed width.
    Fixed,
    /// GHCN-Daily's table with a line for each value.
    Long(Long),
    /// A table with a line for each day, and its kind.
    Table(Table, Kind),
}

/// Where a table with a line for each day comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// GHCN-Daily, fixed width.
    Fixed,
    /// GHCN-Daily, a line for each value.
    Long,
    /// ECA&D.
    Ecad,
    /// Any other.
    Other,
}

/// Lines that may stand before the one that names the columns.
const MOST_BEFORE: usize = 200;

impl Layout {
    /// Reads a line.
    pub fn read(&self, line: Line<'_>, into: &mut Intake<'_>) {
        match self {
            Self::Fixed => fixed::read(line, into),
            Self::Long(long) => long.read(line, into),
            Self::Table(table, _) => table.read(line, into),
        }
    }

    /// The units, as far as the kind or the names of the columns tell.
    pub fn units(&self) -> Units {
        match self {
            Self::Fixed | Self::Long(_) => Units::TENTHS,
            Self::Table(table, _) => table.units,
        }
    }

    /// What it is.
    pub fn kind(&self) -> Kind {
        match self {
            Self::Fixed => Kind::Fixed,
            Self::Long(_) => Kind::Long,
            Self::Table(_, kind) => *kind,
        }
    }
}

/// The kind of table that the first lines of a file are of, or what is wrong.
pub fn recognised(lines: &[Line<'_>], asked: &Asked, excerpt: &mut Excerpt) -> Read<Layout> {
    let mut filled = lines.iter().filter(|line| !line.text.trim().is_empty());
    let Some(first) = filled.next().copied() else {
        let problem = Problem::new(Code::EmptyFile, "this file holds nothing")
            .remedy("download it again, and look at it with a text editor");
        return Err(excerpt.report_whole(problem));
    };
    if fixed::is_fixed(first.text) {
        return Ok(Layout::Fixed);
    }
    if let Some(long) = Long::named(first).or_else(|| Long::unnamed(first)) {
        return Ok(Layout::Long(long));
    }
    match table(lines, asked) {
        Ok(Some((table, at, header))) => finished(table, lines, (at, header), asked, excerpt),
        Ok(None) => Err(excerpt.report(first, 0..first.text.len(), unknown(lines, asked))),
        Err((line, Twice(one, other))) => {
            let cause = format!(
                "two columns may be meant: {} and {}",
                quote(&one),
                quote(&other)
            );
            let problem = Problem::new(Code::WeatherHeader, cause).remedy(
                "say which one with `--column`, such as `--column low=\"Min Temp\"`; the words before \
                 = are date, station, low, high and rain",
            );
            Err(excerpt.report(line, 0..line.text.len(), problem))
        }
    }
}

/// A table, the place of its line of names among the first lines, and that line.
type Found<'l> = (Table, usize, Line<'l>);

/// The first line that names columns, however they are parted.
fn table<'l>(lines: &[Line<'l>], asked: &Asked) -> Result<Option<Found<'l>>, (Line<'l>, Twice)> {
    let numbered = asked
        .columns
        .iter()
        .all(|(_, text)| text.parse::<usize>().is_ok());
    for (at, line) in lines.iter().enumerate().take(MOST_BEFORE) {
        // The names may stand in a comment.
        let names = line.text.trim_start().trim_start_matches('#');
        let names = Line {
            text: names,
            number: line.number,
        };
        for separator in Separator::ALL {
            let found =
                Table::of(names, separator, &asked.columns).map_err(|twice| (*line, twice))?;
            let Some(table) = found else { continue };
            if asked.columns.is_empty() || !numbered {
                return Ok(Some((table, at, *line)));
            }
            // Numbers fit any line: the one of names is the last before the first day.
            let here = table.clone().with_days_from(line.number);
            let days = here.texts_of_days(lines.get(at..=at).unwrap_or_default());
            if days.iter().any(|text| order::is_day(text)) {
                return Ok(Some((here, at, *line)));
            }
        }
    }
    Ok(None)
}

/// A table with what its first days and the lines before it tell.
fn finished(
    table: Table,
    lines: &[Line<'_>],
    (at, header): (usize, Line<'_>),
    asked: &Asked,
    excerpt: &mut Excerpt,
) -> Read<Layout> {
    let before = lines.get(..at).unwrap_or_default();
    let names = header.text.to_uppercase();
    let is_ecad = names.contains("SOUID") && names.contains("Q_");
    let tenths = is_ecad || before.iter().any(|line| line.text.contains("in 0.1 "));
    let kind = if is_ecad { Kind::Ecad } else { Kind::Other };
    let units = match tenths {
        true => table.units.or(Units::TENTHS),
        false => table.units,
    };
    let texts = table.texts_of_days(lines);
    let order = asked.dates.or_else(|| Order::of(texts.iter().copied()));
    if order.is_none() && table.has_one_day() && !texts.is_empty() {
        let text = texts.first().copied().unwrap_or_default();
        let cause = format!(
            "nothing tells whether the day or the month comes first in {}",
            quote(text)
        );
        let problem = Problem::new(Code::ImpossibleDate, cause)
            .remedy("say it with `--dates day-first` or `--dates month-first`");
        return Err(excerpt.report(header, 0..header.text.len(), problem));
    }
    Ok(Layout::Table(table.with(order, units), kind))
}

/// The problem of a file whose columns nobody knows.
fn unknown(lines: &[Line<'_>], asked: &Asked) -> Problem {
    let said = asked.columns.iter().map(|(_, text)| text.as_str());
    let cause = match asked.columns.is_empty() {
        true => "this is no table of daily weather that the program knows".to_owned(),
        false => format!("no line of this file names all of {}", listed(said)),
    };
    let names = lines.iter().find_map(|line| {
        let cells = cells(
            line.text,
            *Separator::ALL
                .iter()
                .find(|s| cells(line.text, **s).len() > 2)?,
        );
        Some(listed(cells.iter().map(|cell| cell.text)))
    });
    let seen = names.map_or_else(String::new, |names| format!("; its columns may be {names}"));
    let remedy = format!(
        "it needs a line that names its columns, then a line for each day; say which is which, such as \
         `--column date=Day --column low=\"Coldest\" --column high=\"Warmest\" --column rain=\"Rain\"`, or \
         with numbers from 1{seen}"
    );
    Problem::new(Code::WeatherHeader, cause).remedy(remedy)
}
