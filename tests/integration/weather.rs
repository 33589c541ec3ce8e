//! The sun, generated weather years, the runs of a span, and the weeks of a record.

mod generator;
mod sun;
mod trend;
mod weeks;
mod years;
