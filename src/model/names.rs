//! Names of columns and rows that a person can read, for programs that are given away.

use std::collections::{BTreeMap, BTreeSet};

use crate::garden::IngredientAt;

use super::board::Board;
use super::columns::{AlikeYears, Ready};
use super::program::{Col, Program, Section};

/// Names in the project file are cut off after this many letters.
const LONGEST: usize = 40;

/// The name of each candidate: its ingredient and a number, such as `tomato.12`.
#[must_use]
pub fn plantings(board: &Board<'_>) -> Vec<String> {
    let ingredients = ingredients(board);
    let mut seen = vec![0; ingredients.len()];
    let all = board.candidates.all.iter();
    all.map(|c| {
        let IngredientAt(at) = c.ingredient;
        seen[at] += 1;
        format!("{}.{}", ingredients[at], seen[at])
    })
    .collect()
}

/// The name of each column, each only once. `plantings` are the names of the candidates.
#[must_use]
pub fn columns(board: &Board<'_>, plantings: &[String]) -> Vec<String> {
    let mut names = vec![String::new(); board.program.columns().len()];
    let of_plantings = of_plantings(board, plantings);
    for (Col(at), name) in of_plantings.into_iter().chain(of_the_dish(board)) {
        names[at] = name;
    }
    distinct(names.into_iter())
}

/// The columns of each planting, named.
fn of_plantings(board: &Board<'_>, plantings: &[String]) -> Vec<(Col, String)> {
    let columns = &board.columns;
    let mut named = Vec::new();
    for (k, name) in plantings.iter().enumerate() {
        named.push((columns.made[k], format!("made.{name}")));
        named.extend(columns.blocks[k].map(|col| (col, format!("blocks.{name}"))));
        let levels = columns.level_up[k].iter().zip(2..);
        named.extend(levels.map(|(col, level)| (*col, format!("level-{level}.{name}"))));
    }
    for (k, plot, col) in &columns.on_plot {
        let plot = &board.candidates[*plot];
        let bed = word(&board.garden[plot.bed].id);
        let strip = plot.strips.first;
        let name = format!("on-bed-{bed}.strip-{strip}.{}", plantings[k.0]);
        named.push((*col, name));
    }
    named
}

/// All other columns, named.
fn of_the_dish(board: &Board<'_>) -> Vec<(Col, String)> {
    let garden = board.garden;
    let columns = &board.columns;
    let mut named: Vec<(Col, String)> = vec![
        (columns.worst_years, "worst-years".to_owned()),
        (columns.dish_years, "dish-years".to_owned()),
        (columns.least_share, "least-share".to_owned()),
    ];
    for (k, name) in ingredients(board).iter().enumerate() {
        named.push((columns.in_pot[k], format!("in-pot.{name}")));
        let share = format!("expected-share.{name}");
        named.push((columns.expected_share[k], share));
        for (team, col) in &columns.grown_by[k] {
            let grades = garden.ids_of(*team).join("+");
            named.push((*col, format!("grows.{name}.{}", word(&grades))));
        }
        let Ready::Decided { each, years } = &columns.ready[k] else {
            continue;
        };
        named.push((*years, format!("ready-years.{name}")));
        for (years, col) in each {
            named.extend(col.map(|col| (col, format!("ready.{name}.{}", year(years)))));
        }
    }
    for (grade, col) in &columns.takes_part {
        named.push((*col, format!("takes-part.{}", word(&garden[*grade].id))));
    }
    for (years, col) in &columns.dish {
        named.push((*col, format!("dish.{}", year(years))));
    }
    for (gap, col) in garden.gaps().iter().zip(&columns.gap_used) {
        named.push((*col, format!("gap.{}", gap.from)));
    }
    for ((class, date), col) in &columns.second_steps {
        let class = word(&garden.class(*class).name);
        named.push((*col, format!("second-steps.{class}.{date}")));
    }
    for (reached, number) in board.reached.iter().zip(1..) {
        named.push((reached.col, format!("too-much.{number}")));
    }
    for ((col, _), number) in board.program.greater().iter().zip(1..) {
        named.push((*col, format!("minutes.{number}")));
    }
    named
}

/// The name of each row: what it is there for and a number, such as `space.7`.
#[must_use]
pub fn rows(program: &Program) -> Vec<String> {
    let mut seen: BTreeMap<Section, usize> = BTreeMap::new();
    let mut names = Vec::with_capacity(program.rows().len());
    for (section, rows) in program.sections() {
        let first = seen.entry(section).or_insert(0);
        names.extend((1..=rows.len()).map(|n| format!("{}.{}", prefix(section), *first + n)));
        *first += rows.len();
    }
    names
}

/// How the names of a section's rows begin.
fn prefix(section: Section) -> String {
    match section {
        Section::Rule(rule) => rule.name().to_owned(),
        Section::Held(aim) => format!("held.{}", aim.name()),
        Section::Forbidden => "forbidden".to_owned(),
    }
}

/// The name of each ingredient, each only once.
fn ingredients(board: &Board<'_>) -> Vec<String> {
    distinct(board.garden.ingredients.iter().map(|i| word(&i.name)))
}

/// Years that are alike, by the first of them, counted from 1.
fn year(years: &AlikeYears) -> String {
    format!("year-{}", years.year + 1)
}

/// A name as one word of letters, digits and dashes.
fn word(name: &str) -> String {
    let dashed = |c: char| if c.is_alphanumeric() { c } else { '-' };
    name.chars().take(LONGEST).map(dashed).collect()
}

/// The names, with a mark added to those that were taken.
fn distinct(names: impl Iterator<Item = String>) -> Vec<String> {
    let mut taken = BTreeSet::new();
    names
        .map(|mut name| {
            while !taken.insert(name.clone()) {
                name.push('\'');
            }
            name
        })
        .collect()
}
