//! The mathematical program against trying everything: on tiny random gardens every choice
//! of plantings, amounts and places is enumerated by code that shares nothing with the model,
//! and the value of every aim must be the same.

mod beds;
mod few;
mod grades;
pub mod options;
pub mod search;
mod season;
pub mod takes;

use std::time::Duration;

use tureen::candidates::Candidates;
use tureen::deadline::Deadline;
use tureen::garden::{Garden, Ingredient, Method};
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{AimResult, Plan, Planting};

use crate::random_gardens::begun::{garden_turned_over, garden_with_seedlings};
use crate::random_gardens::make::{TINY, TINY_CHOICE, garden, open_garden, shared_garden};
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

/// Tries everything that some candidates allow, unless it takes more than so many nodes.
fn try_all(
    garden: &Garden,
    candidates: &Candidates,
    concession: u32,
    most_nodes: u64,
) -> Result<Tried, TooLarge> {
    let school = School::new(garden, candidates);
    let ways = options::of_each(&school, MOST_WAYS).ok_or(TooLarge)?;
    let search = |some: usize| Search::new(&school, &ways, move |k| some >> k & 1 == 1, most_nodes);
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

/// What the program is told of a garden.
fn options(concession_years: u32) -> Options {
    Options {
        deadline: Deadline::after(Duration::from_secs(10)),
        concession_years,
    }
}

fn compare(tried: &Tried, found: Outcome) -> Result<Same, String> {
    match (tried, found) {
        (Tried::Full(values), Outcome::Planned(plan)) => {
            assert_eq!(plan.aims.len(), values.len());
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

/// What came of a number of gardens.
#[derive(Debug, Default)]
struct Count {
    full: u32,
    impossible: u32,
    out_of_time: u32,
    too_large: u32,
    /// Gardens with a plan in which a grade was chosen.
    chosen: u32,
    /// Gardens with a plan in which grades grow something together.
    together: u32,
    /// Gardens with a plan in which something comes on strips after what stood there at the start.
    turned_over: u32,
    /// Gardens with a plan in which something climbs in a row along a trellis.
    along_trellis: u32,
}

/// Compares gardens until so many have a plan.
fn compare_until(full: u32, garden: impl Fn(u64) -> Garden) -> Count {
    let mut count = Count::default();
    let mut wrong = Vec::new();
    for seed in 0.. {
        if count.full == full {
            break;
        }
        let garden = garden(seed);
        let concession = (seed % 2) as u32;
        let all = Candidates::enumerate(&garden);
        let Ok(tried) = try_all(&garden, &all, concession, MOST_NODES) else {
            count.too_large += 1;
            continue;
        };
        let found = solve(&garden, &options(concession));
        let turned = matches!(&found, Outcome::Planned(plan) if turns_over(&garden, plan));
        let climbs = matches!(&found, Outcome::Planned(plan) if climbs_along(&garden, plan));
        match compare(&tried, found) {
            Ok(Same::Proved) if matches!(tried, Tried::Full(_)) => {
                count.full += 1;
                count.turned_over += u32::from(turned);
                count.along_trellis += u32::from(climbs);
                count.chosen += u32::from(garden.has_open_grades());
                let together = |i: &Ingredient| i.only_team().is_some_and(|team| team.size() > 1);
                count.together += u32::from(garden.ingredients.iter().any(together));
            }
            Ok(Same::Proved) => count.impossible += 1,
            Ok(Same::OutOfTime) => count.out_of_time += 1,
            Err(words) => wrong.push(format!("seed {seed}, concession {concession}: {words}")),
        }
    }
    println!("{count:?}");
    assert!(
        wrong.is_empty(),
        "{} of them:\n{}",
        wrong.len(),
        wrong.join("\n")
    );
    assert!(count.out_of_time < full / 20, "{count:?}");
    count
}

/// True if something that is planted stands on ground along a trellis.
fn climbs_along(garden: &Garden, plan: &Plan) -> bool {
    let planted = plan.plantings.iter();
    let planted = planted.filter(|p| p.method != Method::Growing);
    let rows = || garden.beds.iter().filter(|bed| bed.along_trellis);
    let mut places = planted.flat_map(|p| &p.places);
    places.any(|place| rows().any(|row| row.id == place.bed))
}

/// True if a plan has something new on strips on which something stood at the start.
fn turns_over(garden: &Garden, plan: &Plan) -> bool {
    let begun = garden.begun.iter().filter_map(|begun| begun.in_bed());
    let former = garden.former.iter().map(|f| (f.bed, f.strips));
    let mut stood = begun.chain(former);
    stood.any(|(bed, strips)| {
        let new = |p: &&Planting| p.method != Method::Growing;
        let mut places = plan.plantings.iter().filter(new).flat_map(|p| &p.places);
        places.any(|place| place.bed == garden[bed].id && place.run().meets(strips))
    })
}

/// Gardens whose every aim must be compared.
const FULL: u32 = 300;

#[test]
fn the_model_finds_what_trying_everything_finds() {
    let count = compare_until(FULL, |seed| garden(seed, &TINY));
    assert!(count.impossible > FULL / 5, "{count:?}");
}

/// The same of gardens in which the program chooses who grows what: the best assignment by
/// every aim in its turn.
#[test]
fn the_best_assignment_is_that_of_trying_everything() {
    let count = compare_until(FULL / 2, |seed| open_garden(seed, &TINY_CHOICE));
    assert!(count.chosen > FULL / 4, "{count:?}");
    assert!(count.impossible > FULL / 20, "{count:?}");
}

/// The same of gardens in which grades grow something together, and one of several something else.
#[test]
fn what_grades_grow_together_is_planned_as_trying_everything_does() {
    let count = compare_until(FULL / 5, |seed| shared_garden(seed, &TINY_CHOICE));
    assert!(count.together > FULL / 10, "{count:?}");
    assert!(count.chosen > 0, "{count:?}");
    assert!(count.impossible > 0, "{count:?}");
}

/// The same of gardens in which seedlings stand on the shelf when the plan begins.
#[test]
fn the_model_plans_begun_seedlings_as_trying_everything_does() {
    let count = compare_until(FULL / 10, |seed| garden_with_seedlings(seed, &TINY));
    assert!(count.impossible > 0, "{count:?}");
}

/// The same of gardens in which something stands in the beds when the plan begins, for an ingredient or for
/// none, and other things follow it.
#[test]
fn beds_are_turned_over_as_trying_everything_does() {
    let count = compare_until(FULL / 5, |seed| garden_turned_over(seed, &TINY));
    assert!(count.turned_over > FULL / 30, "{count:?}");
    assert!(count.along_trellis > 0, "{count:?}");
    assert!(count.impossible > 0, "{count:?}");
}
