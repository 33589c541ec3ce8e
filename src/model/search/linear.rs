//! A row `sum <= rhs` that knows of the groups: of each group one option counts, so the least that
//! the row can take is the sum of the least that each group can take.

use std::collections::BTreeMap;

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};

/// What a column of the program is in a search.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Stands {
    /// A column by itself.
    Free,
    /// It is 1 where one of these options is chosen, and else 0.
    Is(Vec<OptionAt>),
    /// It can be more than 0 where one of these options is chosen, each of which has a column for
    /// that.
    Of(Vec<(OptionAt, VarAt)>),
}

/// What an option takes of a row.
#[derive(Debug)]
struct Part {
    option: OptionAt,
    weight: f64,
    owned: Vec<(VarAt, f64)>,
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
    group: GroupAt,
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
            // Parts are in the order of their options.
            let inside = |option: &OptionAt| {
                let found = self.parts.binary_search_by_key(option, |part| part.option);
                found.is_ok()
            };
            let others = domains.options(self.group).filter(|o| !inside(o));
            for option in others.collect::<Vec<OptionAt>>() {
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
    free: Vec<(VarAt, f64)>,
    /// The right side.
    pub rhs: f64,
    /// By so much rounding may pass it.
    off: f64,
}

/// The parts of a row, by group and option.
#[derive(Default)]
struct Parts(BTreeMap<GroupAt, BTreeMap<OptionAt, Part>>);

impl Parts {
    fn of(&mut self, domains: &Domains, option: OptionAt) -> &mut Part {
        let share = self.0.entry(domains.group_of(option)).or_default();
        share.entry(option).or_insert(Part {
            option,
            weight: 0.0,
            owned: Vec::new(),
        })
    }
}

impl Linear {
    /// The row of some terms, each with what its column stands for.
    #[must_use]
    pub fn new<'a>(
        terms: impl Iterator<Item = (VarAt, &'a Stands, f64)>,
        rhs: f64,
        domains: &Domains,
    ) -> Self {
        let mut parts = Parts::default();
        let mut free = Vec::new();
        for (column, stands, weight) in terms {
            match stands {
                Stands::Free => free.push((column, weight)),
                Stands::Is(options) => {
                    for option in options {
                        parts.of(domains, *option).weight += weight;
                    }
                }
                Stands::Of(options) => {
                    for (option, own) in options {
                        parts.of(domains, *option).owned.push((*own, weight));
                    }
                }
            }
        }
        let share = |(group, parts): (GroupAt, BTreeMap<OptionAt, Part>)| Share {
            group,
            parts: parts.into_values().collect(),
        };
        Self {
            shares: parts.0.into_iter().map(share).collect(),
            free,
            rhs,
            off: 1e-6,
        }
    }

    /// The same without any forgiveness for rounding but the least: a row that asks for a better
    /// value than the best so far is exact.
    #[must_use]
    pub fn exact(self) -> Self {
        Self { off: 1e-8, ..self }
    }

    /// The groups in the row.
    pub fn groups(&self) -> impl Iterator<Item = GroupAt> + '_ {
        self.shares.iter().map(|share| share.group)
    }

    /// The columns in the row, but for those that are options themselves.
    pub fn columns(&self) -> impl Iterator<Item = VarAt> + '_ {
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

    /// True if the row can be broken by anything that is open.
    #[must_use]
    pub fn can_bind(&self, domains: &Domains) -> bool {
        let free: f64 = self.free.iter().map(|(c, w)| -domains.least(*c, -w)).sum();
        let most: f64 = self.shares.iter().map(|s| s.range(domains).1).sum();
        free + most > self.rhs
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
