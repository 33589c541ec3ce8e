//! A crop family keeps away from a bed for its years.

use chrono::Datelike;

use crate::checker::fault::Fault;
use crate::checker::planting::Planting;
use crate::checker::run::Run;
use crate::garden::Bed;

/// All faults: a family in a bed that carried it within its hard years. What already stands
/// in a bed was not chosen by the plan and is not judged.
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
            if let Some(grew_in) = grew.filter(|g| within(year - g, rotation.years_hard)) {
                faults.push(Fault::Rotation {
                    planting: planting.name.clone(),
                    bed: bed.id.clone(),
                    family: rotation.family.clone(),
                    grew_in,
                    years_hard: rotation.years_hard,
                });
            }
        }
    }
    faults
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

/// True if so few years have passed that a family must keep away for `limit` years; a limit
/// of 0 keeps nothing away.
pub fn within(passed: i32, limit: u32) -> bool {
    limit > 0 && u32::try_from(passed).is_ok_and(|passed| passed <= limit)
}
