//! The rows of a search, and which of them to look at again when something has been closed.

use super::at::{GroupAt, RowAt, VarAt};
use super::domains::{Changed, Dead, Domains};
use super::grades::Grades;
use super::linear::Linear;
use super::local::Local;
use super::never::Never;
use super::order::{Order, Wanted};
use super::years::Years;

/// A row of the search.
#[derive(Debug)]
pub enum Row {
    /// A row `sum <= rhs`.
    Linear(Linear),
    /// A row about one option alone.
    Local(Local),
    /// Plantings that do not go together.
    Never(Never),
    /// Two sowings of an ingredient that follow each other.
    Order(Order),
    /// What being in the pot asks of an ingredient's first sowing.
    Wanted(Wanted),
    /// How many grades grow something.
    Grades(Grades),
    /// The ready years of an ingredient.
    Years(Years),
}

/// How many ranks of rows there are.
const RANKS: usize = 3;

impl Row {
    fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        match self {
            Row::Linear(row) => row.narrow(domains),
            Row::Local(row) => row.narrow(domains),
            Row::Never(row) => row.narrow(domains),
            Row::Order(row) => row.narrow(domains),
            Row::Wanted(row) => row.narrow(domains),
            Row::Grades(row) => row.narrow(domains),
            Row::Years(row) => row.narrow(domains),
        }
    }

    /// In which turn it is looked at.
    fn rank(&self) -> usize {
        match self {
            Row::Local(_) | Row::Order(_) | Row::Wanted(_) => 0,
            Row::Linear(_) | Row::Never(_) => 1,
            Row::Grades(_) | Row::Years(_) => 2,
        }
    }

    /// About how many terms are looked at.
    fn size(&self, domains: &Domains) -> usize {
        match self {
            Row::Linear(row) => row.size(),
            Row::Local(row) => row.size(),
            Row::Never(row) => row.parts.iter().map(|p| p.plantings.len()).sum(),
            Row::Order(row) => domains.all_options(row.first).len(),
            Row::Wanted(_) => 1,
            Row::Grades(row) => row.size(),
            Row::Years(row) => row.size(domains),
        }
    }

    /// The groups and columns that it hangs on.
    fn hangs_on(&self) -> (Vec<GroupAt>, Vec<VarAt>) {
        match self {
            Row::Linear(row) => (row.groups().collect(), row.columns().collect()),
            Row::Local(row) => (Vec::new(), row.columns().collect()),
            Row::Never(row) => {
                let plantings = row.parts.iter().flat_map(|p| &p.plantings);
                let groups = row.parts.iter().flat_map(|p| &p.groups);
                let columns = plantings.filter_map(|r| r.blocks).collect();
                (groups.copied().collect(), columns)
            }
            Row::Order(row) => (vec![row.first, row.second], Vec::new()),
            Row::Wanted(row) => (vec![row.first], vec![row.in_pot]),
            Row::Grades(row) => (row.groups().collect(), row.columns().collect()),
            Row::Years(row) => (row.groups.clone(), row.columns().collect()),
        }
    }
}

/// The rows; the first one is that of the objective.
#[derive(Debug)]
pub struct Rows {
    rows: Vec<Row>,
    /// How often each row has ended a branch.
    ended: Vec<f64>,
    of_group: Vec<Vec<RowAt>>,
    of_column: Vec<Vec<RowAt>>,
    /// Rows to be looked at, by rank: those that cost more wait until the others close nothing more.
    queue: [Vec<RowAt>; RANKS],
    queued: Vec<bool>,
    /// Rows that were added or changed since the search began.
    late: Vec<RowAt>,
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
            queue: Default::default(),
            queued: Vec::new(),
            late: vec![RowAt(0)],
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
        let at = RowAt(self.rows.len());
        let (groups, columns) = row.hangs_on();
        for group in groups {
            self.of_group[group.0].push(at);
        }
        for column in columns {
            self.of_column[column.0].push(at);
        }
        self.rows.push(row);
        self.ended.push(0.0);
        self.queued.push(false);
    }

    /// Adds a row that must be looked at wherever the search is.
    pub fn add_late(&mut self, row: Row) {
        self.late.push(RowAt(self.rows.len()));
        self.add(row);
    }

    /// How many branches the rows of a group have ended.
    pub fn ended_by(&mut self, group: GroupAt) -> f64 {
        let rows = &self.of_group[group.0];
        self.steps += rows.len() as u64;
        rows.iter().map(|row| self.ended[row.0]).sum()
    }

    fn look_at(&mut self, row: RowAt) {
        if !self.queued[row.0] {
            self.queued[row.0] = true;
            self.queue[self.rows[row.0].rank()].push(row);
        }
    }

    /// The next row to be looked at.
    fn next(&mut self) -> Option<RowAt> {
        self.queue.iter_mut().find_map(Vec::pop)
    }

    /// All rows are looked at next.
    pub fn look_at_all(&mut self) {
        (0..self.rows.len()).for_each(|row| self.look_at(RowAt(row)));
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
                    Changed::Group(group) => &self.of_group[group.0],
                    Changed::Column(column) => &self.of_column[column.0],
                };
                for row in rows {
                    if !self.queued[row.0] {
                        self.queued[row.0] = true;
                        self.queue[self.rows[row.0].rank()].push(*row);
                    }
                }
            }
            let Some(row) = self.next() else {
                return Ok(());
            };
            self.queued[row.0] = false;
            self.steps += self.rows[row.0].size(domains) as u64;
            if self.rows[row.0].narrow(domains).is_err() {
                self.ended[row.0] += 1.0;
                self.forget(domains);
                return Err(Dead);
            }
        }
    }

    /// Drops what was to be looked at.
    pub fn forget(&mut self, domains: &mut Domains) {
        for row in self.queue.iter_mut().flat_map(std::mem::take) {
            self.queued[row.0] = false;
        }
        domains.take_changed();
    }
}
