//! The sentences of the watering list, in every language in which it is written.

mod english;
mod spanish;
mod speech;

pub(crate) use english::English;
pub(crate) use spanish::Spanish;
pub(crate) use speech::{Speech, Sums};
