//! The folder of handouts: what is in its files, and that it is never half written.

mod class_sheet;
mod cloth;
mod data;
mod folder;
mod formats;
mod interrupted;
mod pages;
mod pictures;
mod safe;
