//! Figures for the kitchen: state, work before cooking, store, crates.

use crate::garden::CRATE;

use super::super::super::handling;
use super::super::line::Line;

pub(super) const KITCHEN: [Line; 5] = [
    Line {
        label: "Comes",
        fields: &["kitchen.arrives"],
        text: |crop, _, _| Some(handling::arrives(crop.kitchen.arrives).to_owned()),
    },
    Line {
        label: "Before cooking",
        fields: &["kitchen.steps"],
        text: |crop, _, _| Some(handling::before_cooking(&crop.kitchen.steps)),
    },
    Line {
        label: "Stored",
        fields: &["kitchen.store"],
        text: |crop, _, _| Some(handling::store(crop.kitchen.store).to_owned()),
    },
    Line {
        label: "Best at",
        fields: &["kitchen.temperature"],
        text: |crop, _, words| Some(handling::temperature(&crop.kitchen, words)),
    },
    Line {
        label: "A full crate",
        fields: &["kitchen.crate"],
        text: |crop, _, words| {
            let mass = words.mass(crop.kitchen.crate_holds);
            Some(format!("of {} holds {mass}", words.volume(CRATE)))
        },
    },
];
