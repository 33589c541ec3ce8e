//! The same with a few ways of each ingredient: then every number of blocks of every set of sowings can be
//! tried, on beds that are too small for them and a shelf that is too small too.

use tureen::model::solve_where;
use tureen::plan::Aim;

use crate::random_gardens::few::{garden, ways};

use super::{Same, Tried, compare, options, try_all};

/// A search over few ways is given up after so many nodes.
const MOST_NODES: u64 = 1_500;

/// Compares gardens of some seeds; how many had a plan, and how many had none.
fn compared(seeds: std::ops::Range<u64>) -> (u32, u32) {
    let (mut planned, mut impossible) = (0, 0);
    for seed in seeds {
        let garden = garden(seed);
        let few = ways(&garden, seed);
        let concession = (seed % 2) as u32;
        let Ok(tried) = try_all(&garden, &few, concession, MOST_NODES) else {
            continue;
        };
        let found = solve_where(&garden, &options(concession), |c| few.all.contains(c));
        match (compare(&tried, found), &tried) {
            (Ok(Same::Proved), Tried::Full(values)) => {
                assert_eq!(values.len(), Aim::of(&garden).count());
                planned += 1;
            }
            (Ok(Same::Proved), Tried::Together(_)) => impossible += 1,
            (Ok(Same::OutOfTime), _) => panic!("seed {seed}: no time should be short"),
            (Err(words), _) => panic!("seed {seed}, concession {concession}: {words}"),
        }
    }
    println!("{planned} planned, {impossible} impossible");
    (planned, impossible)
}

#[test]
fn few_ways_are_decided_as_trying_everything_does() {
    let (planned, impossible) = compared(0..50);
    assert!(planned > 9 && impossible > 9, "{planned}, {impossible}");
}

#[test]
fn other_few_ways_are_decided_as_trying_everything_does() {
    let (planned, impossible) = compared(50..100);
    assert!(planned > 9 && impossible > 9, "{planned}, {impossible}");
}
