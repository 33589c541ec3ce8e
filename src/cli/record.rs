//! `tureen record`: a station's files as published become the weather table of a project.

use std::path::PathBuf;

use clap::ValueEnum;

use crate::garden::Locale;
use crate::project::station::{
    Asked, Column, Element, Order, RainUnit, TemperatureUnit, Units, read,
};
use crate::report;
use crate::words::Words;

use super::answer::{Answer, Trouble};
use super::load::wrong_project;
use super::save::Output;
use super::terminal::with_progress;

/// The arguments of `record`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The station's files: daily lowest and highest temperature and rain, in one file or several.
    #[arg(value_name = "FILE", required = true)]
    files: Vec<PathBuf>,
    /// The table to write: date, lowest and highest temperature, rain.
    #[arg(long, value_name = "CSV")]
    out: PathBuf,
    /// Also replaces a file that this program did not write.
    #[arg(long)]
    replace: bool,
    /// Which station, of files that hold several.
    #[arg(long, value_name = "STATION")]
    station: Option<String>,
    /// What the temperatures are in [default: what the file tells].
    #[arg(long, value_name = "DEGREES")]
    temperature: Option<Degrees>,
    /// What the rain is in [default: what the file tells].
    #[arg(long, value_name = "DEPTH")]
    rain: Option<Depth>,
    /// Which column is which, by its name or its number: date=..., low=..., high=..., rain=...,
    /// station=...
    #[arg(long, value_name = "COLUMN", value_parser = column)]
    column: Vec<(Column, String)>,
    /// How the days are written [default: what the file tells].
    #[arg(long, value_name = "ORDER")]
    dates: Option<First>,
}

/// What temperatures are in.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Degrees {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Tenths of a degree Celsius.
    Tenths,
}

/// What rain is in.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Depth {
    /// Millimetres.
    Millimetres,
    /// Inches.
    Inches,
    /// Tenths of a millimetre.
    Tenths,
}

/// What comes first where days are written.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum First {
    /// 1998-04-07.
    #[value(name = "year-first")]
    Year,
    /// 07.04.1998 or 7/4/1998.
    #[value(name = "day-first")]
    Day,
    /// 4/7/1998.
    #[value(name = "month-first")]
    Month,
}

/// The words for columns before the `=`.
const COLUMNS: [(&str, Column); 5] = [
    ("date", Column::Date),
    ("low", Column::Of(Element::Low)),
    ("high", Column::Of(Element::High)),
    ("rain", Column::Of(Element::Rain)),
    ("station", Column::Station),
];

/// `low=TN` as a column and its name.
fn column(text: &str) -> Result<(Column, String), String> {
    let wrong = || "write date=..., low=..., high=..., rain=... or station=...".to_owned();
    let (which, name) = text.split_once('=').ok_or_else(wrong)?;
    let known = COLUMNS.iter().find(|(word, _)| *word == which.trim());
    let (_, column) = known.ok_or_else(wrong)?;
    let name = name.trim();
    if name.is_empty() {
        return Err("after the = stands the name or the number of a column".to_owned());
    }
    Ok((*column, name.to_owned()))
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let out = Output::tried(&arguments.out, report::weather_author, arguments.replace)?;
    let asked = Asked {
        station: arguments.station.clone(),
        units: Units {
            temperature: arguments.temperature.map(|degrees| match degrees {
                Degrees::Celsius => TemperatureUnit::Celsius,
                Degrees::Fahrenheit => TemperatureUnit::Fahrenheit,
                Degrees::Tenths => TemperatureUnit::TenthsOfCelsius,
            }),
            rain: arguments.rain.map(|depth| match depth {
                Depth::Millimetres => RainUnit::Millimetres,
                Depth::Inches => RainUnit::Inches,
                Depth::Tenths => RainUnit::TenthsOfMillimetre,
            }),
        },
        columns: arguments.column.clone(),
        dates: arguments.dates.map(|dates| match dates {
            First::Year => Order::YearFirst,
            First::Day => Order::DayFirst,
            First::Month => Order::MonthFirst,
        }),
    };
    let read = with_progress("Reading the record", || read(&arguments.files, &asked));
    let station = read.map_err(|problems| wrong_project(&problems))?;
    let words = Words::in_locale(Locale::default());
    let page = report::record(&station, &arguments.out, words);
    let saved = out.save(&report::record_table(&station))?;
    Ok(Answer::page(&page).and(Ok(saved)))
}
