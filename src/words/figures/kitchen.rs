//! Figures for the kitchen: state, work before cooking, store, crates.

use crate::garden::CRATE;

use super::line::{Line, line};
use crate::words::handling;

pub(super) const KITCHEN: [Line; 5] = [
    line("Comes", &["kitchen.arrives"], |crop, _, _| {
        Some(handling::arrives(crop.kitchen.arrives).to_owned())
    }),
    line("Before cooking", &["kitchen.steps"], |crop, _, _| {
        Some(handling::before_cooking(&crop.kitchen.steps))
    }),
    line("Stored", &["kitchen.store"], |crop, _, _| {
        Some(handling::store(crop.kitchen.store).to_owned())
    }),
    line("Best at", &["kitchen.temperature"], |crop, _, words| {
        Some(handling::temperature(&crop.kitchen, words))
    }),
    line("A full crate", &["kitchen.crate"], |crop, _, words| {
        let mass = words.mass(crop.kitchen.crate_holds);
        Some(format!("of {} holds {mass}", words.volume(CRATE)))
    }),
];
