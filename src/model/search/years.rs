//! The ready years of one ingredient in a search: which of its plantings, alone or as one of two, are
//! ready often enough by themselves and for the whole dish. No sum of rows tells that before one of
//! them is chosen.

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};

/// Weather years, 64 to a word.
pub type Words = Vec<u64>;

/// A planting's harvest.
#[derive(Debug)]
pub struct Harvest {
    /// The years in which it is ready.
    pub ready: Words,
    /// The most that it may give, in least shares of its ingredient.
    pub shares: f64,
}

impl Harvest {
    fn is_enough(&self) -> bool {
        self.shares >= 1.0 - 1e-9
    }
}

/// The plantings of an ingredient and when they are ready.
#[derive(Debug)]
pub struct Years {
    /// The groups of its sowings.
    pub groups: Vec<GroupAt>,
    /// Its plantings, in the order of each group.
    pub plantings: Vec<Harvest>,
    /// The column of its ready years, if it may have several sowings.
    pub own: Option<VarAt>,
    /// The column of the years of the whole dish.
    pub dish: VarAt,
    /// The columns that tell of some years whether the whole dish is ready.
    pub dish_in: Vec<(VarAt, Words)>,
}

/// Years of some plantings together.
#[derive(Debug, Clone, Copy, Default)]
struct Count {
    /// All of them.
    own: u32,
    /// Those in which the whole dish can be ready.
    dish: u32,
}

impl Count {
    /// The greater of each.
    fn or(self, other: Self) -> Self {
        Self {
            own: self.own.max(other.own),
            dish: self.dish.max(other.dish),
        }
    }
}

/// What is asked of an ingredient.
struct Asked {
    own: f64,
    dish: f64,
    /// Years in which the whole dish can be ready.
    possible: Words,
    /// Years in which sowings after the second can be ready.
    rest: Words,
}

impl Asked {
    fn is_met_by(&self, count: Count) -> bool {
        f64::from(count.own) > self.own - 0.5 && f64::from(count.dish) > self.dish - 0.5
    }

    /// Counts years, given word by word.
    fn count(&self, years: impl Iterator<Item = u64>) -> Count {
        let mut count = Count::default();
        for (k, word) in years.enumerate() {
            let word = word | self.rest[k];
            count.own += word.count_ones();
            count.dish += (word & self.possible[k]).count_ones();
        }
        count
    }
}

impl Years {
    /// Closes what is not ready often enough with any partner, and lowers the years to the most that
    /// are left.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        let mut groups = self.groups.iter();
        let (Some(first), second) = (groups.next(), groups.next()) else {
            return Ok(());
        };
        let asked = self.asked(domains);
        let firsts = open(domains, *first);
        let seconds = second.map_or(Vec::new(), |second| open(domains, *second));
        let may_be_alone = second.is_none_or(|second| domains.may_have_none(*second));
        let mut most = Count::default();
        let mut has_first = vec![false; seconds.len()];
        let mut someone_alone = firsts.is_empty();
        for (a, option) in firsts {
            let mut best = Count::default();
            let mut found = false;
            if may_be_alone {
                best = self.alone(a, &asked);
                found = asked.is_met_by(best);
                someone_alone |= found;
            }
            for ((b, _), has_first) in seconds.iter().zip(&mut has_first) {
                if *b <= a {
                    continue;
                }
                let both = self.both(a, *b, &asked);
                best = best.or(both);
                let does = asked.is_met_by(both);
                found |= does;
                *has_first |= does;
            }
            match found {
                true => most = most.or(best),
                false => domains.close(option)?,
            }
        }
        if let Some(own) = self.own {
            domains.lower(own, f64::from(most.own))?;
        }
        domains.lower(self.dish, f64::from(most.dish))?;
        for ((_, option), has_first) in seconds.iter().zip(has_first) {
            if !has_first {
                domains.close(*option)?;
            }
        }
        match second {
            Some(second) if may_be_alone && !someone_alone => domains.close_none(*second),
            _ => Ok(()),
        }
    }

    fn asked(&self, domains: &Domains) -> Asked {
        let words = self.plantings.first().map_or(0, |p| p.ready.len());
        let mut asked = Asked {
            own: self.own.map_or(0.0, |own| domains.column(own).lo),
            dish: domains.column(self.dish).lo,
            possible: vec![0; words],
            rest: vec![0; words],
        };
        for (column, years) in &self.dish_in {
            if domains.column(*column).hi > 0.5 {
                add(&mut asked.possible, years);
            }
        }
        for group in self.groups.iter().skip(2) {
            for (planting, _) in open(domains, *group) {
                add(&mut asked.rest, &self.plantings[planting].ready);
            }
        }
        asked
    }

    /// The most years of a planting without a second one.
    fn alone(&self, a: usize, asked: &Asked) -> Count {
        let a = &self.plantings[a];
        let counts = if a.is_enough() { u64::MAX } else { 0 };
        asked.count(a.ready.iter().map(|a| a & counts))
    }

    /// The most years of two: those in which one that is enough is ready, or both where they are enough
    /// together.
    fn both(&self, a: usize, b: usize, asked: &Asked) -> Count {
        let (a, b) = (&self.plantings[a], &self.plantings[b]);
        let years = a.ready.iter().zip(&b.ready);
        match (a.is_enough(), b.is_enough()) {
            (true, true) => asked.count(years.map(|(a, b)| a | b)),
            (true, false) => asked.count(years.map(|(a, _)| *a)),
            (false, true) => asked.count(years.map(|(_, b)| *b)),
            (false, false) if a.shares + b.shares >= 1.0 - 1e-9 => {
                asked.count(years.map(|(a, b)| a & b))
            }
            (false, false) => asked.count(years.map(|_| 0)),
        }
    }

    /// The columns that it hangs on.
    pub fn columns(&self) -> impl Iterator<Item = VarAt> + '_ {
        let dish_in = self.dish_in.iter().map(|(column, _)| *column);
        self.own.into_iter().chain([self.dish]).chain(dish_in)
    }

    /// About how many terms are looked at.
    #[must_use]
    pub fn size(&self, domains: &Domains) -> usize {
        let groups = self.groups.iter().take(2);
        groups.map(|group| domains.ways(*group)).product()
    }
}

fn add(years: &mut Words, others: &Words) {
    for (word, other) in years.iter_mut().zip(others) {
        *word |= other;
    }
}

/// The open options of a group, each with its place.
fn open(domains: &Domains, group: GroupAt) -> Vec<(usize, OptionAt)> {
    let all = domains.all_options(group).iter().copied().enumerate();
    all.filter(|(_, option)| domains.is_open(*option)).collect()
}
