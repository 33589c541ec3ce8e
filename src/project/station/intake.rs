//! What is taken from a file: its days, its stations, and what is wrong with its lines.

use std::collections::BTreeMap;
use std::ops::Range;

use crate::calendar::Date;
use crate::diagnostic::{Code, Problem, Reported};
use crate::harmless;

use super::super::meant;
use super::super::names::quote;
use super::cells::Cell;
use super::days::{Days, Given};
use super::element::Element;
use super::excerpt::Excerpt;
use super::lines::Line;
use super::order::Order;

/// Stations that are remembered of a file that holds many.
const MOST_STATIONS: usize = 10_000;

/// Letters that are kept of a station's number and name.
const LONGEST_NAME: usize = 60;

/// What is taken from a file, line by line.
pub struct Intake<'a> {
    /// The days.
    pub days: Days,
    /// The stations that the file holds, each with its name if it tells one.
    pub stations: BTreeMap<String, Option<String>>,
    /// The one that is asked for, in small letters.
    wanted: Option<String>,
    /// The one whose days are taken.
    taken: Option<String>,
    excerpt: &'a mut Excerpt,
}

impl<'a> Intake<'a> {
    /// Nothing yet.
    pub fn new(wanted: Option<&str>, excerpt: &'a mut Excerpt) -> Self {
        Self {
            days: Days::default(),
            stations: BTreeMap::new(),
            wanted: wanted.map(|wanted| wanted.trim().to_lowercase()),
            taken: None,
            excerpt,
        }
    }

    /// True if the days of this station are taken: those of the one that is asked for, else of the first.
    pub fn is_station(
        &mut self,
        line: Line<'_>,
        id: &str,
        at: Range<usize>,
        name: Option<&str>,
    ) -> bool {
        if id.is_empty() {
            let cause = "this line names no station";
            let remedy = "remove it, or give it the station of the other lines";
            self.wrong(
                line,
                at,
                Problem::new(Code::WeatherColumns, cause).remedy(remedy),
            );
            return false;
        }
        if self.taken.as_deref() == Some(id) {
            return true;
        }
        if !self.stations.contains_key(id) && self.stations.len() < MOST_STATIONS {
            let short = |text: &str| -> String {
                harmless::plain(text).chars().take(LONGEST_NAME).collect()
            };
            let name = name.filter(|name| !name.is_empty()).map(short);
            self.stations.insert(short(id), name);
        }
        let wanted = match (&self.wanted, &self.taken) {
            (Some(wanted), _) => *wanted == id.to_lowercase(),
            (None, taken) => taken.is_none(),
        };
        if wanted {
            self.taken = Some(id.to_owned());
        }
        wanted
    }

    /// The station that was taken, and its name.
    pub fn taken(&self) -> Option<(String, Option<String>)> {
        let id = self.taken.clone()?;
        let name = self.stations.get(&id).cloned().flatten();
        Some((id, name))
    }

    /// The stations of which none was asked for, if they are several, or the one asked for is not there.
    pub fn undecided(&self) -> bool {
        match &self.wanted {
            Some(_) => self.taken.is_none() && !self.stations.is_empty(),
            None => self.stations.len() > 1,
        }
    }

    /// The day that a cell tells.
    pub fn day(&mut self, line: Line<'_>, cell: &Cell<'_>, order: Option<Order>) -> Option<Date> {
        let day = order.and_then(|order| order.day(cell.text));
        if day.is_none() {
            let dates = meant::dates(cell.text);
            let meant = match dates.is_empty() || cell.text.len() > 40 {
                true => String::new(),
                false => format!(
                    " as the other lines write them; it may mean {}",
                    meant::written(&dates)
                ),
            };
            let cause = format!("{} is not a date{meant}", quote(cell.text));
            let remedy = match is_month(cell.text) {
                true => "this is a month: ask for the table of single days",
                false => {
                    "correct it, or remove the line; all lines of a file write their days alike, and \
                     `--dates` says how if they are read wrongly"
                }
            };
            let problem = Problem::new(Code::ImpossibleDate, cause).remedy(remedy);
            self.wrong(line, cell.at.clone(), problem);
        }
        day
    }

    /// Notes a value, or that the day has another one already.
    pub fn put(
        &mut self,
        line: Line<'_>,
        at: Range<usize>,
        date: Date,
        element: Element,
        given: Given,
    ) {
        if let Err(before) = self.days.put(date, element, given) {
            let cause = format!(
                "{date} has another {} already, in line {before}",
                called(element)
            );
            let problem = Problem::new(Code::WeatherDuplicate, cause)
                .remedy("remove one of the two lines; a day has one value of each kind");
            self.wrong(line, at, problem);
        }
    }

    /// Reports a cell that should be a number.
    pub fn no_number(&mut self, line: Line<'_>, at: Range<usize>, text: &str, element: Element) {
        let cause = format!("the {} is not a number: {}", called(element), quote(text));
        let problem = Problem::new(Code::WeatherNumber, cause)
            .remedy("correct it, or leave the cell empty: a day that lacks a value is passed over");
        self.wrong(line, at, problem);
    }

    /// Reports what is wrong with a part of a line.
    pub fn wrong(&mut self, line: Line<'_>, at: Range<usize>, problem: Problem) {
        self.excerpt.report(line, at, problem.of_many_lines());
    }

    /// Reports what is wrong with the file as a whole.
    pub fn wrong_file(&mut self, problem: Problem) -> Reported {
        self.excerpt.report_whole(problem)
    }

    /// True if reading on tells nothing.
    pub fn is_hopeless(&self) -> bool {
        self.excerpt.is_full()
    }
}

/// True for a year and a month, such as `1998-04` or `199804`.
fn is_month(text: &str) -> bool {
    let digits = text.bytes().filter(u8::is_ascii_digit).count();
    digits == 6 && (text.len() == 6 || text.len() == 7 && text.get(4..5) == Some("-"))
}

/// What an element is called in a message.
pub fn called(element: Element) -> &'static str {
    match element {
        Element::Low => "lowest temperature",
        Element::High => "highest temperature",
        Element::Rain => "rain",
    }
}
