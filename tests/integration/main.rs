//! The one test binary: what a user sees, hand-worked cases, brute force, damaged plans,
//! broken files, random gardens, outside references.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod architecture;
mod backtest;
mod brute_force;
mod catalogue;
mod checker_damage;
mod cli;
mod explained;
mod growth_reference;
mod hand_worked;
mod handouts;
mod harmless;
mod layout;
mod limits;
mod mutation;
mod outside;
mod programs;
mod project_errors;
mod properties;
mod random_gardens;
mod readme;
mod report;
mod scenarios;
mod station;
mod support;
mod unfolded;
mod unseen;
mod weather;
