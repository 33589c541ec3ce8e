//! Steps moved by hand, and what the checker then says; nothing here is taken from what is
//! tested.

use std::collections::BTreeSet;

use chrono::Weekday;
use tureen::calendar::{Date, days_between, monday_of, plus_days};
use tureen::checker::{Fault, Quantity, Subject, check};
use tureen::garden::{Care, Garden, GradeAt, Ingredient, Team};
use tureen::growth::effort;
use tureen::plan::{Plan, Planting, StepKind, Visit, When};
use tureen::units::Minutes;

/// What the checker says of a plan, apart from its promise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    pub breaks_rules: bool,
    /// It is ready in fewer years than a planting must have: a rule, but one that costs years.
    pub too_rarely: bool,
    /// Ready years of the ingredients, in the order of the dish, then of the whole dish.
    pub ready: Vec<usize>,
}

/// Asks the checker about a plan that promises what another one promised.
pub fn said(garden: &Garden, plan: &Plan) -> Said {
    let mut plan = plan.clone();
    plan.aims.clear();
    let promise = plan.promise.clone();
    let mut ready: Vec<usize> = promise
        .ingredients
        .iter()
        .map(|p| p.ready_years as usize)
        .collect();
    ready.push(promise.whole_dish_years as usize);
    let (mut breaks_rules, mut too_rarely) = (false, false);
    for violation in check(garden, plan).err().unwrap_or_default() {
        let of_ingredient = |name: &String| garden.ingredients.iter().position(|i| i.name == *name);
        match &violation.fault {
            Fault::Number {
                of, what, expected, ..
            } => match (of, what) {
                (Subject::Ingredient(name), Quantity::ReadyYears) => {
                    ready[of_ingredient(name).unwrap()] = *expected as usize;
                }
                (Subject::Dish, Quantity::ReadyYears) => {
                    *ready.last_mut().unwrap() = *expected as usize
                }
                (_, Quantity::LowKilograms | Quantity::ExpectedKilograms) => {}
                _ => breaks_rules = true,
            },
            Fault::TooRarely { .. } => too_rarely = true,
            _ => breaks_rules = true,
        }
    }
    Said {
        breaks_rules,
        too_rarely,
        ready,
    }
}

/// True if no more than one in ten of the ready years was lost, and no rule was broken.
pub fn bears(planned: &[usize], said: &Said) -> bool {
    let kept = |(now, then): (&usize, &usize)| 10 * (now - now.min(then)) <= *now;
    !said.breaks_rules && !said.too_rarely && planned.iter().zip(&said.ready).all(kept)
}

pub fn ingredient<'g>(garden: &'g Garden, planting: &Planting) -> &'g Ingredient {
    let named = |i: &&Ingredient| i.name == planting.ingredient;
    garden.ingredients.iter().find(named).unwrap()
}

/// A plan with one step on other days, and what goes with it.
pub fn moved(garden: &Garden, plan: &Plan, planting: usize, step: usize, when: &When) -> Plan {
    let mut plan = plan.clone();
    let planting = &mut plan.plantings[planting];
    let of = ingredient(garden, planting);
    let kind = planting.steps[step].kind;
    planting.steps[step].minutes = match when {
        When::Sessions(visits) => {
            let comes = |name: &String| visits.iter().any(|visit| visit.class == *name);
            let some_come = |g: &GradeAt| garden[*g].classes.iter().any(|c| comes(&c.name));
            let team: Team = garden.grade_positions().filter(some_come).collect();
            let effort = effort(kind, of, planting.method, garden.children_of(team));
            effort.minutes(planting.plants)
        }
        _ => Minutes(0.0),
    };
    planting.steps[step].when = when.clone();
    spans(of, planting);
    plan
}

/// A plan without all that is done for an ingredient on the days of one of its steps; what has
/// no pick left is lost, and what is not sown, potted up or planted out.
pub fn without(garden: &Garden, plan: &Plan, (name, when): (&str, &When)) -> Plan {
    let mut rest = plan.clone();
    for planting in rest.plantings.iter_mut().filter(|p| p.ingredient == name) {
        let (lost, left): (Vec<_>, Vec<_>) = planting
            .steps
            .drain(..)
            .partition(|s| key(&s.when) == key(when));
        planting.steps = left;
        let picked = planting.steps.iter().any(|s| s.kind == StepKind::Pick);
        let needed = |kind| !matches!(kind, StepKind::Pick | StepKind::Thin);
        if !picked || lost.iter().any(|s| needed(s.kind)) {
            planting.steps.clear();
        } else {
            spans(ingredient(garden, planting), planting);
        }
    }
    rest.plantings.retain(|p| !p.steps.is_empty());
    rest
}

/// False where what was sown is thinned so early or late that no checker need be asked: before it is sown, or
/// more than two weeks of waiting, six until it is up and four after it.
pub fn may_be_thinned(planting: &Planting) -> bool {
    let of = |kind| planting.steps.iter().find(|s| s.kind == kind);
    let (Some(sown), Some(thinned)) = (of(StepKind::Sow), of(StepKind::Thin)) else {
        return true;
    };
    let sown = key(&sown.when);
    key(&thinned.when).iter().all(|(day, _)| {
        let within = |from: &Date| (0..=84).contains(&(*day - *from).num_days());
        sown.iter().all(|(from, _)| within(from))
    })
}

/// Puts hardening and curing of a planting where its steps ask for them.
pub fn spans_follow(garden: &Garden, planting: &mut Planting) {
    spans(ingredient(garden, planting), planting);
}

/// Seven days of hardening before planting out; curing from the day after the last pick.
fn spans(of: &Ingredient, planting: &mut Planting) {
    let days = |kind: StepKind| {
        let of_kind = planting.steps.iter().filter(move |s| s.kind == kind);
        of_kind
            .map(|s| (s.when.first().unwrap(), s.when.last().unwrap()))
            .collect::<Vec<_>>()
    };
    let (out, picks) = (days(StepKind::PlantOut), days(StepKind::Pick));
    let cure = i64::from(of.crop.picking.cure_days);
    for step in &mut planting.steps {
        let (from, to) = match step.kind {
            StepKind::Harden => (plus_days(out[0].0, -7), plus_days(out[0].0, -1)),
            StepKind::Cure => {
                let last = picks.iter().map(|(_, last)| *last).max().unwrap();
                (plus_days(last, 1), plus_days(last, cure))
            }
            _ => continue,
        };
        step.when = When::Daily { from, to };
    }
}

fn team_of(garden: &Garden, planting: &Planting) -> Team {
    let grades = garden.grade_positions();
    grades
        .filter(|grade| planting.grades.contains(&garden[*grade].id))
        .collect()
}

/// Every day or round on which the same hands could do a step.
pub fn choices(garden: &Garden, planting: &Planting, step: usize) -> Vec<When> {
    let year = &garden.school_year;
    let whole = (year.start, garden.last_day());
    let within = |when: &When| when.first() >= Some(whole.0) && when.last() <= Some(whole.1);
    let mut all: Vec<When> = match planting.steps[step].when {
        When::Sessions(_) => rounds(garden, team_of(garden, planting)),
        When::Families(_) => days_between(whole.0, whole.1)
            .filter(|day| chrono::Datelike::weekday(day) == Weekday::Sat)
            .filter(|day| {
                year.break_on(*day)
                    .is_some_and(|b| b.care == Care::Families)
            })
            .map(When::Families)
            .collect(),
        When::Adult(_) => days_between(whole.0, whole.1)
            .filter(|day| year.school_is_in(*day))
            .map(When::Adult)
            .collect(),
        When::Daily { .. } => Vec::new(),
    };
    all.retain(within);
    all
}

/// All classes of some grades.
fn classes(garden: &Garden, team: Team) -> impl Iterator<Item = &tureen::garden::Class> {
    let own = garden
        .grade_positions()
        .filter(move |grade| team.has(*grade));
    own.flat_map(|grade| &garden[grade].classes)
}

/// Two weeks where any of them meets every second week, else one.
fn weeks_of(garden: &Garden, team: Team) -> u32 {
    let slots = classes(garden, team).flat_map(|class| &class.slots);
    slots.map(|slot| slot.every_weeks).max().unwrap()
}

/// From every week on: the first lesson of each class of those who tend it, before or after the grades move up;
/// and each day of the harvest, on which all of them meet.
fn rounds(garden: &Garden, team: Team) -> Vec<When> {
    let horizon = garden.horizon();
    let (first, last) = (garden.school_year.start, garden.last_day());
    let halves = match garden.school_year.moves_up {
        Some(up) => vec![(first, plus_days(up, -1)), (up, last)],
        None => vec![(first, last)],
    };
    let mut found: BTreeSet<Vec<(Date, String)>> = BTreeSet::new();
    for week in 0..horizon.weeks() {
        for (from, to) in &halves {
            let monday = monday_of(horizon.monday(week));
            let tending = garden.tending(team, *from.max(&monday));
            if garden.tending(team, *from) != tending {
                continue;
            }
            let end = plus_days(monday, i64::from(weeks_of(garden, tending)) * 7 - 1);
            let meets = |class: &tureen::garden::Class| {
                days_between(monday, end)
                    .find(|d| from <= d && d <= to && class.has_lesson_on(&garden.school_year, *d))
                    .map(|day| (day, class.name.clone()))
            };
            found.extend(
                classes(garden, tending)
                    .map(meets)
                    .collect::<Option<Vec<_>>>(),
            );
        }
    }
    for harvest in &garden.school_year.harvest_days {
        let classes = classes(garden, garden.tending(team, harvest.day));
        found.insert(
            classes
                .map(|class| (harvest.day, class.name.clone()))
                .collect(),
        );
    }
    let visit = |(date, class)| Visit { class, date };
    found
        .into_iter()
        .map(|round| When::Sessions(round.into_iter().map(visit).collect()))
        .collect()
}

/// The same days of the same hands, in whatever order.
pub fn key(when: &When) -> BTreeSet<(Date, String)> {
    match when {
        When::Sessions(visits) => visits.iter().map(|v| (v.date, v.class.clone())).collect(),
        When::Families(day) => BTreeSet::from([(*day, "families".to_owned())]),
        When::Adult(day) => BTreeSet::from([(*day, "adult".to_owned())]),
        When::Daily { from, .. } => BTreeSet::from([(*from, "daily".to_owned())]),
    }
}
