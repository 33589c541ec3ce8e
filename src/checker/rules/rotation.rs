//! A crop family keeps away from a bed for its years.

use std::cmp::Reverse;

use chrono::Datelike;

use crate::checker::days::in_bed;
use crate::checker::fault::Fault;
use crate::checker::planting::Planting;
use crate::checker::run::Run;
use crate::checker::stands::stands;
use crate::garden::{Bed, BedAt, StripAt};
use crate::plan::{PlantingAt, Stand};

/// All faults: a family in a bed that carried it within its hard years, or on a strip on which
/// the plan itself had it before. What already stands in a bed was not chosen by the plan and is
/// not judged.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let stands = stands(run);
    for (at, planting) in run.plantings.iter().enumerate() {
        let Some(year) = planting_year(run, planting) else {
            continue;
        };
        let rotation = &planting.ingredient.crop.rotation;
        for place in &planting.places {
            let bed = &run.garden[place.bed];
            let grew = last_grew(bed, &rotation.family, year);
            if let Some(grew_in) = grew.filter(|g| rotation.must_wait(year - g)) {
                faults.push(Fault::Rotation {
                    planting: planting.name.clone(),
                    bed: bed.id.clone(),
                    family: rotation.family.clone(),
                    grew_in,
                    years_hard: rotation.years_hard,
                });
            }
        }
        faults.extend(after_its_own(run, &stands, PlantingAt(at), planting));
    }
    faults
}

/// Strips on which a planting comes after one of its family in the same plan, one fault for each
/// earlier planting. Where both stand at once the strip is taken twice, which is another rule's.
fn after_its_own(
    run: &Run<'_>,
    stands: &[Stand],
    at: PlantingAt,
    planting: &Planting<'_>,
) -> Vec<Fault> {
    let rotation = &planting.ingredient.crop.rotation;
    let Some(starts) = planting.bedding().map(|step| step.first) else {
        return Vec::new();
    };
    let year = |day: usize| run.horizon.date(day).year();
    let plantings = run.plantings.iter().enumerate();
    let mut before: Vec<(usize, PlantingAt, &Planting<'_>)> = plantings
        .filter(|(_, other)| other.ingredient.crop.rotation.family == rotation.family)
        .filter_map(|(k, other)| Some((in_bed(run, other)?.1, PlantingAt(k), other)))
        .filter(|(cleared, ..)| *cleared < starts)
        .filter(|(cleared, ..)| rotation.must_wait(year(starts) - year(*cleared)))
        .collect();
    before.sort_by_key(|(cleared, ..)| Reverse(*cleared));
    let fault = |(cleared, other_at, other): (usize, PlantingAt, &Planting<'_>)| {
        let (bed, strip) = first_shared(stands, at, other_at)?;
        Some(Fault::FamilyAgain {
            planting: planting.name.clone(),
            bed: run.garden[bed].id.clone(),
            strip: strip.number(),
            family: rotation.family.clone(),
            before: other.name.clone(),
            cleared: run.horizon.date(cleared),
            years_hard: rotation.years_hard,
        })
    };
    before.into_iter().filter_map(fault).collect()
}

/// The first strip on which two plantings stand, each at its time, and its bed.
fn first_shared(stands: &[Stand], a: PlantingAt, b: PlantingAt) -> Option<(BedAt, StripAt)> {
    let of = |at: PlantingAt| stands.iter().filter(move |stand| stand.holds(at));
    of(a).find_map(|own| {
        let shared = |strip: &StripAt| {
            let mut others = of(b).filter(|other| other.bed == own.bed);
            others.any(|other| other.strips.has(*strip))
        };
        Some((own.bed, own.strips.iter().find(shared)?))
    })
}

/// The year in which a planting comes into its bed; `None` if the plan does not bring it there.
pub fn planting_year(run: &Run<'_>, planting: &Planting<'_>) -> Option<i32> {
    Some(run.horizon.date(planting.bedding()?.first).year())
}

/// The last year up to `year` in which a bed carried a family.
pub fn last_grew(bed: &Bed, family: &str, year: i32) -> Option<i32> {
    bed.grew
        .iter()
        .filter(|(grew, families)| *grew <= year && families.iter().any(|f| f == family))
        .map(|(grew, _)| *grew)
        .max()
}
