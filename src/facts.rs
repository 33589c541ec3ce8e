//! What is true of a checked plan: typed, made once, without a sentence in it. `words` says it, `report` puts it on pages,
//! `handouts` lays it out, calendars, tables and data are written from it.

pub mod asked;
pub mod breaks;
pub mod cautions;
pub mod class_sheet;
pub mod climate;
pub mod cloth;
pub mod compared;
pub mod crop;
pub mod dates_apart;
pub mod decisions;
pub mod due;
pub mod entries;
pub mod filled;
<<<<<<< HEAD
pub mod fortnight;
=======
pub mod forecast;
>>>>>>> main
pub mod gaps;
pub mod hand_over;
pub mod hands;
pub mod how;
pub mod how_sure;
pub mod idle;
pub mod interval;
pub mod kitchen;
mod known;
pub mod lessons;
pub mod life;
mod made;
pub mod manure;
pub mod map;
mod minutes;
pub mod missed;
pub mod no_plan;
pub mod order;
pub mod ours;
pub mod outlook;
pub mod packet_days;
pub mod pattern;
pub mod places;
pub mod program;
pub mod record;
pub mod shares;
pub mod slack;
pub mod sowings;
pub mod space;
pub mod spans;
pub mod stands;
pub mod step_slack;
pub mod supplies;
pub mod tasks;
pub mod terms;
pub mod things;
pub mod verdict;
pub mod water;
pub mod weather_weeks;
pub mod weeks;
pub mod weeks_apart;

pub use known::Known;
pub use made::Facts;
