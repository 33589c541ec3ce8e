//! What has begun goes on as it was begun, and nothing else has begun.

use crate::checker::fault::Fault;
use crate::checker::planting::{Planting, Step};
use crate::checker::run::Run;
use crate::garden::{Printed, Season, Turns};
use crate::plan::StepKind;

/// All faults: printed plantings with which none or several of the plan go on, and steps on days gone by that are none of
/// what was printed.
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
    for planting in &run.plantings {
        let dated = planting.steps.iter().filter(|s| !s.plan.kind.is_span());
        let mut begun = dated.filter(|step| run.has_begun(step));
        let made_up = begun.find(|_| planting.given.is_none());
        let gone_by = made_up.or_else(|| hardened_too_soon(run, season, planting));
        faults.extend(gone_by.map(|step| Fault::GoneBy {
            step: step.name.clone(),
            day: run.horizon.date(step.first),
            as_of: season.as_of,
        }));
    }
    faults
}

/// Hardening off that has begun, for another planting out than was printed.
fn hardened_too_soon<'p>(
    run: &Run<'_>,
    season: &Season,
    planting: &'p Planting<'_>,
) -> Option<&'p Step<'p>> {
    let begun = |step: &&Step<'_>| run.has_begun(step);
    let harden = planting.step(StepKind::Harden).filter(begun)?;
    let out = planting
        .step(StepKind::PlantOut)
        .filter(|out| !begun(out))?;
    let out = Some(run.horizon.date(out.first));
    let as_printed = |printed: &Printed| {
        let turns = printed.plant_out.as_ref();
        turns.and_then(Turns::first) == out
    };
    let is_given = match planting.given {
        Some(printed) => as_printed(printed),
        None => season.printed_of(planting.at).any(|(_, p)| as_printed(p)),
    };
    (!is_given).then_some(harden)
}
