//! Plantings that cannot be laid out together, as a search sees them: not all parts of a set reach
//! their number of blocks.

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};

/// A planting that can be a part of the set.
#[derive(Debug, Clone, Copy)]
pub struct Reach {
    /// Its option.
    pub option: OptionAt,
    /// Its column of blocks, if their number is decided.
    pub blocks: Option<VarAt>,
    /// Its blocks, if their number is not decided.
    pub fixed: f64,
}

impl Reach {
    /// The fewest blocks that it may have.
    #[must_use]
    pub fn least(&self, domains: &Domains) -> f64 {
        self.blocks.map_or(self.fixed, |c| domains.column(c).lo)
    }

    /// The most blocks that it may have.
    #[must_use]
    pub fn most(&self, domains: &Domains) -> f64 {
        self.blocks.map_or(self.fixed, |c| domains.column(c).hi)
    }
}

/// Plantings of one ingredient of which one may reach a number of blocks.
#[derive(Debug, Clone)]
pub struct Part {
    /// The groups of its sowings.
    pub groups: Vec<GroupAt>,
    /// The plantings.
    pub plantings: Vec<Reach>,
    /// The number of blocks.
    pub blocks: f64,
}

impl Part {
    fn open<'a>(&'a self, domains: &'a Domains) -> impl Iterator<Item = &'a Reach> {
        self.plantings.iter().filter(|r| domains.is_open(r.option))
    }

    /// True if the number may be reached.
    fn may(&self, domains: &Domains) -> bool {
        self.open(domains)
            .any(|r| r.most(domains) > self.blocks - 0.5)
    }

    /// True if some sowing reaches the number whatever becomes of the rest.
    fn must(&self, domains: &Domains) -> bool {
        let reached = |group: &GroupAt| {
            let reached = self.open(domains);
            let reached = reached.filter(|r| r.least(domains) > self.blocks - 0.5);
            let own = reached.filter(|r| domains.group_of(r.option) == *group);
            own.count() == domains.ways(*group)
        };
        self.groups.iter().any(reached)
    }

    /// The number is not reached.
    fn stay_under(&self, domains: &mut Domains) -> Result<(), Dead> {
        for r in &self.plantings {
            if !domains.is_open(r.option) {
                continue;
            }
            match r.blocks {
                Some(column) if r.least(domains) < self.blocks - 0.5 => {
                    domains.lower(column, self.blocks - 1.0)?;
                }
                _ if r.least(domains) > self.blocks - 0.5 => domains.close(r.option)?,
                _ => {}
            }
        }
        Ok(())
    }
}

/// Not all parts reach their number.
#[derive(Debug)]
pub struct Never {
    /// The parts; a planting belongs to one of them at the most.
    pub parts: Vec<Part>,
}

impl Never {
    /// Closes what would complete the set.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        if !self.parts.iter().all(|part| part.may(domains)) {
            return Ok(());
        }
        let mut open = self.parts.iter().filter(|part| !part.must(domains));
        match (open.next(), open.next()) {
            (None, _) => Err(Dead),
            (Some(last), None) => last.stay_under(domains),
            _ => Ok(()),
        }
    }
}
