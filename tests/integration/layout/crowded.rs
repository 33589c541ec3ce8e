//! Gardens with more to grow than their unequal beds hold. The neat search for a layout looks at
//! the likely ways only; what it does not find is packed exactly, and the checker accepts it.

use std::time::Duration;

use tureen::candidates::{Candidate, CandidateAt, Candidates};
use tureen::checker::check;
use tureen::deadline::Deadline;
use tureen::garden::Garden;
use tureen::model::{Chosen, Options, Outcome, neat_layout, planting, solve};
use tureen::plan::{Plan, Planting};
use tureen::units::{Metres, STRIP, Share};

use crate::random_gardens::dice::Dice;
use crate::random_gardens::make::{Size, TINY, garden};

/// Four grades, five ingredients, four beds.
const CROWDED: Size = Size {
    grades: (4, 4),
    ingredients: (5, 5),
    beds: (4, 4),
    weeks: (20, 26),
    years: (4, 6),
    flats: (8, 16),
    ..TINY
};

/// So many plans must be beyond the neat search, of no more than so many gardens.
const BEYOND: u32 = 12;
const MOST_GARDENS: u64 = 800;

/// A garden whose beds are alike but for their length, two of them short, and hold about half of
/// what the kitchen would like to have; `None` if something stands there already.
fn crowded(seed: u64) -> Option<Garden> {
    let mut garden = garden(seed, &CROWDED);
    if !garden.begun.is_empty() {
        return None;
    }
    let dice = &mut Dice::new(seed);
    let (long, short) = (dice.int(5, 11), dice.int(2, 4));
    let strips = [long, long - 1 - dice.int(0, 2), short, short - 1];
    let like = garden.beds[0].clone();
    for (bed, strips) in garden.beds.iter_mut().zip(strips) {
        bed.length = Metres(STRIP.0 * f64::from(strips));
        (bed.width, bed.soil, bed.sun) = (like.width, like.soil, like.sun);
        (bed.soil_bonus, bed.cover) = (like.soil_bonus, like.cover.clone());
        (bed.trellis, bed.free_from) = (Metres(0.0), None);
        bed.grew.clear();
    }
    for ingredient in &mut garden.ingredients {
        ingredient.least_share = Share(0.1);
        ingredient.max_sowings = 1;
        ingredient.grams_per_portion *= dice.real(1.0, 3.0);
        ingredient.crop.needs.trellis = false;
    }
    Some(garden)
}

/// A planting of a plan as one of the candidates.
fn chosen(garden: &Garden, candidates: &Candidates, made: &Planting) -> Chosen {
    let blocks = |c: &Candidate| made.plants / c.amounts.block.plants.max(1);
    let is_it = |c: &Candidate| {
        let plots = c.plots.iter().map(|plot| &garden[candidates[plot].bed].id);
        let beds: Vec<&String> = plots.collect();
        made.places.iter().all(|place| beds.contains(&&place.bed))
            && planting(garden, c, blocks(c), made.places.clone()) == *made
    };
    let candidate = candidates.all.iter().position(is_it).unwrap();
    Chosen {
        candidate: CandidateAt(candidate),
        blocks: blocks(&candidates.all[candidate]),
    }
}

/// True if the neat search finds no layout of a plan.
fn is_beyond_the_neat_search(garden: &Garden, plan: &Plan) -> bool {
    let candidates = Candidates::enumerate(garden);
    let made = plan.plantings.iter();
    let chosen: Vec<Chosen> = made.map(|p| chosen(garden, &candidates, p)).collect();
    neat_layout(garden, &candidates, &chosen).is_none()
}

#[test]
fn plans_that_only_exact_packing_finds_pass_the_checker() {
    let (mut planned, mut beyond) = (0, 0);
    for (seed, garden) in (0..MOST_GARDENS).filter_map(|seed| Some((seed, crowded(seed)?))) {
        if beyond == BEYOND {
            break;
        }
        let options = Options::until(Deadline::after(Duration::from_secs(5)));
        let Outcome::Planned(plan) = solve(&garden, &options) else {
            continue;
        };
        planned += 1;
        beyond += u32::from(is_beyond_the_neat_search(&garden, &plan));
        if let Err(violations) = check(&garden, plan) {
            panic!("seed {seed}: {violations:?}");
        }
    }
    println!("{planned} plans, {beyond} that the neat search does not lay out");
    assert_eq!(beyond, BEYOND, "of {planned} plans");
}
