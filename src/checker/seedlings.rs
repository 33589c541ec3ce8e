//! The steps between sowing on the shelf and planting out: ages, potting up, hardening; of seedlings that
//! stand there already, those that are left.

use crate::calendar::{Date, monday_of, plus_days};
use crate::garden::Method;
use crate::plan::StepKind;

use super::days::days_until_up;
use super::fault::{DayLimit, Fault};
use super::planting::{Planting, Step};
use super::run::Run;

/// Days for which seedlings are hardened, ending on the day before planting out.
pub const HARDEN_DAYS: usize = 7;

/// Days from sowing to potting up, at the least (common practice: first true leaves).
const SOW_TO_POT_UP_DAYS: i64 = 14;

/// Days from potting up to planting out, at the least (common practice: rooted again).
const POT_UP_TO_PLANT_OUT_DAYS: i64 = 10;

/// All faults in the raising of one planting; none if it is not raised on the shelf. Steps
/// that are missing are a matter of the list of steps.
pub fn faults(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let Some(Sown { last, potted, .. }) = sown(run, planting) else {
        return Vec::new();
    };
    let pot_up = planting.step(StepKind::PotUp);
    let plant_out = planting.step(StepKind::PlantOut);
    let open = |step: &&Step<'_>| !run.has_begun(step);
    let mut faults = match planting.step(StepKind::Sow) {
        Some(_) if pot_up.or(plant_out).is_some_and(|step| run.has_begun(step)) => Vec::new(),
        Some(sow) => up_in_time(run, planting, sow, pot_up.or(plant_out)),
        None => Vec::new(),
    };
    if let Some(pot_up) = pot_up.filter(open) {
        let from = plus_days(last, SOW_TO_POT_UP_DAYS);
        faults.extend(not_before(run, pot_up, DayLimit::AfterSowing, from));
    }
    let potted = pot_up.map(|step| run.horizon.date(step.last)).or(potted);
    if let (Some(potted), Some(out)) = (potted, plant_out.filter(open)) {
        let from = plus_days(potted, POT_UP_TO_PLANT_OUT_DAYS);
        faults.extend(not_before(run, out, DayLimit::AfterPottingUp, from));
    }
    if let Some(out) = plant_out.filter(open) {
        faults.extend(age(run, planting));
        if let Some(harden) = planting.step(StepKind::Harden) {
            let from = out.first.saturating_sub(HARDEN_DAYS);
            let to = out.first.saturating_sub(1);
            faults.extend(exact_span(run, harden, DayLimit::Harden, from, to));
        }
    }
    faults
}

/// When seedlings were sown, and potted up if that was before the plan.
struct Sown {
    first: Date,
    last: Date,
    potted: Option<Date>,
}

/// The sowing of a planting on the shelf: as planned, or as it is given.
fn sown(run: &Run<'_>, planting: &Planting<'_>) -> Option<Sown> {
    match planting.plan.method {
        Method::Indoor => planting.step(StepKind::Sow).map(|sow| Sown {
            first: run.horizon.date(sow.first),
            last: run.horizon.date(sow.last),
            potted: None,
        }),
        Method::Seedlings => planting.seedlings.map(|seedlings| Sown {
            first: seedlings.sown,
            last: seedlings.sown,
            potted: seedlings.potted_up,
        }),
        Method::Direct | Method::Pieces | Method::Bought | Method::Growing | Method::Patch => None,
    }
}

fn not_before(run: &Run<'_>, step: &Step<'_>, limit: DayLimit, from: Date) -> Option<Fault> {
    let got = run.horizon.date(step.first);
    (got < from).then(|| Fault::Day {
        step: step.name.clone(),
        got,
        limit,
        from: Some(from),
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
        (Some(days), Some(step)) => {
            let up = run.horizon.date(sow.last + days);
            not_before(run, step, DayLimit::Up, up)
                .into_iter()
                .collect()
        }
        (Some(_), None) => Vec::new(),
    }
}

/// Weeks from the Monday of the first sowing to the Monday of the first planting out; `None` for what is not
/// raised on the shelf.
pub fn weeks_old(run: &Run<'_>, planting: &Planting<'_>) -> Option<u32> {
    let sown = sown(run, planting)?.first;
    let out = planting.step(StepKind::PlantOut)?.first;
    let days = (run.horizon.monday(out / 7) - monday_of(sown)).num_days();
    u32::try_from((days / 7).max(0)).ok()
}

fn age(run: &Run<'_>, planting: &Planting<'_>) -> Option<Fault> {
    let indoor = planting.ingredient.crop.indoor?;
    let got = weeks_old(run, planting)?;
    (got < indoor.weeks_lo || got > indoor.weeks_hi).then(|| Fault::Age {
        planting: planting.name.clone(),
        weeks_lo: indoor.weeks_lo,
        weeks_hi: indoor.weeks_hi,
        got,
    })
}
