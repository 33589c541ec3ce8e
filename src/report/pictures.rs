//! The words of the handouts' pictures beside what is drawn, which `facts` tells. No coordinates:
//! `handouts::pictures` draws.

pub mod beds;

pub mod labels;
pub mod map;
pub mod pattern;
pub mod space;
pub mod timeline;

use crate::plan::{PlantingAt, Stand};

use crate::words::view::View;

/// What is said of a picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// Its title.
    pub title: String,
    /// What it shows, in sentences.
    pub description: String,
    /// The same as rows of a table.
    pub table: Table,
}

/// Rows under a header.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Table {
    /// Names of the columns.
    pub header: Vec<String>,
    /// The rows, each with as many cells.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// A table without rows yet.
    fn under(header: &[&str]) -> Self {
        Self {
            header: header.iter().map(|name| (*name).to_owned()).collect(),
            rows: Vec::new(),
        }
    }
}

/// What a picture's signs mean, for whoever cannot see them.
fn shown_signs<'a>(meanings: impl Iterator<Item = &'a str>) -> String {
    match meanings.collect::<Vec<_>>().join("; ") {
        none if none.is_empty() => none,
        signs => format!(" Signs: {signs}."),
    }
}

/// The names of the grades that grow a planting.
fn grades_at(view: &View<'_>, planting: PlantingAt) -> String {
    let planting = view.plan.planting(planting);
    planting.map_or_else(String::new, |p| view.team_name(view.team_of(p)))
}

/// The names of the grades that grow what stands together, each once.
fn grades_of(view: &View<'_>, stand: &Stand) -> String {
    let plantings = stand.plantings.iter();
    let plantings = plantings.filter_map(|at| view.plan.planting(*at));
    let grades = plantings.flat_map(|planting| view.team_of(planting).grades());
    view.team_name(grades.collect())
}
