//! One file of a station, read from its first line to its last.

use std::collections::BTreeMap;
use std::fs::File;
use std::io::{BufReader, Read as _, Seek as _};
use std::path::Path;

use crate::calendar::Date;
use crate::diagnostic::{Code, Problem, Problems, Read};
use crate::disk;
use crate::harmless;

use super::super::file::{no_plain_text, unreadable};
use super::super::names::{near, quote};
use super::super::weather::GENERATED;
use super::asked::Asked;
use super::days::{Counts, Day};
use super::element::Element;
use super::excerpt::Excerpt;
use super::intake::Intake;
use super::layout::{Kind, Layout, recognised};
use super::lines::{self, LONGEST_LINE, Line};
use super::units::Units;

/// Bytes at the start of a file by which its kind is told: some three years of days.
const SAMPLE: u64 = 1 << 16;

/// What is told of a file that was read.
#[derive(Debug, Clone)]
pub struct StationFile {
    /// Its name, as printed.
    pub name: String,
    /// What it is.
    pub kind: Kind,
    /// In which units it was read.
    pub units: Units,
    /// Its greatest temperature, where nothing but that tells the unit.
    pub guessed_by: Option<f64>,
    /// The station, and its name if the file tells it.
    pub station: Option<(String, Option<String>)>,
    /// Of the lowest, the highest, the rain.
    pub counts: [Counts; 3],
    /// Values that stand twice.
    pub repeated: usize,
}

/// What a file gives.
pub struct OneFile {
    /// What is told of it.
    pub told: StationFile,
    /// Its days, in degrees Celsius and millimetres.
    pub days: BTreeMap<Date, Day<f64>>,
}

/// Reads a file, or adds what is wrong with it to the problems.
pub fn read(path: &Path, asked: &Asked, problems: &mut Problems) -> Option<OneFile> {
    let name = harmless::path(path);
    let mut excerpt = Excerpt::new(name.clone());
    let made = whole(path, name, asked, &mut excerpt);
    excerpt.finish(made, problems)
}

fn whole(path: &Path, name: String, asked: &Asked, excerpt: &mut Excerpt) -> Read<OneFile> {
    let opened = disk::open(path).and_then(|mut file| {
        let mut start = Vec::new();
        file.by_ref().take(SAMPLE).read_to_end(&mut start)?;
        file.rewind()?;
        Ok((file, start))
    });
    let (file, start) = opened.map_err(|error| excerpt.report_whole(unreadable(&error)))?;
    if let Some((cause, remedy)) = no_plain_text(&start) {
        let problem = Problem::new(Code::NotUtf8, cause).remedy(remedy);
        return Err(excerpt.report_whole(problem));
    }
    if start.starts_with(GENERATED.as_bytes()) {
        let cause = "these days were made up from monthly means; no station saw them";
        let problem = Problem::new(Code::WeatherHeader, cause)
            .remedy("a project takes this file as it is: name it under [place] as `weather`");
        return Err(excerpt.report_whole(problem));
    }
    let layout = layout(&start, asked, excerpt)?;
    let mut into = Intake::new(asked.station.as_deref(), excerpt);
    take(file, &layout, &mut into)?;
    if into.undecided() {
        let problem = undecided(&into, asked);
        return Err(into.wrong_file(problem));
    }
    let known = asked.units.or(layout.units());
    let units = known.or(Units::by(into.days.hottest())).with_rain();
    let (days, counts) = into.days.converted(units);
    for (element, count) in Element::ALL.into_iter().zip(counts) {
        if let Some(problem) = mostly_impossible(element, count) {
            into.wrong_file(problem);
        }
    }
    let told = StationFile {
        name,
        kind: layout.kind(),
        guessed_by: into.days.hottest().filter(|_| known.temperature.is_none()),
        units,
        station: into.taken(),
        repeated: into.days.repeated,
        counts,
    };
    Ok(OneFile { told, days })
}

/// The kind of table, by the lines at the start of the file that are whole.
fn layout(start: &[u8], asked: &Asked, excerpt: &mut Excerpt) -> Read<Layout> {
    let mut texts: Vec<(usize, String)> = Vec::new();
    // Bytes in memory can always be read.
    let _ = lines::each(start, |line| {
        texts.push((line.number, line.text.to_owned()));
        true
    });
    // The last line of a part may be cut.
    if start.len() as u64 == SAMPLE && texts.len() > 1 {
        texts.pop();
    }
    let lines: Vec<Line<'_>> = texts
        .iter()
        .map(|(number, text)| Line {
            number: *number,
            text,
        })
        .collect();
    recognised(&lines, asked, excerpt)
}

/// Takes all lines of a file.
fn take(file: File, layout: &Layout, into: &mut Intake<'_>) -> Read<()> {
    let file = BufReader::with_capacity(SAMPLE as usize, file);
    let read = lines::each(file, |line| {
        layout.read(line, into);
        !into.is_hopeless()
    });
    match read {
        Ok(None) => Ok(()),
        Ok(Some(number)) => {
            let cause = format!("line {number} is longer than {LONGEST_LINE} bytes");
            let problem = Problem::new(Code::WeatherColumns, cause)
                .remedy("no table of daily weather has such lines; download the file again");
            Err(into.wrong_file(problem))
        }
        Err(error) => Err(into.wrong_file(unreadable(&error))),
    }
}

/// The problem of a file that holds several stations, or not the one that is asked for.
fn undecided(into: &Intake<'_>, asked: &Asked) -> Problem {
    let all = into.stations.iter().map(|(id, name)| match name {
        Some(name) => format!("{id} ({name})"),
        None => id.clone(),
    });
    let shown: Vec<String> = all.take(MOST_SHOWN).collect();
    let more = match into.stations.len().saturating_sub(MOST_SHOWN) {
        0 => String::new(),
        more => format!(" and {more} more"),
    };
    let list = format!("{}{more}", shown.join(", "));
    match &asked.station {
        Some(wanted) => {
            let near = near(wanted, into.stations.keys().map(String::as_str));
            let near = near.map_or_else(String::new, |near| format!("did you mean {near}? "));
            Problem::new(
                Code::NoSuchStation,
                format!("this file holds no station {}", quote(wanted)),
            )
            .remedy(format!("{near}It holds {list}"))
        }
        None => Problem::new(
            Code::NoSuchStation,
            format!("this file holds {} stations", into.stations.len()),
        )
        .remedy(format!("say which one with `--station`: {list}")),
    }
}

/// Stations that are named in a message.
const MOST_SHOWN: usize = 12;

/// One value in so many may be impossible before the unit or the column is doubted.
const ONE_IN: usize = 100;

/// The problem of a column that holds something else, or of a wrong unit.
fn mostly_impossible(element: Element, count: Counts) -> Option<Problem> {
    let all = count.values + count.impossible;
    (count.impossible * ONE_IN > all).then(|| {
        let cause = format!(
            "{} of {all} values of the {} cannot be true",
            count.impossible,
            super::intake::called(element)
        );
        Problem::new(Code::WeatherRange, cause).remedy(
            "is it another unit? Say it with `--temperature` or `--rain`; is it another column? Say it \
             with `--column`",
        )
    })
}
