//! Beds by week: which strips of which bed are taken, by what, against what there is.

use crate::calendar::Date;
use crate::garden::{BedAt, GradeAt, Strips};
use crate::plan::Stand;
use crate::report::view::View;
use crate::report::words::{count, list};

use super::timeline::numbered;
use super::weeks::Weeks;
use super::{Said, Table};

/// A stand with what a reader asks of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Shown {
    /// Its ingredients, each with the number of the sowing where there are several.
    pub name: String,
    /// What stands where.
    pub stand: Stand,
    /// The first day on which it takes its strips.
    pub from: Date,
    /// The last day, the week to clear them included, within the plan.
    pub to: Date,
}

impl Shown {
    /// The numbers of its plantings in the plan, counted from 1.
    #[must_use]
    pub fn numbers(&self) -> String {
        let plantings = self.stand.plantings.iter();
        list(
            &plantings
                .map(|at| at.number().to_string())
                .collect::<Vec<_>>(),
        )
    }

    /// The positions of its plantings in the plan, as data in a picture.
    #[must_use]
    pub fn positions(&self) -> String {
        let plantings = self.stand.plantings.iter();
        let positions: Vec<String> = plantings.map(|at| at.0.to_string()).collect();
        positions.join(" ")
    }

    /// The grades that grow it, each once.
    pub(super) fn grades(&self, view: &View<'_>) -> Vec<GradeAt> {
        let plantings = self.stand.plantings.iter();
        let plantings = plantings.filter_map(|at| view.plan.planting(*at));
        let mut grades: Vec<GradeAt> = plantings.filter_map(|p| view.grade_of(p)).collect();
        grades.dedup();
        grades
    }

    /// Their names: `Grade 5`.
    pub(super) fn grade_names(&self, view: &View<'_>) -> String {
        let grades = self.grades(view).into_iter();
        list(
            &grades
                .map(|grade| view.grade_name(grade))
                .collect::<Vec<_>>(),
        )
    }
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
    pub stands: Vec<Shown>,
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
                strips(stand.stand.strips),
                view.words.day(stand.from),
                view.words.day(stand.to),
                format!("{most} of {}", row.strips),
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

/// What stands in each bed, in the order in which it comes.
#[must_use]
pub fn stands(view: &View<'_>) -> Vec<Vec<Shown>> {
    let all = view.checked.stands(view.garden);
    let here = |bed: BedAt| {
        let here = all.iter().filter(|stand| stand.bed == bed);
        let mut here: Vec<Shown> = here.map(|stand| shown(view, stand)).collect();
        here.sort_by_key(|shown| (shown.from, shown.stand.strips.first));
        here
    };
    view.garden.bed_positions().map(here).collect()
}

fn shown(view: &View<'_>, stand: &Stand) -> Shown {
    let horizon = view.garden.horizon();
    let plantings = stand.plantings.iter();
    let plantings = plantings.filter_map(|at| view.plan.planting(*at));
    Shown {
        name: list(&plantings.map(|p| numbered(view, p)).collect::<Vec<_>>()),
        stand: stand.clone(),
        from: horizon.date(stand.days.0).max(horizon.first()),
        to: horizon.date(stand.days.1).min(horizon.last()),
    }
}
