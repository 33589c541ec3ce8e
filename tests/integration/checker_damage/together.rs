//! What two grades grow together: a step without one of them, a class too few, and a plan in which one grows it alone.

use tureen::checker::Fault;
use tureen::garden::Garden;
use tureen::plan::{Plan, Rule, When};

use crate::support::gardens::shared_beans;
use crate::support::plans::{fill_in, shared_bean_plan};

use super::refused;

/// The plan without the visits of some classes to its first step, and the classes that are then missed.
fn missed(without: &[&str]) -> Vec<String> {
    let garden = shared_beans();
    let mut plan = shared_bean_plan(&garden);
    let When::Sessions(visits) = &mut plan.plantings[0].steps[0].when else {
        panic!("it is sown in lessons");
    };
    visits.retain(|visit| !without.contains(&visit.class.as_str()));
    let missed = |fault| match fault {
        Fault::Visits {
            class,
            expected: 1,
            got: 0,
            ..
        } => Some(class),
        _ => None,
    };
    let faults = of_participation(&garden, plan).into_iter();
    faults
        .map(missed)
        .collect::<Option<_>>()
        .expect("nothing else")
}

fn of_participation(garden: &Garden, plan: Plan) -> Vec<Fault> {
    let violations = refused(garden, plan).into_iter();
    let rule = violations.filter(|v| v.rule == Rule::Participation);
    rule.map(|v| v.fault).collect()
}

#[test]
fn a_step_that_leaves_out_a_class_or_a_grade_is_found() {
    assert_eq!(missed(&["1b"]), ["1b"]);
    assert_eq!(missed(&["2a"]), ["2a"]);
    assert_eq!(missed(&["1a", "1b"]), ["1a", "1b"]);
}

#[test]
fn one_that_grows_it_alone_is_refused() {
    let garden = shared_beans();
    for alone in ["1", "2"] {
        let mut plan = shared_bean_plan(&garden);
        plan.plantings[0].grades = vec![alone.to_owned()];
        fill_in(&garden, &mut plan.plantings[0]);
        let faults = of_participation(&garden, plan);
        let found = |fault: &Fault| match fault {
            Fault::Team { expected, got, .. } => {
                *expected == [["1".to_owned(), "2".to_owned()]] && *got == [alone]
            }
            _ => false,
        };
        assert!(faults.iter().any(found), "{faults:?}");
    }
}
