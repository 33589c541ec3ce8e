//! What the program says of a plan or of why there is none, against trying everything.

mod by_hand;
mod given_back;
mod least_space;
mod repairs;
