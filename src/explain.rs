//! What the plan hangs on. Every statement here is found by changing the project and solving it
//! again, and holds for plans that the checker has passed.

mod days;
mod kind;
mod ladder;
mod repairs;
mod trial;

pub use days::{OtherDay, weeks_from_feast};
pub use kind::Kind;
pub use repairs::{Diagnosis, Repair};
pub use trial::{Trial, Workbench};
