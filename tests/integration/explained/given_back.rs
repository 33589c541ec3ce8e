//! Years that a plan gave back, and the plan that gives nothing back.

use tureen::checker::CheckedPlan;
use tureen::explain::{given_back, promise, years_back};
use tureen::model::Options;
use tureen::pipeline;
use tureen::plan::Aim;

use crate::cli::Folder;
use crate::random_gardens::make::{TINY, garden};

fn kept(checked: &CheckedPlan, aim: Aim) -> f64 {
    promise(checked)
        .iter()
        .find(|r| r.aim == aim)
        .unwrap()
        .value
}

/// At most a year of each aim is given back, and the plan that gives nothing back has all of
/// what it reached.
#[test]
fn what_was_given_back_is_there_where_nothing_may_be() {
    let mut seen = 0;
    for seed in 40_000..40_080 {
        let garden = garden(seed, &TINY);
        let options = Options::default();
        let Ok(checked) = pipeline::plan(&garden, &options) else {
            continue;
        };
        let Some(back) = given_back(&garden, &checked, &options) else {
            assert!(years_back(&checked).is_empty(), "seed {seed}");
            continue;
        };
        seen += 1;
        let without = back.without.unwrap();
        assert_eq!(years_back(&without), [], "seed {seed}");
        for aim in &back.aims {
            assert_eq!(aim.best, aim.kept + 1, "seed {seed}: {aim:?}");
            assert_eq!(kept(&checked, aim.aim), f64::from(aim.kept), "seed {seed}");
        }
        // The first aim that was given back is reached by the plan that gives nothing back.
        let first = back.aims[0];
        assert_eq!(
            kept(&without, first.aim),
            f64::from(first.best),
            "seed {seed}"
        );
    }
    println!("{seen} gardens in which something was given back");
    assert!(seen > 1);
}

/// The plan of a scenario tells it, and with nothing to give back there is nothing to tell.
#[test]
fn the_plan_tells_what_was_given_back() {
    let folder = Folder::new("given-back");
    let scenario = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/scenarios/wrap-day/garden.toml"
    );
    let heading = "WHAT WAS GIVEN BACK";
    let told = folder.answer(&["plan", scenario, "--all"]);
    let (_, back) = told.split_once(heading).expect(&told);
    assert!(back.contains("year of the whole dish"), "{back}");
    assert!(back.contains("Bought with it: "), "{back}");
    let told = folder.answer(&["plan", scenario, "--all", "--give-back", "0"]);
    assert!(!told.contains(heading), "{told}");
}
