//! Writes mutants into a source file, each behind its switch, and remembers where it stands.

use std::ops::Range;

use super::points::{How, Point};

/// A file with its mutants in it.
pub struct Woven {
    pub text: String,
    /// Where each mutant stands in the text, by its number.
    pub stands: Vec<(u32, Range<usize>)>,
}

/// A piece of text that goes into the source at a byte.
struct Piece {
    at: usize,
    /// At one byte, what ends comes before what begins; inner ends first, outer begins first.
    order: (bool, i64),
    number: u32,
    text: String,
}

/// Writes the mutants into a text. They are given with their numbers, outer ones first.
pub fn weave(text: &str, points: &[(u32, &Point)]) -> Woven {
    let mut pieces = Vec::new();
    for (number, point) in points {
        let on = format!("crate::mutant::on({number})");
        let (begin, end) = match &point.how {
            How::Instead(new) => (format!("(if {on} {{ {new} }} else {{ "), " })"),
            How::Skip => (format!("if !{on} {{ "), " }"),
            How::Return(new) => (format!(" if {on} {{ return {new}; }} "), ""),
        };
        let order = i64::from(*number);
        let number = *number;
        pieces.push(Piece {
            at: point.at.start,
            order: (true, order),
            number,
            text: begin,
        });
        pieces.push(Piece {
            at: point.at.end,
            // What stands at one place alone ends after it began.
            order: (
                point.at.is_empty(),
                if point.at.is_empty() { order } else { -order },
            ),
            number,
            text: end.to_owned(),
        });
    }
    pieces.sort_by_key(|piece| (piece.at, piece.order));
    let mut woven = Woven {
        text: String::new(),
        stands: Vec::new(),
    };
    let mut from = 0;
    let mut begun: Vec<(u32, usize)> = Vec::new();
    for piece in pieces {
        woven.text.push_str(&text[from..piece.at]);
        from = piece.at;
        let start = woven.text.len();
        woven.text.push_str(&piece.text);
        match begun.iter().position(|(number, _)| *number == piece.number) {
            None => begun.push((piece.number, start)),
            Some(at) => {
                let (number, start) = begun.swap_remove(at);
                woven.stands.push((number, start..woven.text.len()));
            }
        }
    }
    woven.text.push_str(&text[from..]);
    woven
}
