//! The folder of handouts: what is in its files, and that it is never half written.

mod data;
mod folder;
mod formats;
mod interrupted;
mod pages;
mod pictures;
mod safe;
