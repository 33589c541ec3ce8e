//! Children work only when their class meets, and within its minutes.

use std::collections::BTreeMap;

use chrono::{Datelike, Weekday};

use crate::calendar::Date;
use crate::checker::fault::{DayLimit, Fault, Quantity, Subject};
use crate::checker::planting::{Planting, Step, Visit, When};
use crate::checker::run::Run;
use crate::garden::Care;
use crate::growth;
use crate::units::Minutes;

/// Forgiveness for sums of minutes.
const ROUNDING: f64 = 1e-6;

/// All faults: visits without a session, rounds that take too long, days on which nobody is
/// there, wrong minutes, overfull sessions.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    let mut work: BTreeMap<Visit, f64> = BTreeMap::new();
    for planting in &run.plantings {
        for step in &planting.steps {
            match &step.when {
                When::Sessions(_) if run.has_begun(step) => {
                    faults.extend(open_visits(run, step).filter_map(|v| no_session(run, step, v)));
                    for visit in open_visits(run, step) {
                        *work.entry(visit).or_default() += step.plan.minutes.0;
                    }
                }
                When::Families(_) | When::Adult(_) if run.has_begun(step) => {}
                When::Sessions(visits) => {
                    faults.extend(visits.iter().filter_map(|v| no_session(run, step, *v)));
                    faults.extend(round_too_long(run, planting, step));
                    for visit in visits {
                        *work.entry(*visit).or_default() += step.plan.minutes.0;
                    }
                }
                When::Families(day) => faults.extend(no_families(run, step, *day)),
                When::Adult(day) => faults.extend(no_adult(run, step, *day)),
                When::Daily => {}
            }
            faults.extend(wrong_minutes(run, planting, step));
        }
    }
    faults.extend(overfull(run, &work));
    faults
}

/// The visits of a step that has begun which are still to come.
fn open_visits(run: &Run<'_>, step: &Step<'_>) -> impl Iterator<Item = Visit> {
    let visits = match &step.when {
        When::Sessions(visits) => visits.clone(),
        When::Families(_) | When::Adult(_) | When::Daily => Vec::new(),
    };
    let as_of = run.garden.as_of();
    let open = move |visit: &Visit| run.horizon.date(visit.day) >= as_of;
    visits.into_iter().filter(open)
}

fn no_session(run: &Run<'_>, step: &Step<'_>, visit: Visit) -> Option<Fault> {
    let day = run.horizon.date(visit.day);
    let class = run.garden.class(visit.class);
    let meets = class.meets_on(&run.garden.school_year, day);
    (!meets).then(|| Fault::NoSession {
        step: step.name.clone(),
        class: class.name.clone(),
        day,
    })
}

/// All visits of a step lie in the weeks of one round, counted from the first one's Monday.
fn round_too_long(run: &Run<'_>, planting: &Planting<'_>, step: &Step<'_>) -> Option<Fault> {
    let from = run.horizon.date(step.first);
    let tending = run.garden.tending(planting.team, from);
    let days = run.garden.round_weeks(tending) as usize * 7;
    let end = step.first / 7 * 7 + days;
    (step.last >= end).then(|| Fault::Day {
        step: step.name.clone(),
        got: run.horizon.date(step.last),
        limit: DayLimit::Round,
        from: Some(from),
        to: run.horizon.date(end).pred_opt(),
    })
}

fn no_families(run: &Run<'_>, step: &Step<'_>, day: usize) -> Option<Fault> {
    let day = run.horizon.date(day);
    let holiday = run.garden.school_year.break_on(day);
    let there = holiday.is_some_and(|b| b.care == Care::Families);
    nobody_there(step, day, there)
}

fn no_adult(run: &Run<'_>, step: &Step<'_>, day: usize) -> Option<Fault> {
    let day = run.horizon.date(day);
    let year = &run.garden.school_year;
    let weekday = !matches!(day.weekday(), Weekday::Sat | Weekday::Sun);
    let in_term = year.term_on(day).is_some() && year.break_on(day).is_none();
    nobody_there(step, day, weekday && in_term)
}

fn nobody_there(step: &Step<'_>, day: Date, there: bool) -> Option<Fault> {
    (!there).then(|| Fault::NobodyThere {
        step: step.name.clone(),
        day,
    })
}

/// The minutes that a step takes of each session, of the classes that come; none where no session is used.
pub fn minutes(run: &Run<'_>, planting: &Planting<'_>, step: &Step<'_>) -> Option<Minutes> {
    Some(match &step.when {
        When::Sessions(visits) => {
            let classes = visits.iter().map(|visit| visit.class);
            let children = run.garden.children_who_share(classes);
            let method = planting.plan.method;
            let effort = growth::effort(step.plan.kind, planting.ingredient, method, children);
            effort.minutes(planting.need?.plants)
        }
        When::Families(_) | When::Adult(_) | When::Daily => Minutes(0.0),
    })
}

/// The minutes in the plan are those that the work takes.
fn wrong_minutes(run: &Run<'_>, planting: &Planting<'_>, step: &Step<'_>) -> Option<Fault> {
    let expected = minutes(run, planting, step)?;
    let got = step.plan.minutes;
    let right = (got - expected).0.abs() <= ROUNDING;
    (!right).then(|| Fault::Number {
        of: Subject::Step(step.name.clone()),
        what: Quantity::Minutes,
        expected: expected.0,
        got: got.0,
    })
}

fn overfull(run: &Run<'_>, work: &BTreeMap<Visit, f64>) -> Vec<Fault> {
    work.iter()
        .filter_map(|(visit, got)| {
            let day = run.horizon.date(visit.day);
            let expected = run.garden.session_minutes(visit.class, day).0;
            (*got > expected + ROUNDING).then(|| Fault::SessionOverfull {
                class: run.garden.class(visit.class).name.clone(),
                day,
                expected,
                got: *got,
            })
        })
        .collect()
}
