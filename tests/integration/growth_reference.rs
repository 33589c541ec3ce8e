//! Facts of growth against published examples, closed forms and cases worked by hand.

mod amounts;
mod crops;
mod degree_days;
mod fates;
mod germination;
mod loss;
mod picking;
mod properties;
mod seeds;
mod water;
mod work;
