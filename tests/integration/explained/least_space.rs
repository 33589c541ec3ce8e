//! The fewest flats and strips with which a plan keeps its promise: with these, trying
//! everything finds a plan that keeps it; with one fewer, wherever it is taken away, it finds
//! none.

use std::time::Duration;

use tureen::candidates::Candidates;
use tureen::checker::CheckedPlan;
use tureen::deadline::Deadline;
use tureen::explain::{fewest_flats, fewest_strips, promise};
use tureen::garden::{Garden, Ingredient, Method};
use tureen::model::Options;
use tureen::pipeline;
use tureen::plan::Aim;
use tureen::units::Share;

use crate::brute_force::options;
use crate::brute_force::search::{Search, TooLarge};
use crate::brute_force::takes::School;
use crate::random_gardens::make::{TINY, garden};
use crate::support::gardens::tiny_garden;

/// More ways than this of planting one ingredient, and more nodes, are not tried.
const MOST_WAYS: usize = 500;
const MOST_NODES: u64 = 4_000;
/// More ways than this of giving out strips are not tried.
const MOST_SPLITS: usize = 100;
/// Gardens to be compared.
const GARDENS: u32 = 10;

/// How the questions of one garden are answered: most are settled in far less time.
fn options() -> Options {
    Options {
        deadline: Deadline::after(Duration::from_secs(10)),
        ..Options::default()
    }
}

type Held = Vec<(Aim, f64)>;

/// Tries everything for a plan that reaches some values, with so many strips of each plot.
fn reaches(garden: &Garden, strips: Option<&[u32]>, held: &Held) -> Result<bool, TooLarge> {
    let mut candidates = Candidates::enumerate(garden);
    for (plot, strips) in candidates.plots.iter_mut().zip(strips.unwrap_or_default()) {
        plot.strips.count = *strips;
    }
    let school = School::new(garden, &candidates);
    let ways = options::of_each(&school, MOST_WAYS).ok_or(TooLarge)?;
    Search::new(&school, &ways, |_| true, MOST_NODES).reaches(held)
}

fn with_flats(garden: &Garden, flats: u32) -> Garden {
    let mut fewer = garden.clone();
    fewer.shelf.flats = flats;
    fewer.shelf.warm_flats = fewer.shelf.warm_flats.min(flats);
    fewer
}

/// The fewest flats by trying every number from none.
fn fewest_by_trying(garden: &Garden, held: &Held) -> Result<u32, TooLarge> {
    for flats in 0..garden.shelf.flats {
        if reaches(&with_flats(garden, flats), None, held)? {
            return Ok(flats);
        }
    }
    Ok(garden.shelf.flats)
}

/// Every way of keeping `sum` strips of the plots; one too many if there are too many.
fn splits(plots: &[u32], sum: u32) -> Vec<Vec<u32>> {
    let Some((first, rest)) = plots.split_first() else {
        return if sum == 0 {
            vec![Vec::new()]
        } else {
            Vec::new()
        };
    };
    let mut found = Vec::new();
    for strips in 0..=sum.min(*first) {
        for mut split in splits(rest, sum - strips) {
            split.insert(0, strips);
            found.push(split);
            if found.len() > MOST_SPLITS {
                return found;
            }
        }
    }
    found
}

/// True if `sum` strips are enough somewhere.
fn strips_suffice(garden: &Garden, sum: u32, held: &Held) -> Result<bool, TooLarge> {
    let plots = Candidates::enumerate(garden).plots;
    let plots: Vec<u32> = plots.iter().map(|p| p.strips.count).collect();
    let splits = splits(&plots, sum);
    if splits.len() > MOST_SPLITS {
        return Err(TooLarge);
    }
    for split in splits {
        if reaches(garden, Some(&split), held)? {
            return Ok(true);
        }
    }
    Ok(false)
}

/// The gardens with a plan, from a seed on, and what their plans promise.
fn planned(seed: u64) -> Option<(Garden, CheckedPlan, Held)> {
    let garden = garden(seed, &TINY);
    let options = Options {
        concession_years: (seed % 2) as u32,
        ..options()
    };
    let checked = pipeline::plan(&garden, &options).ok()?;
    let held = promise(&checked).into_iter().skip(1);
    let held = held.map(|r| (r.aim, r.value)).collect();
    Some((garden, checked, held))
}

fn raises_seedlings(garden: &Garden) -> bool {
    let indoor = |i: &Ingredient| i.methods.contains(&Method::Indoor);
    garden.shelf.flats > 0 && garden.ingredients.iter().any(indoor)
}

#[test]
fn no_fewer_flats_would_do() {
    let (mut compared, mut fewer_than_used, mut some, mut open) = (0, 0, 0, 0);
    for seed in 20_000.. {
        if compared == GARDENS {
            break;
        }
        if !raises_seedlings(&garden(seed, &TINY)) {
            continue;
        }
        let Some((garden, checked, held)) = planned(seed) else {
            continue;
        };
        let used = checked.replay().flats_by_week.iter().copied().max();
        if used == Some(0) {
            continue;
        }
        let Ok(fewest) = fewest_by_trying(&garden, &held) else {
            continue;
        };
        let flats = fewest_flats(&garden, &checked, &options());
        let right = flats.at_least <= fewest && fewest <= flats.enough;
        assert!(right, "seed {seed}: {fewest}, {flats:?}");
        open += u32::from(!flats.is_least());
        compared += 1;
        fewer_than_used += u32::from(Some(fewest) < used);
        some += u32::from(fewest > 0);
    }
    println!(
        "{compared} gardens, {fewer_than_used} use more than would do, {some} need some, \
         {open} not settled"
    );
    assert!(some > GARDENS / 2 && open <= 1);
}

#[test]
fn no_fewer_strips_would_do() {
    let (mut compared, mut fewer_than_there, mut too_large, mut open) = (0, 0, 0, 0);
    for seed in 30_000.. {
        if compared == GARDENS {
            break;
        }
        let Some((garden, checked, held)) = planned(seed) else {
            continue;
        };
        let strips = fewest_strips(&garden, &checked, &options()).unwrap();
        if !strips.is_least() {
            open += 1;
            continue;
        }
        let free = strips.enough;
        let enough = strips_suffice(&garden, free, &held);
        let fewer = match free {
            0 => Ok(false),
            free => strips_suffice(&garden, free - 1, &held),
        };
        let (Ok(enough), Ok(fewer)) = (enough, fewer) else {
            too_large += 1;
            continue;
        };
        assert!(enough, "seed {seed}: {} do not suffice", strips.enough);
        assert!(!fewer, "seed {seed}: fewer than {} suffice", strips.enough);
        compared += 1;
        fewer_than_there += u32::from(strips.enough < strips.there);
    }
    println!(
        "{compared} gardens, {fewer_than_there} with strips to spare, {too_large} too large, \
         {open} not settled"
    );
    assert!(fewer_than_there > GARDENS / 2 && open <= 1);
}

/// The share that is held is a quotient; where it is multiplied again it can come out a hair above the whole blocks that
/// it came from, and no block more is asked for.
#[test]
fn rounding_asks_for_no_strip_more() {
    let mut above = 0;
    for tenths in 0..60 {
        let mut garden = tiny_garden();
        garden.ingredients.truncate(1);
        // More than all strips bring.
        garden.ingredients[0].grams_per_portion = 700.0 + f64::from(tenths) / 10.0;
        garden.ingredients[0].least_share = Share(0.05);
        let checked = pipeline::plan(&garden, &options()).unwrap();
        let seen = &checked.replay().ingredients[0];
        let target = garden.ingredients[0].target(garden.feast.portions);
        above += u32::from(target.0 * seen.low_share.0 > seen.low.0);
        let strips = fewest_strips(&garden, &checked, &options()).unwrap();
        assert!(strips.is_least(), "{strips:?}");
        assert_eq!(strips.at_least, strips.enough, "{tenths}: {strips:?}");
    }
    println!("{above} of 60 come out above");
    assert!(above > 0);
}
