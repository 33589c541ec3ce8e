//! Slack against trying every round.

use std::collections::BTreeSet;

use tureen::checker::{CheckedPlan, check};
use tureen::explain::{IfMissed, StepSlack, slack};
use tureen::garden::{Garden, Method};
use tureen::plan::{Plan, StepKind, When};

use super::aim::plans;
use super::steps_by_hand::{Said, bears, choices, key, may_be_thinned, moved, said, without};
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
}

/// Every round is tried by hand: those that the plan bears are those that are said.
fn same_days(case: &Case, slack: &StepSlack) {
    let plan = case.checked.plan();
    let at = slack.at;
    let planting = &plan.plantings[at.planting.0];
    let planned = key(&planting.steps[at.step].when);
    let mut expected = BTreeSet::from([planned]);
    for when in choices(&case.garden, planting, at.step) {
        let other = moved(&case.garden, plan, at.planting.0, at.step, &when);
        let in_time = may_be_thinned(&other.plantings[at.planting.0]);
        if in_time && bears(&case.planned, &said(&case.garden, &other)) {
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
    let steps = &plan.plantings[at.planting.0].steps;
    let thin = steps.iter().position(|s| s.kind == StepKind::Thin);
    let (StepKind::Sow, Some(thin)) = (steps[at.step].kind, thin) else {
        assert_eq!(slack.with_thinning, [], "seed {}", case.seed);
        return 0;
    };
    let planting = &plan.plantings[at.planting.0];
    let mut expected = BTreeSet::new();
    for when in choices(&case.garden, planting, at.step) {
        let sown = moved(&case.garden, plan, at.planting.0, at.step, &when);
        let thinned = choices(&case.garden, planting, thin).into_iter();
        let does = |thinned: &When| {
            let both = moved(&case.garden, &sown, at.planting.0, thin, thinned);
            may_be_thinned(&both.plantings[at.planting.0])
                && bears(&case.planned, &said(&case.garden, &both))
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

/// The next round is called too dear where it keeps every rule, on some days of its thinning if it is
/// a sowing, but not the promise.
fn same_costs(case: &Case, slack: &StepSlack) -> usize {
    let plan = case.checked.plan();
    let at = slack.at;
    let planting = &plan.plantings[at.planting.0];
    let step = &planting.steps[at.step];
    let When::Sessions(visits) = &step.when else {
        return 0;
    };
    if matches!(step.kind, StepKind::Pick | StepKind::Thin) {
        return 0;
    }
    let later = |when: &When| match when {
        When::Sessions(others) => visits.iter().all(|v| {
            let own = others.iter().find(|o| o.class == v.class);
            own.is_some_and(|own| own.date > v.date)
        }),
        _ => false,
    };
    let next = choices(&case.garden, planting, at.step).into_iter();
    let next = next
        .filter(later)
        .min_by_key(|when| (when.last(), when.first()));
    let thin = planting.steps.iter().position(|s| s.kind == StepKind::Thin);
    let thin = thin.filter(|_| step.kind == StepKind::Sow);
    let dear = |next: When| {
        let late = moved(&case.garden, plan, at.planting.0, at.step, &next);
        let thinned = thin.into_iter().flat_map(|thin| {
            let days = choices(&case.garden, planting, thin).into_iter();
            let late = &late;
            days.map(move |when| moved(&case.garden, late, at.planting.0, thin, &when))
        });
        let mut ways = thinned.chain([late.clone()]);
        ways.any(|way| {
            let said = said(&case.garden, &way);
            may_be_thinned(&way.plantings[at.planting.0])
                && !said.breaks_rules
                && !bears(&case.planned, &said)
        })
    };
    let expected = next.is_some_and(dear);
    assert_eq!(slack.next_costs, expected, "seed {}, {slack:?}", case.seed);
    usize::from(expected && !slack.fragile)
}

/// True if a sowing on other days does with its thinning by the same class. A page speaks of that class alone; after
/// moving up another one may thin.
fn thinned_by_the_same(case: &Case, slack: &StepSlack, when: &When) -> bool {
    let (plan, at) = (case.checked.plan(), slack.at.planting.0);
    let planting = &plan.plantings[at];
    let steps = &planting.steps;
    let Some(thin) = steps.iter().position(|s| s.kind == StepKind::Thin) else {
        return false;
    };
    let classes = |when: &When| -> BTreeSet<String> {
        key(when).into_iter().map(|(_, class)| class).collect()
    };
    let sown = moved(&case.garden, plan, at, slack.at.step, when);
    let days = choices(&case.garden, planting, thin).into_iter();
    let mut same = days.filter(|day| classes(day) == classes(&steps[thin].when));
    same.any(|day| {
        let both = moved(&case.garden, &sown, at, thin, &day);
        may_be_thinned(&both.plantings[at]) && bears(&case.planned, &said(&case.garden, &both))
    })
}

/// Where a step is of one class, its page calls a later day one to make up where the screen says that
/// the step can wait.
fn page_and_screen_agree(case: &Case, slack: &StepSlack) -> usize {
    let plan = case.checked.plan();
    let step = &plan.plantings[slack.at.planting.0].steps[slack.at.step];
    let (When::Sessions(visits), [missed]) = (&step.when, slack.if_missed.as_slice()) else {
        return 0;
    };
    assert_eq!(visits.len(), 1);
    if step.kind == StepKind::Pick {
        return 0;
    }
    let is_later = |when: &&When| when.first() > step.when.first();
    let alone = slack.days.iter().any(|when| is_later(&when));
    let mut put_off = slack.with_thinning.iter().filter(is_later);
    let thinned = put_off.any(|when| thinned_by_the_same(case, slack, when));
    let said = match missed {
        IfMissed::MadeUp(_) => true,
        IfMissed::AndThinned(_) => !alone,
        _ => !alone && !thinned,
    };
    assert!(said, "seed {}: {slack:?}", case.seed);
    usize::from(alone || thinned)
}

/// What is left without the step.
fn same_loss(case: &Case, slack: &StepSlack) {
    let plan = case.checked.plan();
    let planting = &plan.plantings[slack.at.planting.0];
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

/// One in ten of the ready years, however many weather years there are.
#[test]
fn what_is_rarely_ready_may_lose_nothing() {
    for (now, then, borne) in [
        (30, 27, true),
        (30, 26, false),
        (29, 27, true),
        (29, 26, false),
        (10, 9, true),
        (9, 8, false),
        (3, 2, false),
        (3, 3, true),
        (3, 5, true),
        (0, 0, true),
    ] {
        assert_eq!(tureen::checker::bears(now, then), borne, "{now}, {then}");
    }
}

#[test]
fn slack_is_what_trying_every_round_finds() {
    let (mut steps, mut free, mut marked, mut others, mut picks) = (0, 0, 0, 0, 0);
    let (mut growing, mut patches, mut twice, mut single) = (0, 0, 0, 0);
    let (mut thinned, mut shared, mut dear, mut waits) = (0, 0, 0, 0);
    for (seed, garden, plan) in plans(10_000..10_120, &TINY) {
        let case = Case::new(seed, garden, plan);
        let plantings = &case.checked.plan().plantings;
        for slack in slack(&case.garden, &case.checked) {
            same_days(&case, &slack);
            thinned += same_days_with_thinning(&case, &slack);
            same_loss(&case, &slack);
            dear += same_costs(&case, &slack);
            waits += page_and_screen_agree(&case, &slack);
            shared += usize::from(slack.missed.sowings > 1);
            let planting = &plantings[slack.at.planting.0];
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
         that fall out for several sowings, {dear} too dear only for the whole plan, {waits} of one class that can wait"
    );
    let seen = [
        free, marked, others, picks, growing, patches, twice, single, thinned, shared, waits,
    ];
    assert!(seen.iter().all(|n| *n > 0), "{seen:?}");
}
