//! What people read: pure functions from a garden, a checked plan or what was found wrong
//! to text. All sentences of the program are worded here.

mod aims;
mod assumed;
mod broken;
mod care;
mod cautions;
mod climate;
mod crop;
mod crops;
mod decisions;
pub mod frost;
mod how_sure;
pub mod interval;
pub mod manure;
mod mps;
mod no_plan;
mod overview;
mod packet_days;
mod page;
mod principal;
mod rotation;
mod screen;
mod space;
mod steps;
mod strip;
mod timeline;
mod understood;
mod verdict;
mod view;
mod water;
mod weather_table;
pub mod words;

pub use broken::{broken, sound};
pub use climate::climate;
pub use crop::{Figure, crop, figures};
pub use crops::crops;
pub use mps::{mps, mps_file, programs_written};
pub use no_plan::{no_plan, out_of_time};
pub use page::Look;
pub use principal::principal;
pub use screen::{plan, saved};
pub use strip::grade;
pub use understood::understood;
pub use water::watering;
pub use weather_table::{weather_table, weather_written};
