//! What a plan on a record promises is counted on years that it was not made for: dealt anew here, told
//! alike everywhere, and believed of a saved plan only while it is as it was written.

mod dealt;
mod saved;
mod told;

use tureen::garden::Garden;
use tureen::weather::{Daily, Record};

use crate::support::gardens::tiny_garden;
use crate::support::weather::{daily, steady_years};

/// So many years from 2001, warm and cold by turns that follow no order a person would see.
fn mixed(years: u64) -> Vec<Daily> {
    let mean = |year: u64| 9.0 + ((year * year * 37 + year * 11) % 23) as f64 * 0.5;
    let of = |year| daily(mean(year) - 5.0, mean(year) + 5.0);
    (1..=years).map(of).collect()
}

/// The tiny garden on a record.
fn on(weather: Record) -> Garden {
    Garden {
        weather,
        ..tiny_garden()
    }
}

/// The tiny garden on a record of so many mixed years.
pub fn on_mixed(years: u64) -> Garden {
    on(steady_years(&mixed(years)))
}
