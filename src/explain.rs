//! What the plan hangs on. Every statement here is found by changing the project and solving it
//! again, and holds for plans that the checker has passed.

mod days;
mod given_back;
mod kind;
mod ladder;
mod repairs;
mod rung;
mod space;
mod trial;

pub use days::{OtherDay, weeks_from_feast};
pub use given_back::{GivenBack, YearsBack, given_back, years_back};
pub use kind::Kind;
pub use repairs::{Diagnosis, Repair};
pub use space::{Enough, LeastSpace, fewest_flats, fewest_strips, least_space, promise};
pub use trial::{Trial, Workbench};
