//! Beds, strips and rotation.

use crate::checker::{Fault, PlaceFault, PlantingRef};

use super::references::planting;
use crate::words::{Words, count, sentence as capital};

/// The sentence of a fault of this group.
pub(super) fn sentence(fault: &Fault, words: Words) -> Option<String> {
    let text = match fault {
        Fault::Place { planting, bed, why } => place(planting, bed, *why, words),
        Fault::StripTakenTwice {
            bed,
            strip,
            day,
            first,
            second,
        } => format!(
            "Bed {bed}, strip {strip}: on {} {} still stands there, and {} is put on top of it.",
            words.day(*day),
            planting(first),
            planting(second)
        ),
        Fault::Rotation {
            planting: p,
            bed,
            family,
            grew_in,
            years_hard,
        } => format!(
            "{}: bed {bed} carried the {family} family in {grew_in}, and it must keep away for \
             {}.",
            capital(&planting(p)),
            count(*years_hard, "year")
        ),
        Fault::FamilyAgain {
            planting: p,
            bed,
            strip,
            family,
            before,
            cleared,
            years_hard,
        } => format!(
            "{}: strip {strip} of bed {bed} carries {} until {}, also of the {family} family, \
             and that must keep away for {}.",
            capital(&planting(p)),
            planting(before),
            words.day(*cleared),
            count(*years_hard, "year")
        ),
        _ => return None,
    };
    Some(text)
}

fn place(of: &PlantingRef, bed: &str, why: PlaceFault, words: Words) -> String {
    let who = capital(&planting(of));
    match why {
        PlaceFault::Nowhere => format!("{who} has no place in a bed."),
        PlaceFault::NoStrip(strip) => format!("{who}: bed {bed} has no strip {strip}."),
        PlaceFault::NoTrellis(strip) => {
            format!("{who} climbs, and strip {strip} of bed {bed} has no trellis.")
        }
        PlaceFault::NotFreeUntil(day) => {
            format!("{who}: bed {bed} is not free until {}.", words.day(day))
        }
        PlaceFault::Unsuitable => {
            format!("{who}: bed {bed} has too little sun or too little soil for it.")
        }
        PlaceFault::TooNarrow => format!("{who}: bed {bed} is too narrow for one plant."),
        PlaceFault::Differs => {
            format!("{who} lies in beds that differ in width or cover; use beds that are alike.")
        }
        PlaceFault::BrokenBlock(strips) => format!(
            "{who}: in bed {bed} its rows only come out whole in blocks of {}.",
            count(strips, "strip")
        ),
        PlaceFault::NotWhereItGrows => {
            format!("{who} already grows, but not in bed {bed} on these strips.")
        }
    }
}
