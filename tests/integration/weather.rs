//! The sun, generated weather years, and the runs of a span through a record.

mod generator;
mod sun;
mod trend;
mod years;
