//! Where plantings stand: packing against trying everything, and crowded gardens whose plans the
//! first, neat search for a layout does not find.

mod crowded;
mod neat;
mod packing;
mod strips;
mod try_all;
mod wishes;
