//! A small reader of MPS files, written from the format's description and not from our writer.

use std::collections::{BTreeMap, BTreeSet};

use tureen::model::AimProgram;

/// Weights by row and column, without zeros.
type Weights = BTreeMap<(String, String), f64>;

/// What a file says.
#[derive(Debug, PartialEq)]
pub struct Read {
    maximise: bool,
    rows: Vec<String>,
    columns: Vec<String>,
    whole: BTreeSet<String>,
    weights: Weights,
    right_sides: BTreeMap<String, f64>,
    bounds: BTreeMap<String, (f64, f64)>,
}

impl Read {
    /// Reads a file; what is not understood fails the test.
    pub fn of(text: &str) -> Self {
        let mut read = Self {
            maximise: false,
            rows: Vec::new(),
            columns: Vec::new(),
            whole: BTreeSet::new(),
            weights: Weights::new(),
            right_sides: BTreeMap::new(),
            bounds: BTreeMap::new(),
        };
        let (mut section, mut whole) = ("", false);
        for line in text.lines().filter(|l| !l.starts_with('*')) {
            let fields: Vec<&str> = line.split_whitespace().collect();
            if !line.starts_with(' ') {
                section = fields[0];
                continue;
            }
            match (section, &fields[..]) {
                ("OBJSENSE", ["MAX"]) => read.maximise = true,
                ("OBJSENSE", ["MIN"]) => {}
                ("ROWS", ["N", "aim"]) => {}
                ("ROWS", ["L", name]) => read.rows.push((*name).to_owned()),
                ("COLUMNS", [_, "'MARKER'", "'INTORG'"]) => whole = true,
                ("COLUMNS", [_, "'MARKER'", "'INTEND'"]) => whole = false,
                ("COLUMNS", [column, row, weight]) => read.weight(column, row, weight, whole),
                ("RHS", [_, row, value]) => {
                    let before = read.right_sides.insert((*row).to_owned(), number(value));
                    assert_eq!(before, None, "{line}");
                }
                ("BOUNDS", [kind, _, column, value]) => read.bound(kind, column, value),
                _ => panic!("not understood in {section}: {line}"),
            }
        }
        assert_eq!(section, "ENDATA");
        read
    }

    fn weight(&mut self, column: &str, row: &str, weight: &str, whole: bool) {
        if self.columns.last().is_none_or(|last| last != column) {
            self.columns.push(column.to_owned());
        }
        if whole {
            self.whole.insert(column.to_owned());
        }
        if number(weight) != 0.0 {
            let place = (row.to_owned(), column.to_owned());
            let before = self.weights.insert(place, number(weight));
            assert_eq!(before, None, "{column} stands twice in {row}");
        }
    }

    fn bound(&mut self, kind: &str, column: &str, value: &str) {
        let bounds = self.bounds.entry(column.to_owned());
        let (lo, hi) = bounds.or_insert((f64::NAN, f64::NAN));
        match kind {
            "LO" => *lo = number(value),
            "UP" => *hi = number(value),
            _ => panic!("bound {kind}"),
        }
    }
}

/// What a file of a program has to say.
impl From<&AimProgram> for Read {
    fn from(solved: &AimProgram) -> Self {
        let program = &solved.program;
        let name = |col: &tureen::model::Col| solved.column_names[col.0].clone();
        let mut weights = Weights::new();
        let rows = program.rows().iter().zip(&solved.row_names);
        let rows = rows.map(|(row, name)| (name.as_str(), &row.terms));
        for (row, terms) in rows.chain([("aim", &solved.objective)]) {
            for (col, weight) in terms {
                *weights.entry((row.to_owned(), name(col))).or_insert(0.0) += weight;
            }
        }
        weights.retain(|_, weight| *weight != 0.0);
        let columns = program.columns().iter().zip(&solved.column_names);
        let whole = columns.clone().filter(|(column, _)| column.whole);
        let rhs = program.rows().iter().zip(&solved.row_names);
        Self {
            maximise: solved.result.aim.more_is_better(),
            rows: solved.row_names.clone(),
            columns: solved.column_names.clone(),
            whole: whole.map(|(_, name)| name.clone()).collect(),
            weights,
            right_sides: rhs
                .filter(|(row, _)| row.rhs != 0.0)
                .map(|(row, name)| (name.clone(), row.rhs))
                .collect(),
            bounds: columns
                .map(|(column, name)| (name.clone(), (column.lo, column.hi)))
                .collect(),
        }
    }
}

fn number(text: &str) -> f64 {
    text.parse().unwrap()
}
