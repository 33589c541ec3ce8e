//! Facts of growth against closed forms and cases worked by hand.

mod amounts;
mod bearing;
mod climate;
pub mod crops;
mod degree_days;
mod fates;
mod germination;
mod heat;
mod loss;
mod outlook;
mod picking;
mod properties;
mod seeds;
mod steady;
mod thinning;
mod water;
mod work;
