//! A row `sum <= rhs` that knows of the groups: of each group one option counts, so the least that
//! the row can take is the sum of the least that each group can take.

use std::collections::BTreeMap;

use super::domains::{Dead, Domains};

/// A column that belongs to an option: it is 0 unless that is chosen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Owner {
    /// The column is 1 where the option is chosen.
    Is(usize),
    /// The column can be more than 0 where the option is chosen.
    Of(usize),
}

/// What an option takes of a row.
#[derive(Debug)]
struct Part {
    option: usize,
    weight: f64,
    owned: Vec<(usize, f64)>,
}

impl Part {
    fn least(&self, domains: &Domains) -> f64 {
        let owned = self.owned.iter();
        self.weight + owned.map(|(c, w)| domains.least(*c, *w)).sum::<f64>()
    }

    fn most(&self, domains: &Domains) -> f64 {
        let owned = self.owned.iter();
        self.weight - owned.map(|(c, w)| domains.least(*c, -w)).sum::<f64>()
    }
}

/// What a group takes of a row.
#[derive(Debug)]
struct Share {
    group: usize,
    parts: Vec<Part>,
}

impl Share {
    /// The least and the most that the group can take: those of its open options, or nothing if it
    /// can have none, or one that is not in the row.
    fn range(&self, domains: &Domains) -> (f64, f64) {
        let mut open = 0;
        let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
        for part in &self.parts {
            if domains.is_open(part.option) {
                open += 1;
                least = least.min(part.least(domains));
                most = most.max(part.most(domains));
            }
        }
        match open < domains.ways(self.group) {
            true => (least.min(0.0), most.max(0.0)),
            false => (least, most),
        }
    }

    /// Closes what takes more than `slack` above the least.
    fn narrow(&self, domains: &mut Domains, least: f64, slack: f64, off: f64) -> Result<(), Dead> {
        for part in &self.parts {
            if !domains.is_open(part.option) {
                continue;
            }
            let more = part.least(domains) - least;
            if more > slack + off {
                domains.close(part.option)?;
                continue;
            }
            let left = (slack - more).max(0.0);
            for (column, weight) in &part.owned {
                if domains.keep_within(*column, *weight, left).is_err() {
                    domains.close(part.option)?;
                    break;
                }
            }
        }
        if -least > slack + off {
            let inside = |option: &usize| self.parts.iter().any(|part| part.option == *option);
            let others = domains.options(self.group).filter(|o| !inside(o));
            for option in others.collect::<Vec<usize>>() {
                domains.close(option)?;
            }
            domains.close_none(self.group)?;
        }
        Ok(())
    }
}

/// A row `sum <= rhs`.
#[derive(Debug)]
pub struct Linear {
    shares: Vec<Share>,
    free: Vec<(usize, f64)>,
    /// The right side.
    pub rhs: f64,
    /// By so much rounding may pass it.
    off: f64,
}

impl Linear {
    /// The row of some terms; `owner` tells which columns belong to an option. A row that asks for
    /// a better value than the best so far is exact.
    #[must_use]
    pub fn new(
        terms: impl Iterator<Item = (usize, f64)>,
        rhs: f64,
        owner: &[Option<Owner>],
        domains: &Domains,
    ) -> Self {
        let mut shares: BTreeMap<usize, BTreeMap<usize, Part>> = BTreeMap::new();
        let mut free = Vec::new();
        for (column, weight) in terms {
            let Some(of) = owner[column] else {
                free.push((column, weight));
                continue;
            };
            let (Owner::Is(option) | Owner::Of(option)) = of;
            let share = shares.entry(domains.group_of(option)).or_default();
            let part = share.entry(option).or_insert(Part {
                option,
                weight: 0.0,
                owned: Vec::new(),
            });
            match of {
                Owner::Is(_) => part.weight += weight,
                Owner::Of(_) => part.owned.push((column, weight)),
            }
        }
        let share = |(group, parts): (usize, BTreeMap<usize, Part>)| Share {
            group,
            parts: parts.into_values().collect(),
        };
        Self {
            shares: shares.into_iter().map(share).collect(),
            free,
            rhs,
            off: 1e-6 * (1.0 + rhs.abs() * 1e-3),
        }
    }

    /// The same without any forgiveness for rounding but the least.
    #[must_use]
    pub fn exact(self) -> Self {
        Self { off: 1e-8, ..self }
    }

    /// The groups in the row.
    pub fn groups(&self) -> impl Iterator<Item = usize> + '_ {
        self.shares.iter().map(|share| share.group)
    }

    /// The columns in the row, but for those that are options themselves.
    pub fn columns(&self) -> impl Iterator<Item = usize> + '_ {
        let parts = self.shares.iter().flat_map(|share| &share.parts);
        let owned = parts.flat_map(|part| &part.owned);
        self.free.iter().chain(owned).map(|(column, _)| *column)
    }

    /// How many terms the row has.
    #[must_use]
    pub fn size(&self) -> usize {
        let parts = self.shares.iter().flat_map(|share| &share.parts);
        self.free.len() + parts.map(|part| 1 + part.owned.len()).sum::<usize>()
    }

    /// Closes and narrows what the row does not allow.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        let free: f64 = self.free.iter().map(|(c, w)| domains.least(*c, *w)).sum();
        let ranges: Vec<(f64, f64)> = self.shares.iter().map(|s| s.range(domains)).collect();
        let slack = self.rhs - free - ranges.iter().map(|(least, _)| least).sum::<f64>();
        if slack < -self.off {
            return Err(Dead);
        }
        let slack = slack.max(0.0);
        for (column, weight) in &self.free {
            domains.keep_within(*column, *weight, slack)?;
        }
        for (share, (least, most)) in self.shares.iter().zip(ranges) {
            if most - least > slack {
                share.narrow(domains, least, slack, self.off)?;
            }
        }
        Ok(())
    }
}
