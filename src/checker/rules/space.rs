//! A strip of bed carries one planting at a time, after the bed is free.

use crate::checker::days::{bed_use, in_bed};
use crate::checker::fault::{Fault, PlaceFault};
use crate::checker::needs::{block, strips};
use crate::checker::planting::{Place, Planting};
use crate::checker::run::Run;
use crate::checker::stands::stands;
use crate::garden::{BegunAt, Method, Source};
use crate::plan::{self, PlantingAt};

/// All faults: places out of the bed, unsuitable or not free, broken blocks, strips used twice.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for planting in &run.plantings {
        match (planting.plan.method, planting.ingredient.source) {
            (Method::Patch, _) => faults.extend(
                planting
                    .places
                    .first()
                    .map(|p| place_fault(run, planting, Some(p), PlaceFault::NotWhereItGrows)),
            ),
            (Method::Growing, Source::Begun(at)) if run.garden[at].in_bed().is_some() => {
                faults.extend(where_it_grows(run, planting, at));
            }
            // Where it stands, or shall stand, is given.
            _ if planting.given.is_some() => {}
            _ => faults.extend(places(run, planting)),
        }
    }
    faults.extend(clashes(run));
    faults
}

fn place_fault(
    run: &Run<'_>,
    planting: &Planting<'_>,
    place: Option<&Place<'_>>,
    why: PlaceFault,
) -> Fault {
    Fault::Place {
        planting: planting.name.clone(),
        bed: place.map_or(String::new(), |p| run.garden[p.bed].id.clone()),
        why,
    }
}

/// What already stands takes exactly the strips that the garden says.
fn where_it_grows(run: &Run<'_>, planting: &Planting<'_>, at: BegunAt) -> Option<Fault> {
    let (bed, strips) = run.garden[at].in_bed()?;
    let right = match planting.places.as_slice() {
        [place] => place.bed == bed && *place.plan == plan::Place::of(&place.plan.bed, strips),
        _ => false,
    };
    let place = planting.places.first();
    (!right).then(|| place_fault(run, planting, place, PlaceFault::NotWhereItGrows))
}

/// The places of what is sown or planted within the plan.
fn places(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut found = |place: Option<&Place<'_>>, why| {
        faults.push(place_fault(run, planting, place, why));
    };
    let first = planting.places.first();
    if planting.plan.places.is_empty() {
        found(None, PlaceFault::Nowhere);
    }
    for place in &planting.places {
        if let Some(why) = place_wrong(run, planting, place) {
            found(Some(place), why);
        }
    }
    if let Some(first_place) = first {
        let bed = &run.garden[first_place.bed];
        let other = planting.places.iter().find(|p| {
            let other = &run.garden[p.bed];
            other.rows() != bed.rows() || other.microclimate() != bed.microclimate()
        });
        if let Some(other) = other {
            found(Some(other), PlaceFault::Differs);
        }
        match block(run.garden, planting) {
            None => found(first, PlaceFault::TooNarrow),
            Some(block) if !strips(run.garden, planting).is_multiple_of(block.strips) => {
                found(first, PlaceFault::BrokenBlock(block.strips));
            }
            Some(_) => {}
        }
    }
    faults
}

/// What is wrong with one place alone.
fn place_wrong(run: &Run<'_>, planting: &Planting<'_>, place: &Place<'_>) -> Option<PlaceFault> {
    let bed = &run.garden[place.bed];
    let crop = &planting.ingredient.crop;
    let last = place.plan.last_number();
    let starts = in_bed(run, planting).map(|(from, _)| run.horizon.date(from));
    if place.plan.strips == 0 {
        Some(PlaceFault::Nowhere)
    } else if place.plan.first_strip == 0 {
        Some(PlaceFault::NoStrip(0))
    } else if last > bed.strips() {
        Some(PlaceFault::NoStrip(last))
    } else if crop.needs.trellis && last > bed.trellis_strips() {
        Some(PlaceFault::NoTrellis(last))
    } else if bed.along_trellis && !crop.needs.trellis {
        Some(PlaceFault::OnlyClimbers)
    } else if !bed.is_open_to(planting.team) {
        Some(PlaceFault::OfOthers)
    } else if !bed.suits(crop) {
        Some(PlaceFault::Unsuitable)
    } else {
        let free = run.garden.free_from(place.bed, place.plan.run());
        free.filter(|free| starts.is_some_and(|day| day < *free))
            .map(PlaceFault::NotFreeUntil)
    }
}

/// Strips that carry two plantings on one day.
fn clashes(run: &Run<'_>) -> Vec<Fault> {
    let name = |at: PlantingAt| Some(run.plantings.get(at.0)?.name.clone());
    let stands = stands(run);
    let mut faults = Vec::new();
    for bed in run.garden.bed_positions() {
        faults.extend(
            bed_use(run, &stands, bed)
                .1
                .into_iter()
                .filter_map(|clash| {
                    Some(Fault::StripTakenTwice {
                        bed: run.garden[bed].id.clone(),
                        strip: clash.strip.number(),
                        day: run.horizon.date(clash.day),
                        first: name(clash.first)?,
                        second: name(clash.second)?,
                    })
                }),
        );
    }
    faults
}
