//! The rows of a search, and which of them to look at again when something has been closed.

use super::domains::{Changed, Dead, Domains};
use super::linear::Linear;
use super::never::Never;

/// A row of the search.
#[derive(Debug)]
pub enum Row {
    /// A row `sum <= rhs`.
    Linear(Linear),
    /// Plantings that do not go together.
    Never(Never),
}

impl Row {
    fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        match self {
            Row::Linear(row) => row.narrow(domains),
            Row::Never(row) => row.narrow(domains),
        }
    }

    fn size(&self) -> usize {
        match self {
            Row::Linear(row) => row.size(),
            Row::Never(row) => row.parts.iter().map(|p| p.plantings.len()).sum(),
        }
    }
}

/// The rows; the first one is that of the objective.
#[derive(Debug)]
pub struct Rows {
    rows: Vec<Row>,
    /// How often each row has ended a branch.
    ended: Vec<f64>,
    of_group: Vec<Vec<usize>>,
    of_column: Vec<Vec<usize>>,
    /// Rows to be looked at.
    queue: Vec<usize>,
    queued: Vec<bool>,
    /// Rows that were added or changed since the search began.
    late: Vec<usize>,
    /// Terms that were looked at.
    pub steps: u64,
}

impl Rows {
    /// No rows yet, for so many groups and columns.
    #[must_use]
    pub fn new(groups: usize, columns: usize) -> Self {
        Self {
            rows: Vec::new(),
            ended: Vec::new(),
            of_group: vec![Vec::new(); groups],
            of_column: vec![Vec::new(); columns],
            queue: Vec::new(),
            queued: Vec::new(),
            late: vec![0],
            steps: 0,
        }
    }

    /// The row of the objective.
    #[must_use]
    pub fn objective(&self) -> Option<&Linear> {
        match self.rows.first() {
            Some(Row::Linear(row)) => Some(row),
            _ => None,
        }
    }

    /// From now on the objective is at most so much.
    pub fn lower_objective(&mut self, rhs: f64) {
        if let Some(Row::Linear(row)) = self.rows.first_mut() {
            row.rhs = rhs;
        }
    }

    /// Adds a row and watches its groups and columns.
    pub fn add(&mut self, row: Row) {
        let at = self.rows.len();
        let (groups, columns): (Vec<usize>, Vec<usize>) = match &row {
            Row::Linear(row) => (row.groups().collect(), row.columns().collect()),
            Row::Never(row) => {
                let plantings = row.parts.iter().flat_map(|p| &p.plantings);
                let columns = plantings.filter_map(|r| r.blocks).collect();
                (row.parts.iter().map(|p| p.group).collect(), columns)
            }
        };
        for group in groups {
            self.of_group[group].push(at);
        }
        for column in columns {
            self.of_column[column].push(at);
        }
        self.rows.push(row);
        self.ended.push(0.0);
        self.queued.push(false);
    }

    /// Adds a row that must be looked at wherever the search is.
    pub fn add_late(&mut self, row: Row) {
        self.late.push(self.rows.len());
        self.add(row);
    }

    /// How many branches the rows of a group have ended.
    pub fn ended_by(&mut self, group: usize) -> f64 {
        self.steps += self.of_group[group].len() as u64;
        self.of_group[group]
            .iter()
            .map(|row| self.ended[*row])
            .sum()
    }

    fn look_at(&mut self, row: usize) {
        if !self.queued[row] {
            self.queued[row] = true;
            self.queue.push(row);
        }
    }

    /// All rows are looked at next.
    pub fn look_at_all(&mut self) {
        (0..self.rows.len()).for_each(|row| self.look_at(row));
    }

    /// The rows that were added or changed since the search began are looked at next.
    pub fn look_at_late(&mut self) {
        let late = std::mem::take(&mut self.late);
        late.iter().for_each(|row| self.look_at(*row));
        self.late = late;
    }

    /// Looks at rows until none of them closes anything more.
    pub fn narrow(&mut self, domains: &mut Domains) -> Result<(), Dead> {
        loop {
            for changed in domains.take_changed() {
                let rows = match changed {
                    Changed::Group(group) => &self.of_group[group],
                    Changed::Column(column) => &self.of_column[column],
                };
                for row in rows {
                    if !self.queued[*row] {
                        self.queued[*row] = true;
                        self.queue.push(*row);
                    }
                }
            }
            let Some(row) = self.queue.pop() else {
                return Ok(());
            };
            self.queued[row] = false;
            self.steps += self.rows[row].size() as u64;
            if self.rows[row].narrow(domains).is_err() {
                self.ended[row] += 1.0;
                self.forget(domains);
                return Err(Dead);
            }
        }
    }

    /// Drops what was to be looked at.
    pub fn forget(&mut self, domains: &mut Domains) {
        for row in std::mem::take(&mut self.queue) {
            self.queued[row] = false;
        }
        domains.take_changed();
    }
}
