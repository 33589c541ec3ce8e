//! The mathematical program against trying everything: on tiny random gardens every choice
//! of plantings, amounts and places is enumerated by code that shares nothing with the model,
//! and the value of every aim must be the same.

mod beds;
mod options;
mod search;
mod takes;

use tureen::candidates::Candidates;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::Aim;

use crate::random_gardens::make::{TINY, garden};
use options::Plantings;
use search::{Search, TooLarge};
use takes::School;

/// More ways than this of planting one ingredient are not tried.
const MOST_WAYS: usize = 4_000;

/// The search of a garden is given up after this many nodes.
const MOST_NODES: u64 = 60_000;

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

/// Says in words how the model differs from what was tried; `None` if it does not.
fn difference(garden: &Garden, tried: &Tried, concession: u32) -> Option<String> {
    let options = Options {
        concession_years: concession,
        ..Options::default()
    };
    match (tried, solve(garden, &options)) {
        (Tried::Full(values), Outcome::Planned(plan)) => {
            assert_eq!(plan.aims.len(), Aim::ALL.len());
            let differs = plan.aims.iter().zip(values).find(|(of_model, value)| {
                let forgiven = if of_model.aim.is_whole() { 0.0 } else { 1e-6 };
                (of_model.value - **value).abs() > forgiven || !of_model.proved()
            });
            differs.map(|(of_model, value)| format!("{of_model:?}, tried {value}"))
        }
        (Tried::Together(most), Outcome::Impossible(why)) => {
            let together = why.possible_together.len();
            (together != *most || !why.proved).then(|| format!("{why:?}, tried {most}"))
        }
        (Tried::Full(values), other) => Some(format!("{other:?}, tried {values:?}")),
        (Tried::Together(most), other) => Some(format!("{other:?}, tried {most}")),
    }
}

#[test]
fn the_model_finds_what_trying_everything_finds() {
    let time = std::time::Instant::now();
    let (mut full, mut impossible, mut given_up) = (0, 0, 0);
    let (mut t_try, mut t_solve) = (std::time::Duration::ZERO, std::time::Duration::ZERO);
    let mut wrong = Vec::new();
    for seed in 0..std::env::var("CASES").map_or(100, |c| c.parse().unwrap()) {
        let garden = garden(seed, &TINY);
        let concession = (seed % 2) as u32;
        let t = std::time::Instant::now();
        let tried = try_all(&garden, concession);
        t_try += t.elapsed();
        let Ok(tried) = tried else {
            given_up += 1;
            continue;
        };
        match tried {
            Tried::Full(_) => full += 1,
            Tried::Together(_) => impossible += 1,
        }
        let t = std::time::Instant::now();
        let d = difference(&garden, &tried, concession);
        t_solve += t.elapsed();
        if let Some(words) = d {
            wrong.push(format!("seed {seed}, concession {concession}: {words}"));
        }
    }
    println!(
        "{full} full, {impossible} impossible, {given_up} given up; {:?} try {t_try:?} solve {t_solve:?}",
        time.elapsed()
    );
    assert!(
        wrong.is_empty(),
        "{} of them:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
}
