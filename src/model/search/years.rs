//! The ready years of one ingredient in a search: which of its plantings, alone or as one of two, are
//! ready often enough by themselves and for the whole dish, and with how many blocks. It stands in
//! place of the program's rows about readiness, which tell that only when nearly all is decided.

use super::at::{GroupAt, VarAt};
use super::domains::{Dead, Domains};
use super::never::Reach;

/// Of more sowings than this it is only told that those after the second may make up for anything.
pub const MOST_IN_PAIRS: u32 = 2;

/// Weather years, 64 to a word.
pub type Words = Vec<u64>;

/// A planting as one of an ingredient's sowings.
#[derive(Debug)]
pub struct Harvest {
    /// Its option and blocks.
    pub reach: Reach,
    /// Position of the set of years in which it is ready.
    pub ready: usize,
    /// What a block of it gives, in least shares of its ingredient.
    pub share: f64,
    /// The fewest blocks that are enough by themselves in a ready year.
    pub enough: f64,
}

impl Harvest {
    fn brings(&self, domains: &Domains) -> Brings {
        let (least, most) = (self.reach.least(domains), self.reach.most(domains));
        let too_few = self.enough - 1.0;
        Brings {
            enough: most > too_few + 0.5,
            part: match least < too_few + 0.5 {
                true => self.share * most.min(too_few),
                false => 0.0,
            },
        }
    }
}

/// What is left of a planting, or of all that are ready in the same years.
#[derive(Debug, Clone, Copy, Default)]
struct Brings {
    /// True if it may be enough by itself.
    enough: bool,
    /// The most that it may give without being enough, in least shares.
    part: f64,
}

impl Brings {
    fn is_nothing(self) -> bool {
        !self.enough && self.part <= 0.0
    }
}

/// Another sowing of the ingredient.
struct Partner {
    /// True if there may be none.
    none: bool,
    /// By set of ready years: what the open plantings bring.
    brings: Vec<Brings>,
}

/// The plantings of an ingredient and when they are ready.
#[derive(Debug)]
pub struct Years {
    /// The groups of its sowings.
    pub groups: Vec<GroupAt>,
    /// Its plantings, for each group in the order of its options.
    pub plantings: Vec<Vec<Harvest>>,
    /// Sets of years in which some planting is ready, each once.
    pub sets: Vec<Words>,
    /// True if a further sowing is of no use where it adds no year.
    pub only_years: bool,
    /// The column of its ready years, if it may have several sowings.
    pub own: Option<VarAt>,
    /// The column of the years of the worst ingredient.
    pub worst: VarAt,
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

/// The best of two ways, each of which may not be.
fn best(one: Option<Count>, other: Option<Count>) -> Option<Count> {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.or(other)),
        _ => one.or(other),
    }
}

/// What is asked of an ingredient.
struct Asked {
    own: f64,
    dish: f64,
    /// Years in which the whole dish must be ready.
    needed: Words,
    /// Years in which the whole dish can be ready.
    possible: Words,
    /// Years in which sowings after the second can be ready.
    rest: Words,
}

impl Asked {
    /// Counts years, given word by word, if they are enough.
    fn count(&self, years: impl Iterator<Item = u64>) -> Option<Count> {
        let mut count = Count::default();
        for (k, word) in years.enumerate() {
            let word = word | self.rest[k];
            if self.needed[k] & !word != 0 {
                return None;
            }
            count.own += word.count_ones();
            count.dish += (word & self.possible[k]).count_ones();
        }
        let enough =
            f64::from(count.own) > self.own - 0.5 && f64::from(count.dish) > self.dish - 0.5;
        enough.then_some(count)
    }

    /// The same of no year at all.
    fn count_none(&self) -> Option<Count> {
        self.count(self.rest.iter().map(|_| 0))
    }
}

impl Years {
    /// Closes what is not ready often enough with any other sowing, raises blocks where fewer would not
    /// be, and lowers the years to the most that are left.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        let mut groups = self.groups.iter();
        let (Some(first), second) = (groups.next(), groups.next()) else {
            return Ok(());
        };
        let asked = self.asked(domains);
        let firsts = self.partner(domains, 0, *first);
        let seconds = match second {
            Some(second) => self.partner(domains, 1, *second),
            None => Partner {
                none: true,
                brings: Vec::new(),
            },
        };
        self.lower_dish(domains, &asked, &[&firsts, &seconds])?;
        let of_none = asked.count_none();
        if of_none.is_none() {
            domains.close_none(*first)?;
        }
        let most = self.narrow_group(domains, 0, &seconds, &asked)?;
        let most = best(most, of_none.filter(|_| firsts.none)).ok_or(Dead)?;
        if let Some(own) = self.own {
            domains.lower(own, f64::from(most.own))?;
        }
        domains.lower(self.worst, f64::from(most.own))?;
        domains.lower(self.dish, f64::from(most.dish))?;
        let Some(second) = second else {
            return Ok(());
        };
        let with_first = Partner {
            none: false,
            ..firsts
        };
        self.narrow_group(domains, 1, &with_first, &asked)?;
        let by_itself = |(set, brings): (usize, &Brings)| {
            let enough = brings.enough && self.alone(set, &asked).is_some();
            enough || !brings.is_nothing() && of_none.is_some()
        };
        let mut by_pattern = with_first.brings.iter().enumerate();
        match domains.may_have_none(*first) || by_pattern.any(by_itself) {
            true => Ok(()),
            false => domains.close_none(*second),
        }
    }

    /// Narrows the plantings of a sowing; the most years that are left with one of them.
    fn narrow_group(
        &self,
        domains: &mut Domains,
        sowing: usize,
        partner: &Partner,
        asked: &Asked,
    ) -> Result<Option<Count>, Dead> {
        // All that are enough and ready in the same years have the same partners.
        let mut known: Vec<Option<Option<Count>>> = vec![None; self.sets.len()];
        let mut most = None;
        for planting in &self.plantings[sowing] {
            let Harvest { reach, ready, .. } = planting;
            if !domains.is_open(reach.option) {
                continue;
            }
            let brings = planting.brings(domains);
            let enough = match brings.enough {
                true => *known[*ready].get_or_insert_with(|| self.enough(*ready, partner, asked)),
                false => None,
            };
            let part = match brings.part > 0.0 {
                true => self.part(*ready, brings.part, partner, asked),
                false => None,
            };
            if let Some(blocks) = reach.blocks {
                // More than enough adds no year.
                if part.is_some() && enough.is_none() {
                    domains.lower(blocks, planting.enough - 1.0)?;
                } else if enough.is_some() && self.only_years {
                    domains.lower(blocks, planting.enough)?;
                }
                if enough.is_some() && part.is_none() && brings.part > 0.0 {
                    domains.raise(blocks, planting.enough)?;
                }
            }
            match best(enough, part) {
                None => domains.close(reach.option)?,
                with => most = best(most, with),
            }
        }
        Ok(most)
    }

    fn asked(&self, domains: &Domains) -> Asked {
        let words = self.sets.first().map_or(0, Vec::len);
        let least = |column: VarAt| domains.column(column).lo;
        let own = self.own.map_or(0.0, least);
        let mut asked = Asked {
            own: own.max(least(self.worst)),
            dish: least(self.dish),
            needed: vec![0; words],
            possible: vec![0; words],
            rest: vec![0; words],
        };
        for (column, years) in &self.dish_in {
            let column = domains.column(*column);
            if column.hi > 0.5 {
                add(&mut asked.possible, years);
            }
            if column.lo > 0.5 {
                add(&mut asked.needed, years);
            }
        }
        for plantings in self.plantings.iter().skip(2) {
            let open = plantings.iter().filter(|p| domains.is_open(p.reach.option));
            open.for_each(|planting| add(&mut asked.rest, &self.sets[planting.ready]));
        }
        asked
    }

    fn partner(&self, domains: &Domains, sowing: usize, group: GroupAt) -> Partner {
        let mut brings = vec![Brings::default(); self.sets.len()];
        let plantings = self.plantings[sowing].iter();
        for planting in plantings.filter(|p| domains.is_open(p.reach.option)) {
            let own = planting.brings(domains);
            let all = &mut brings[planting.ready];
            all.enough |= own.enough;
            all.part = all.part.max(own.part);
        }
        Partner {
            none: domains.may_have_none(group),
            brings,
        }
    }

    /// In years in which no open planting is ready the whole dish is not.
    fn lower_dish(
        &self,
        domains: &mut Domains,
        asked: &Asked,
        sowings: &[&Partner],
    ) -> Result<(), Dead> {
        let mut ever = asked.rest.clone();
        for partner in sowings {
            for (set, brings) in self.sets.iter().zip(&partner.brings) {
                if !brings.is_nothing() {
                    add(&mut ever, set);
                }
            }
        }
        for (column, years) in &self.dish_in {
            if years
                .iter()
                .zip(&ever)
                .all(|(years, ever)| years & ever == 0)
            {
                domains.lower(*column, 0.0)?;
            }
        }
        Ok(())
    }

    fn alone(&self, set: usize, asked: &Asked) -> Option<Count> {
        asked.count(self.sets[set].iter().copied())
    }

    /// The most years of a planting that is enough, with or without another one.
    fn enough(&self, set: usize, partner: &Partner, asked: &Asked) -> Option<Count> {
        let alone = self.alone(set, asked);
        let mut most = alone.filter(|_| partner.none);
        for (other, brings) in partner.brings.iter().enumerate() {
            if brings.enough && !(self.only_years && self.adds_none(set, other)) {
                most = best(most, self.either(set, other, asked));
            }
            if brings.part > 0.0 && !self.only_years {
                most = best(most, alone);
            }
        }
        most
    }

    /// The most years of a planting that is not enough, but for a part.
    fn part(&self, set: usize, part: f64, partner: &Partner, asked: &Asked) -> Option<Count> {
        let of_none = asked.count_none().filter(|_| !self.only_years);
        let mut most = of_none.filter(|_| partner.none);
        for (other, brings) in partner.brings.iter().enumerate() {
            if brings.enough && !self.only_years {
                most = best(most, self.alone(other, asked));
            }
            if brings.part > 0.0 {
                let together = brings.part + part >= 1.0 - 1e-9;
                let both = together.then(|| self.both(set, other, asked)).flatten();
                most = best(most, best(both, of_none));
            }
        }
        most
    }

    /// True if one of two plantings is ready whenever the other is.
    fn adds_none(&self, one: usize, other: usize) -> bool {
        let within = |a: &Words, b: &Words| a.iter().zip(b).all(|(a, b)| a & !b == 0);
        let (one, other) = (&self.sets[one], &self.sets[other]);
        within(one, other) || within(other, one)
    }

    fn either(&self, one: usize, other: usize, asked: &Asked) -> Option<Count> {
        let years = self.sets[one].iter().zip(&self.sets[other]);
        asked.count(years.map(|(a, b)| a | b))
    }

    fn both(&self, one: usize, other: usize, asked: &Asked) -> Option<Count> {
        let years = self.sets[one].iter().zip(&self.sets[other]);
        asked.count(years.map(|(a, b)| a & b))
    }

    /// The columns that it hangs on.
    pub fn columns(&self) -> impl Iterator<Item = VarAt> + '_ {
        let dish_in = self.dish_in.iter().map(|(column, _)| *column);
        let blocks = self.plantings.iter().flatten();
        let blocks = blocks.filter_map(|planting| planting.reach.blocks);
        let own = self.own.into_iter().chain([self.worst, self.dish]);
        own.chain(dish_in).chain(blocks)
    }

    /// About how many terms are looked at.
    #[must_use]
    pub fn size(&self, domains: &Domains) -> usize {
        let groups = self.groups.iter().map(|group| domains.ways(*group));
        groups.sum::<usize>() + self.sets.len() * self.sets.len()
    }
}

fn add(years: &mut Words, others: &Words) {
    for (word, other) in years.iter_mut().zip(others) {
        *word |= other;
    }
}
