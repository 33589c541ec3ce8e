//! Beds and shelf over the weeks against what there is, with the peaks.

use chrono::Datelike;

use crate::calendar::{Date, Horizon, plus_days};
use crate::units::STRIP;

use super::page::{Grid, GridRow, Page, Picture};
use super::view::View;
use super::words::{Words, list};

/// One row: what is filled, how much there is, how much is used in each week.
pub(super) struct Row {
    pub label: String,
    pub capacity: u32,
    pub weeks: Vec<u32>,
}

impl Row {
    /// The greatest use and the first week of it; `None` if never used.
    pub fn peak(&self) -> Option<(u32, usize)> {
        let top = self.weeks.iter().copied().max().filter(|n| *n > 0)?;
        Some((top, self.weeks.iter().position(|n| *n == top)?))
    }

    /// True if something is used in any week.
    pub fn used(&self) -> bool {
        self.weeks.iter().any(|n| *n > 0)
    }
}

/// The shelf's row, and the heat mat's where it is used.
pub(super) fn shelf_rows(view: &View<'_>) -> Vec<Row> {
    let shelf = &view.garden.shelf;
    let rows = [
        ("Shelf", shelf.flats, &view.replay.flats_by_week),
        (
            "Heat mat",
            shelf.warm_flats,
            &view.replay.warm_flats_by_week,
        ),
    ];
    rows.into_iter()
        .map(|(label, capacity, weeks)| Row {
            label: label.to_owned(),
            capacity,
            weeks: weeks.clone(),
        })
        .filter(Row::used)
        .collect()
}

/// The rows of the beds that are used.
pub(super) fn bed_rows(view: &View<'_>) -> Vec<Row> {
    view.garden
        .beds
        .iter()
        .zip(&view.replay.strips_by_week)
        .map(|(bed, weeks)| Row {
            label: format!("Bed {}", bed.id),
            capacity: bed.strips(),
            weeks: weeks.clone(),
        })
        .filter(Row::used)
        .collect()
}

/// All beds added up, week by week.
pub(super) fn all_beds(view: &View<'_>) -> Row {
    let weeks = view.garden.horizon().weeks();
    Row {
        label: "All beds".to_owned(),
        capacity: view.garden.beds.iter().map(|b| b.strips()).sum(),
        weeks: (0..weeks)
            .map(|w| {
                view.replay
                    .strips_by_week
                    .iter()
                    .filter_map(|bed| bed.get(w))
                    .sum()
            })
            .collect(),
    }
}

/// Writes the table with its key and the peaks in words.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("Shelf and beds, week by week");
    let shelf = shelf_rows(view);
    let beds = bed_rows(view);
    let all = all_beds(view);
    let rows: Vec<&Row> = shelf.iter().chain(&beds).chain([&all]).collect();
    page.picture(Picture::Space);
    page.picture(Picture::BedsByWeek);
    table(&rows, view, page);
    page.gap();
    let shelf_unused = if shelf.is_empty() {
        "The shelf is not used. "
    } else {
        ""
    };
    let strip = view.words.short_length(STRIP.to_centimetres());
    page.line(&format!(
        "{shelf_unused}Flats on the shelf and strips of bed ({strip} each) in use. A column holds \
         until the date of the next one; < marks the week in which a row is fullest."
    ));
    peaks(view, &shelf, &all, page);
}

/// The fullest weeks in words.
pub(super) fn peaks(view: &View<'_>, shelf: &[Row], all: &Row, page: &mut Page) {
    let horizon = view.garden.horizon();
    for (row, unit) in shelf
        .iter()
        .map(|row| (row, "flats"))
        .chain([(all, "strips")])
    {
        if let Some((top, week)) = row.peak() {
            let there = match free_strips(view, horizon.monday(week)) {
                free if unit == "strips" && free < row.capacity => format!(
                    "the {free} strips that are free then; {} in all",
                    row.capacity
                ),
                _ => format!("{} {unit}", row.capacity),
            };
            page.item(&format!(
                "{} is fullest in the week of {}: {top} of {there}.",
                row.label.replace("All beds", "The garden"),
                view.words.short(horizon.monday(week)),
            ));
        }
    }
}

/// Strips of the beds that are free of what stood there before on a day of a week.
fn free_strips(view: &View<'_>, monday: Date) -> u32 {
    let sunday = plus_days(monday, 6);
    let beds = view.garden.beds.iter();
    beds.map(|bed| bed.strips_on(sunday)).sum()
}

/// `the week of 26 Apr`, `the weeks of 26 Apr to 10 May and 31 May`: those in which a use holds.
pub(super) fn weeks_in_which(
    view: &View<'_>,
    by_week: &[u32],
    holds: impl Fn(u32) -> bool,
) -> Option<String> {
    let mut spans: Vec<(usize, usize)> = Vec::new();
    for (week, _) in by_week.iter().enumerate().filter(|(_, used)| holds(**used)) {
        match spans.last_mut() {
            Some((_, last)) if *last + 1 == week => *last = week,
            _ => spans.push((week, week)),
        }
    }
    let horizon = view.garden.horizon();
    let day = |week: usize| view.words.short(horizon.monday(week));
    let text = |(first, last): &(usize, usize)| match first == last {
        true => day(*first),
        false => format!("{} to {}", day(*first), day(*last)),
    };
    let texts: Vec<String> = spans.iter().map(text).collect();
    match spans.as_slice() {
        [] => None,
        [(first, last)] if first == last => Some(format!("the week of {}", list(&texts))),
        _ => Some(format!("the weeks of {}", list(&texts))),
    }
}

/// The week table: weeks in a row that are alike share a column.
fn table(rows: &[&Row], view: &View<'_>, page: &mut Page) {
    let horizon = view.garden.horizon();
    let columns = changes(rows, horizon.weeks());
    page.grid(Grid {
        header: header(&columns, horizon, view.words),
        rows: rows
            .iter()
            .map(|row| {
                let peak = row.peak().map(|(_, week)| week);
                GridRow {
                    label: label_of(row),
                    cells: columns.iter().map(|c| cell(row, c, peak)).collect(),
                    under: None,
                }
            })
            .collect(),
        gap: 1,
    });
}

fn label_of(row: &Row) -> String {
    format!("{} (of {})", row.label, row.capacity)
}

/// Weeks that share one column: from the first of them to before the next column's first.
struct Column {
    from: usize,
    until: usize,
}

/// Columns from the first week of use to the first empty week after the last.
fn changes(rows: &[&Row], weeks: usize) -> Vec<Column> {
    let at = |week: usize| -> Vec<u32> {
        rows.iter()
            .map(|r| r.weeks.get(week).copied().unwrap_or(0))
            .collect()
    };
    let used: Vec<usize> = (0..weeks)
        .filter(|w| at(*w).iter().any(|n| *n > 0))
        .collect();
    let (Some(&first), Some(&last)) = (used.first(), used.last()) else {
        return Vec::new();
    };
    let mut columns: Vec<Column> = Vec::new();
    for week in first..=(last + 1).min(weeks.saturating_sub(1)) {
        match columns.last_mut() {
            Some(column) if at(column.from) == at(week) => column.until = week + 1,
            _ => columns.push(Column {
                from: week,
                until: week + 1,
            }),
        }
    }
    columns
}

/// The line of months and the line of Mondays. A month is named where it begins.
fn header(columns: &[Column], horizon: Horizon, words: Words) -> Vec<Vec<String>> {
    let mut months = vec![String::new()];
    let mut days = vec!["Week of".to_owned()];
    let mut named: Option<Date> = None;
    for column in columns {
        let monday = horizon.monday(column.from);
        let same = named.is_some_and(|d| (d.year(), d.month()) == (monday.year(), monday.month()));
        months.push(if same {
            String::new()
        } else {
            words.short_month(monday)
        });
        days.push(format!("{} ", monday.day()));
        named = Some(monday);
    }
    vec![months, days]
}

/// One figure, `.` for nothing, with the mark of the peak.
fn cell(row: &Row, column: &Column, peak: Option<usize>) -> String {
    let used = row.weeks.get(column.from).copied().unwrap_or(0);
    let mark = if peak.is_some_and(|w| (column.from..column.until).contains(&w)) {
        '<'
    } else {
        ' '
    };
    if used == 0 {
        format!(".{mark}")
    } else {
        format!("{used}{mark}")
    }
}
