//! Flats on the shelf by week, and on its heat mat, against what there is; for the principal, the
//! strips of all beds under them.

use crate::calendar::{Date, plus_days};
use crate::report::space;
use crate::report::view::View;
use crate::report::words::count;

use super::weeks::Weeks;
use super::{Said, Table, shown_signs};

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

/// Shelf and beds by week.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Space {
    /// Title, description, table.
    pub said: Said,
    /// The weeks.
    pub weeks: Weeks,
    /// The shelf, the mat where it is used, the beds where they are asked for.
    pub rows: Vec<Row>,
    /// What the hatch outside the days of use means, where there are such days.
    pub closed: Option<&'static str>,
    /// What the line means.
    pub there: &'static str,
}

/// What the line means.
const THERE: &str = "Flats and strips that there are";

/// What the hatch outside the days of use means.
const CLOSED: &str = "The shelf cannot be used";

/// The shelf and all beds together by week; `None` where neither is used.
#[must_use]
pub fn space(view: &View<'_>) -> Option<Space> {
    let beds = space::all_beds(view);
    let mut rows = shelf_rows(view);
    rows.extend(beds.used().then(|| Row {
        name: beds.label,
        has: count(beds.capacity, "strip"),
        capacity: beds.capacity,
        weeks: beds.weeks,
        open: None,
    }));
    if rows.is_empty() {
        return None;
    }
    let weeks = Weeks::of(view);
    let closed = rows.iter().any(|row| row.open.is_some()).then_some(CLOSED);
    let signs = [THERE].into_iter().chain(weeks.closed).chain(closed);
    let description = format!(
        "The most in use on one day of each week, against the line of what there is.{} {}{}",
        fullest(view, &rows),
        weeks.in_words(view),
        shown_signs(signs)
    );
    Some(Space {
        said: Said {
            title: "Shelf and beds, week by week".to_owned(),
            description,
            table: table(view, &rows, &weeks),
        },
        weeks,
        rows,
        closed,
        there: THERE,
    })
}

/// The fullest week of each row.
fn fullest(view: &View<'_>, rows: &[Row]) -> String {
    let horizon = view.garden.horizon();
    let told = |row: &Row| {
        let used = row.weeks.iter().enumerate();
        // The first of the fullest weeks.
        let (week, top) = used.rev().max_by_key(|(_, used)| **used)?;
        let monday = view.words.short(horizon.monday(week));
        Some(format!(
            " {}: at most {top} of {}, first in the week of {monday}.",
            row.name, row.has
        ))
    };
    rows.iter().filter_map(told).collect()
}

/// A row for each week, with the days without school that begin in it.
fn table(view: &View<'_>, rows: &[Row], weeks: &Weeks) -> Table {
    let horizon = view.garden.horizon();
    let header = ["Week of".to_owned()].into_iter();
    let names = rows
        .iter()
        .map(|row| format!("{} (of {})", row.name, row.capacity));
    let week = |week: usize| {
        let monday = horizon.monday(week);
        let used = rows
            .iter()
            .map(|row| row.weeks.get(week).copied().unwrap_or(0).to_string());
        let sunday = plus_days(monday, 6);
        let begins = |day: Date| monday <= day && day <= sunday;
        let breaks = weeks.breaks.iter().filter(|b| begins(b.from));
        let breaks = breaks.map(|b| format!("{}, {}", b.name, view.words.days(b.from, b.to)));
        let off = weeks
            .days_off
            .iter()
            .filter(|day| begins(**day))
            .map(|day| view.words.day(*day));
        let closed: Vec<String> = breaks.chain(off).collect();
        let first = [view.words.day(monday)].into_iter();
        first.chain(used).chain([closed.join("; ")]).collect()
    };
    Table {
        header: header
            .chain(names)
            .chain(["No school".to_owned()])
            .collect(),
        rows: (0..horizon.weeks()).map(week).collect(),
    }
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
