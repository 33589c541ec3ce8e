//! The ground on the map: beds and patches must not lie on one another, nor on an area that
//! is never planted. Areas may: a path goes through flowers, a tap stands among seats.

use crate::diagnostic::{Code, Findings, Given, Problem, Read, Span};
use crate::garden::{Area, Bed, Patch, Position};
use crate::units::Metres;

use super::bed::RawBed;
use super::names::quote;
use super::standing::RawPatch;

/// Things measured with a tape share an edge now and then; so much in metres is forgiven.
const FORGIVEN: f64 = 0.02;

/// A piece of ground with its name and its line.
struct Piece {
    name: String,
    planted: bool,
    at: Position,
    size: (Metres, Metres),
    span: Span,
}

impl Piece {
    fn new(name: String, planted: bool, at: Position, size: (Metres, Metres), span: Span) -> Self {
        Self {
            name,
            planted,
            at,
            size,
            span,
        }
    }
}

/// Reports every two pieces that share ground.
pub fn check(
    beds: (&[Given<RawBed>], &[Bed]),
    patches: (&[Given<RawPatch>], &[Patch]),
    areas: &[Given<Area>],
    findings: &mut Findings,
) -> Read<()> {
    let beds = beds.0.iter().zip(beds.1).filter_map(|(raw, bed)| {
        let span = raw.value.at.ok()??.span;
        let name = format!("bed {}", quote(&bed.id));
        Some(Piece::new(name, true, bed.at?, bed.extent(), span))
    });
    let patches = patches.0.iter().zip(patches.1).filter_map(|(raw, patch)| {
        let span = raw.value.at.ok()??.span;
        let name = format!("patch {}", quote(&patch.id));
        Some(Piece::new(name, true, patch.at?, patch.size?, span))
    });
    let areas = areas.iter().map(|given| {
        let (area, span) = (&given.value, given.span);
        let name = format!("area {}", quote(&area.name));
        Piece::new(name, false, area.at, area.size, span)
    });
    let pieces: Vec<Piece> = beds.chain(patches).chain(areas).collect();
    let mut result = Ok(());
    for (n, second) in pieces.iter().enumerate() {
        for first in pieces.iter().take(n) {
            if (first.planted || second.planted) && share_ground(first, second) {
                result = Err(findings.report(problem(first, second)));
            }
        }
    }
    result
}

fn share_ground(a: &Piece, b: &Piece) -> bool {
    let shared = |from: (Metres, Metres), length: (Metres, Metres)| {
        let end = (from.0 + length.0).min(from.1 + length.1);
        (end - from.0.max(from.1)).0 > FORGIVEN
    };
    shared((a.at.x, b.at.x), (a.size.0, b.size.0)) && shared((a.at.y, b.at.y), (a.size.1, b.size.1))
}

fn problem(first: &Piece, second: &Piece) -> Problem {
    let cause = format!("{} and {} lie on the same ground", first.name, second.name);
    Problem::new(Code::GroundShared, cause)
        .at(second.span, format!("this is {}", second.name))
        .also(first.span, format!("this is {}", first.name))
        .remedy(
            "`at` is the south-west corner, in metres east and north; correct it, the size, or \
             `runs`, which turns a bed",
        )
}
