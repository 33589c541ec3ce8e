//! The rows of a search, and which of them to look at again when something has been closed.

use std::collections::VecDeque;

use super::at::{GroupAt, OptionAt, RowAt, VarAt};
use super::domains::{Changed, Dead, Domains};
use super::grades::Grades;
use super::linear::Linear;
use super::local::Local;
use super::never::Never;
use super::notes::{Notes, ShareAt, Waiting, Was};
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
            // A sum counts by itself what it looks at.
            Row::Linear(_) => 0,
            Row::Local(row) => row.size(),
            Row::Never(row) => row.parts.iter().map(|p| p.plantings.len()).sum(),
            Row::Order(row) => domains.all_options(row.first).len(),
            Row::Wanted(_) => 1,
            Row::Grades(row) => row.size(),
            Row::Years(row) => row.size(domains),
        }
    }

    /// The groups that it is about.
    fn groups(&self) -> Vec<GroupAt> {
        match self {
            Row::Linear(sum) => sum.groups().collect(),
            Row::Local(_) => Vec::new(),
            Row::Never(row) => {
                let groups = row.parts.iter().flat_map(|p| &p.groups);
                groups.copied().collect()
            }
            Row::Order(row) => vec![row.first, row.second],
            Row::Wanted(row) => vec![row.first],
            Row::Grades(row) => row.groups().collect(),
            Row::Years(row) => row.groups.clone(),
        }
    }

    /// The columns of which any change counts. Of those of a sum one bound counts.
    fn columns(&self) -> Vec<VarAt> {
        match self {
            Row::Linear(_) | Row::Order(_) => Vec::new(),
            Row::Local(row) => row.columns().collect(),
            Row::Never(row) => {
                let plantings = row.parts.iter().flat_map(|p| &p.plantings);
                plantings.filter_map(|r| r.blocks).collect()
            }
            Row::Wanted(row) => vec![row.in_pot],
            Row::Grades(row) => row.columns().collect(),
            Row::Years(row) => row.columns().collect(),
        }
    }
}

/// A row that hangs on a bound of a column.
#[derive(Debug, Clone, Copy)]
struct Watch {
    row: RowAt,
    /// In a sum, the group and option that the column belongs to.
    of: Option<(ShareAt, OptionAt)>,
}

/// What hangs on what. Sums wait at ways of their groups.
#[derive(Debug)]
struct Watched {
    groups: Vec<Vec<RowAt>>,
    low: Vec<Vec<Watch>>,
    high: Vec<Vec<Watch>>,
}

impl Watched {
    fn add(&mut self, row: RowAt, of: &Row) {
        let plain = Watch { row, of: None };
        let Row::Linear(sum) = of else {
            for GroupAt(group) in of.groups() {
                self.groups[group].push(row);
            }
            for VarAt(column) in of.columns() {
                self.low[column].push(plain);
                self.high[column].push(plain);
            }
            return;
        };
        for (column, weight) in sum.free() {
            self.of_bound(*column, *weight).push(plain);
        }
        for (share, option, column, weight) in sum.of_options() {
            let of = Some((share, option));
            self.of_bound(column, weight).push(Watch { row, of });
        }
    }

    /// What hangs on the bound of a column that makes a sum greater.
    fn of_bound(&mut self, VarAt(column): VarAt, weight: f64) -> &mut Vec<Watch> {
        match weight > 0.0 {
            true => &mut self.low[column],
            false => &mut self.high[column],
        }
    }
}

/// The rows; the first one is that of the objective.
#[derive(Debug)]
pub struct Rows {
    rows: Vec<Row>,
    watched: Watched,
    /// How many branches the rows of each group have ended.
    ended: Vec<f64>,
    /// Rows to be looked at, by rank: those that cost more wait until the others close nothing more.
    queue: [VecDeque<RowAt>; RANKS],
    queued: Vec<bool>,
    /// Rows that were added or changed since the search began.
    late: Vec<RowAt>,
    notes: Notes,
    /// Terms that were looked at.
    pub steps: u64,
}

impl Rows {
    /// No rows yet, for so many groups, options and columns.
    #[must_use]
    pub fn new(groups: usize, options: usize, columns: usize) -> Self {
        Self {
            rows: Vec::new(),
            watched: Watched {
                groups: vec![Vec::new(); groups],
                low: vec![Vec::new(); columns],
                high: vec![Vec::new(); columns],
            },
            ended: vec![0.0; groups],
            queue: Default::default(),
            queued: Vec::new(),
            late: vec![RowAt(0)],
            notes: Notes::new(options, groups),
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
        self.watched.add(RowAt(self.rows.len()), &row);
        self.rows.push(row);
        self.queued.push(false);
    }

    /// Gives back the room that the lists of what hangs on what have to spare, once all rows of a program are there.
    pub fn fit(&mut self) {
        let Watched { groups, low, high } = &mut self.watched;
        groups.iter_mut().for_each(Vec::shrink_to_fit);
        low.iter_mut().chain(high).for_each(Vec::shrink_to_fit);
    }

    /// Adds a row that must be looked at wherever the search is.
    pub fn add_late(&mut self, row: Row) {
        self.late.push(RowAt(self.rows.len()));
        self.add(row);
    }

    /// How many branches the rows of a group have ended.
    #[must_use]
    pub fn ended_by(&self, GroupAt(group): GroupAt) -> f64 {
        self.ended[group]
    }

    fn look_at(&mut self, row: RowAt) {
        if !self.queued[row.0] {
            self.queued[row.0] = true;
            self.queue[self.rows[row.0].rank()].push_back(row);
        }
    }

    /// The next row to be looked at: of a rank the one that waits longest, so that much has changed for it.
    fn next(&mut self) -> Option<RowAt> {
        self.queue.iter_mut().find_map(VecDeque::pop_front)
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

    /// What hangs on a change is looked at next.
    fn look_at_watched(&mut self, changed: Changed, domains: &Domains) {
        match changed {
            Changed::Option(option) => {
                self.look_at_group(domains.group_of(option));
                self.look_at_waiting(domains, |notes| notes.at_option(option));
            }
            Changed::NoneOf(group) => {
                self.look_at_group(group);
                self.look_at_waiting(domains, |notes| notes.at_none(group));
            }
            Changed::Low(column) => self.look_at_column(column, |watched| &watched.low),
            Changed::High(column) => self.look_at_column(column, |watched| &watched.high),
        }
    }

    fn look_at_group(&mut self, GroupAt(group): GroupAt) {
        for k in 0..self.watched.groups[group].len() {
            self.look_at(self.watched.groups[group][k]);
        }
    }

    /// Looks at the sums among some that wait for which a group may take more now.
    fn look_at_waiting(&mut self, domains: &Domains, waiting: impl Fn(&Notes) -> &[Waiting]) {
        for k in 0..waiting(&self.notes).len() {
            let (row, share) = waiting(&self.notes)[k];
            self.steps += 1;
            match &self.rows[row.0] {
                Row::Linear(sum) if sum.may_have_risen(share, domains) => self.look_at(row),
                _ => {}
            }
        }
    }

    fn look_at_column(&mut self, VarAt(column): VarAt, of: impl Fn(&Watched) -> &Vec<Vec<Watch>>) {
        for k in 0..of(&self.watched)[column].len() {
            let Watch { row, of } = of(&self.watched)[column][k];
            self.steps += 1;
            if let (Row::Linear(sum), Some((share, option))) = (&mut self.rows[row.0], of)
                && let Some(least) = sum.has_changed(share, option)
            {
                self.notes.was(Was { row, share, least });
            }
            self.look_at(row);
        }
    }

    /// Looks at rows until none of them closes anything more.
    pub fn narrow(&mut self, domains: &mut Domains) -> Result<(), Dead> {
        loop {
            for changed in domains.take_changed() {
                self.look_at_watched(changed, domains);
            }
            let Some(row) = self.next() else {
                return Ok(());
            };
            self.queued[row.0] = false;
            if self.narrow_one(row, domains).is_err() {
                self.count_end(row);
                self.forget(domains);
                return Err(Dead);
            }
        }
    }

    fn narrow_one(&mut self, at: RowAt, domains: &mut Domains) -> Result<(), Dead> {
        let row = &mut self.rows[at.0];
        self.steps += row.size(domains) as u64;
        match row {
            Row::Linear(row) => row.narrow(at, domains, &mut self.notes, &mut self.steps),
            Row::Local(row) => row.narrow(domains),
            Row::Never(row) => row.narrow(domains),
            Row::Order(row) => row.narrow(domains),
            Row::Wanted(row) => row.narrow(domains),
            Row::Grades(row) => row.narrow(domains),
            Row::Years(row) => row.narrow(domains),
        }
    }

    /// A row has ended a branch.
    fn count_end(&mut self, RowAt(row): RowAt) {
        for GroupAt(group) in self.rows[row].groups() {
            self.ended[group] += 1.0;
        }
    }

    /// Drops what was to be looked at.
    pub fn forget(&mut self, domains: &mut Domains) {
        for row in self.queue.iter_mut().flat_map(std::mem::take) {
            self.queued[row.0] = false;
        }
        domains.take_changed();
    }

    /// Where the notes stand.
    #[must_use]
    pub fn mark(&self) -> usize {
        self.notes.mark()
    }

    /// Knows again what was known at a mark.
    pub fn undo(&mut self, mark: usize) {
        while let Some(Was { row, share, least }) = self.notes.take_back(mark) {
            if let Row::Linear(sum) = &mut self.rows[row.0] {
                sum.know_again(share, least);
            }
        }
    }
}
