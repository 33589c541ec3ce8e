//! The sowings of one ingredient in a search. Which of them is called the first means nothing, so
//! they stand in the order of their options: no set of plantings is met twice.

use super::at::{GroupAt, OptionAt, VarAt};
use super::domains::{Dead, Domains};

/// Two sowings of an ingredient that follow each other. Their groups have the same plantings in the
/// same order.
#[derive(Debug)]
pub struct Order {
    /// The sowing whose option comes first.
    pub first: GroupAt,
    /// The next one; there is none where there is no first.
    pub second: GroupAt,
}

impl Order {
    /// Closes options that are not in order.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        let Self { first, second } = *self;
        if domains.options(first).next().is_none() {
            return domains.choose(second, None);
        }
        if !domains.may_have_none(second) {
            domains.close_none(first)?;
            let last = domains.options(second).next_back();
            let last = last.map(|option| place(domains, second, option));
            let late: Vec<OptionAt> = domains
                .options(first)
                .filter(|option| Some(place(domains, first, *option)) >= last)
                .collect();
            for option in late {
                domains.close(option)?;
            }
        }
        let earliest = domains.options(first).next();
        let earliest = earliest.map(|option| place(domains, first, option));
        let early: Vec<OptionAt> = domains
            .options(second)
            .take_while(|option| Some(place(domains, second, *option)) <= earliest)
            .collect();
        for option in early {
            domains.close(option)?;
        }
        Ok(())
    }
}

/// An option's place among those of its group.
fn place(domains: &Domains, group: GroupAt, option: OptionAt) -> usize {
    let first = domains.all_options(group).first();
    option.0 - first.map_or(0, |first| first.0)
}

/// An ingredient that must be in the pot has a first sowing.
#[derive(Debug)]
pub struct Wanted {
    /// The column that tells that it is in the pot.
    pub in_pot: VarAt,
    /// The first sowing.
    pub first: GroupAt,
}

impl Wanted {
    /// Closes that there is none, or that it is in the pot.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        if domains.column(self.in_pot).lo > 0.5 {
            domains.close_none(self.first)?;
        }
        if domains.options(self.first).next().is_none() {
            domains.lower(self.in_pot, 0.0)?;
        }
        Ok(())
    }
}
