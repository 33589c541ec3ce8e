//! The mathematical program against trying everything: on tiny random gardens every choice
//! of plantings, amounts and places is enumerated by code that shares nothing with the model,
//! and the value of every aim must be the same.

mod beds;
pub mod options;
pub mod search;
pub mod takes;

use std::time::Duration;

use tureen::candidates::Candidates;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{Aim, AimResult};

use crate::random_gardens::make::{TINY, garden};
use options::Plantings;
use search::{Search, TooLarge};
use takes::School;

/// More ways than this of planting one ingredient are not tried.
const MOST_WAYS: usize = 2_000;

/// The search of a garden is given up after this many nodes.
const MOST_NODES: u64 = 20_000;

/// What trying everything brings.
enum Tried {
    /// The value of every aim.
    Full(Vec<f64>),
    /// How many ingredients fit together at the most, if not all.
    Together(usize),
}

/// Tries everything.
fn try_all(garden: &Garden, concession: u32) -> Result<Tried, TooLarge> {
    let candidates = Candidates::enumerate(garden);
    let school = School::new(garden, &candidates);
    let ways: Vec<Vec<Plantings<'_>>> = garden
        .ingredient_positions()
        .map(|at| options::all(&school, at, MOST_WAYS).ok_or(TooLarge))
        .collect::<Result<_, _>>()?;
    let search = |some: usize| {
        let some = ways
            .iter()
            .enumerate()
            .filter(move |(k, _)| some >> k & 1 == 1);
        Search::new(&school, some.map(|(_, ways)| ways.as_slice()), MOST_NODES)
    };
    let n = ways.len();
    if let Some(later) = search((1 << n) - 1).aims(concession)? {
        return Ok(Tried::Full([vec![n as f64], later].concat()));
    }
    let mut most = 0;
    for some in 0..(1_usize << n) - 1 {
        let count = some.count_ones() as usize;
        if count > most && search(some).any()? {
            most = count;
        }
    }
    Ok(Tried::Together(most))
}

/// How the model's outcome compares with what was tried.
enum Same {
    /// All values are the same, and proved.
    Proved,
    /// All values are the same up to an aim for which time ran out; there the truth lies
    /// between value and bound.
    OutOfTime,
}

fn compare(garden: &Garden, tried: &Tried, concession: u32) -> Result<Same, String> {
    let options = Options {
        time_limit: Duration::from_secs(10),
        concession_years: concession,
    };
    match (tried, solve(garden, &options)) {
        (Tried::Full(values), Outcome::Planned(plan)) => {
            assert_eq!(plan.aims.len(), Aim::ALL.len());
            for (of_model, value) in plan.aims.iter().zip(values) {
                if !of_model.proved() {
                    return between(of_model, *value);
                }
                let forgiven = if of_model.aim.is_whole() { 0.0 } else { 1e-6 };
                if (of_model.value - value).abs() > forgiven {
                    return Err(format!("{of_model:?}, tried {value}"));
                }
            }
            Ok(Same::Proved)
        }
        (Tried::Together(most), Outcome::Impossible(why)) => match why.possible_together.len() {
            together if together == *most && why.proved => Ok(Same::Proved),
            together if together <= *most && !why.proved => Ok(Same::OutOfTime),
            _ => Err(format!("{why:?}, tried {most}")),
        },
        (_, Outcome::OutOfTime) => Ok(Same::OutOfTime),
        (Tried::Full(values), other) => Err(format!("{other:?}, tried {values:?}")),
        (Tried::Together(most), other) => Err(format!("{other:?}, tried {most}")),
    }
}

/// An aim that is not proved must not be better than the truth, nor its bound worse.
fn between(of_model: &AimResult, value: f64) -> Result<Same, String> {
    let AimResult {
        aim,
        value: reached,
        bound,
    } = *of_model;
    let (low, high) = if aim.more_is_better() {
        (reached, bound)
    } else {
        (bound, reached)
    };
    if low <= value + 1e-6 && value <= high + 1e-6 {
        Ok(Same::OutOfTime)
    } else {
        Err(format!("{of_model:?}, tried {value}"))
    }
}

/// Gardens whose every aim must be compared.
const FULL: u32 = 300;

#[test]
fn the_model_finds_what_trying_everything_finds() {
    let (mut full, mut impossible, mut out_of_time, mut too_large) = (0, 0, 0, 0);
    let mut wrong = Vec::new();
    for seed in 0.. {
        if full == FULL {
            break;
        }
        let garden = garden(seed, &TINY);
        let concession = (seed % 2) as u32;
        let Ok(tried) = try_all(&garden, concession) else {
            too_large += 1;
            continue;
        };
        match compare(&garden, &tried, concession) {
            Ok(Same::Proved) if matches!(tried, Tried::Full(_)) => full += 1,
            Ok(Same::Proved) => impossible += 1,
            Ok(Same::OutOfTime) => out_of_time += 1,
            Err(words) => wrong.push(format!("seed {seed}, concession {concession}: {words}")),
        }
    }
    println!(
        "{full} gardens the same in every aim, {impossible} impossible both ways, \
         {out_of_time} not proved in time, {too_large} too large to try"
    );
    assert!(
        wrong.is_empty(),
        "{} of them:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(
        impossible > FULL / 5,
        "only {impossible} impossible gardens"
    );
    assert!(out_of_time < FULL / 20, "{out_of_time} gardens not proved");
}
