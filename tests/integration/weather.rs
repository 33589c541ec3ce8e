//! The sun, generated weather years, the runs of a span, and the weeks of a record.

mod generator;
mod sun;
mod weeks;
mod years;
