//! Beds by week: which strips of which bed are taken, by what, against what there is.

use crate::calendar::Date;
use crate::report::places;
use crate::report::view::View;
use crate::report::words::count;

use super::timeline::numbered;
use super::weeks::Weeks;
use super::{Said, Table};

/// A planting on neighbouring strips of a bed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stand {
    /// The ingredient, with the number of the sowing where there are several.
    pub name: String,
    /// The position of its planting in the plan.
    pub planting: usize,
    /// First strip, from 0.
    pub first: u32,
    /// How many.
    pub strips: u32,
    /// The first day on which it takes them.
    pub from: Date,
    /// The last day, the week to clear them included, within the plan.
    pub to: Date,
}

/// One bed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// `Bed 3`.
    pub name: String,
    /// `12 strips`.
    pub has: String,
    /// Its strips.
    pub strips: u32,
    /// The first day on which it is free, if it is not from the start.
    pub free_from: Option<Date>,
    /// What stands there, in the order in which it comes.
    pub stands: Vec<Stand>,
}

/// All beds that carry something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beds {
    /// Title, description, table.
    pub said: Said,
    /// The weeks.
    pub weeks: Weeks,
    /// The beds.
    pub rows: Vec<Row>,
    /// What the hatch before `free_from` means, if there is one.
    pub not_free: Option<&'static str>,
}

/// Beds by week; `None` where no bed carries anything.
#[must_use]
pub fn beds(view: &View<'_>) -> Option<Beds> {
    let garden = view.garden;
    let rows: Vec<(usize, Row)> = garden
        .beds
        .iter()
        .zip(stands(view))
        .enumerate()
        .map(|(at, (bed, stands))| {
            let row = Row {
                name: format!("Bed {}", bed.id),
                has: count(bed.strips(), "strip"),
                strips: bed.strips(),
                free_from: bed.free_from.filter(|day| *day > garden.horizon().first()),
                stands,
            };
            (at, row)
        })
        .filter(|(_, row)| !row.stands.is_empty())
        .collect();
    if rows.is_empty() {
        return None;
    }
    let empty = garden.beds.len() - rows.len();
    let weeks = Weeks::of(view);
    let mut description = format!(
        "A row for each bed, as high as it has strips of 30 cm (12 in), with what stands on them \
         from which day to which, a week to clear the bed included. {}",
        weeks.in_words(view)
    );
    if empty > 0 {
        let beds = count(u32::try_from(empty).unwrap_or(u32::MAX), "bed");
        description.push_str(&format!(" Nothing of this dish stands in {beds}."));
    }
    let table = table(view, &rows);
    let rows: Vec<Row> = rows.into_iter().map(|(_, row)| row).collect();
    let waits = rows.iter().any(|row| row.free_from.is_some());
    Some(Beds {
        said: Said {
            title: "Beds, week by week".to_owned(),
            description,
            table,
        },
        weeks,
        not_free: waits.then_some("Not free yet: something else stands there"),
        rows,
    })
}

/// A row for each stand; `rows` tell the beds' positions.
fn table(view: &View<'_>, rows: &[(usize, Row)]) -> Table {
    let mut table = Table::under(&["Bed", "What", "Strips", "From", "To", "Most used"]);
    for (at, row) in rows {
        let most = view.replay.strips_by_week.get(*at);
        let most = most
            .and_then(|weeks| weeks.iter().max())
            .copied()
            .unwrap_or(0);
        table.rows.extend(row.stands.iter().map(|stand| {
            vec![
                row.name.clone(),
                stand.name.clone(),
                strips(stand.first, stand.strips),
                view.words.day(stand.from),
                view.words.day(stand.to),
                format!("{most} of {}", row.strips),
            ]
        }));
    }
    table
}

/// `1 to 6`, counted from 1.
pub(super) fn strips(first: u32, strips: u32) -> String {
    match strips {
        1 => format!("{}", first + 1),
        _ => format!("{} to {}", first + 1, first + strips),
    }
}

/// What stands in each bed, in the order in which it comes.
#[must_use]
pub fn stands(view: &View<'_>) -> Vec<Vec<Stand>> {
    let spans = view.checked.in_bed(view.garden);
    let beds = view.garden.beds.iter();
    beds.map(|bed| stands_in(view, &spans, &bed.id)).collect()
}

/// The same of one bed; `spans` are the days of all plantings.
fn stands_in(view: &View<'_>, spans: &[Option<(Date, Date)>], bed: &str) -> Vec<Stand> {
    let horizon = view.garden.horizon();
    let plantings = view.plan.plantings.iter().zip(spans).enumerate();
    let mut stands: Vec<Stand> = plantings
        .filter_map(|(at, (planting, span))| Some((at, planting, (*span)?)))
        .flat_map(|(at, planting, (from, to))| {
            let places = places::places(&planting.places).into_iter();
            let here = places.filter(|place| place.bed == bed);
            here.map(move |place| Stand {
                name: numbered(view, planting),
                planting: at,
                first: place.first_strip.saturating_sub(1),
                strips: place.strips,
                from: from.max(horizon.first()),
                to: to.min(horizon.last()),
            })
        })
        .collect();
    stands.sort_by_key(|stand| (stand.from, stand.first));
    stands
}
