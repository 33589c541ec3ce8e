//! Beds, strips and rotation.

use crate::checker::{Fault, PlaceFault};

use super::references::planting;
use super::told::Told;
use crate::words::{Words, count};

/// The words of a fault of this group.
pub(super) fn told(fault: &Fault, words: Words) -> Option<Told> {
    let told = match fault {
        Fault::Place {
            planting: p,
            bed,
            why,
        } => Told::of(&planting(p), place(bed, *why, words)),
        Fault::StripTakenTwice {
            bed,
            strip,
            day,
            first,
            second,
        } => Told::alone(format!(
            "on {} {} still stands on strip {strip} of bed {bed}, and {} is put on top of it",
            words.day(*day),
            planting(first),
            planting(second)
        )),
        Fault::Rotation {
            planting: p,
            bed,
            family,
            grew_in,
            years_hard,
        } => Told::of(
            &planting(p),
            format!(
                "bed {bed} carried the {family} family in {grew_in}, and it must keep away for {}",
                count(*years_hard, "year")
            ),
        ),
        Fault::FamilyAgain {
            planting: p,
            bed,
            strip,
            family,
            before,
            cleared,
            years_hard,
        } => Told::of(
            &planting(p),
            format!(
                "strip {strip} of bed {bed} carries {} until {}, also of the {family} family, \
                 and that must keep away for {}",
                planting(before),
                words.day(*cleared),
                count(*years_hard, "year")
            ),
        ),
        _ => return None,
    };
    Some(told)
}

fn place(bed: &str, why: PlaceFault, words: Words) -> String {
    match why {
        PlaceFault::Nowhere => "it has no place in a bed".to_owned(),
        PlaceFault::NoStrip(strip) => format!("bed {bed} has no strip {strip}"),
        PlaceFault::NoTrellis(strip) => {
            format!("it climbs, and strip {strip} of bed {bed} has no trellis")
        }
        PlaceFault::NotFreeUntil(day) => {
            format!("bed {bed} is not free until {}", words.day(day))
        }
        PlaceFault::OnlyClimbers => format!("bed {bed} is only for what climbs"),
        PlaceFault::OfOthers => format!("bed {bed} belongs to another grade"),
        PlaceFault::Unsuitable => {
            format!("bed {bed} has too little sun or too little soil for it")
        }
        PlaceFault::TooNarrow => format!("bed {bed} is too narrow for one plant"),
        PlaceFault::Differs => {
            "it lies in beds that differ in width or cover; use beds that are alike".to_owned()
        }
        PlaceFault::BrokenBlock(strips) => format!(
            "in bed {bed} its rows only come out whole in blocks of {}",
            count(strips, "strip")
        ),
        PlaceFault::NotWhereItGrows => {
            format!("it already grows, but not in bed {bed} on these strips")
        }
    }
}
