//! Runs the tables of damages: to the plan, and to the garden under it. Each is found, under
//! the rule and as the fault that is named.

use tureen::checker::{Fault, Violation, check};
use tureen::plan::{Plan, Rule, Step, Visit, When};

use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

use super::ground::GROUND;
use super::numbers::NUMBERS;
use super::steps::STEPS;

/// A damage: its name, the edit, the rule that it breaks, and words of the fault: its name,
/// then what else must stand in it.
pub type Damage<T> = (&'static str, fn(&mut T), Rule, &'static str);

/// A step of the bean.
pub fn bean(plan: &mut Plan, step: usize) -> &mut Step {
    &mut plan.plantings[0].steps[step]
}

/// A step of the tomato.
pub fn tomato(plan: &mut Plan, step: usize) -> &mut Step {
    &mut plan.plantings[1].steps[step]
}

/// The visits of a step in sessions.
pub fn visits(step: &mut Step) -> &mut Vec<Visit> {
    match &mut step.when {
        When::Sessions(visits) => visits,
        other => panic!("no sessions: {other:?}"),
    }
}

/// True if a fault has the name and holds the words.
fn is(fault: &Fault, words: &str) -> bool {
    let text = format!("{fault:?}").replace("mat: ", "mat:");
    let name: String = text.chars().take_while(|c| c.is_alphanumeric()).collect();
    let mut words = words.split(' ');
    words.next() == Some(name.as_str()) && words.all(|word| text.contains(word))
}

fn found(violations: &[Violation], rule: Rule, words: &str) -> bool {
    violations
        .iter()
        .any(|v| v.rule == rule && is(&v.fault, words))
}

#[test]
fn every_damage_to_the_plan_is_found_and_named() {
    let garden = tiny_garden();
    for (damage, edit, rule, words) in STEPS.iter().chain(NUMBERS) {
        let mut plan = tiny_plan(&garden);
        edit(&mut plan);
        let violations = check(&garden, plan).err().unwrap_or_default();
        assert!(
            found(&violations, *rule, words),
            "{damage}: {violations:#?}"
        );
    }
}

#[test]
fn every_damage_to_the_garden_is_found_and_named() {
    for (damage, edit, rule, words) in GROUND {
        let mut garden = tiny_garden();
        let plan = tiny_plan(&garden);
        edit(&mut garden);
        let violations = check(&garden, plan).err().unwrap_or_default();
        assert!(
            found(&violations, *rule, words),
            "{damage}: {violations:#?}"
        );
    }
}
