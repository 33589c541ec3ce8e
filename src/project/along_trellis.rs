//! Beds in which a row along the trellis has ground of its own: such a bed becomes two, the rest of its width in
//! its place in the list, and the row at the end of the list.

use crate::diagnostic::{Code, Findings, Given, Problem, Read};
use crate::garden::{Bed, Runs};
use crate::units::{Latitude, Metres};

use super::bed::RawBed;
use super::names::quote;

/// A bed is no narrower.
const NARROWEST: f64 = 0.2;

/// Lengths measured with a tape differ by so much in metres.
const FORGIVEN: f64 = 0.02;

/// The beds of the file, each parted that has a row along its trellis.
pub fn parted(
    raw: &[Given<RawBed>],
    mut beds: Vec<Bed>,
    latitude: Latitude,
    findings: &mut Findings,
) -> Read<Vec<Bed>> {
    names_apart(raw, findings)?;
    let south = latitude.0 < 0.0;
    let mut rows = Vec::new();
    for (raw, bed) in raw.iter().zip(&mut beds) {
        if let Some(depth) = depth(&raw.value, findings)? {
            rows.push(row(bed, depth, south));
            rest(bed, depth, south);
        }
    }
    beds.append(&mut rows);
    Ok(beds)
}

/// How deep the row along the trellis is, if a bed has one that leaves room for the rest.
fn depth(raw: &RawBed, findings: &mut Findings) -> Read<Option<Metres>> {
    let Some(depth) = raw.trellis_depth? else {
        return Ok(None);
    };
    let (trellis, length, width) = (raw.trellis?, raw.length?, raw.width?);
    if trellis.is_none_or(|trellis| trellis.value + FORGIVEN < length.value) {
        let cause = "a row has ground of its own where a trellis runs along the whole bed";
        let problem =
            Problem::new(Code::KeyWithoutEffect, cause).at(depth.span, "not along this bed");
        let remedy = "give `trellis_m` the bed's length, or write the part with the trellis as a bed of its own";
        return Err(findings.report(problem.remedy(remedy)));
    }
    let depth_m = depth.value / 100.0;
    if width.value - depth_m + 0.001 < NARROWEST {
        let cause = "the row along the trellis leaves no bed";
        let problem = Problem::new(Code::OutsideBed, cause)
            .at(depth.span, "this deep")
            .also(width.span, "of this width");
        let remedy =
            "remove `trellis_depth_cm`: the whole bed is then for what climbs, or for others";
        return Err(findings.report(problem.remedy(remedy)));
    }
    Ok(Some(Metres(depth_m)))
}

/// The name of the ground along the trellis of a bed.
#[must_use]
pub fn name(bed: &str) -> String {
    format!("{bed} along the trellis")
}

/// That no bed of the file has the name of such ground.
fn names_apart(raw: &[Given<RawBed>], findings: &mut Findings) -> Read<()> {
    let mut result = Ok(());
    let parted = raw
        .iter()
        .filter(|bed| matches!(bed.value.trellis_depth, Ok(Some(_))));
    for id in parted.filter_map(|bed| bed.value.id.as_ref().ok()) {
        let taken = name(&id.value);
        let others = raw.iter().filter_map(|bed| bed.value.id.as_ref().ok());
        for other in others.filter(|other| other.value == taken) {
            let cause = format!(
                "{} is the row along the trellis of bed {}",
                quote(&taken),
                quote(&id.value)
            );
            let problem = Problem::new(Code::DuplicateId, cause)
                .at(other.span, "another bed")
                .also(id.span, "this one has `trellis_depth_cm`");
            result = Err(findings.report(problem.remedy("give the bed another `id`")));
        }
    }
    result
}

/// The row, on the side away from the sun; on the east side of a bed that runs from north to south.
fn row(bed: &Bed, depth: Metres, south: bool) -> Bed {
    let at = bed.at.map(|mut at| {
        match bed.runs {
            Runs::EastWest if south => {}
            Runs::EastWest => at.y = at.y + bed.width - depth,
            Runs::NorthSouth => at.x = at.x + bed.width - depth,
        }
        at
    });
    Bed {
        id: name(&bed.id),
        width: depth,
        // What a tape measured a little shorter is the whole bed all the same.
        trellis: bed.length,
        along_trellis: true,
        cover: None,
        at,
        ..bed.clone()
    }
}

/// The rest of the bed.
fn rest(bed: &mut Bed, depth: Metres, south: bool) {
    if let (Some(at), Runs::EastWest, true) = (&mut bed.at, bed.runs, south) {
        at.y = at.y + depth;
    }
    bed.width = bed.width - depth;
    bed.trellis = Metres(0.0);
}
