//! A row about one option alone, such as the fewest blocks of a planting that is made. It says nothing
//! while the option is not chosen, so it need not be looked at when others are closed.

use super::at::{OptionAt, VarAt};
use super::domains::{Dead, Domains};
use super::linear::Stands;

/// A row `sum <= rhs` for where the option is chosen.
#[derive(Debug)]
pub struct Local {
    option: OptionAt,
    weight: f64,
    /// The columns of the option.
    owned: Vec<(VarAt, f64)>,
    rhs: f64,
}

/// What rounding may pass the right side by.
const OFF: f64 = 1e-6;

impl Local {
    /// The row for each of the options that its columns belong to, if it is about one planting alone:
    /// then all its columns belong to the same options.
    #[must_use]
    pub fn of(terms: &[(&Stands, f64)], rhs: f64) -> Option<Vec<Self>> {
        let options = |stands: &Stands| -> Vec<OptionAt> {
            match stands {
                Stands::Free => Vec::new(),
                Stands::Is(options) => options.clone(),
                Stands::Of(options) => options.iter().map(|(option, _)| *option).collect(),
            }
        };
        let (first, _) = terms.first()?;
        let own = options(first);
        if own.is_empty() || terms.iter().any(|(stands, _)| options(stands) != own) {
            return None;
        }
        let row = |option: &OptionAt| {
            let mut row = Self {
                option: *option,
                weight: 0.0,
                owned: Vec::new(),
                rhs,
            };
            for (stands, weight) in terms {
                match stands {
                    Stands::Free => {}
                    Stands::Is(_) => row.weight += weight,
                    Stands::Of(all) => {
                        let own = all.iter().filter(|(other, _)| other == option);
                        row.owned.extend(own.map(|(_, column)| (*column, *weight)));
                    }
                }
            }
            row
        };
        Some(own.iter().map(row).collect())
    }

    /// The columns in the row.
    pub fn columns(&self) -> impl Iterator<Item = VarAt> + '_ {
        self.owned.iter().map(|(column, _)| *column)
    }

    /// How many terms the row has.
    #[must_use]
    pub fn size(&self) -> usize {
        1 + self.owned.len()
    }

    /// Narrows the columns of the option, or closes it.
    pub fn narrow(&self, domains: &mut Domains) -> Result<(), Dead> {
        if !domains.is_open(self.option) {
            return Ok(());
        }
        let owned = self.owned.iter();
        let least: f64 = owned.map(|(c, w)| domains.least(*c, *w)).sum();
        let slack = self.rhs - self.weight - least;
        if slack < -OFF {
            return domains.close(self.option);
        }
        for (column, weight) in &self.owned {
            if domains
                .keep_within(*column, *weight, slack.max(0.0))
                .is_err()
            {
                return domains.close(self.option);
            }
        }
        Ok(())
    }
}
