//! The words of the pattern in which plants stand: distances, and how many.

use crate::facts::pattern::Pattern;
use crate::garden::GradeAt;
use crate::words::view::View;
use crate::words::{count, list};

use super::{Said, Table};
use crate::facts::cloth::Cloth;

/// One piece of bed.
#[derive(Debug, Clone, PartialEq)]
pub struct Piece<'a> {
    /// What stands there.
    pub pattern: Pattern<'a>,
    /// Its look.
    pub cloth: Cloth,
    /// From row to row, in words.
    pub between_rows: String,
    /// From plant to plant.
    pub apart: String,
}

/// All pieces of a grade.
#[derive(Debug, Clone, PartialEq)]
pub struct Patterns<'a> {
    /// Title, description, table.
    pub said: Said,
    /// The pieces.
    pub pieces: Vec<Piece<'a>>,
}

/// The patterns of what a grade grows in beds; `None` where it grows nothing there.
#[must_use]
pub fn patterns<'a>(view: &View<'a>, grade: GradeAt) -> Option<Patterns<'a>> {
    let all = view.patterns(&view.ours(grade));
    let pieces: Vec<Piece<'a>> = all
        .into_iter()
        .map(|pattern| Piece {
            cloth: view.cloth_of(&pattern.ingredient.name),
            between_rows: view.words.short_length(pattern.between_rows),
            apart: view.words.short_length(pattern.apart),
            pattern,
        })
        .collect();
    if pieces.is_empty() {
        return None;
    }
    let mut table = Table::under(&[
        "Ingredient",
        "Piece of bed",
        "Rows",
        "In a row",
        "Between rows",
        "Apart in a row",
    ]);
    let mut told = Vec::new();
    for piece in &pieces {
        let Piece {
            pattern,
            between_rows,
            apart,
            ..
        } = piece;
        let size = view.words.ground(pattern.length, pattern.width);
        told.push(format!(
            "{}: {} across the bed, {between_rows} apart, a plant every {apart}",
            pattern.ingredient.name,
            count(pattern.rows, "row")
        ));
        let cells = [
            pattern.ingredient.name.clone(),
            size,
            pattern.rows.to_string(),
            pattern.in_row.to_string(),
            between_rows.clone(),
            apart.clone(),
        ];
        table.rows.push(cells.to_vec());
    }
    Some(Patterns {
        said: Said {
            title: format!("How the plants stand: {}", view.grade_name(grade)),
            description: format!(
                "A piece of the bed to scale, from edge to edge. {}. Further on it repeats.",
                list(&told)
            ),
            table,
        },
        pieces,
    })
}
