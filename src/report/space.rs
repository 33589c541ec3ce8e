//! Beds and shelf over the weeks against what there is, with the peaks.

use chrono::Datelike;

use crate::calendar::{Date, Horizon};
use crate::facts::space::{Room, Use, alike_weeks, weeks_in_which};
use crate::units::STRIP;

use crate::page::{Grid, GridRow, Page, Picture};
use crate::words::view::View;
use crate::words::{Words, list};

/// What a room is called.
pub(super) fn name(view: &View<'_>, room: Room) -> String {
    match room {
        Room::Shelf => "Shelf".to_owned(),
        Room::HeatMat => "Heat mat".to_owned(),
        Room::Bed(at) => format!("Bed {}", view.garden[at].id),
        Room::AllBeds => "All beds".to_owned(),
    }
}

/// Writes the table with its key and the peaks in words.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("Shelf and beds, week by week");
    let shelf = view.shelf_use();
    let beds = view.bed_use();
    let all = view.all_beds_use();
    let rows: Vec<&Use> = shelf.iter().chain(&beds).chain([&all]).collect();
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
    peaks(view, page);
}

/// The fullest weeks in words.
pub(super) fn peaks(view: &View<'_>, page: &mut Page) {
    for used in view.shelf_use().into_iter().chain([view.all_beds_use()]) {
        let Some((top, week)) = used.peak() else {
            continue;
        };
        let what = match used.room {
            Room::AllBeds => "The garden".to_owned(),
            room => name(view, room),
        };
        page.item(&format!(
            "{what} is fullest in the week of {}: {top} of {}.",
            view.words.short(view.garden.horizon().monday(week)),
            there(view, &used, week)
        ));
    }
}

/// `6 flats`, `the 40 strips that are free then; 96 in all`: how much there is in a week.
fn there(view: &View<'_>, used: &Use, week: usize) -> String {
    let all = used.capacity;
    match used.room {
        Room::Shelf | Room::HeatMat => format!("{all} flats"),
        Room::Bed(_) | Room::AllBeds => match view.free_strips(week) {
            free if free < all => format!("the {free} strips that are free then; {all} in all"),
            _ => format!("{all} strips"),
        },
    }
}

/// `the week of 26 Apr`, `the weeks of 26 Apr to 10 May and 31 May`: those in which a use holds.
pub(super) fn weeks_of(
    view: &View<'_>,
    by_week: &[u32],
    holds: impl Fn(u32) -> bool,
) -> Option<String> {
    let spans = weeks_in_which(by_week, holds);
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
fn table(rows: &[&Use], view: &View<'_>, page: &mut Page) {
    let horizon = view.garden.horizon();
    let columns = alike_weeks(rows, horizon.weeks());
    let row = |used: &&Use| GridRow {
        label: format!("{} (of {})", name(view, used.room), used.capacity),
        cells: columns.iter().map(|weeks| cell(used, *weeks)).collect(),
        under: None,
    };
    page.grid(Grid {
        header: header(&columns, horizon, view.words),
        rows: rows.iter().map(row).collect(),
        gap: 1,
    });
}

/// The line of months and the line of Mondays. A month is named where it begins.
fn header(columns: &[(usize, usize)], horizon: Horizon, words: Words) -> Vec<Vec<String>> {
    let mut months = vec![String::new()];
    let mut days = vec!["Week of".to_owned()];
    let mut named: Option<Date> = None;
    for (first, _) in columns {
        let monday = horizon.monday(*first);
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

/// The figure of weeks that are alike, `.` for nothing, with the mark of the peak.
fn cell(used: &Use, (first, last): (usize, usize)) -> String {
    let peak = used.peak().map(|(_, week)| week);
    let mark = match peak {
        Some(week) if (first..=last).contains(&week) => '<',
        _ => ' ',
    };
    match used.in_week(first) {
        0 => format!(".{mark}"),
        n => format!("{n}{mark}"),
    }
}
