//! Flats on the shelf by week, and on its heat mat, against what there is.

use crate::calendar::Date;
use crate::report::space;
use crate::report::view::View;
use crate::report::words::count;

use super::weeks::Weeks;
use super::{Said, Table};

/// The shelf, or the mat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// `Shelf`, `Heat mat`.
    pub name: String,
    /// `6 flats`: how many there are.
    pub has: String,
    /// How many there are.
    pub capacity: u32,
    /// The most flats on it on one day of each week.
    pub weeks: Vec<u32>,
}

/// The shelf by week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shelf {
    /// Title, description, table.
    pub said: Said,
    /// The weeks.
    pub weeks: Weeks,
    /// The shelf, and the mat where it is used.
    pub rows: Vec<Row>,
    /// First and last day on which it may be used.
    pub open: (Date, Date),
    /// What the hatch outside these days means.
    pub closed: &'static str,
    /// What the line means.
    pub there: &'static str,
}

/// The shelf by week; `None` where it is not used.
#[must_use]
pub fn shelf(view: &View<'_>) -> Option<Shelf> {
    let shelf = &view.garden.shelf;
    let horizon = view.garden.horizon();
    let found = space::shelf_rows(view);
    if found.is_empty() {
        return None;
    }
    let mut description = "The most flats on one day of each week, against the line of those that \
                           there are."
        .to_owned();
    let mut table = Table::under(&["Week of", "Where", "Flats", "There are"]);
    for row in &found {
        if let Some((top, week)) = row.peak() {
            description.push_str(&format!(
                " {}: at most {top} of {}, first in the week of {}.",
                row.label,
                count(row.capacity, "flat"),
                view.words.short(horizon.monday(week))
            ));
        }
        let used = row
            .weeks
            .iter()
            .enumerate()
            .filter(|(_, flats)| **flats > 0);
        table.rows.extend(used.map(|(week, flats)| {
            vec![
                view.words.short(horizon.monday(week)),
                row.label.clone(),
                flats.to_string(),
                row.capacity.to_string(),
            ]
        }));
    }
    let weeks = Weeks::of(view);
    description.push(' ');
    description.push_str(&weeks.in_words(view));
    Some(Shelf {
        said: Said {
            title: "Seedling shelf, week by week".to_owned(),
            description,
            table,
        },
        weeks,
        rows: found
            .into_iter()
            .map(|row| Row {
                name: row.label,
                has: count(row.capacity, "flat"),
                capacity: row.capacity,
                weeks: row.weeks,
            })
            .collect(),
        open: (
            shelf.from.max(horizon.first()),
            shelf.until.unwrap_or(horizon.last()).min(horizon.last()),
        ),
        closed: "The shelf cannot be used",
        there: "Flats that there are",
    })
}
