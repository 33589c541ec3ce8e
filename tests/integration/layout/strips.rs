//! Strips for plantings that share a plot, by hand and against trying everything: in one piece where a
//! free run is long enough, in whole blocks where it is not, and in any way before none is found.

use tureen::candidates::{Candidate, CandidateAt, Candidates, PlotAt, clash, plots};
use tureen::garden::{Garden, IngredientAt};
use tureen::model::{Chosen, Part, Piece, strips_of_layout};
use tureen::plan::Place;

use crate::random_gardens::dice::Dice;
use crate::support::plans::place;

use super::packing::plot_set;
use super::try_all::{Case, fits};
use super::wishes::beans;

/// A planting by hand: its family by number, its days in the bed, its strips.
type Stay = (usize, (usize, usize), u32);

/// A bed of so many strips for plantings in blocks of so many strips, each of its family, which waits
/// for years.
struct Bed {
    garden: Garden,
    all: Candidates,
    chosen: Vec<Chosen>,
    block: u32,
}

impl Bed {
    fn new(strips: u32, block: u32, stays: &[Stay]) -> Self {
        // In a bed that is too small for what the kitchen wants nothing would be sown.
        let mut all = Candidates::enumerate(&beans(0, &[12]));
        let mut garden = beans(0, &[strips]);
        all.plots = plots(&garden);
        let bean = garden.ingredients[0].clone();
        let families = stays.iter().map(|(family, ..)| family + 1).max();
        let of_family = |family: usize| {
            let mut ingredient = bean.clone();
            ingredient.name = format!("crop {family}");
            ingredient.crop.rotation.family = format!("family {family}");
            ingredient.crop.rotation.years_hard = 1;
            ingredient
        };
        garden.ingredients = (0..families.unwrap_or(0)).map(of_family).collect();
        let first = all.all[0].clone();
        let planting = |(family, days, _): &Stay| {
            let mut planting: Candidate = first.clone();
            planting.ingredient = IngredientAt(*family);
            planting.bed_days = *days;
            planting.amounts.block.strips = block;
            planting
        };
        all.all = stays.iter().map(planting).collect();
        let chosen = stays.iter().enumerate().map(|(k, (.., strips))| Chosen {
            candidate: CandidateAt(k),
            blocks: strips / block,
        });
        Self {
            chosen: chosen.collect(),
            garden,
            all,
            block,
        }
    }

    /// The places of all plantings; `None` if the bed is found too small.
    fn places(&self) -> Option<Vec<Vec<Place>>> {
        let part = |c: &Chosen| {
            vec![Part {
                plot: PlotAt(0),
                blocks: c.blocks,
            }]
        };
        let parts: Vec<Vec<Part>> = self.chosen.iter().map(part).collect();
        strips_of_layout(&self.garden, &self.all, &self.chosen, &parts)
    }

    fn clash(&self, a: usize, b: usize) -> bool {
        clash(&self.garden, &self.all.all[a], &self.all.all[b])
    }
}

/// Families of their own, so that only time parts them.
fn in_time(
    strips: u32,
    block: u32,
    stays: &[((usize, usize), u32)],
) -> Option<Vec<Vec<(u32, u32)>>> {
    let own = stays.iter().enumerate();
    let stays: Vec<Stay> = own.map(|(k, (days, strips))| (k, *days, *strips)).collect();
    Some(runs(Bed::new(strips, block, &stays).places()?))
}

/// First strip and number of strips of each place.
fn runs(places: Vec<Vec<Place>>) -> Vec<Vec<(u32, u32)>> {
    let of_one = |places: Vec<Place>| {
        let runs = places.iter().map(|place| (place.first_strip, place.strips));
        runs.collect()
    };
    places.into_iter().map(of_one).collect()
}

#[test]
fn a_planting_takes_the_shortest_run_that_holds_it() {
    // Three strips are free, one is not, two are free, two are not.
    let before = [((0, 10), 3), ((1, 60), 1), ((2, 10), 2), ((3, 60), 2)];
    let last = |strips: &[u32]| {
        let later = strips.iter().zip(15..).map(|(n, from)| ((from, 60), *n));
        let stays: Vec<_> = before.into_iter().chain(later).collect();
        let found = in_time(8, 1, &stays)?;
        assert_eq!(
            found[..4],
            [vec![(1, 3)], vec![(4, 1)], vec![(5, 2)], vec![(7, 2)]]
        );
        Some(found[4..].to_vec())
    };
    assert_eq!(last(&[2]), Some(vec![vec![(5, 2)]]));
    assert_eq!(last(&[3]), Some(vec![vec![(1, 3)]]));
    assert_eq!(last(&[1, 2]), Some(vec![vec![(5, 1)], vec![(1, 2)]]));
    assert_eq!(
        last(&[1, 1, 3]),
        Some(vec![vec![(5, 1)], vec![(6, 1)], vec![(1, 3)]])
    );
    // In two pieces, the longest run first.
    assert_eq!(last(&[4]), Some(vec![vec![(1, 3), (5, 1)]]));
    assert_eq!(last(&[5]), Some(vec![vec![(1, 3), (5, 2)]]));
    assert_eq!(last(&[6]), None);
    // Also where it is the second.
    let before = [((0, 10), 2), ((1, 60), 1), ((2, 10), 3), ((3, 60), 2)];
    let stays: Vec<_> = before.into_iter().chain([((15, 60), 4)]).collect();
    let found = in_time(8, 1, &stays).unwrap();
    assert_eq!(found[4], [(1, 1), (4, 3)]);
}

#[test]
fn whole_blocks_stay_whole_where_they_can() {
    let before = [((0, 10), 4), ((1, 60), 2), ((2, 10), 2), ((3, 60), 2)];
    let last = |strips: u32, wanted: u32| {
        let stays: Vec<_> = before.into_iter().chain([((15, 60), wanted)]).collect();
        in_time(strips, 2, &stays)?.pop()
    };
    assert_eq!(last(10, 4), Some(vec![(1, 4)]));
    assert_eq!(last(10, 6), Some(vec![(1, 4), (7, 2)]));
    // Three strips and three: of blocks of two strips the third has one of each.
    let odd = |strips: u32, wanted: u32| {
        let before = [(0, (0, 10), 3), (1, (1, 60), 1), (2, (2, 10), 3)];
        let mut bed = Bed::new(strips, 1, &[&before[..], &[(3, (15, 60), wanted)]].concat());
        bed.all.all[3].amounts.block.strips = 2;
        bed.chosen[3].blocks = wanted / 2;
        runs(bed.places()?).pop()
    };
    assert_eq!(odd(7, 4), Some(vec![(1, 2), (5, 2)]));
    assert_eq!(odd(7, 6), Some(vec![(1, 3), (5, 3)]));
    assert_eq!(odd(7, 8), None);
    // The longest run is that of the strips that nothing stood on.
    assert_eq!(odd(9, 4), Some(vec![(5, 4)]));
    assert_eq!(odd(9, 6), Some(vec![(1, 2), (5, 4)]));
    assert_eq!(odd(9, 8), Some(vec![(1, 3), (5, 5)]));
}

/// Every second strip is free: two strips in two pieces.
#[test]
fn single_strips_are_taken_where_there_is_no_other_way() {
    let before = [((0, 60), 1), ((1, 10), 1), ((2, 60), 1), ((3, 10), 1)];
    let with = |block: u32, wanted: u32| {
        let stays: Vec<_> = before.into_iter().chain([((15, 60), wanted)]).collect();
        in_time(4, block, &stays)?.pop()
    };
    assert_eq!(with(1, 1), Some(vec![(2, 1)]));
    assert_eq!(with(1, 2), Some(vec![(2, 1), (4, 1)]));
    assert_eq!(with(1, 3), None);
}

/// The third planting would take the strip that only the fourth can have: first by first it fails,
/// strip by strip it does not.
#[test]
fn a_family_that_must_wait_gets_the_strip_that_is_left_to_it() {
    let stays = [
        (0, (0, 10), 1),
        (1, (0, 10), 1),
        (2, (20, 30), 1),
        (1, (20, 31), 1),
    ];
    let found = Bed::new(2, 1, &stays).places().unwrap();
    let expected = [1, 2, 2, 1].map(|first| vec![place("A", first, 1)]);
    assert_eq!(found, expected);
    // Where the two of one family both need the whole bed there is none.
    let whole = [(0, (0, 10), 2), (0, (20, 31), 2)];
    assert_eq!(Bed::new(2, 1, &whole).places(), None);
    assert_eq!(Bed::new(3, 1, &whole).places(), None);
    let apart = Bed::new(4, 1, &whole).places().unwrap();
    assert_eq!(runs(apart), [[(1, 2)], [(3, 2)]]);
}

/// Given out strip by strip, the second planting would have the first strip and the third; strips that carry
/// the same ones lie side by side, so it is whole.
#[test]
fn strips_that_carry_the_same_lie_side_by_side() {
    let stays = [
        (1, (20, 28), 1),
        (2, (5, 8), 2),
        (2, (20, 23), 1),
        (1, (10, 13), 2),
    ];
    let found = Bed::new(3, 1, &stays).places().unwrap();
    assert_eq!(runs(found), [[(1, 1)], [(1, 2)], [(3, 1)], [(2, 2)]]);
    let stays = [
        (2, (0, 15), 3),
        (1, (30, 33), 2),
        (1, (20, 28), 2),
        (2, (30, 33), 2),
    ];
    let found = Bed::new(5, 1, &stays).places().unwrap();
    assert_eq!(runs(found), [[(1, 3)], [(1, 2)], [(3, 2)], [(4, 2)]]);
}

/// Some plantings of few families, one after the other.
fn stays(seed: u64) -> (u32, Vec<Stay>) {
    let dice = &mut Dice::new(seed);
    let strips = dice.int(3, 6);
    let stays = (0..dice.int(4, 6)).map(|_| {
        let from = dice.below(40);
        let days = (from, from + dice.below(20));
        (dice.below(4), days, dice.int(1, 2))
    });
    (strips, stays.collect())
}

/// Places are found just where trying everything finds some; each planting has its strips, and no strip
/// carries two that clash.
#[test]
fn places_are_found_wherever_there_are_some() {
    let (mut found, mut none) = (0, 0);
    for seed in 0..400 {
        let (strips, stays) = stays(seed);
        let bed = Bed::new(strips, 1, &stays);
        let pieces = stays.iter().map(|(_, days, strips)| Piece {
            blocks: strips / bed.block,
            strips: bed.block,
            plots: plot_set(1, |_| true),
            days: *days,
        });
        let all = 0..stays.len();
        let case = Case {
            pieces: pieces.collect(),
            plots: vec![strips],
            clash: all
                .clone()
                .map(|a| all.clone().map(|b| bed.clash(a, b)).collect())
                .collect(),
        };
        let Some(places) = bed.places() else {
            assert!(!fits(&case), "seed {seed}: {stays:?}");
            none += 1;
            continue;
        };
        found += 1;
        let carried = |places: &[Place]| -> Vec<u32> {
            let runs = places.iter().flat_map(|place| place.run().iter());
            runs.map(|strip| strip.0).collect()
        };
        let carried: Vec<Vec<u32>> = places.iter().map(|own| carried(own)).collect();
        for (a, own) in carried.iter().enumerate() {
            assert_eq!(own.len(), stays[a].2 as usize, "seed {seed}: {places:?}");
            assert!(own.is_sorted_by(|x, y| x < y), "seed {seed}: {places:?}");
            assert!(own.iter().all(|strip| *strip < strips), "seed {seed}");
            for (b, other) in carried.iter().enumerate().skip(a + 1) {
                let both = own.iter().any(|strip| other.contains(strip));
                assert!(!both || !bed.clash(a, b), "seed {seed}: {places:?}");
            }
        }
    }
    assert!(found > 150 && none > 100, "{found}, {none}");
}
