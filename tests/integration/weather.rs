//! The sun, generated weather years, the runs of a span, and the weeks of a record.

mod cold_days;
mod frost_dates;
mod generator;
mod left_out;
mod normals;
mod sun;
mod trend;
mod weeks;
mod years;
