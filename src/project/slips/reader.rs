//! A place in the pieces of a text that is being mended, and what stands there.

use crate::diagnostic::Span;

use super::super::tokens::Piece;
use super::mend::Mend;

/// Reads statements and mends them.
pub struct Reader<'t, 'f> {
    pub pieces: Vec<(Piece, Span)>,
    pub at: usize,
    /// Lists and tables around this piece.
    pub depth: usize,
    pub mend: Mend<'t, 'f>,
}

impl Reader<'_, '_> {
    /// A piece ahead of this one.
    pub fn piece(&self, ahead: usize) -> Option<Piece> {
        self.pieces.get(self.at + ahead).map(|(piece, _)| *piece)
    }

    /// The place of a piece, or of the text's end.
    pub fn span(&self, at: usize) -> Span {
        let last = self
            .pieces
            .last()
            .map_or(Span::default(), |(_, span)| *span);
        self.pieces.get(at).map_or(last, |(_, span)| *span)
    }

    /// The place of this piece.
    pub fn here(&self) -> Span {
        self.span(self.at)
    }

    /// True if a piece ahead is a sign.
    pub fn is_sign(&self, ahead: usize, sign: char) -> bool {
        self.piece(ahead) == Some(Piece::Sign(sign))
    }

    /// True at the end of a line.
    pub fn is_break(&self) -> bool {
        matches!(self.piece(0), Some(Piece::Break) | None)
    }

    /// Goes to the end of the line.
    pub fn skip_line(&mut self) {
        while !self.is_break() {
            self.at += 1;
        }
    }

    /// Goes to the next line in which something stands.
    pub fn skip_breaks(&mut self) {
        while self.piece(0) == Some(Piece::Break) {
            self.at += 1;
        }
    }

    /// The place of the pieces from one on to before this one.
    pub fn since(&self, from: usize) -> Span {
        let end = self.span(self.at.saturating_sub(1).max(from)).end;
        Span::from(self.span(from).start..end)
    }

    /// True if a section begins here, which no list and no table holds.
    pub fn begins_heading(&self) -> bool {
        if !self.is_sign(0, '[') {
            return false;
        }
        let on_line = self.pieces.get(self.at..).unwrap_or_default().iter();
        let line: Vec<Piece> = on_line
            .map(|(piece, _)| *piece)
            .take_while(|piece| *piece != Piece::Break)
            .collect();
        let names = line.iter().filter(|piece| **piece == Piece::Word).count();
        let first = line.iter().position(|piece| *piece == Piece::Word);
        let is_name = first.is_some_and(|first| !self.mend.is_scalar(self.span(self.at + first)));
        let only =
            |piece: &Piece| matches!(piece, Piece::Word | Piece::Sign('[' | ']') | Piece::Text(_));
        names > 0 && is_name && line.iter().all(only)
    }

    /// True if a section or a `key = value` begins here, which no list holds.
    pub fn begins_statement(&self) -> bool {
        let is_key = matches!(self.piece(0), Some(Piece::Word | Piece::Text(_)));
        self.begins_heading() || is_key && self.is_sign(1, '=')
    }
}
