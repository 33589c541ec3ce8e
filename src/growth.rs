//! Facts of growth: every crop through every weather year, amounts, seeds, flats, work.
//! Nothing here decides anything.

pub mod amount;
pub mod bearing;
pub mod bulbs;
pub mod chill;
pub mod climate;
pub mod degree_days;
pub mod germination;
pub mod heat;
pub mod hope;
pub mod light;
pub mod outlook;
pub mod ready;
pub mod requirement;
pub mod season;
pub mod soil;
mod spells;
pub mod thinning;
pub mod water;
pub mod work;

pub use amount::{Block, Need, need, need_in, printed_plants, widest_rows};
pub use bearing::PickingDays;
pub use hope::{HOPE, least_ready_years};
pub use light::Light;
pub use ready::{Unready, picked_and_kept};
pub use season::{CropSeason, Fate, Loss};
pub use thinning::{Emergence, ThinningDays};
pub use work::{Effort, effort};
