//! Steps follow one another as the crop needs, so that it is ready.

use crate::calendar::plus_days;
use crate::checker::fault::{DayLimit, Fault, Quantity, Subject};
use crate::checker::harvest::Harvest;
use crate::checker::needs::methods;
use crate::checker::planting::{Planting, Step};
use crate::checker::run::Run;
use crate::checker::seedlings::{self, exact_span};
use crate::checker::thinned::{Grown, thinned_badly};
use crate::garden::{Method, Printed, Source, Turns};
use crate::plan::StepKind;

use super::amount::differs;

/// All faults: a way of growing that is not allowed, steps missing or out of order, seedlings
/// too young or too old, rows thinned too soon or too late, harvests too late, plantings that are
/// hardly ever ready, promised years that the replay does not see.
pub fn faults(run: &Run<'_>, harvest: &Harvest, grown: &Grown<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (at, planting) in run.plantings.iter().enumerate() {
        faults.extend(method(run, planting));
        faults.extend(steps(run, planting));
        faults.extend(order(run, planting));
        faults.extend(thinning(run, (at, planting), grown));
        faults.extend(seedlings::faults(run, planting));
        faults.extend(patch_season(run, planting));
        faults.extend(patch_keeps(run, planting));
        faults.extend(cure(run, planting));
        faults.extend(delivery(run, planting));
    }
    faults.extend(rarely_ready(run, harvest));
    faults.extend(promised_years(run, harvest));
    faults
}

fn method(run: &Run<'_>, planting: &Planting<'_>) -> Option<Fault> {
    let expected = methods(run.garden, planting.ingredient);
    let got = planting.plan.method;
    (!expected.contains(&got)).then(|| Fault::Method {
        planting: planting.name.clone(),
        expected,
        got,
    })
}

/// The steps that a method takes, with as many picks as the plan has and with thinning where
/// the plan thins. What was planted out before it was potted up stays without.
fn expected_steps(run: &Run<'_>, planting: &Planting<'_>, got: &[StepKind]) -> Vec<StepKind> {
    let begun = |step: &Option<Turns>| {
        let mut step = step.iter();
        step.any(|turns| turns.begun(run.garden.as_of()))
    };
    let passed_over = |printed: &Printed| begun(&printed.plant_out) && !begun(&printed.pot_up);
    let is_potted_up = !planting.given.is_some_and(passed_over);
    let crop = &planting.ingredient.crop;
    let method = planting.plan.method;
    let has_pots = crop.indoor.is_some_and(|i| i.pots_per_flat.is_some());
    let is_in_pots = planting.seedlings.is_some_and(|s| s.potted_up.is_some());
    let times = |kind: StepKind| match kind {
        StepKind::Sow => match method {
            Method::Direct | Method::Pieces | Method::Indoor => 1,
            Method::Bought | Method::Seedlings | Method::Growing | Method::Patch => 0,
        },
        StepKind::PotUp => {
            let from_shelf = method.is_on_shelf() && has_pots;
            usize::from(from_shelf && !is_in_pots && is_potted_up)
        }
        StepKind::Harden => usize::from(method.is_on_shelf()),
        StepKind::PlantOut => usize::from(StepKind::into_bed(method) == Some(kind)),
        StepKind::Thin => {
            let is_thinned = method == Method::Direct && crop.thinning.is_some();
            usize::from(is_thinned && got.contains(&kind))
        }
        StepKind::Pick => got.iter().filter(|other| **other == kind).count().max(1),
        StepKind::Cure => usize::from(crop.picking.cure_days > 0),
    };
    let kinds = StepKind::ALL.iter();
    kinds
        .flat_map(|kind| std::iter::repeat_n(*kind, times(*kind)))
        .collect()
}

fn steps(run: &Run<'_>, planting: &Planting<'_>) -> Option<Fault> {
    let got: Vec<StepKind> = planting.plan.steps.iter().map(|s| s.kind).collect();
    let expected = expected_steps(run, planting, &got);
    (expected != got).then(|| Fault::Steps {
        planting: planting.name.clone(),
        expected,
        got,
    })
}

/// Each step comes wholly after the one before it.
fn order(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    planting
        .steps
        .windows(2)
        .filter_map(|pair| match pair {
            [before, step] if step.first <= before.last && !run.has_begun(step) => {
                Some(Fault::Day {
                    step: step.name.clone(),
                    got: run.horizon.date(step.first),
                    limit: DayLimit::Order,
                    from: run.horizon.date(before.last).succ_opt(),
                    to: None,
                })
            }
            _ => None,
        })
        .collect()
}

/// A row is thinned between the days that `growth` gives for it.
fn thinning(run: &Run<'_>, planting: (usize, &Planting<'_>), grown: &Grown<'_>) -> Option<Fault> {
    let (step, day, (from, to)) = thinned_badly(run, planting, grown)?;
    if run.has_begun(step) {
        return None;
    }
    let date = |day| run.horizon.date(day);
    Some(Fault::Day {
        step: step.name.clone(),
        got: date(day),
        limit: DayLimit::Thinning,
        from: Some(date(from)),
        to: Some(date(to)),
    })
}

/// What is ready in too few weather years is not sown: each planting, and all of an ingredient
/// together where it has several. What has begun is not sown for nothing any more.
fn rarely_ready(run: &Run<'_>, harvest: &Harvest) -> Vec<Fault> {
    let fault = |of: Subject, got: usize| {
        let expected = harvest.least_years();
        (got < expected).then_some(Fault::TooRarely {
            of,
            expected,
            got,
            years: harvest.years.len(),
        })
    };
    let plantings = run.plantings.iter().zip(&harvest.plantings);
    let plantings = plantings.filter(|(planting, _)| planting.given.is_none());
    let mut faults: Vec<Fault> = plantings
        .filter_map(|(p, years)| fault(Subject::Planting(p.name.clone()), *years))
        .collect();
    for (at, seen) in run.garden.ingredient_positions().zip(&harvest.ingredients) {
        let own = || run.plantings.iter().filter(|p| p.at == at);
        let is_chosen = own().count() > 1 && own().any(|p| p.given.is_none());
        if is_chosen && !harvest.plantings.is_empty() {
            let of = Subject::Ingredient(run.garden[at].name.clone());
            faults.extend(fault(of, seen.ready_years()));
        }
    }
    faults
}

fn patch_season(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let Source::Patch(at) = planting.ingredient.source else {
        return Vec::new();
    };
    let patch = &run.garden[at];
    let outside = |day| day < patch.pick_from || day > patch.pick_to;
    planting
        .picks()
        .filter(|pick| !run.has_begun(pick))
        .filter_map(|pick| {
            let days = [pick.first, pick.last].map(|day| run.horizon.date(day));
            let got = days.into_iter().find(|day| outside(*day))?;
            Some(Fault::Day {
                step: pick.name.clone(),
                got,
                limit: DayLimit::PatchSeason,
                from: Some(patch.pick_from),
                to: Some(patch.pick_to),
            })
        })
        .collect()
}

/// What a patch bears keeps, after curing, for the crop's days. Of what is grown the replay
/// counts this year by year. What was picked too soon is given; then it is picked once more.
fn patch_keeps(run: &Run<'_>, planting: &Planting<'_>) -> Vec<Fault> {
    let Source::Patch(_) = planting.ingredient.source else {
        return Vec::new();
    };
    let picking = planting.ingredient.crop.picking;
    let days = i64::from(picking.cure_days) + i64::from(picking.storage_days);
    let from = plus_days(run.garden.feast.day, -days);
    let judged = planting.picks().enumerate();
    let last = planting.picks().count().saturating_sub(1);
    let judged = judged.filter(|(k, pick)| *k == last || !run.has_begun(pick));
    let spoiled = judged
        .map(|(_, pick)| (pick, run.horizon.date(pick.first)))
        .filter(|(_, day)| *day < from);
    let fault = |(pick, got): (&Step<'_>, _)| Fault::Day {
        step: pick.name.clone(),
        got,
        limit: DayLimit::Keeps,
        from: Some(from),
        to: None,
    };
    spoiled.map(fault).collect()
}

/// Curing begins on the day after the last pick and takes the crop's days.
fn cure(run: &Run<'_>, planting: &Planting<'_>) -> Option<Fault> {
    let cure = planting.step(StepKind::Cure)?;
    let picked = planting.picks().map(|p| p.last).max()?;
    let days = planting.ingredient.crop.picking.cure_days as usize;
    exact_span(run, cure, DayLimit::Cure, picked + 1, picked + days)
}

/// The last pick, or the cure after it, ends by the day on which the kitchen needs it.
fn delivery(run: &Run<'_>, planting: &Planting<'_>) -> Option<Fault> {
    let last = planting
        .picks()
        .chain(planting.step(StepKind::Cure))
        .max_by_key(|s| s.last)?;
    let (got, to) = (run.horizon.date(last.last), run.garden.feast.deliver_by);
    (got > to).then(|| Fault::Day {
        step: last.name.clone(),
        got,
        limit: DayLimit::Delivery,
        from: None,
        to: Some(to),
    })
}

/// The years that the plan promises are those that the replay sees.
fn promised_years(run: &Run<'_>, harvest: &Harvest) -> Vec<Fault> {
    let promise = &run.plan.promise;
    let differ =
        |of, what, seen: usize, promised: u32| differs(of, what, seen as f64, f64::from(promised));
    let mut faults = Vec::new();
    for (ingredient, replay) in run.garden.ingredients.iter().zip(&harvest.ingredients) {
        let own = promise.ingredients.iter();
        for promised in own.filter(|p| p.ingredient == ingredient.name) {
            let of = Subject::Ingredient(ingredient.name.clone());
            let seen = replay.ready_years();
            faults.extend(differ(of, Quantity::ReadyYears, seen, promised.ready_years));
        }
    }
    let (seen, years) = (harvest.whole_dish_years(), harvest.years.len());
    let (whole, all) = (promise.whole_dish_years, promise.weather_years);
    faults.extend(differ(Subject::Dish, Quantity::ReadyYears, seen, whole));
    faults.extend(differ(Subject::Dish, Quantity::WeatherYears, years, all));
    faults
}
