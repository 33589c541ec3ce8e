//! Flats on the shelf by week, and on its heat mat, against what there is; for the principal, the
//! strips of all beds under them.

use crate::calendar::Date;
use crate::report::space;
use crate::report::view::View;
use crate::report::words::count;

use super::weeks::Weeks;
use super::{Said, Table};

/// The shelf, the mat, or all beds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// `Shelf`, `Heat mat`, `All beds`.
    pub name: String,
    /// `6 flats`, `96 strips`: how many there are.
    pub has: String,
    /// How many there are.
    pub capacity: u32,
    /// The most of them in use on one day of each week.
    pub weeks: Vec<u32>,
    /// First and last day on which they may be used, where that is not always.
    pub open: Option<(Date, Date)>,
}

/// The shelf by week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shelf {
    /// Title, description, table.
    pub said: Said,
    /// The weeks.
    pub weeks: Weeks,
    /// The shelf, the mat where it is used, the beds where they are asked for.
    pub rows: Vec<Row>,
    /// What the hatch outside the days of use means.
    pub closed: &'static str,
    /// What the line means.
    pub there: &'static str,
}

/// The shelf by week; `None` where it is not used.
#[must_use]
pub fn shelf(view: &View<'_>) -> Option<Shelf> {
    let rows = shelf_rows(view);
    let title = "Seedling shelf, week by week";
    (!rows.is_empty()).then(|| picture(view, title, rows, "Flats that there are"))
}

/// The shelf and all beds together by week; `None` where neither is used.
#[must_use]
pub fn space(view: &View<'_>) -> Option<Shelf> {
    let beds = space::all_beds(view);
    let mut rows = shelf_rows(view);
    rows.extend(beds.used().then(|| Row {
        name: beds.label,
        has: count(beds.capacity, "strip"),
        capacity: beds.capacity,
        weeks: beds.weeks,
        open: None,
    }));
    let title = "Shelf and beds, week by week";
    (!rows.is_empty()).then(|| picture(view, title, rows, "Flats and strips that there are"))
}

fn shelf_rows(view: &View<'_>) -> Vec<Row> {
    let shelf = &view.garden.shelf;
    let horizon = view.garden.horizon();
    let open = (
        shelf.from.max(horizon.first()),
        shelf.until.unwrap_or(horizon.last()).min(horizon.last()),
    );
    let row = |row: space::Row| Row {
        name: row.label,
        has: count(row.capacity, "flat"),
        capacity: row.capacity,
        weeks: row.weeks,
        open: (open != (horizon.first(), horizon.last())).then_some(open),
    };
    space::shelf_rows(view).into_iter().map(row).collect()
}

fn picture(view: &View<'_>, title: &str, rows: Vec<Row>, there: &'static str) -> Shelf {
    let horizon = view.garden.horizon();
    let mut description = "The most in use on one day of each week, against the line of what \
                           there is."
        .to_owned();
    let mut table = Table::under(&["Week of", "Where", "In use", "There are"]);
    for row in &rows {
        let used = || row.weeks.iter().enumerate().filter(|(_, used)| **used > 0);
        // The first of the fullest weeks.
        if let Some((week, top)) = used().rev().max_by_key(|(_, used)| **used) {
            description.push_str(&format!(
                " {}: at most {top} of {}, first in the week of {}.",
                row.name,
                row.has,
                view.words.short(horizon.monday(week))
            ));
        }
        table.rows.extend(used().map(|(week, used)| {
            vec![
                view.words.short(horizon.monday(week)),
                row.name.clone(),
                used.to_string(),
                row.capacity.to_string(),
            ]
        }));
    }
    let weeks = Weeks::of(view);
    description.push(' ');
    description.push_str(&weeks.in_words(view));
    Shelf {
        said: Said {
            title: title.to_owned(),
            description,
            table,
        },
        weeks,
        rows,
        closed: "The shelf cannot be used",
        there,
    }
}
