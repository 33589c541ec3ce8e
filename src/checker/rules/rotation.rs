//! A crop family keeps away from a bed for its years.

use std::cmp::Reverse;

use chrono::Datelike;

use crate::checker::days::in_bed;
use crate::checker::fault::Fault;
use crate::checker::planting::{Place, Planting};
use crate::checker::run::Run;
use crate::checker::stands::stands;
use crate::garden::{BedAt, Garden, StripAt};
use crate::plan::{PlantingAt, Stand};

/// All faults: a family in a bed that carried it within its hard years, or on a strip on which
/// the plan itself had it before. What already stands in a bed, or has begun by the printed plan, was not chosen by the plan and is
/// not judged.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let stands = stands(run);
    for (at, planting) in run.plantings.iter().enumerate() {
        if planting.given.is_some() {
            continue;
        }
        let Some(year) = planting_year(run, planting) else {
            continue;
        };
        let rotation = &planting.ingredient.crop.rotation;
        for place in &planting.places {
            let bed = &run.garden[place.bed];
            let grew = last_grew(run.garden, place, &rotation.family, year);
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
        faults.extend(after_its_own(run, &stands, PlantingAt(at)));
    }
    faults
}

/// Strips on which a planting comes after one of its family in the same plan, one fault for each
/// earlier planting.
fn after_its_own(run: &Run<'_>, stands: &[Stand], at: PlantingAt) -> Vec<Fault> {
    let Some(planting) = run.plantings.get(at.0) else {
        return Vec::new();
    };
    let rotation = &planting.ingredient.crop.rotation;
    let fault = |before: Before<'_, '_>| Fault::FamilyAgain {
        planting: planting.name.clone(),
        bed: run.garden[before.bed].id.clone(),
        strip: before.strip.number(),
        family: rotation.family.clone(),
        before: before.planting.name.clone(),
        cleared: run.horizon.date(before.cleared),
        years_hard: rotation.years_hard,
    };
    let too_soon = family_before(run, stands, at, |passed| rotation.must_wait(passed));
    too_soon.into_iter().map(fault).collect()
}

/// A planting of the plan that was on a strip before another one of its family.
pub struct Before<'r, 'p> {
    /// The earlier planting.
    pub planting: &'r Planting<'p>,
    /// The day number on which it is cleared.
    pub cleared: usize,
    /// The bed in which both stand.
    pub bed: BedAt,
    /// The first strip that both have.
    pub strip: StripAt,
}

/// The plantings of its family that the plan has on a strip of a planting before it, those cleared
/// last first, if so few years have passed that it waits. Where both stand at once the strip is
/// taken twice, which is another rule's.
pub fn family_before<'r, 'p>(
    run: &'r Run<'p>,
    stands: &[Stand],
    at: PlantingAt,
    waits: impl Fn(i32) -> bool,
) -> Vec<Before<'r, 'p>> {
    let planting = run.plantings.get(at.0);
    let begun = planting.and_then(|p| Some((p, p.bedding()?.first)));
    let Some((planting, starts)) = begun else {
        return Vec::new();
    };
    let family = &planting.ingredient.crop.rotation.family;
    let year = |day: usize| run.horizon.date(day).year();
    let others = run.plantings.iter().enumerate();
    let mut before: Vec<Before<'_, '_>> = others
        .filter(|(_, other)| other.ingredient.crop.rotation.family == *family)
        .filter_map(|(k, other)| Some((PlantingAt(k), in_bed(run, other)?.1, other)))
        .filter(|(_, cleared, _)| *cleared < starts && waits(year(starts) - year(*cleared)))
        .filter_map(|(other_at, cleared, other)| {
            let (bed, strip) = first_shared(stands, at, other_at)?;
            Some(Before {
                planting: other,
                cleared,
                bed,
                strip,
            })
        })
        .collect();
    before.sort_by_key(|before| Reverse(before.cleared));
    before
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

/// The last year up to `year` in which the strips of a place carried a family.
pub fn last_grew(garden: &Garden, place: &Place<'_>, family: &str, year: i32) -> Option<i32> {
    let grew = garden.grew_on(place.bed, place.plan.run());
    let own = grew.filter(|(_, other)| *other == family);
    own.map(|(grew, _)| grew).filter(|grew| *grew <= year).max()
}
