//! More beds, flats or minutes never make a plan worse: the values of all aims, read in their
//! order, with nothing given back.

use tureen::garden::Garden;
use tureen::units::{Metres, Minutes};

use super::{Made, first_difference, is_proved, made_shortly};
use crate::random_gardens::make::{TINY, garden};

const SEEDS: std::ops::Range<u64> = 30_000..30_040;

/// Every garden of the seeds is planned twice, as it is and with more of something; where both
/// are proved, no aim is worse before another is better.
fn never_hurts(more: impl Fn(u64, &mut Garden)) {
    let (mut compared, mut better, mut worse) = (0, 0, Vec::new());
    for seed in SEEDS {
        let poor = garden(seed, &TINY);
        let mut rich = poor.clone();
        more(seed, &mut rich);
        let Made::Plan(plan) = made_shortly(&poor) else {
            continue;
        };
        let richer = match made_shortly(&rich) {
            Made::Plan(richer) => richer,
            Made::Open => continue,
            Made::Impossible => {
                worse.push(format!("seed {seed}: no plan any more"));
                continue;
            }
        };
        if !is_proved(&plan) || !is_proved(&richer) {
            continue;
        }
        compared += 1;
        let Some((had, has)) = first_difference(&plan, &richer) else {
            continue;
        };
        if (has.value > had.value) == had.aim.more_is_better() {
            better += 1;
        } else {
            worse.push(format!("seed {seed}: {had:?} became {has:?}"));
        }
    }
    println!("{compared} of {} compared, {better} better", SEEDS.count());
    assert!(worse.is_empty(), "{}", worse.join("\n"));
    assert!(compared > 15, "only {compared} plans to compare");
    assert!(better > 0, "more never made a plan better");
}

#[test]
fn another_bed() {
    never_hurts(|seed, garden| {
        let at = seed as usize % garden.beds.len();
        let mut bed = garden.beds[at].clone();
        bed.id = "more".to_owned();
        garden.beds.push(bed);
    });
}

#[test]
fn a_longer_bed() {
    never_hurts(|seed, garden| {
        let at = seed as usize % garden.beds.len();
        let bed = &mut garden.beds[at];
        bed.length = bed.length + Metres(0.6);
        if seed % 2 == 0 {
            bed.trellis = bed.trellis.max(bed.length);
        }
    });
}

/// First heat mats are among these: seed that likes it warmer than the room may still come up
/// beside a mat.
#[test]
fn more_flats() {
    never_hurts(|seed, garden| {
        garden.shelf.flats += 1 + (seed % 3) as u32;
        garden.shelf.warm_flats += (seed % 2) as u32;
    });
}

#[test]
fn more_minutes() {
    never_hurts(|seed, garden| {
        let classes = garden.grades.iter_mut().flat_map(|g| &mut g.classes);
        for slot in classes.flat_map(|c| &mut c.slots) {
            slot.minutes = slot.minutes + Minutes(5.0 + (seed % 4) as f64 * 5.0);
        }
    });
}
