//! The steps between sowing on the shelf and planting out: ages, potting up, hardening.

use crate::garden::Method;
use crate::plan::StepKind;

use super::days::days_until_up;
use super::fault::{DayLimit, Fault};
use super::planting::{Planting, Step};
use super::run::Run;

/// Days for which seedlings are hardened, ending on the day before planting out.
pub const HARDEN_DAYS: usize = 7;

/// Days from sowing to potting up, at the least (common practice: first true leaves).
const SOW_TO_POT_UP_DAYS: usize = 14;

/// Days from potting up to planting out, at the least (common practice: rooted again).
const POT_UP_TO_PLANT_OUT_DAYS: usize = 10;

/// All faults in the raising of one planting; none if it is not raised on the shelf. Steps
/// that are missing are a matter of the list of steps.
pub fn faults(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let (Method::Indoor, Some(sow)) = (planting.plan.method, planting.step(StepKind::Sow)) else {
        return Vec::new();
    };
    let pot_up = planting.step(StepKind::PotUp);
    let plant_out = planting.step(StepKind::PlantOut);
    let mut faults = up_in_time(run, planting, sow, pot_up.or(plant_out));
    if let Some(pot_up) = pot_up {
        let limit = DayLimit::AfterSowing;
        faults.extend(not_before(
            run,
            pot_up,
            limit,
            sow.last + SOW_TO_POT_UP_DAYS,
        ));
    }
    if let (Some(pot_up), Some(out)) = (pot_up, plant_out) {
        let from = pot_up.last + POT_UP_TO_PLANT_OUT_DAYS;
        faults.extend(not_before(run, out, DayLimit::AfterPottingUp, from));
    }
    if let Some(out) = plant_out {
        faults.extend(age(planting, sow, out));
        if let Some(harden) = planting.step(StepKind::Harden) {
            let from = out.first.saturating_sub(HARDEN_DAYS);
            let to = out.first.saturating_sub(1);
            faults.extend(exact_span(run, harden, DayLimit::Harden, from, to));
        }
    }
    faults
}

fn not_before(run: &Run<'_>, step: &Step<'_>, limit: DayLimit, from: usize) -> Option<Fault> {
    (step.first < from).then(|| Fault::Day {
        step: step.name.clone(),
        got: run.horizon.date(step.first),
        limit,
        from: Some(run.horizon.date(from)),
        to: None,
    })
}

/// A fault if a step does not take exactly the days `from..=to`.
pub fn exact_span(
    run: &Run<'_>,
    step: &Step<'_>,
    limit: DayLimit,
    from: usize,
    to: usize,
) -> Option<Fault> {
    let wrong = if step.first == from {
        step.last
    } else {
        step.first
    };
    ((step.first, step.last) != (from, to)).then(|| Fault::Day {
        step: step.name.clone(),
        got: run.horizon.date(wrong),
        limit,
        from: Some(run.horizon.date(from)),
        to: Some(run.horizon.date(to)),
    })
}

/// The seed that was sown last is up by the day on which it is first handled.
fn up_in_time(
    run: &Run<'_>,
    planting: &Planting<'_>,
    sow: &Step<'_>,
    handled: Option<&Step<'_>>,
) -> Vec<Fault> {
    match (days_until_up(run, planting), handled) {
        (None, _) => vec![Fault::NeverUp {
            planting: planting.name.clone(),
        }],
        (Some(days), Some(step)) => not_before(run, step, DayLimit::Up, sow.last + days)
            .into_iter()
            .collect(),
        (Some(_), None) => Vec::new(),
    }
}

/// Weeks from the Monday of the first sowing to the Monday of the first planting out.
fn age(planting: &Planting<'_>, sow: &Step<'_>, out: &Step<'_>) -> Option<Fault> {
    let indoor = planting.ingredient.crop.indoor?;
    let weeks = (out.first / 7).saturating_sub(sow.first / 7);
    let got = u32::try_from(weeks).unwrap_or(u32::MAX);
    (got < indoor.weeks_lo || got > indoor.weeks_hi).then(|| Fault::Age {
        planting: planting.name.clone(),
        weeks_lo: indoor.weeks_lo,
        weeks_hi: indoor.weeks_hi,
        got,
    })
}
