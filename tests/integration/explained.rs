//! What is said of a plan, or of why there is none: slack, ways out, other weeks, least space,
//! what was given back, repairs. Everything is found here a second time: by trying everything,
//! or by hand.

pub mod aim;
mod files_by_hand;
mod given_back;
mod if_missed;
mod least_space;
mod repairs;
mod rescue;
mod slack;
mod stands;
mod steps_by_hand;
mod weeks;
