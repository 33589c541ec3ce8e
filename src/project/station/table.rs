//! Tables with a line for each day: which column is which, by their names or as a person says.

use crate::calendar::Date;
use crate::diagnostic::{Code, Problem};

use super::cells::{Cell, Separator, cells};
use super::days::Given;
use super::element::Element;
use super::header::{DayAt, Header, Twice};
use super::intake::Intake;
use super::lines::Line;
use super::names::{Column, Named, unit};
use super::order::{self, Order};
use super::units::Units;
use super::values::{Reading, reading};

/// What marks a doubtful value.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Mark {
    /// 0 is sound and 9 is missing (ECA&D).
    Quality(usize),
    /// The second of its parts is not empty (GHCN-Daily).
    Attributes(usize),
}

/// A column of values.
#[derive(Debug, Clone, Copy)]
struct Values {
    element: Element,
    at: usize,
    mark: Option<Mark>,
}

/// Where the columns of a table are.
#[derive(Debug, Clone)]
pub struct Table {
    separator: Separator,
    /// The line that names the columns; days come after it.
    header: usize,
    /// Its text, for where it stands again: files of several years may be joined.
    names: String,
    /// How many columns it has.
    width: usize,
    day: DayAt,
    station: Option<usize>,
    name: Option<usize>,
    values: Vec<Values>,
    /// How days are written; `None` where they stand in parts or nothing tells.
    order: Option<Order>,
    /// The units, as far as the names of the columns tell.
    pub units: Units,
}

impl Table {
    /// The table whose columns a line names; `None` if it names no day, or nothing that is read.
    pub fn of(
        line: Line<'_>,
        separator: Separator,
        asked: &[(Column, String)],
    ) -> Result<Option<Self>, Twice> {
        let header = Header::of(line.text, separator, asked);
        let Some(day) = header.day() else {
            return Ok(None);
        };
        let mut values = Vec::new();
        let mut units = Units::default();
        for element in Element::ALL {
            let Some(at) = header.values(element)? else {
                continue;
            };
            let mark = header.column(Named::Quality(element)).map(Mark::Quality);
            let mark = mark.or_else(|| {
                header
                    .column(Named::Attributes(element))
                    .map(Mark::Attributes)
            });
            values.push(Values { element, at, mark });
            let told = unit(header.text(at));
            units = units.or(match element {
                Element::Rain => Units {
                    temperature: None,
                    ..told
                },
                Element::Low | Element::High => Units { rain: None, ..told },
            });
        }
        let station = header.said(Column::Station).flatten();
        let table = Self {
            separator,
            header: line.number,
            names: line.text.trim().to_owned(),
            width: header.cells.len(),
            day,
            station: station.or_else(|| header.column(Named::Station)),
            name: header.column(Named::StationName),
            values,
            order: None,
            units,
        };
        Ok((!table.values.is_empty()).then_some(table))
    }

    /// The same table where its first line is a day already, since a person said which column is which.
    pub fn with_days_from(self, line: usize) -> Self {
        Self {
            header: line.saturating_sub(1),
            names: String::new(),
            ..self
        }
    }

    /// The same table with how its days are written, and its units.
    pub fn with(self, order: Option<Order>, units: Units) -> Self {
        Self {
            order,
            units,
            ..self
        }
    }

    /// The texts of days in further lines, to learn from them how days are written.
    pub fn texts_of_days<'l>(&self, lines: &[Line<'l>]) -> Vec<&'l str> {
        let DayAt::One(at) = self.day else {
            return Vec::new();
        };
        let days = lines.iter().filter(|line| line.number > self.header);
        let text = |line: &Line<'l>| {
            cells(line.text, self.separator)
                .get(at)
                .map(|cell| cell.text)
        };
        days.filter_map(text)
            .filter(|text| !text.is_empty())
            .collect()
    }

    /// True if the day is written in one column.
    pub fn has_one_day(&self) -> bool {
        matches!(self.day, DayAt::One(_))
    }

    /// Reads a line.
    pub fn read(&self, line: Line<'_>, into: &mut Intake<'_>) {
        let text = line.text.trim();
        let tells_nothing = text.is_empty() || text.starts_with('#') || text == self.names;
        if line.number <= self.header || tells_nothing {
            return;
        }
        let mut cells = cells(line.text, self.separator);
        // Some programs end each line with a separator.
        if cells.len() == self.width + 1 && cells.last().is_some_and(|cell| cell.text.is_empty()) {
            cells.pop();
        }
        if cells.len() != self.width {
            into.wrong(line, 0..line.text.len(), self.columns(cells.len()));
            return;
        }
        let text = |at: Option<usize>| at.and_then(|at| cells.get(at));
        if let Some(station) = text(self.station) {
            let name = text(self.name).map(|cell| cell.text);
            if !into.is_station(line, station.text, station.at.clone(), name) {
                return;
            }
        }
        let Some(date) = self.date(line, &cells, into) else {
            return;
        };
        for Values { element, at, mark } in &self.values {
            let Some(cell) = cells.get(*at) else { continue };
            let number = match reading(cell.text, *element) {
                Reading::Number(number) => number,
                Reading::Missing => continue,
                Reading::Unreadable => {
                    into.no_number(line, cell.at.clone(), cell.text, *element);
                    continue;
                }
            };
            match mark.map_or(Doubt::None, |mark| mark.doubt(&cells)) {
                Doubt::None => {
                    let given = Given {
                        number,
                        line: line.number,
                    };
                    into.put(line, cell.at.clone(), date, *element, given);
                }
                Doubt::Flagged => into.days.flag(*element),
                Doubt::Missing => {}
            }
        }
    }

    fn date(&self, line: Line<'_>, cells: &[Cell<'_>], into: &mut Intake<'_>) -> Option<Date> {
        match self.day {
            DayAt::One(at) => into.day(line, cells.get(at)?, self.order),
            DayAt::Parts(at) => {
                let [year, month, day] = at.map(|at| cells.get(at));
                let number = |cell: Option<&Cell<'_>>| cell?.text.parse::<u32>().ok();
                let date = order::date(number(year)?, number(month)?, number(day)?);
                let (year, day) = (year?, day?);
                let whole = year.at.start.min(day.at.start)..year.at.end.max(day.at.end);
                if date.is_none() {
                    let cause = "year, month and day are not those of a date";
                    let remedy = "correct them, or remove the line";
                    into.wrong(
                        line,
                        whole,
                        Problem::new(Code::ImpossibleDate, cause).remedy(remedy),
                    );
                }
                date
            }
        }
    }

    fn columns(&self, has: usize) -> Problem {
        let cause = format!(
            "this line should have {} values as the line of names has, but has {has}",
            self.width
        );
        Problem::new(Code::WeatherColumns, cause).remedy(
            "if it is the last line, the file may be cut: download it again, or remove the line; a \
             decimal comma needs another separator or quotes",
        )
    }
}

/// What a mark says of a value.
enum Doubt {
    None,
    Flagged,
    Missing,
}

impl Mark {
    fn doubt(self, cells: &[Cell<'_>]) -> Doubt {
        let text = |at: usize| cells.get(at).map_or("", |cell| cell.text);
        match self {
            Self::Quality(at) => match text(at) {
                "0" | "" => Doubt::None,
                "9" => Doubt::Missing,
                _ => Doubt::Flagged,
            },
            Self::Attributes(at) => match text(at).split(',').nth(1).map_or("", str::trim) {
                "" => Doubt::None,
                _ => Doubt::Flagged,
            },
        }
    }
}
