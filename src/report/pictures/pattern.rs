//! The words of the pattern in which plants stand: distances, and how many.

use crate::facts::pattern::{Lie, Pattern};
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
    /// From row to row, in words; none where there is one along a trellis.
    pub between_rows: Option<String>,
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
            between_rows: match pattern.lie {
                Lie::Across { between, .. } => Some(view.words.short_length(between)),
                Lie::AlongTrellis => None,
            },
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
        let Piece { pattern, apart, .. } = piece;
        let name = &pattern.ingredient.name;
        let [lie, rows, between] = rows(piece);
        told.push(format!("{name}: {lie}, a plant every {apart}"));
        table.rows.push(vec![
            name.clone(),
            view.words.ground(pattern.length, pattern.width),
            rows,
            pattern.in_row.to_string(),
            between,
            apart.clone(),
        ]);
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

/// How the rows of a piece lie, how many there are, and from row to row.
fn rows(piece: &Piece<'_>) -> [String; 3] {
    let between = piece.between_rows.clone().unwrap_or_default();
    match piece.pattern.lie {
        Lie::Across { rows, .. } => {
            let lie = format!("{} across the bed, {between} apart", count(rows, "row"));
            [lie, rows.to_string(), between]
        }
        Lie::AlongTrellis => [
            "one row along the trellis".to_owned(),
            "1, along the trellis".to_owned(),
            between,
        ],
    }
}
