//! A crop family keeps away from a bed for its years.

use std::cmp::Reverse;

use chrono::Datelike;

use crate::checker::days::in_bed;
use crate::checker::fault::Fault;
use crate::checker::planting::{Place, Planting};
use crate::checker::run::Run;
use crate::garden::Bed;

/// All faults: a family in a bed that carried it within its hard years, or on a strip on which
/// the plan itself had it before. What already stands in a bed was not chosen by the plan and is
/// not judged.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for planting in &run.plantings {
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
        faults.extend(after_its_own(run, planting));
    }
    faults
}

/// Strips on which a planting comes after one of its family in the same plan, one fault for each
/// earlier planting. Where both stand at once the strip is taken twice, which is another rule's.
fn after_its_own(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let rotation = &planting.ingredient.crop.rotation;
    let Some(starts) = planting.bedding().map(|step| step.first) else {
        return Vec::new();
    };
    let year = |day: usize| run.horizon.date(day).year();
    let mut before: Vec<(usize, &Planting<'_>)> = run
        .plantings
        .iter()
        .filter(|other| other.ingredient.crop.rotation.family == rotation.family)
        .filter_map(|other| Some((in_bed(run, other)?.1, other)))
        .filter(|(cleared, _)| *cleared < starts)
        .filter(|(cleared, _)| rotation.must_wait(year(starts) - year(*cleared)))
        .collect();
    before.sort_by_key(|(cleared, _)| Reverse(*cleared));
    let fault = |(cleared, other): (usize, &Planting<'_>)| {
        let (place, strip) = first_shared(run, planting, other)?;
        Some(Fault::FamilyAgain {
            planting: planting.name.clone(),
            bed: run.garden[place.bed].id.clone(),
            strip: u32::try_from(strip).ok()?.saturating_add(1),
            family: rotation.family.clone(),
            before: other.name.clone(),
            cleared: run.horizon.date(cleared),
            years_hard: rotation.years_hard,
        })
    };
    before.into_iter().filter_map(fault).collect()
}

/// The first strip (from 0) on which both plantings stand at some time, and the place of the
/// first one.
fn first_shared<'p>(
    run: &Run<'_>,
    planting: &'p Planting<'_>,
    other: &Planting<'_>,
) -> Option<(&'p Place, usize)> {
    planting.places.iter().find_map(|place| {
        let shared = |strip: &usize| {
            let mut others = other.places.iter().filter(|o| o.bed == place.bed);
            others.any(|o| o.within(run.garden).contains(strip))
        };
        Some((place, place.within(run.garden).find(shared)?))
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
