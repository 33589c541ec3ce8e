//! What already stands: [[growing]] in the beds, perennial [[patch]]es, and [[area]]s that
//! are never planted. What stands on the shelf is read by `seedlings`.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, peek};
use crate::garden::{Area, Bed, BedAt, Begun, Patch, Position, Reached, Spot, StripAt, Strips};
use crate::units::{Kilograms, Metres};

use super::bed::{self, RawBed, position, size};
use super::crop_names::Crops;
use super::figures::{count, number};
use super::kind::{date, flag, text};
use super::names::quote;
use super::order::{in_order, low_above};
use super::table::Table;

/// A [[growing]] section as given.
pub struct RawGrowing {
    pub crop: Read<Given<String>>,
    bed: Read<Given<String>>,
    first_strip: Read<Option<Given<u32>>>,
    strips: Read<Given<u32>>,
    pub sown: Read<Given<Date>>,
    as_plants: Read<Option<Given<bool>>>,
    pub for_ingredient: Read<Given<String>>,
}

/// Reads a [[growing]] section.
pub fn read_growing(t: &mut Table<'_, '_>) -> RawGrowing {
    RawGrowing {
        crop: t.need("crop", "what stands there", "\"garlic\"", text()),
        bed: t.need("bed", "the `id` of its bed", "\"1\"", text()),
        first_strip: t.maybe(
            "first_strip",
            "its first strip; a strip is 30 cm of the bed's length",
            1,
            count(1..=1000),
        ),
        strips: t.need("strips", "how many strips it takes", "4", count(1..=1000)),
        sown: t.need(
            "sown",
            "the day of sowing or planting",
            "2026-10-12",
            date(),
        ),
        as_plants: t.maybe("as_plants", "true if it was planted out", false, flag()),
        for_ingredient: t.need(
            "for",
            "the name of the ingredient that it becomes",
            "\"garlic\"",
            text(),
        ),
    }
}

/// What grows already, if it fits into its beds.
pub fn check_growing(
    raw: &[Given<RawGrowing>],
    raw_beds: &[Given<RawBed>],
    beds: Read<&[Bed]>,
    feast: Read<Given<Date>>,
    findings: &mut Findings,
) -> Read<Vec<Begun>> {
    let checked: Vec<Read<(Begun, Given<u32>)>> = raw
        .iter()
        .map(|given| {
            let raw = &given.value;
            let bed = peek(&raw.bed);
            let at = bed.and_then(|id| bed::find(raw_beds, id, findings));
            if let (Ok(sown), Ok(feast)) = (raw.sown, feast) {
                in_order(("sown", sown), ("feast", feast), findings)?;
            }
            let count = raw.strips?;
            let as_plants = raw.as_plants?.is_some_and(|given| given.value);
            let (bed, strips) = (at?, strips(raw.first_strip?, count));
            let begun = Begun {
                spot: Spot::Bed { bed, strips },
                reached: match as_plants {
                    true => Reached::PlantedOut,
                    false => Reached::Sown,
                },
                since: raw.sown?.value,
            };
            within_bed(bed, strips, (count, beds?), findings)?;
            Ok((begun, count))
        })
        .collect();
    let checked: Vec<(Begun, Given<u32>)> = checked.into_iter().collect::<Read<_>>()?;
    apart(&checked, findings)?;
    Ok(checked.into_iter().map(|(begun, _)| begun).collect())
}

/// The strips of a section: from the bed's start where it does not say from where.
fn strips(first: Option<Given<u32>>, count: Given<u32>) -> Strips {
    let first = first.and_then(|first| StripAt::numbered(first.value));
    Strips {
        first: first.unwrap_or(StripAt(0)),
        count: count.value,
    }
}

fn within_bed(
    at: BedAt,
    strips: Strips,
    (given, beds): (Given<u32>, &[Bed]),
    findings: &mut Findings,
) -> Read<()> {
    let Some(bed) = beds.get(at.0) else {
        return Ok(());
    };
    let (last, has) = (strips.last().number(), bed.strips());
    if last <= has {
        return Ok(());
    }
    let cause = format!(
        "this reaches to strip {last}, but bed {} has {has}",
        quote(&bed.id)
    );
    let remedy = "a strip is 30 cm of the bed's length; correct `first_strip` or `strips`";
    Err(findings.report(
        Problem::new(Code::OutsideBed, cause)
            .at(given.span, "")
            .remedy(remedy),
    ))
}

fn apart(begun: &[(Begun, Given<u32>)], findings: &mut Findings) -> Read<()> {
    let in_bed = |(begun, given): &(Begun, Given<u32>)| Some((begun.in_bed()?, *given));
    let mut order: Vec<((BedAt, Strips), Given<u32>)> = begun.iter().filter_map(in_bed).collect();
    order.sort_by_key(|((bed, strips), _)| (*bed, strips.first));
    let mut result = Ok(());
    for pair in order.windows(2) {
        let [
            ((bed, before), first_given),
            ((other_bed, strips), second_given),
        ] = pair
        else {
            continue;
        };
        if bed == other_bed && before.meets(*strips) {
            let cause = "two [[growing]] sections stand on the same strip";
            result = Err(findings.report(
                Problem::new(Code::StripsOverlap, cause)
                    .at(second_given.span, "this one")
                    .also(first_given.span, "and this one")
                    .remedy("correct `first_strip` or `strips`; strips count from 1"),
            ));
        }
    }
    result
}

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
