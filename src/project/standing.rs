//! What stands outside the beds: perennial [[patch]]es, and [[area]]s that are never planted.

use crate::calendar::Date;
use crate::diagnostic::{Findings, Given, Read, peek};
use crate::garden::{Area, Patch, Position};
use crate::units::{Kilograms, Metres};

use super::bed::{position, size};
use super::crop_names::Crops;
use super::figures::number;
use super::kind::{date, text};
use super::order::{in_order, low_above};
use super::table::Table;

/// A [[patch]] section as given.
pub struct RawPatch {
    pub id: Read<Given<String>>,
    pub crop: Read<Given<String>>,
    pub pick_from: Read<Given<Date>>,
    pub pick_to: Read<Given<Date>>,
    low: Read<Given<f64>>,
    expected: Read<Given<f64>>,
    size: Read<Option<Given<(Metres, Metres)>>>,
    pub at: Read<Option<Given<Position>>>,
}

/// Reads a [[patch]] section.
pub fn read_patch(t: &mut Table<'_, '_>) -> RawPatch {
    RawPatch {
        id: t.need("id", "its short name", "\"strawberries\"", text()),
        crop: t.need("crop", "what comes every year", "\"strawberry\"", text()),
        pick_from: t.need("pick_from", "the first day to pick", "2027-06-01", date()),
        pick_to: t.need("pick_to", "the last day to pick", "2027-06-25", date()),
        low: t.need(
            "low_kg",
            "one pick in a poor year",
            "1.5",
            number(0.0..=10_000.0),
        ),
        expected: t.need(
            "expected_kg",
            "one pick in an ordinary year",
            "3.0",
            number(0.001..=10_000.0),
        ),
        size: t.maybe("size", "its size on the map", "not drawn", size()),
        at: t.maybe(
            "at",
            "its south-west corner on the map",
            "not drawn",
            position(),
        ),
    }
}

/// One patch, if every part of it is sound.
pub fn check_patch(raw: &RawPatch, crops: &Crops<'_>, findings: &mut Findings) -> Read<Patch> {
    let crop = peek(&raw.crop);
    let crop = crop.and_then(|name| crops.find(name, findings));
    if let (Ok(from), Ok(to)) = (raw.pick_from, raw.pick_to) {
        in_order(("pick_from", from), ("pick_to", to), findings)?;
    }
    let (low, expected) = (raw.low?, raw.expected?);
    if let Some(problem) = low_above(("low_kg", low), ("expected_kg", expected)) {
        return Err(findings.report(problem));
    }
    Ok(Patch {
        id: peek(&raw.id)?.value.clone(),
        crop: crop?.name.clone(),
        pick_from: raw.pick_from?.value,
        pick_to: raw.pick_to?.value,
        low: Kilograms(low.value),
        expected: Kilograms(expected.value),
        size: raw.size?.map(|given| given.value),
        at: raw.at?.map(|given| given.value),
    })
}

/// Reads an [[area]] section.
pub fn read_area(t: &mut Table<'_, '_>) -> Read<Area> {
    let name = t.need("name", "what it is", "\"seating\"", text());
    let size = t.need(
        "size",
        "its size on the map",
        "{ length_m = 3.0, width_m = 2.0 }",
        size(),
    );
    let at = t.need(
        "at",
        "its south-west corner on the map",
        "{ x_m = 0.0, y_m = 6.0 }",
        position(),
    );
    Ok(Area {
        name: name?.value,
        size: size?.value,
        at: at?.value,
    })
}
