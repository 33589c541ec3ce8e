//! Nobody keeps a lesson free for a harvest that could as well wait: it is fresher then, and stands less long
//! in a fridge. Looked at with the checker, which knows nothing of how windows are made.

use tureen::checker::{CheckedPlan, check, promise};
use tureen::garden::Garden;
use tureen::plan::{Plan, StepKind};

use super::planned;

/// The plan without the first pick of a planting.
fn without_first_pick(garden: &Garden, plan: &Plan, planting: usize) -> Plan {
    let mut plan = plan.clone();
    let steps = &mut plan.plantings[planting].steps;
    let first = steps.iter().position(|s| s.kind == StepKind::Pick).unwrap();
    steps.remove(first);
    plan.promise = promise(garden, &plan);
    plan
}

/// Per ingredient its ready years: as they are, and with packet days out either way.
fn years(checked: &CheckedPlan) -> Vec<[Vec<bool>; 3]> {
    let replay = checked.replay();
    let each = replay.ingredients.iter().enumerate();
    let ready = |years: &[Result<(), _>]| years.iter().map(Result::is_ok).collect();
    each.map(|(at, seen)| {
        let days = &replay.packet_days;
        [&seen.ready, &days.fewer.ready[at], &days.more.ready[at]].map(|years| ready(years))
    })
    .collect()
}

#[test]
fn no_first_pick_of_several_is_in_vain() {
    let (mut several, mut pairs) = (0, 0);
    for (name, garden, checked) in planned() {
        let plan = checked.plan();
        for (at, planting) in plan.plantings.iter().enumerate() {
            match planting.picks().count() {
                0 | 1 => continue,
                2 => pairs += 1,
                _ => {
                    several += 1;
                    // Edited, so that it says nothing of proofs; without the pick it loses years, or keeps no rule.
                    if let Ok(less) = check(garden, without_first_pick(garden, plan, at)) {
                        assert_ne!(
                            years(&less),
                            years(checked),
                            "{name}: {}",
                            planting.ingredient
                        );
                    }
                }
            }
        }
    }
    assert!(several > 0 && pairs > 0, "{several} {pairs}");
}
