//! The architecture, held on the project's own source: layers, cycles, the pairs of rules, the
//! style of files, and what stands in the repository.

mod circles;
mod layers;
mod pages;
mod repository;
mod sentences;
mod source;
mod step_kinds;
mod style;
mod uses;
mod wording;
