//! The exact packing of blocks against trying everything, on small random packings: with pieces that
//! only clash because they stand there at once, and with such as wait for each other.

use tureen::candidates::{PlotSet, usable_strips};
use tureen::garden::{BedAt, Plot, Strips};
use tureen::model::{Ground, Packed, Piece, PieceAt, pack};

use crate::random_gardens::dice::Dice;

use super::try_all::{Case, fits, is_right};

/// Packings of each kind.
const CASES: u64 = 1_000;
/// More than any of them takes.
const AMPLE: u64 = 1_000_000;

/// The set of those of `n` plots for which something holds.
pub fn plot_set(n: usize, holds: impl Fn(usize) -> bool) -> PlotSet {
    let plot = |k| Plot {
        bed: BedAt(k),
        strips: Strips::from_start(1),
        trellis: false,
        free_from: None,
    };
    let plots: Vec<Plot> = (0..n).map(plot).collect();
    PlotSet::of(&plots, |plot| holds(plot.bed.0))
}

/// A few pieces on a few small plots; `waits` is how often two pieces that do not stand there at
/// once clash all the same.
fn case(seed: u64, waits: f64) -> Case {
    let dice = &mut Dice::new(seed);
    let plots: Vec<u32> = (0..dice.int(1, 3)).map(|_| dice.int(1, 4)).collect();
    let pieces: Vec<Piece> = (0..dice.int(2, 5))
        .map(|_| {
            let from = dice.below(12);
            let may: Vec<bool> = plots.iter().map(|_| dice.chance(0.7)).collect();
            Piece {
                blocks: dice.int(1, 2),
                strips: dice.int(1, 2),
                plots: plot_set(plots.len(), |k| may[k] || k == 0),
                days: (from, from + dice.below(8)),
            }
        })
        .collect();
    let at_once = |a: &Piece, b: &Piece| a.days.0 <= b.days.1 && b.days.0 <= a.days.1;
    let mut clash = vec![vec![true; pieces.len()]; pieces.len()];
    for a in 0..pieces.len() {
        for b in 0..a {
            let both = at_once(&pieces[a], &pieces[b]) || dice.chance(waits);
            (clash[a][b], clash[b][a]) = (both, both);
        }
    }
    Case {
        pieces,
        plots,
        clash,
    }
}

/// How many of some packings can be done; each is packed as trying everything says.
fn compared(waits: f64) -> u64 {
    let mut can = 0;
    for seed in 0..CASES {
        let case = case(seed, waits);
        let ground = case.ground();
        let right = match pack(&ground, AMPLE) {
            Packed::Found(packed) => is_right(&case, &packed),
            Packed::Impossible => !fits(&case),
            Packed::Unknown => false,
        };
        assert!(right, "seed {seed}, waits {waits}: {case:?}");
        can += u64::from(fits(&case));
    }
    can
}

#[test]
fn blocks_are_packed_wherever_trying_everything_packs_them() {
    for waits in [0.0, 0.3, 0.8] {
        let can = compared(waits);
        println!("{can} of {CASES} packings can be done (waits {waits})");
        assert!(can > CASES / 8 && can < CASES * 7 / 8, "{can}");
    }
}

/// Five pieces, each of which clashes with the next and the last with the first: on no day and for
/// no family are more than two strips wanted, and still two do not do.
#[test]
fn a_ring_of_five_needs_a_third_strip() {
    let days = [(0, 10), (5, 15), (12, 22), (20, 30), (27, 40)];
    let piece = |days: &(usize, usize)| Piece {
        blocks: 1,
        strips: 1,
        plots: plot_set(1, |_| true),
        days: *days,
    };
    let pieces: Vec<Piece> = days.iter().map(piece).collect();
    let clash = |PieceAt(a), PieceAt(b)| usize::abs_diff(a, b) % 3 == 1;
    let of = |strips| pack(&Ground::new(pieces.clone(), vec![strips], clash), AMPLE);
    assert_eq!(of(2), Packed::Impossible);
    assert_eq!(of(3), Packed::Found(vec![vec![1; 5]]));
}

/// What is too much is called unknown, not impossible.
#[test]
fn a_packing_that_is_given_up_is_not_called_impossible() {
    let case = (0..)
        .map(|seed| case(seed, 0.3))
        .find(|c| !fits(c))
        .unwrap();
    assert_eq!(pack(&case.ground(), 0), Packed::Unknown);
}

/// Of plots of five and four strips, blocks of two and four strips leave the odd one; a block of one strip uses all.
#[test]
fn strips_that_no_whole_block_can_use_do_not_count() {
    let plots: Vec<Plot> = [5, 4]
        .into_iter()
        .enumerate()
        .map(|(k, strips)| Plot {
            bed: BedAt(k),
            strips: Strips::from_start(strips),
            trellis: false,
            free_from: None,
        })
        .collect();
    let both = PlotSet::of(&plots, |_| true);
    let first = PlotSet::of(&plots, |plot| plot.bed.0 == 0);
    for (set, blocks, usable) in [
        (both, vec![2, 4], 8),
        (both, vec![4, 2], 8),
        (both, vec![2, 3], 9),
        (both, vec![4], 8),
        (first, vec![3], 3),
        (first, vec![1], 5),
        (first, vec![], 5),
    ] {
        assert_eq!(
            usable_strips(&plots, set, blocks.clone().into_iter()),
            usable,
            "{blocks:?}"
        );
    }
}
