//! The words of the handouts' pictures beside what is drawn, which `facts` tells. No coordinates:
//! `handouts::pictures` draws.

pub mod beds;

pub mod labels;
pub mod map;
pub mod pattern;
pub mod space;
pub mod timeline;

use crate::plan::{PlantingAt, Stand};

use crate::words::list;
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

/// The name of the grade that grows a planting.
fn grade_at<'a>(view: &View<'a>, planting: PlantingAt) -> &'a str {
    let planting = view.plan.planting(planting);
    let grade = planting.and_then(|p| view.grade_of(p));
    grade.map_or("", |grade| view.grade_name(grade))
}

/// The names of the grades that grow what stands together, each once.
fn grades_of(view: &View<'_>, stand: &Stand) -> String {
    let plantings = stand.plantings.iter();
    let mut grades: Vec<&str> = plantings.map(|at| grade_at(view, *at)).collect();
    grades.dedup();
    list(&grades)
}
