//! A mixed-integer linear program as plain data: columns with bounds, rows `sum <= rhs`.

use crate::plan::{Aim, Rule};

/// A column's position.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Col(pub usize);

/// A variable.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Least value.
    pub lo: f64,
    /// Greatest value; always finite, since microlp wants bounded columns.
    pub hi: f64,
    /// True if it takes whole values only.
    pub whole: bool,
}

/// A weighted sum of columns.
pub type Terms = Vec<(Col, f64)>;

/// A row: the sum of its terms is at most `rhs`.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The weighted sum.
    pub terms: Terms,
    /// The right side.
    pub rhs: f64,
}

/// What rows are there for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Section {
    /// They keep a rule.
    Rule(Rule),
    /// They hold an aim at what it has reached.
    Held(Aim),
    /// They forbid plantings that cannot be laid out together.
    Forbidden,
}

/// Columns and rows; the objective belongs to a stage.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Program {
    columns: Vec<Column>,
    rows: Vec<Row>,
    /// Where each section begins; rows before the first one belong to none.
    sections: Vec<(usize, Section)>,
    greater: Vec<(Col, [Terms; 2])>,
}

impl Program {
    /// All columns.
    #[must_use]
    pub fn columns(&self) -> &[Column] {
        &self.columns
    }

    /// All rows.
    #[must_use]
    pub fn rows(&self) -> &[Row] {
        &self.rows
    }

    /// From now on rows are added for this.
    pub fn begin(&mut self, section: Section) {
        self.sections.push((self.rows.len(), section));
    }

    /// The rows of each section in order; one may come more than once, or have none.
    pub fn sections(&self) -> impl Iterator<Item = (Section, &[Row])> {
        let ends = self.sections.iter().skip(1).map(|(from, _)| *from);
        self.sections
            .iter()
            .zip(ends.chain([self.rows.len()]))
            .map(|((from, section), to)| (*section, &self.rows[*from..to]))
    }

    /// Adds a column of whole values.
    pub fn whole(&mut self, lo: u32, hi: u32) -> Col {
        self.columns.push(Column {
            lo: f64::from(lo),
            hi: f64::from(hi),
            whole: true,
        });
        Col(self.columns.len() - 1)
    }

    /// Adds a yes-or-no column.
    pub fn binary(&mut self) -> Col {
        self.whole(0, 1)
    }

    /// Adds a column of real values from 0 to `hi`.
    pub fn real(&mut self, hi: f64) -> Col {
        self.columns.push(Column {
            lo: 0.0,
            hi,
            whole: false,
        });
        Col(self.columns.len() - 1)
    }

    /// Adds a column that is at least each of two sums, and at most `hi`.
    pub fn greater_of(&mut self, sums: [Terms; 2], hi: f64) -> Col {
        let col = self.real(hi);
        for sum in &sums {
            let mut row = sum.clone();
            row.push((col, -1.0));
            self.at_most(row, 0.0);
        }
        self.greater.push((col, sums));
        col
    }

    /// The columns that are the greater of two sums.
    #[must_use]
    pub fn greater(&self) -> &[(Col, [Terms; 2])] {
        &self.greater
    }

    /// Adds the row `terms <= rhs`, unless it has no terms.
    pub fn at_most(&mut self, terms: Terms, rhs: f64) {
        if !terms.is_empty() {
            self.rows.push(Row { terms, rhs });
        }
    }

    /// Adds the row `terms >= rhs`.
    pub fn at_least(&mut self, terms: Terms, rhs: f64) {
        self.at_most(negated(terms), -rhs);
    }

    /// The greatest value that a sum could have by its columns' bounds.
    #[must_use]
    pub fn greatest(&self, terms: &[(Col, f64)]) -> f64 {
        let most = |(col, weight): &(Col, f64)| weight * self.columns[col.0].hi;
        terms.iter().map(most).sum()
    }

    /// Raises the least value of a column.
    pub fn raise(&mut self, col: Col, lo: f64) {
        self.columns[col.0].lo = lo;
    }
}

/// The terms with their signs turned.
#[must_use]
pub fn negated(terms: Terms) -> Terms {
    terms
        .into_iter()
        .map(|(col, weight)| (col, -weight))
        .collect()
}

/// The terms times a factor.
#[must_use]
pub fn scaled(terms: Terms, factor: f64) -> Terms {
    terms
        .into_iter()
        .map(|(col, weight)| (col, weight * factor))
        .collect()
}

/// The value of a sum, which is never a negative nought.
#[must_use]
pub fn value(terms: &[(Col, f64)], values: &[f64]) -> f64 {
    let terms = terms.iter().map(|(col, weight)| weight * values[col.0]);
    terms.sum::<f64>() + 0.0
}
