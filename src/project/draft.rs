//! A project as a person begins it: what was said of the school, and a default for what was not. It is
//! written as a project file with remarks, which then goes through the same checks as any other.

mod defaults;
mod figures;
mod means;
mod said;
mod school;
mod text;

pub use figures::Measures;
pub use means::{Element, Means};
pub use said::{beds, class, day, eaters, parts, place, span, time_off};
pub use school::{Beds, Class, Draft, Span};
pub use text::place_of;
