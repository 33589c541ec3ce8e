//! The words of the shelf by week, and of its heat mat, against what there is; for the principal,
//! the strips of all beds under them.

use crate::calendar::Date;
use crate::facts::space::{Room, Use};
use crate::report::space;
use crate::words::count;
use crate::words::view::View;

use super::{Said, Table, shown_signs};
use crate::words::along::Weeks;

/// The shelf, the mat, or all beds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// `Shelf`, `Heat mat`, `All beds`.
    pub name: String,
    /// `6 flats`, `96 strips`: how many there are.
    pub has: String,
    /// What is used.
    pub used: Use,
    /// How many there are in each week: of strips those that are free of what stood there before.
    pub there: Vec<u32>,
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
const THERE: &str = "Flats that there are, strips free of what stood before";

/// What the hatch outside the days of use means.
const CLOSED: &str = "The shelf cannot be used";

/// The shelf and all beds together by week; `None` where neither is used.
#[must_use]
pub fn space(view: &View<'_>) -> Option<Space> {
    let beds = Some(view.all_beds_use()).filter(Use::is_used);
    let used = view.shelf_use().into_iter().chain(beds);
    let rows: Vec<Row> = used.map(|used| row(view, used)).collect();
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

fn row(view: &View<'_>, used: Use) -> Row {
    let (thing, open) = match used.room {
        Room::Shelf | Room::HeatMat => ("flat", view.shelf_open()),
        Room::Bed(_) | Room::AllBeds => ("strip", None),
    };
    let there = |week| match used.room {
        Room::AllBeds => view.free_strips(week),
        Room::Shelf | Room::HeatMat | Room::Bed(_) => used.capacity,
    };
    Row {
        there: (0..used.weeks.len()).map(there).collect(),
        name: space::name(view, used.room),
        has: count(used.capacity, thing),
        used,
        open,
    }
}

/// The fullest week of each row.
fn fullest(view: &View<'_>, rows: &[Row]) -> String {
    let horizon = view.garden.horizon();
    let told = |row: &Row| {
        let (top, week) = row.used.peak()?;
        let monday = view.words.short(horizon.monday(week));
        Some(format!(
            " {}: at most {top} of {}, first in the week of {monday}.",
            row.name, row.has
        ))
    };
    rows.iter().filter_map(told).collect()
}

/// `24`, or `24 of 72` where not all that there is can be used yet.
fn in_use(row: &Row, week: usize) -> String {
    let used = row.used.in_week(week);
    match row
        .there
        .get(week)
        .filter(|there| **there < row.used.capacity)
    {
        Some(there) => format!("{used} of {there}"),
        None => used.to_string(),
    }
}

/// A row for each week, with the days without school that begin in it.
fn table(view: &View<'_>, rows: &[Row], weeks: &Weeks) -> Table {
    let along = &weeks.along;
    let names = rows.iter();
    let names = names.map(|row| format!("{} (of {})", row.name, row.used.capacity));
    let week = |week: usize| {
        let monday = view.words.day(along.horizon.monday(week));
        let used = rows.iter().map(|row| in_use(row, week));
        let (breaks, days_off) = along.closed_from(week);
        let breaks = breaks.map(|b| format!("{}, {}", b.name, view.words.days(b.from, b.to)));
        let closed = breaks.chain(days_off.map(|day| view.words.day(day)));
        let closed = closed.collect::<Vec<_>>().join("; ");
        [monday].into_iter().chain(used).chain([closed]).collect()
    };
    Table {
        header: ["Week of".to_owned()]
            .into_iter()
            .chain(names)
            .chain(["No school".to_owned()])
            .collect(),
        rows: (0..along.horizon.weeks()).map(week).collect(),
    }
}
