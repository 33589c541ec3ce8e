//! What has begun goes on as it was begun, and nothing else has begun.

use crate::checker::fault::Fault;
use crate::checker::run::Run;
use crate::garden::Printed;

/// All faults: printed plantings with which none or several of the plan go on, and steps on days gone by of plantings
/// that go on with none.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let Some(season) = &run.garden.season else {
        return Vec::new();
    };
    let mut faults = Vec::new();
    for printed in season.printed.iter().filter(|p| p.begun(season.as_of)) {
        let goes_on = |given: Option<&Printed>| given.is_some_and(|own| std::ptr::eq(own, printed));
        let got = run.plantings.iter().filter(|p| goes_on(p.given)).count();
        if got != 1 {
            faults.push(Fault::NotAsBegun {
                ingredient: run.garden[printed.ingredient].name.clone(),
                got,
            });
        }
    }
    for planting in run.plantings.iter().filter(|p| p.given.is_none()) {
        let gone_by = planting.steps.iter().find(|step| run.has_begun(step));
        faults.extend(gone_by.map(|step| Fault::GoneBy {
            step: step.name.clone(),
            day: run.horizon.date(step.first),
            as_of: season.as_of,
        }));
    }
    faults
}
