//! The sections [[seedlings]]: what stands on the seedling shelf when the plan begins.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span, peek};
use crate::garden::{Begun, IndoorStart, Reached, Seedlings, Shelf, Spot};

use super::crop_names::Crops;
use super::figures::count;
use super::kind::{date, text};
use super::order::in_order;
use super::table::Table;

/// A [[seedlings]] section as given.
pub struct RawSeedlings {
    pub crop: Read<Given<String>>,
    count: Read<Given<u32>>,
    sown: Read<Given<Date>>,
    potted_up: Read<Option<Given<Date>>>,
    pub for_ingredient: Read<Given<String>>,
}

/// Reads a section.
pub fn read(t: &mut Table<'_, '_>) -> RawSeedlings {
    RawSeedlings {
        crop: t.need("crop", "what they are", "\"tomato\"", text()),
        count: t.need("count", "how many there are", "40", count(1..=100_000)),
        sown: t.need("sown", "the day of sowing", "2027-03-15", date()),
        potted_up: t.maybe(
            "potted_up",
            "the day of potting up",
            "they are not potted up yet",
            date(),
        ),
        for_ingredient: t.need(
            "for",
            "the name of the ingredient that they become",
            "\"tomato\"",
            text(),
        ),
    }
}

/// What the seedlings are checked against.
pub struct Around<'a> {
    pub crops: Crops<'a>,
    pub shelf: Read<&'a Shelf>,
    pub start: Read<Given<Date>>,
    pub feast: Read<Given<Date>>,
}

/// The seedlings, if all of them can stand on the shelf.
pub fn check(
    raw: &[Given<RawSeedlings>],
    around: &Around<'_>,
    findings: &mut Findings,
) -> Read<Vec<Begun>> {
    let checked: Vec<Read<(Begun, u32)>> = raw
        .iter()
        .map(|given| one(&given.value, around, findings))
        .collect();
    let checked: Vec<(Begun, u32)> = checked.into_iter().collect::<Read<_>>()?;
    if let Some(last) = raw.last() {
        let flats = checked.iter().map(|(_, flats)| flats).sum();
        room(flats, last.span, around.shelf?, findings)?;
    }
    Ok(checked.into_iter().map(|(begun, _)| begun).collect())
}

/// One section, and the flats that its seedlings take.
fn one(raw: &RawSeedlings, around: &Around<'_>, findings: &mut Findings) -> Read<(Begun, u32)> {
    let indoor = indoor(raw, around, findings)?;
    let (count, sown, potted_up) = (raw.count?, raw.sown?, raw.potted_up?);
    if let Some(potted_up) = potted_up {
        in_order(("sown", sown), ("potted_up", potted_up), findings)?;
    }
    let latest = potted_up.unwrap_or(sown);
    let key = potted_up.map_or("sown", |_| "potted_up");
    in_order((key, latest), ("feast", around.feast?), findings)?;
    let seedlings = Seedlings {
        count: count.value,
        sown: sown.value,
        potted_up: potted_up.map(|given| given.value),
    };
    let shelf = around.shelf?;
    if shelf.from > seedlings.since().max(around.start?.value) {
        let cause = "seedlings stand on the shelf before it may be used";
        return Err(findings.report(
            Problem::new(Code::DatesOutOfOrder, cause)
                .at(latest.span, "since then they stand there")
                .remedy(format!(
                    "the shelf may be used from {} on; correct `from` in [shelf], or this date",
                    shelf.from
                )),
        ));
    }
    let begun = Begun {
        spot: Spot::Shelf {
            seedlings: seedlings.count,
        },
        reached: match potted_up {
            Some(_) => Reached::PottedUp { sown: sown.value },
            None => Reached::Sown,
        },
        since: seedlings.since(),
    };
    Ok((begun, seedlings.flats(&indoor)))
}

/// How the crop is raised on a shelf, if it is, and in pots if it is said to be in some.
fn indoor(raw: &RawSeedlings, around: &Around<'_>, findings: &mut Findings) -> Read<IndoorStart> {
    let name = peek(&raw.crop)?;
    let crop = around.crops.find(name, findings)?;
    let Some(indoor) = crop.indoor else {
        let cause = format!("{} is not raised on a shelf", crop.name);
        return Err(findings.report(
            Problem::new(Code::MethodNotPossible, cause)
                .at(name.span, "")
                .remedy("correct the crop; what stands in a bed is a section [[growing]]"),
        ));
    };
    match (raw.potted_up?, indoor.pots_per_flat) {
        (Some(potted_up), None) => {
            let cause = format!("{} is not potted up", crop.name);
            Err(findings.report(
                Problem::new(Code::KeyWithoutEffect, cause)
                    .at(
                        potted_up.span,
                        "it stays in its cells until it is planted out",
                    )
                    .remedy("remove `potted_up`"),
            ))
        }
        (Some(_), Some(_)) | (None, _) => Ok(indoor),
    }
}

/// The shelf holds them all.
fn room(flats: u32, span: Span, shelf: &Shelf, findings: &mut Findings) -> Read<()> {
    if flats <= shelf.flats {
        return Ok(());
    }
    let cause = format!(
        "the seedlings take {flats} flats, and the shelf holds {}",
        shelf.flats
    );
    Err(findings.report(
        Problem::new(Code::ShelfOverfull, cause)
            .at(span, "with these")
            .remedy("correct `count` here, or `flats` in [shelf]; a seedling takes a cell of a flat, or a pot"),
    ))
}
