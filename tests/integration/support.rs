//! Small gardens, crops, weather and plans in plain Rust, for everybody's tests. All of
//! them are made up so that days can be counted by hand.

pub mod climates;
pub mod crops;
pub mod files;
pub mod gardens;
pub mod plans;
pub mod thinning;
pub mod weather;

use tureen::calendar::Date;

/// A date as `2027-03-16`.
pub fn day(text: &str) -> Date {
    text.parse().unwrap()
}
