//! Tureen plans one dish that a whole school grows and eats on one day.
//! See DEVELOPERS.md for the way through the program.

pub mod calendar;
pub mod candidates;
pub mod catalogue;
pub mod checker;
pub mod checksum;
pub mod cli;
pub mod deadline;
pub mod diagnostic;
pub mod disk;
pub mod explain;
pub mod facts;
pub mod garden;
pub mod growth;
pub mod handouts;
pub mod harmless;
pub mod model;
pub mod page;
pub mod pipeline;
pub mod plan;
pub mod project;
pub mod report;
pub mod units;
pub mod weather;
pub mod words;
