//! A row `sum <= rhs` that knows of the groups: of each group one option counts, so the least that
//! the row can take is the sum of the least that each group can take. That least is kept with a way that
//! takes no more, so nothing is looked at again while that way is open.

use std::ops::Range;

use super::at::{GroupAt, OptionAt, RowAt, VarAt};
use super::domains::{Dead, Domains, LEAST_ROUNDING};
use super::notes::{By, Least, Notes, ShareAt, Was};

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

/// What an option takes of a row: its weight, and so much for each unit of its own columns.
#[derive(Debug)]
struct Part {
    option: OptionAt,
    weight: f64,
    owned: Range<usize>,
    /// True if the row waits at it.
    waits: bool,
}

/// What a group takes of a row.
#[derive(Debug)]
struct Share {
    group: GroupAt,
    /// In the order of their options.
    parts: Range<usize>,
    /// Its ways are never further apart.
    spread: f64,
    now: Least,
    /// Options that are not in the row and at which it waits.
    waits_at: Vec<OptionAt>,
    /// True if it waits until the group has some option.
    waits: bool,
}

/// A row `sum <= rhs`.
#[derive(Debug)]
pub struct Linear {
    shares: Vec<Share>,
    parts: Vec<Part>,
    owned: Vec<(VarAt, f64)>,
    free: Vec<(VarAt, f64)>,
    /// The right side.
    pub rhs: f64,
}

/// A term as it is collected: the group and option that it belongs to, its weight and column.
type Collected = (GroupAt, OptionAt, Option<VarAt>, f64);

impl Linear {
    /// The row of some terms, each with what its column stands for.
    #[must_use]
    pub fn new<'a>(
        terms: impl Iterator<Item = (VarAt, &'a Stands, f64)>,
        rhs: f64,
        domains: &Domains,
    ) -> Self {
        let mut all: Vec<Collected> = Vec::new();
        let mut row = Self {
            shares: Vec::new(),
            parts: Vec::new(),
            owned: Vec::new(),
            free: Vec::new(),
            rhs,
        };
        for (column, stands, weight) in terms {
            let of = |option: &OptionAt| domains.group_of(*option);
            match stands {
                Stands::Free => row.free.push((column, weight)),
                Stands::Is(options) => {
                    all.extend(options.iter().map(|o| (of(o), *o, None, weight)));
                }
                Stands::Of(options) => {
                    let own = options.iter();
                    all.extend(own.map(|(o, own)| (of(o), *o, Some(*own), weight)));
                }
            }
        }
        all.sort_by_key(|(group, option, ..)| (*group, *option));
        for own in all.chunk_by(|a, b| a.0 == b.0) {
            row.add_share(own, domains);
        }
        // Thousands of rows are kept.
        row.shares.shrink_to_fit();
        row.parts.shrink_to_fit();
        row.owned.shrink_to_fit();
        row.free.shrink_to_fit();
        row
    }

    /// Adds what a group takes.
    fn add_share(&mut self, terms: &[Collected], domains: &Domains) {
        let Some((group, ..)) = terms.first() else {
            return;
        };
        let first = self.parts.len();
        for own in terms.chunk_by(|a, b| a.1 == b.1) {
            let begin = self.owned.len();
            let columns = own.iter().filter_map(|(.., col, w)| Some(((*col)?, *w)));
            self.owned.extend(columns);
            let weights = own.iter().filter(|(.., col, _)| col.is_none());
            self.parts.extend(own.first().map(|(_, option, ..)| Part {
                option: *option,
                weight: weights.map(|(.., w)| w).sum(),
                owned: begin..self.owned.len(),
                waits: false,
            }));
        }
        let parts = first..self.parts.len();
        let own = || self.parts[parts.clone()].iter();
        let least = own().map(|p| self.least_of(p, domains)).fold(0.0, f64::min);
        let most = own().map(|p| self.most_of(p, domains)).fold(0.0, f64::max);
        self.shares.push(Share {
            group: *group,
            parts,
            spread: most - least,
            now: Least {
                least,
                by: By::Unknown,
            },
            waits_at: Vec::new(),
            waits: false,
        });
    }

    /// The groups in the row.
    pub fn groups(&self) -> impl Iterator<Item = GroupAt> + '_ {
        self.shares.iter().map(|share| share.group)
    }

    /// The columns in the row that belong to nothing, with their weights.
    #[must_use]
    pub fn free(&self) -> &[(VarAt, f64)] {
        &self.free
    }

    /// The columns of options in the row: group, option, column and weight.
    pub fn of_options(&self) -> impl Iterator<Item = (ShareAt, OptionAt, VarAt, f64)> + '_ {
        let shares = self.shares.iter().enumerate();
        shares.flat_map(move |(k, share)| {
            let parts = self.parts[share.parts.clone()].iter();
            parts.flat_map(move |part| {
                let owned = self.owned[part.owned.clone()].iter();
                owned.map(move |(column, weight)| (ShareAt(k), part.option, *column, *weight))
            })
        })
    }

    fn least_of(&self, part: &Part, domains: &Domains) -> f64 {
        let owned = self.owned[part.owned.clone()].iter();
        part.weight + owned.map(|(c, w)| domains.least(*c, *w)).sum::<f64>()
    }

    fn most_of(&self, part: &Part, domains: &Domains) -> f64 {
        let owned = self.owned[part.owned.clone()].iter();
        part.weight - owned.map(|(c, w)| domains.least(*c, -w)).sum::<f64>()
    }

    /// True if the row can be broken by anything that is open.
    #[must_use]
    pub fn can_bind(&self, domains: &Domains) -> bool {
        let free: f64 = self.free.iter().map(|(c, w)| -domains.least(*c, -w)).sum();
        let most: f64 = self.shares.iter().map(|s| s.now.least + s.spread).sum();
        free + most > self.rhs
    }

    /// True if a group may take more by now than it could.
    #[must_use]
    pub fn may_have_risen(&self, ShareAt(share): ShareAt, domains: &Domains) -> bool {
        let Share { group, now, .. } = &self.shares[share];
        match now.by {
            By::Option(option) => !domains.is_open(option),
            By::None => !domains.may_have_none(*group),
            By::Unknown => true,
        }
    }

    /// A column of an option has changed; what was known of its group, if that is not so any more.
    pub fn has_changed(&mut self, ShareAt(share): ShareAt, option: OptionAt) -> Option<Least> {
        let now = &mut self.shares[share].now;
        let was = *now;
        (now.by == By::Option(option)).then(|| {
            now.by = By::Unknown;
            was
        })
    }

    /// Knows again what was known of a group.
    pub fn know_again(&mut self, ShareAt(share): ShareAt, least: Least) {
        self.shares[share].now = least;
    }

    /// The least that a group can take: that of its open options, or nothing if it can have none, or one
    /// that is not in the row.
    fn find_least(&self, share: &Share, domains: &Domains) -> Least {
        if let Some(option) = domains.chosen(share.group) {
            let part = self.parts_left(share, domains).first();
            return Least {
                least: part.map_or(0.0, |part| self.least_of(part, domains)),
                by: By::Option(option),
            };
        }
        let mut open = 0;
        let mut now = Least {
            least: f64::INFINITY,
            by: By::Unknown,
        };
        for part in &self.parts[share.parts.clone()] {
            if domains.is_open(part.option) {
                open += 1;
                let least = self.least_of(part, domains);
                // The last of those that take no more: options are mostly closed from the first on.
                if least <= now.least {
                    now = Least {
                        least,
                        by: By::Option(part.option),
                    };
                }
            }
        }
        if now.least >= 0.0 && open < domains.ways(share.group) {
            let last = || self.others(share, domains).next_back();
            now = Least {
                least: 0.0,
                by: match domains.may_have_none(share.group) {
                    true => By::None,
                    false => last().map_or(By::Unknown, By::Option),
                },
            };
        }
        now
    }

    /// The parts of a group of which an option may still be chosen, and others: but one where one is left.
    fn parts_left(&self, share: &Share, domains: &Domains) -> &[Part] {
        let parts = &self.parts[share.parts.clone()];
        let Some(option) = domains.chosen(share.group) else {
            return parts;
        };
        match parts.binary_search_by_key(&option, |part| part.option) {
            Ok(at) => &parts[at..=at],
            Err(_) => &[],
        }
    }

    /// The open options of a group that are not in the row.
    fn others<'a>(
        &'a self,
        share: &Share,
        domains: &'a Domains,
    ) -> impl DoubleEndedIterator<Item = OptionAt> + 'a {
        let parts = &self.parts[share.parts.clone()];
        let inside = |option: &OptionAt| parts.binary_search_by_key(option, |part| part.option);
        let open = domains.options(share.group);
        open.filter(move |option| inside(option).is_err())
    }

    /// Finds the least of a group anew, and waits at the way that takes so little.
    fn renew(&mut self, at: RowAt, share: ShareAt, domains: &Domains, notes: &mut Notes) {
        let ShareAt(k) = share;
        let now = self.find_least(&self.shares[k], domains);
        let Share {
            parts,
            now: known,
            waits,
            waits_at,
            group,
            ..
        } = &mut self.shares[k];
        notes.was(Was {
            row: at,
            share,
            least: *known,
        });
        *known = now;
        match now.by {
            By::Option(option) => {
                let parts = &mut self.parts[parts.clone()];
                let found = parts.binary_search_by_key(&option, |part| part.option);
                let waits = match found {
                    Ok(part) => std::mem::replace(&mut parts[part].waits, true),
                    Err(_) => waits_at.contains(&option),
                };
                if !waits {
                    notes.wait_at_option(option, (at, share));
                    if found.is_err() {
                        waits_at.push(option);
                    }
                }
            }
            By::None if !std::mem::replace(waits, true) => notes.wait_at_none(*group, (at, share)),
            By::None | By::Unknown => {}
        }
    }

    /// Closes and narrows what the row, which is known as `at`, does not allow; the terms that were looked
    /// at are added to `steps`.
    pub fn narrow(
        &mut self,
        at: RowAt,
        domains: &mut Domains,
        notes: &mut Notes,
        steps: &mut u64,
    ) -> Result<(), Dead> {
        let free: f64 = self.free.iter().map(|(c, w)| domains.least(*c, *w)).sum();
        *steps += (self.free.len() + self.shares.len()) as u64;
        let mut sum = free;
        for k in 0..self.shares.len() {
            if self.may_have_risen(ShareAt(k), domains) {
                *steps += self.parts_left(&self.shares[k], domains).len() as u64;
                self.renew(at, ShareAt(k), domains, notes);
            }
            sum += self.shares[k].now.least;
        }
        let slack = self.rhs - sum;
        if slack < -LEAST_ROUNDING {
            return Err(Dead);
        }
        let slack = slack.max(0.0);
        for (column, weight) in &self.free {
            domains.keep_within(*column, *weight, slack)?;
        }
        for share in &self.shares {
            if share.spread > slack {
                *steps += self.parts_left(share, domains).len() as u64;
                self.narrow_share(share, domains, slack)?;
            }
        }
        Ok(())
    }

    /// Closes what takes more than `slack` above the least of its group.
    fn narrow_share(&self, share: &Share, domains: &mut Domains, slack: f64) -> Result<(), Dead> {
        let least = share.now.least;
        for part in self.parts_left(share, domains) {
            if !domains.is_open(part.option) {
                continue;
            }
            let more = self.least_of(part, domains) - least;
            if more > slack + LEAST_ROUNDING {
                domains.close(part.option)?;
                continue;
            }
            let left = (slack - more).max(0.0);
            for (column, weight) in &self.owned[part.owned.clone()] {
                if domains.keep_within(*column, *weight, left).is_err() {
                    domains.close(part.option)?;
                    break;
                }
            }
        }
        if -least > slack + LEAST_ROUNDING {
            for option in self.others(share, domains).collect::<Vec<OptionAt>>() {
                domains.close(option)?;
            }
            domains.close_none(share.group)?;
        }
        Ok(())
    }
}
