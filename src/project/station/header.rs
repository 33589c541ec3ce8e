//! The line that names the columns of a table, by their names or as a person says.

use super::cells::{Cell, Separator, cells};
use super::element::Element;
use super::names::{Column, Named, named};

/// Two columns of which either may be meant, by their names.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Twice(pub String, pub String);

/// Where the day stands.
#[derive(Debug, Clone, Copy)]
pub enum DayAt {
    /// In one column.
    One(usize),
    /// Year, month and day in a column each.
    Parts([usize; 3]),
}

/// A line of names.
pub struct Header<'l> {
    /// The names.
    pub cells: Vec<Cell<'l>>,
    known: Vec<Option<Named>>,
    asked: &'l [(Column, String)],
}

impl<'l> Header<'l> {
    /// Any line as one of names.
    pub fn of(line: &'l str, separator: Separator, asked: &'l [(Column, String)]) -> Self {
        let cells = cells(line, separator);
        let known = cells.iter().map(|cell| named(cell.text)).collect();
        Self {
            cells,
            known,
            asked,
        }
    }

    /// The name of a column.
    pub fn text(&self, at: usize) -> &'l str {
        self.cells.get(at).map_or("", |cell| cell.text)
    }

    /// The first column whose name tells that it holds this.
    pub fn column(&self, wanted: Named) -> Option<usize> {
        self.known.iter().position(|named| *named == Some(wanted))
    }

    /// The column that a person names, by its name or else its number; `None` within if it is not there.
    pub fn said(&self, column: Column) -> Option<Option<usize>> {
        let (_, text) = self.asked.iter().find(|(other, _)| *other == column)?;
        let same = |cell: &Cell<'_>| cell.text.eq_ignore_ascii_case(text.trim());
        let number = || text.parse::<usize>().ok()?.checked_sub(1);
        let by_number = || number().filter(|at| *at < self.cells.len());
        Some(self.cells.iter().position(same).or_else(by_number))
    }

    /// Where the day stands.
    pub fn day(&self) -> Option<DayAt> {
        let parts = [Named::Year, Named::Month, Named::Day].map(|part| self.column(part));
        match (self.said(Column::Date), parts) {
            (Some(said), _) => said.map(DayAt::One),
            (None, [Some(year), Some(month), Some(day)]) => Some(DayAt::Parts([year, month, day])),
            (None, _) => self.column(Named::Date).map(DayAt::One),
        }
    }

    /// The column of an element, if there is one.
    pub fn values(&self, element: Element) -> Result<Option<usize>, Twice> {
        if let Some(said) = self.said(Column::Of(element)) {
            return Ok(said);
        }
        let is_it = |(_, named): &(usize, &Option<Named>)| **named == Some(Named::Value(element));
        let mut found = self.known.iter().enumerate().filter(is_it);
        let first = found.next().map(|(at, _)| at);
        match (first, found.next()) {
            (Some(first), Some((second, _))) => {
                let text = |at| self.text(at).to_owned();
                Err(Twice(text(first), text(second)))
            }
            (first, _) => Ok(first),
        }
    }
}
