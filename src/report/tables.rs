//! The plan as tables for spreadsheets: all steps, all plantings, all weeks. Plain cells with a
//! kind; how they are written down is left to the format.

use crate::calendar::{Date, Time};
use crate::plan::{Planting, PlantingAt, StepKind};

use crate::facts::filled::{Use, Week};
use crate::facts::places::places;
use crate::facts::spans::span_of;
use crate::facts::tasks::Task;
use crate::words::step_words::{self, Edge};
use crate::words::view::View;
use crate::words::{cautions, steps, tasks};

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// Nothing.
    Empty,
    /// A text, as a person gave it or as the program words it.
    Text(String),
    /// A number; its unit stands in the head of the column.
    Number(f64),
    /// A day.
    Day(Date),
    /// A time of day.
    Time(Time),
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column {
    /// Its head.
    pub head: String,
    /// How many letters wide it is to be.
    pub width: u16,
}

/// A table: every row has a cell for every column.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Its name.
    pub name: &'static str,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows.
    pub rows: Vec<Vec<Cell>>,
}

impl From<&str> for Cell {
    fn from(text: &str) -> Self {
        match text {
            "" => Self::Empty,
            _ => Self::Text(text.to_owned()),
        }
    }
}

impl From<u32> for Cell {
    fn from(n: u32) -> Self {
        Self::Number(f64::from(n))
    }
}

impl From<usize> for Cell {
    fn from(n: usize) -> Self {
        Self::Number(n as f64)
    }
}

impl From<Date> for Cell {
    fn from(day: Date) -> Self {
        Self::Day(day)
    }
}

impl<T: Into<Self>> From<Option<T>> for Cell {
    fn from(value: Option<T>) -> Self {
        value.map_or(Self::Empty, Into::into)
    }
}

/// The three tables.
#[must_use]
pub fn tables(view: &View<'_>) -> [Table; 3] {
    [steps_table(view), plantings_table(view), weeks_table(view)]
}

fn columns(heads: &[(&str, u16)]) -> Vec<Column> {
    let column = |(head, width): &(&str, u16)| Column {
        head: (*head).to_owned(),
        width: *width,
    };
    heads.iter().map(column).collect()
}

/// A row per task, in order of time.
fn steps_table(view: &View<'_>) -> Table {
    let garden = view.garden;
    let heads = [
        ("First day", 12),
        ("Last day", 12),
        ("Time", 8),
        ("Who", 16),
        ("Grade", 14),
        ("Step", 14),
        ("Ingredient", 18),
        ("Sowing", 8),
        ("Chance to pick", 14),
        ("Chances", 9),
        ("Minutes", 9),
        ("Share of this class", 18),
        ("Of all", 8),
        ("What is shared", 16),
        ("Place", 30),
        ("Caution", 60),
    ];
    let row = |task: &Task<'_>| {
        vec![
            task.from.into(),
            task.to.into(),
            task.begins.map_or(Cell::Empty, Cell::Time),
            tasks::who(garden, task.who).as_str().into(),
            view.team_name(task.team).as_str().into(),
            tasks::name(task).into(),
            task.ingredient.name.as_str().into(),
            task.sowing.number.into(),
            task.chance.map(|chance| chance.number).into(),
            task.chance.map(|chance| chance.of).into(),
            task.whole_minutes().into(),
            task.part.map(|part| part.part).into(),
            task.part.map(|part| part.total).into(),
            task.part.map(|part| steps::thing(part.thing)).into(),
            tasks::spot(garden, task).as_str().into(),
            cautions::of(task.ingredient).as_deref().into(),
        ]
    };
    Table {
        name: "Steps",
        columns: columns(&heads),
        rows: view.tasks.iter().map(row).collect(),
    }
}

/// The columns of days of steps: of which kind, which of its days, head and width.
fn step_days() -> impl Iterator<Item = (StepKind, Edge, &'static str, u16)> {
    StepKind::ALL.iter().flat_map(|kind| {
        let heads = step_words::of(*kind).table_heads.iter();
        heads.map(|(edge, head, width)| (*kind, *edge, *head, *width))
    })
}

/// A row per planting and place, in the order of the plan; what is counted for the whole
/// planting stands in its first row.
fn plantings_table(view: &View<'_>) -> Table {
    let heads = [
        ("Ingredient", 18),
        ("Sowing", 8),
        ("Grade", 14),
        ("How", 30),
        ("Bed", 8),
        ("First strip", 10),
        ("Strips", 8),
        ("In the bed from", 15),
        ("Until, cleared", 15),
    ];
    let counts = [
        ("Seeds or pieces", 15),
        ("Plants", 8),
        ("Flats", 8),
        ("Flats after potting up", 20),
    ];
    let days = step_days().map(|(_, _, head, width)| (head, width));
    let heads: Vec<(&str, u16)> = heads.into_iter().chain(days).chain(counts).collect();
    let mut rows = Vec::new();
    for (at, planting) in view.plan.numbered() {
        rows.extend(planting_rows(view, at, planting));
    }
    Table {
        name: "Plantings",
        columns: columns(&heads),
        rows,
    }
}

fn planting_rows(view: &View<'_>, at: PlantingAt, planting: &Planting) -> Vec<Vec<Cell>> {
    let stands = view.in_bed.get(at.0).copied().flatten();
    let grades = view.team_name(view.team_of(planting));
    let day = |kind, edge| {
        let span = span_of(planting, kind);
        Cell::from(span.map(|(from, to)| match edge {
            Edge::First => from,
            Edge::Last => to,
        }))
    };
    let of_planting = [
        planting.ingredient.as_str().into(),
        view.sowing(at).number.into(),
        grades.as_str().into(),
        steps::how_grown(planting.method).into(),
    ];
    let counted = |first_row: bool, n: u32| match first_row && n > 0 {
        true => n.into(),
        false => Cell::Empty,
    };
    let merged = places(&planting.places);
    let places: Vec<Option<_>> = match merged.as_slice() {
        [] => vec![None],
        places => places.iter().map(Some).collect(),
    };
    let row = |(n, place): (usize, &Option<&crate::plan::Place>)| {
        let mut row = of_planting.to_vec();
        row.extend([
            place.map(|place| place.bed.as_str()).into(),
            place.map(|place| place.first_strip).into(),
            place.map(|place| place.strips).into(),
            stands.map(|(from, _)| from).into(),
            stands.map(|(_, to)| to).into(),
        ]);
        row.extend(step_days().map(|(kind, edge, ..)| day(kind, edge)));
        row.extend([
            counted(n == 0, planting.seeds),
            counted(n == 0, planting.plants),
            counted(n == 0, planting.flats_sown),
            counted(n == 0, planting.flats_kept),
        ]);
        row
    };
    places.iter().enumerate().map(row).collect()
}

/// A row per week: flats and strips in use, beside what there is.
fn weeks_table(view: &View<'_>) -> Table {
    let mut heads = columns(&[
        ("Week from", 12),
        ("Flats used", 11),
        ("Flats there", 11),
        ("Flats on the mat", 15),
        ("Room on the mat", 15),
    ]);
    for bed in &view.garden.beds {
        heads.push(Column {
            head: format!("Bed {}: strips used", bed.id),
            width: 18,
        });
        heads.push(Column {
            head: format!("Bed {}: strips there", bed.id),
            width: 18,
        });
    }
    let of = |of: Use| [of.used.into(), of.there.into()];
    let row = |week: Week<'_>| {
        let beds = week.beds.iter().map(|(_, strips)| *strips);
        let all = [week.flats, week.warm_flats].into_iter().chain(beds);
        let monday = [week.monday.into()];
        monday.into_iter().chain(all.flat_map(of)).collect()
    };
    Table {
        name: "Weeks",
        columns: heads,
        rows: view.weeks().into_iter().map(row).collect(),
    }
}
