//! The section [shelf]: flats, heat mat, room, and when it may be used.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::Shelf;
use crate::units::Celsius;

use super::assumed::Assumed;
use super::figures::{count, number};
use super::kind::date;
use super::order::in_order;
use super::table::Table;

/// Temperature of the room where the file does not say.
const USUAL_ROOM: f64 = 19.0;

/// The section as given.
pub struct RawShelf {
    flats: Read<Given<u32>>,
    warm_flats: Read<Option<Given<u32>>>,
    room: Read<Option<Given<f64>>>,
    from: Read<Option<Given<Date>>>,
    until: Read<Option<Given<Date>>>,
}

/// Reads the section.
pub fn read(t: &mut Table<'_, '_>) -> RawShelf {
    RawShelf {
        flats: t.need(
            "flats",
            "trays of about 28 x 54 cm that it holds",
            "6",
            count(0..=500),
        ),
        warm_flats: t.maybe("warm_flats", "of these on a heat mat", 0, count(0..=500)),
        room: t.maybe(
            "room_c",
            "mean of the room, by day and night",
            USUAL_ROOM,
            number(5.0..=35.0),
        ),
        from: t.maybe("from", "the first day of its use", "the start", date()),
        until: t.maybe("until", "the last day of its use", "no end", date()),
    }
}

/// The shelf; one without flats if the file gives none.
pub fn check(
    raw: Option<Given<RawShelf>>,
    start: Read<Given<Date>>,
    findings: &mut Findings,
    assumed: &mut Assumed,
) -> Read<Shelf> {
    let Some(Given { value: raw, .. }) = raw else {
        assumed.note("no [shelf]", "without one, nothing is raised indoors");
        return Ok(Shelf {
            flats: 0,
            warm_flats: 0,
            room: Celsius(USUAL_ROOM),
            from: start?.value,
            until: None,
        });
    };
    let (from, until) = (raw.from?, raw.until?);
    if let (Some(from), Some(until)) = (from, until) {
        in_order(("from", from), ("until", until), findings)?;
    }
    let (flats, warm) = (raw.flats?, raw.warm_flats?);
    if let Some(warm) = warm.filter(|warm| warm.value > flats.value) {
        return Err(findings.report(
            Problem::new(Code::OutOfRange, "more flats are warm than the shelf holds")
                .at(warm.span, format!("at most {}", flats.value))
                .also(flats.span, "all flats")
                .remedy("`warm_flats` tells how many of the `flats` stand on a heat mat"),
        ));
    }
    let room = raw.room?;
    if room.is_none() && flats.value > 0 {
        assumed.note(
            format!("room_c = {USUAL_ROOM}"),
            "a usual room by day and night",
        );
    }
    Ok(Shelf {
        flats: flats.value,
        warm_flats: warm.map_or(0, |warm| warm.value),
        room: Celsius(room.map_or(USUAL_ROOM, |room| room.value)),
        from: from.map_or(start?.value, |from| from.value),
        until: until.map(|until| until.value),
    })
}
