//! The arithmetic behind one aim of a plan, as a file of it needs it: columns with their weights,
//! rows by what they are there for, and the plantings that the columns stand for.

use std::collections::{BTreeMap, BTreeSet};

use crate::calendar::Date;
use crate::garden::{BedAt, Method};
use crate::model::{AimProgram, NamedPlanting, Section};
use crate::plan::{Aim, AimResult, Rule, StepKind};

/// What rows are there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum For {
    /// To keep a rule.
    Rule(Rule),
    /// To hold an earlier aim.
    Held(Aim),
    /// To forbid what cannot be laid out together.
    Forbidden,
}

/// A row: a sum of weighted columns is at most its limit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row<'a> {
    /// Its name, only once.
    pub name: &'a str,
    /// Its limit.
    pub limit: f64,
}

/// A column.
#[derive(Debug, Clone, PartialEq)]
pub struct Column<'a> {
    /// Its name, only once.
    pub name: &'a str,
    /// True if it takes whole numbers only.
    pub whole: bool,
    /// Its least value.
    pub lo: f64,
    /// Its greatest value.
    pub hi: f64,
    /// Its weight in the aim.
    pub aim: f64,
    /// The positions of rows in which it stands, each with its weight.
    pub weights: BTreeMap<usize, f64>,
}

/// A planting that may be made.
#[derive(Debug, Clone, PartialEq)]
pub struct MayBeMade<'a> {
    /// Its name, a part of the names of its columns.
    pub name: &'a str,
    /// How it is grown.
    pub method: Method,
    /// Its steps with their first days.
    pub first_days: Vec<(StepKind, Date)>,
    /// The beds on which it may stand; none for what stands already.
    pub beds: &'a BTreeSet<BedAt>,
}

/// The program of an aim.
#[derive(Debug, Clone, PartialEq)]
pub struct Program<'a> {
    /// The aim, with the value and the bound that were found.
    pub result: AimResult,
    /// The plantings that may be made.
    pub plantings: Vec<MayBeMade<'a>>,
    /// All rows, in the order of `sections`.
    pub rows: Vec<Row<'a>>,
    /// What the rows are there for, with the number of them.
    pub sections: Vec<(For, usize)>,
    /// All columns.
    pub columns: Vec<Column<'a>>,
}

impl<'a> Program<'a> {
    /// The program that was solved.
    #[must_use]
    pub fn of(solved: &'a AimProgram) -> Self {
        let rows = solved.program.rows().iter().zip(&solved.row_names);
        let sections = solved.program.sections();
        let filled = sections.filter(|(_, rows)| !rows.is_empty());
        Self {
            result: solved.result,
            plantings: solved.plantings.iter().map(may_be_made).collect(),
            rows: rows
                .map(|(row, name)| Row {
                    name,
                    limit: row.rhs,
                })
                .collect(),
            sections: filled
                .map(|(section, rows)| (purpose(section), rows.len()))
                .collect(),
            columns: columns(solved),
        }
    }
}

fn purpose(section: Section) -> For {
    match section {
        Section::Rule(rule) => For::Rule(rule),
        Section::Held(aim) => For::Held(aim),
        Section::Forbidden => For::Forbidden,
    }
}

fn may_be_made(named: &NamedPlanting) -> MayBeMade<'_> {
    let done = named.planting.steps.done();
    MayBeMade {
        name: &named.name,
        method: named.planting.method,
        first_days: done.map(|(kind, done)| (kind, done.first())).collect(),
        beds: &named.beds,
    }
}

fn columns(solved: &AimProgram) -> Vec<Column<'_>> {
    let columns = solved.program.columns().iter().zip(&solved.column_names);
    let mut columns: Vec<Column<'_>> = columns
        .map(|(column, name)| Column {
            name,
            whole: column.whole,
            lo: column.lo,
            hi: column.hi,
            aim: 0.0,
            weights: BTreeMap::new(),
        })
        .collect();
    for (col, weight) in &solved.objective {
        columns[col.0].aim += weight;
    }
    for (at, row) in solved.program.rows().iter().enumerate() {
        for (col, weight) in &row.terms {
            *columns[col.0].weights.entry(at).or_insert(0.0) += weight;
        }
    }
    columns
}
