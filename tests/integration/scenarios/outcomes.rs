//! What comes of every scenario: a plan that the checker passes and whose aims are proved, or
//! the reasons why there is none; and the figures of its README.

use tureen::checker;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome};
use tureen::plan::{Aim, Plan};

use super::{figures, load, outcome, text};

/// Seconds, more than anyone waits for; only proofs on a busy machine need it.
const LIMIT: u64 = 300;

/// The figures of the README are those of the program; the message holds the new ones.
fn agrees(name: &str, figures: &str) {
    let readme = text(name, "README.md");
    assert!(
        figures::in_readme(&readme) == figures,
        "scenarios/{name}/README.md should say under its heading `Figures`:\n\n{figures}\n"
    );
}

/// The plan of a garden; every aim of it is proved, and the checker passes it.
pub fn plan(garden: &Garden) -> Plan {
    let name = &garden.name;
    let plan = match outcome(garden, LIMIT, Options::default().concession_years) {
        Outcome::Planned(plan) => plan,
        other => panic!("{name}: {other:?}"),
    };
    let aims: Vec<Aim> = plan.aims.iter().map(|result| result.aim).collect();
    assert!(aims.into_iter().eq(Aim::of(garden)), "{name}");
    let unproved: Vec<_> = plan.aims.iter().filter(|r| !r.proved()).collect();
    assert!(unproved.is_empty(), "{name}: not proved: {unproved:?}");
    match checker::check(garden, plan) {
        Ok(checked) => checked.plan().clone(),
        Err(violations) => panic!("{name}: {violations:?}"),
    }
}

/// The scenario has a plan with the figures of its README.
fn is_planned(name: &str) {
    let plan = plan(&load(name, "garden.toml"));
    agrees(name, &figures::of_plan(&plan));
}

#[test]
fn autumn_down_under() {
    is_planned("autumn-down-under");
}

#[test]
fn nine_grades() {
    is_planned("nine-grades");
}

#[test]
fn soup_day() {
    is_planned("soup-day");
}

#[test]
fn turned_over() {
    is_planned("turned-over");
}

#[test]
fn two_beds() {
    is_planned("two-beds");
}

#[test]
fn wrap_day() {
    is_planned("wrap-day");
}

#[test]
fn soup_day_as_a_cook_would() {
    let name = "soup-day-as-a-cook-would";
    let garden = load(name, "garden.toml");
    match outcome(&garden, LIMIT, Options::default().concession_years) {
        Outcome::Impossible(impossible) => {
            assert!(impossible.proved);
            agrees(name, &figures::of_impossible(&garden, &impossible));
        }
        other => panic!("{name}: {other:?}"),
    }
}
