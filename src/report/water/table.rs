//! The table of the watering list: a row a week, a column a bed. What belongs to a week of a break stands under its row.

use crate::calendar::plus_days;
use crate::checker::{WaterNeed, Watering};
use crate::report::page::{Grid, GridRow, Page};
use crate::report::view::View;
use crate::report::words::water::WaterMeasure;

use super::breaks;

/// One row: a week, or weeks in a row that need next to nothing.
struct Row {
    from: usize,
    to: usize,
    /// All beds, cans, then bed by bed.
    cells: Vec<String>,
    /// What stands under it.
    under: Option<String>,
}

/// Writes the table.
pub(super) fn write(view: &View<'_>, watering: &Watering, page: &mut Page) {
    let monday = |row: &Row| view.words.short(view.garden.horizon().monday(row.from));
    page.grid(Grid {
        header: vec![header(view, watering)],
        rows: rows(view, watering)
            .into_iter()
            .map(|row| GridRow {
                label: monday(&row),
                cells: row.cells,
                under: row.under,
            })
            .collect(),
        gap: 2,
    });
}

/// The beds in which something stands at some time.
fn used(watering: &Watering) -> impl Iterator<Item = usize> + '_ {
    let stands = |bed: &Vec<Option<WaterNeed>>| bed.iter().any(Option::is_some);
    (0..watering.beds.len()).filter(move |b| watering.beds.get(*b).is_some_and(stands))
}

fn header(view: &View<'_>, watering: &Watering) -> Vec<String> {
    let beds = used(watering).map(|b| format!("Bed {}", view.garden.beds[b].id));
    ["Week of", "All beds", "Cans"]
        .into_iter()
        .map(str::to_owned)
        .chain(beds)
        .collect()
}

/// Weeks in which something stands, or in which seedlings on the shelf are alone in a break.
/// Weeks in a row that need one can at the most, outside breaks, share one row.
fn rows(view: &View<'_>, watering: &Watering) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    let mut slack = false;
    let measure = view.words.water();
    for week in 0..watering.weeks.len() {
        let flats = view.replay.flats_by_week.get(week).copied().unwrap_or(0);
        let stands = used(watering).any(|b| watering.beds[b][week].is_some());
        let pause = breaks::of_week(view, week);
        if !stands && (pause.is_none() || flats == 0) {
            slack = false;
            continue;
        }
        let little = pause.is_none() && measure.told(watering.weeks[week].dry) <= measure.can;
        match rows.last_mut() {
            Some(row) if slack && little => row.to = week,
            _ => rows.push(Row {
                from: week,
                to: week,
                cells: Vec::new(),
                under: pause.map(|p| p.line(view, &watering.seedbeds, flats)),
            }),
        }
        slack = little;
    }
    for row in &mut rows {
        row.cells = cells(measure, watering, row);
        if row.from < row.to {
            let last = plus_days(view.garden.horizon().monday(row.to), 6);
            row.under = Some(format!(
                "So much at the most in each week until {}.",
                view.words.day(last)
            ));
        }
    }
    rows
}

/// The cells of a row; of several weeks the greatest figures.
fn cells(measure: WaterMeasure, watering: &Watering, row: &Row) -> Vec<String> {
    let most = |weeks: &mut dyn Iterator<Item = WaterNeed>| {
        weeks.reduce(|a, b| WaterNeed {
            ordinary: a.ordinary.max(b.ordinary),
            dry: a.dry.max(b.dry),
        })
    };
    let told = |need: Option<WaterNeed>| {
        need.map_or(".".to_owned(), |n| {
            range(measure.told(n.ordinary), measure.told(n.dry))
        })
    };
    let of_bed = |bed: usize| {
        let weeks = watering.beds[bed][row.from..=row.to].iter();
        most(&mut weeks.filter_map(|need| *need))
    };
    let beds: Vec<Option<WaterNeed>> = used(watering).map(of_bed).collect();
    let all = most(&mut watering.weeks[row.from..=row.to].iter().copied());
    let all = all.filter(|_| beds.iter().any(Option::is_some));
    let carried = all.map_or(".".to_owned(), |n| {
        range(measure.cans(n.ordinary), measure.cans(n.dry))
    });
    [told(all), carried]
        .into_iter()
        .chain(beds.into_iter().map(told))
        .collect()
}

/// `60-85`, or one figure where both are the same.
fn range(ordinary: f64, dry: f64) -> String {
    if ordinary == dry {
        format!("{dry:.0}")
    } else {
        format!("{ordinary:.0}-{dry:.0}")
    }
}
