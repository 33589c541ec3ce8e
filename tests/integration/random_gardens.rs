//! Random gardens: every plan that the program makes passes the checker, comes out the same
//! twice, and has every aim proved.

mod crops;
mod dice;
pub mod make;
mod school;
mod sky;

use std::time::Duration;

use tureen::checker::check;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::Plan;

use make::{LARGER, Size, TINY, garden};

/// A time within which every random garden must be proved; no solve should come near it.
const AMPLE: Duration = Duration::from_secs(60);

fn options(seed: u64) -> Options {
    Options {
        time_limit: AMPLE,
        concession_years: (seed % 2) as u32,
    }
}

/// What is wrong with the outcome of one garden, in words.
fn faults(garden: &Garden, outcome: Outcome) -> Result<Option<Plan>, String> {
    match outcome {
        Outcome::Planned(plan) => {
            if let Some(aim) = plan.aims.iter().find(|a| !a.proved()) {
                return Err(format!("not proved: {aim:?}"));
            }
            match check(garden, plan) {
                Ok(checked) => Ok(Some(checked.plan().clone())),
                Err(violations) => Err(format!("{violations:?}")),
            }
        }
        Outcome::Impossible(why) => {
            let named = why.possible_together.len() + why.left_out.len();
            let all_named = named == garden.ingredients.len();
            match why.proved && all_named && !why.left_out.is_empty() {
                true => Ok(None),
                false => Err(format!("{why:?}")),
            }
        }
        Outcome::OutOfTime | Outcome::Failed(_) => Err(format!("{outcome:?}")),
    }
}

/// Solves the gardens of some seeds; how many of them have a plan.
fn plans(seeds: std::ops::Range<u64>, size: &Size) -> usize {
    let mut wrong = Vec::new();
    let mut planned = 0;
    for seed in seeds {
        let garden = garden(seed, size);
        match faults(&garden, solve(&garden, &options(seed))) {
            Ok(Some(_)) => planned += 1,
            Ok(None) => {}
            Err(words) => wrong.push(format!("seed {seed}: {words}")),
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    planned
}

#[test]
fn plans_of_tiny_gardens_pass_the_checker_with_every_aim_proved() {
    assert!(plans(10_000..10_100, &TINY) > 40);
}

#[test]
fn plans_of_larger_gardens_pass_the_checker_with_every_aim_proved() {
    assert!(plans(0..12, &LARGER) > 4);
}

#[test]
fn the_same_garden_has_the_same_plan() {
    for seed in 0..4 {
        let garden = garden(seed, &LARGER);
        let once = solve(&garden, &options(seed));
        assert_eq!(once, solve(&garden.clone(), &options(seed)), "seed {seed}");
    }
}
