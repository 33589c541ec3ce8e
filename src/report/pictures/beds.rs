//! The words of the beds by week: which strips of which bed are taken, by what, against what
//! there is.

use crate::facts::cloth::Cloth;
use crate::facts::stands::Carries;
use crate::garden::Strips;
use crate::plan::Stand;
use crate::words::view::View;
use crate::words::{count, list};

use super::timeline::numbered_at;
use super::{Said, Table};
use crate::words::along::Weeks;

/// One bed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// `Bed 3`.
    pub name: String,
    /// `12 strips`.
    pub has: String,
    /// What stands there.
    pub carries: Carries,
    /// The names of what stands there, with the number of the sowing where there are several.
    pub names: Vec<String>,
    /// Their looks.
    pub cloths: Vec<Cloth>,
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
    /// What the hatch before a bed is free means, if there is one.
    pub not_free: Option<&'static str>,
}

/// Beds by week; `None` where no bed carries anything.
#[must_use]
pub fn beds(view: &View<'_>) -> Option<Beds> {
    let all = view.carried();
    let (used, empty): (Vec<_>, Vec<_>) = all.into_iter().partition(|bed| !bed.stands.is_empty());
    if used.is_empty() {
        return None;
    }
    let weeks = Weeks::of(view);
    let mut description = format!(
        "A row for each bed, as high as it has strips of 30 cm (12 in), with what stands on them \
         from which day to which, a week to clear the bed included. {}",
        weeks.in_words(view)
    );
    if !empty.is_empty() {
        let beds = count(empty.len(), "bed");
        description.push_str(&format!(" Nothing of this dish stands in {beds}."));
    }
    let rows: Vec<Row> = used.into_iter().map(|bed| row(view, bed)).collect();
    let waits = rows.iter().any(|row| !row.carries.not_free.is_empty());
    if waits {
        description
            .push_str(" Where it is hatched the bed is not free yet: something else stands there.");
    }
    Some(Beds {
        said: Said {
            title: "Beds, week by week".to_owned(),
            description,
            table: table(view, &rows),
        },
        weeks,
        not_free: waits.then_some("Not free yet: something else stands there"),
        rows,
    })
}

fn row(view: &View<'_>, carries: Carries) -> Row {
    let stands = carries.stands.iter();
    Row {
        name: format!("Bed {}", view.garden[carries.bed].id),
        has: count(carries.strips, "strip"),
        names: stands
            .clone()
            .map(|dated| names_of(view, &dated.stand))
            .collect(),
        cloths: stands
            .map(|dated| view.cloth_of_stand(&dated.stand))
            .collect(),
        carries,
    }
}

/// A row for each stand.
fn table(view: &View<'_>, rows: &[Row]) -> Table {
    let mut table = Table::under(&["Bed", "What", "Strips", "From", "To", "Most used"]);
    for row in rows {
        let Carries {
            most, strips: all, ..
        } = row.carries;
        let stands = row.carries.stands.iter().zip(&row.names);
        table.rows.extend(stands.map(|(stand, name)| {
            vec![
                row.name.clone(),
                name.clone(),
                strips(stand.stand.strips),
                view.words.day(stand.from),
                view.words.day(stand.to),
                format!("{most} of {all}"),
            ]
        }));
    }
    table
}

/// `1 to 6`.
pub(super) fn strips(strips: Strips) -> String {
    match strips.count {
        1 => strips.first.to_string(),
        _ => format!("{} to {}", strips.first, strips.last()),
    }
}

/// The names of what stands together.
pub(super) fn names_of(view: &View<'_>, stand: &Stand) -> String {
    let plantings = stand.plantings.iter();
    list(
        &plantings
            .map(|at| numbered_at(view, *at))
            .collect::<Vec<_>>(),
    )
}
