//! Figures for the kitchen: state, work before cooking, store, crates.

use crate::garden::CRATE;

use super::line::{Line, line};
use crate::words::handling;

pub(super) const KITCHEN: [Line; 7] = [
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
    line(
        "To freeze",
        &["kitchen.freezing", "kitchen.freezing.blanched"],
        |crop, _, _| crop.kitchen.freezing.map(handling::freezing),
    ),
    line("To dry", &["kitchen.dried_days"], |crop, _, _| {
        let days = crop.kitchen.dried_days?;
        Some(format!("about {days} days, airy, out of sun and rain"))
    }),
    line("A full crate", &["kitchen.crate"], |crop, _, words| {
        let mass = words.mass(crop.kitchen.crate_holds);
        Some(format!("of {} holds {mass}", words.volume(CRATE)))
    }),
];
