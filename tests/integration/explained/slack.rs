//! Slack against trying every round.

use std::collections::BTreeSet;

use tureen::checker::{CheckedPlan, check};
use tureen::explain::{StepSlack, slack};
use tureen::garden::{Garden, Method};
use tureen::plan::{Plan, StepKind, When};

use super::aim::plans;
use super::steps_by_hand::{Said, bears, choices, key, moved, said, thinned_in_time, without};
use crate::random_gardens::make::TINY;

/// A garden with its plan, and what the plan promises: ready years, the whole dish last.
struct Case {
    seed: u64,
    garden: Garden,
    checked: CheckedPlan,
    planned: Vec<usize>,
}

impl Case {
    fn new(seed: u64, garden: Garden, plan: Plan) -> Self {
        let planned = said(&garden, &plan).ready;
        let checked = check(&garden, plan).unwrap();
        Self {
            seed,
            garden,
            checked,
            planned,
        }
    }

    fn years(&self) -> usize {
        self.checked.replay().years.len()
    }
}

/// Every round is tried by hand: those that the plan bears are those that are said.
fn same_days(case: &Case, slack: &StepSlack) {
    let plan = case.checked.plan();
    let at = slack.at;
    let planting = &plan.plantings[at.planting];
    let planned = key(&planting.steps[at.step].when);
    let mut expected = BTreeSet::from([planned]);
    for when in choices(&case.garden, planting, at.step) {
        let other = moved(&case.garden, plan, at.planting, at.step, &when);
        let in_time = thinned_in_time(&other.plantings[at.planting]);
        if in_time && bears(case.years(), &case.planned, &said(&case.garden, &other)) {
            expected.insert(key(&when));
        }
    }
    let found: BTreeSet<_> = slack.days.iter().map(key).collect();
    assert_eq!(
        found, expected,
        "seed {}, {planting:?}, step {}",
        case.seed, at.step
    );
}

/// Where a sowing only does with its thinning elsewhere, some such pair of days does.
fn same_days_with_thinning(case: &Case, slack: &StepSlack) -> usize {
    let plan = case.checked.plan();
    let at = slack.at;
    let steps = &plan.plantings[at.planting].steps;
    let thin = steps.iter().position(|s| s.kind == StepKind::Thin);
    let (StepKind::Sow, Some(thin)) = (steps[at.step].kind, thin) else {
        assert_eq!(slack.with_thinning, [], "seed {}", case.seed);
        return 0;
    };
    let planting = &plan.plantings[at.planting];
    let mut expected = BTreeSet::new();
    for when in choices(&case.garden, planting, at.step) {
        let sown = moved(&case.garden, plan, at.planting, at.step, &when);
        let thinned = choices(&case.garden, planting, thin).into_iter();
        let does = |thinned: &When| {
            let both = moved(&case.garden, &sown, at.planting, thin, thinned);
            thinned_in_time(&both.plantings[at.planting])
                && bears(case.years(), &case.planned, &said(&case.garden, &both))
        };
        if !slack.days.iter().any(|day| key(day) == key(&when))
            && thinned.into_iter().any(|t| does(&t))
        {
            expected.insert(key(&when));
        }
    }
    let found: BTreeSet<_> = slack.with_thinning.iter().map(key).collect();
    assert_eq!(found, expected, "seed {}, {planting:?}", case.seed);
    found.len()
}

/// What is left without the step.
fn same_loss(case: &Case, slack: &StepSlack) {
    let plan = case.checked.plan();
    let planting = &plan.plantings[slack.at.planting];
    let step = &planting.steps[slack.at.step];
    let rest = match step.kind {
        StepKind::Thin => plan.clone(),
        _ => without(&case.garden, plan, (&planting.ingredient, &step.when)),
    };
    let Said { ready, .. } = said(&case.garden, &rest);
    let of = &planting.ingredient;
    let at = case
        .garden
        .ingredients
        .iter()
        .position(|i| i.name == *of)
        .unwrap();
    let left = (slack.missed.ready_years, slack.missed.whole_dish_years);
    assert_eq!(
        left,
        (ready[at], ready[ready.len() - 1]),
        "seed {}, {of}",
        case.seed
    );
}

#[test]
fn slack_is_what_trying_every_round_finds() {
    let (mut steps, mut free, mut marked, mut others, mut picks) = (0, 0, 0, 0, 0);
    let (mut growing, mut patches, mut twice, mut single) = (0, 0, 0, 0);
    let (mut thinned, mut shared) = (0, 0);
    for (seed, garden, plan) in plans(10_000..10_120, &TINY) {
        let case = Case::new(seed, garden, plan);
        let plantings = &case.checked.plan().plantings;
        for slack in slack(&case.garden, &case.checked) {
            same_days(&case, &slack);
            thinned += same_days_with_thinning(&case, &slack);
            same_loss(&case, &slack);
            shared += usize::from(slack.missed.sowings > 1);
            let planting = &plantings[slack.at.planting];
            let sowings = plantings
                .iter()
                .filter(|p| p.ingredient == planting.ingredient)
                .count();
            let is_pick = planting.steps[slack.at.step].kind == StepKind::Pick;
            // What fails by itself fails in the plan, unless another sowing makes up for it.
            if slack.fragile && sowings == 1 && !is_pick {
                assert_ne!(slack.bears_next, Some(true), "seed {seed}: {slack:?}");
            }
            steps += 1;
            free += usize::from(slack.days.len() > 1);
            marked += usize::from(slack.fragile);
            others += usize::from(!slack.fragile && slack.bears_next == Some(false));
            picks += usize::from(is_pick);
            growing += usize::from(planting.method == Method::Growing);
            patches += usize::from(planting.method == Method::Patch);
            twice += usize::from(sowings > 1);
            single +=
                usize::from(slack.days[slack.planned].first() == slack.days[slack.planned].last());
        }
    }
    println!(
        "{steps} steps, {free} can move, {marked} without slack, {others} without room only \
         because of others, {picks} picks, {growing} of what grows, {patches} of patches, {twice} \
         of several sowings, {single} on one day, {thinned} sowings with their thinning, {shared} \
         that fall out for several sowings"
    );
    let seen = [
        free, marked, others, picks, growing, patches, twice, single, thinned, shared,
    ];
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}");
}
