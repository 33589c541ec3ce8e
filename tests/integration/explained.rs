//! What is said of a plan: its slack, the ways out when a step fails, why it is as it is.
//! Everything is found here a second time, by hand and by asking the checker.

mod aim;
mod by_hand;
mod rescue;
mod slack;
mod weeks;
