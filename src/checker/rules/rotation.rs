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
/// earlier planting.
fn after_its_own(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let rotation = &planting.ingredient.crop.rotation;
    let fault = |before: Before<'_, '_>| {
        Some(Fault::FamilyAgain {
            planting: planting.name.clone(),
            bed: run.garden[before.place.bed].id.clone(),
            strip: u32::try_from(before.strip).ok()?.saturating_add(1),
            family: rotation.family.clone(),
            before: before.planting.name.clone(),
            cleared: run.horizon.date(before.cleared),
            years_hard: rotation.years_hard,
        })
    };
    let too_soon = family_before(run, planting, |passed| rotation.must_wait(passed));
    too_soon.into_iter().filter_map(fault).collect()
}

/// A planting of the plan that was on a strip before another one of its family.
pub struct Before<'r, 'p> {
    /// The earlier planting.
    pub planting: &'r Planting<'p>,
    /// The day number on which it is cleared.
    pub cleared: usize,
    /// The later one's place.
    pub place: &'r Place,
    /// The first strip, from 0, that both have.
    pub strip: usize,
}

/// The plantings of its family that the plan has on a strip of a planting before it, those cleared
/// last first, if so few years have passed that it waits. Where both stand at once the strip is
/// taken twice, which is another rule's.
pub fn family_before<'r, 'p>(
    run: &'r Run<'p>,
    planting: &'r Planting<'p>,
    waits: impl Fn(i32) -> bool,
) -> Vec<Before<'r, 'p>> {
    let family = &planting.ingredient.crop.rotation.family;
    let Some(starts) = planting.bedding().map(|step| step.first) else {
        return Vec::new();
    };
    let year = |day: usize| run.horizon.date(day).year();
    let mut before: Vec<Before<'_, '_>> = run
        .plantings
        .iter()
        .filter(|other| other.ingredient.crop.rotation.family == *family)
        .filter_map(|other| Some((in_bed(run, other)?.1, other)))
        .filter(|(cleared, _)| *cleared < starts && waits(year(starts) - year(*cleared)))
        .filter_map(|(cleared, other)| {
            let (place, strip) = first_shared(run, planting, other)?;
            Some(Before {
                planting: other,
                cleared,
                place,
                strip,
            })
        })
        .collect();
    before.sort_by_key(|before| Reverse(before.cleared));
    before
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
