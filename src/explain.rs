//! What the plan hangs on. Every statement here is found by changing the project and solving it
//! again, or by replaying a plan with one step moved, and holds for plans that the checker has
//! passed.

mod bench;
mod days;
mod free_strips;
mod given_back;
mod ideas;
mod if_missed;
mod kind;
mod ladder;
mod repairs;
mod rescue;
mod rung;
mod slack;
mod space;
mod trial;
mod why_step;

pub use days::{OtherDay, weeks_from_feast};
pub use given_back::{GivenBack, YearsBack, given_back, years_back};
pub use ideas::Idea;
pub use if_missed::IfMissed;
pub use kind::Kind;
pub use repairs::{Diagnosis, Repair};
pub use rescue::{Rescue, RescueLadder, RescueRung, rescue_ladders};
pub use slack::{Missed, StepSlack, slack, slack_within};
pub use space::{Enough, LeastSpace, fewest_flats, fewest_strips, least_space, promise};
pub use trial::{Trial, Workbench};
pub use why_step::{Beside, Held, Start, WhyStep, why_step};
