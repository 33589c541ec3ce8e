//! Whole blocks and the flats that they take, by hand.

use tureen::candidates::{Amounts, Candidates, Level, blocks_for};
use tureen::garden::{Garden, Method};
use tureen::growth::{Block, need};
use tureen::units::Kilograms;

use crate::support::gardens::tiny_garden;

/// Two to nine blocks: up to three take one flat, up to five two, all nine four; potted up they take one
/// more, but for the last.
fn amounts() -> Amounts {
    let level = |up_to, sown, kept| Level { up_to, sown, kept };
    Amounts {
        block: Block {
            strips: 2,
            plants: 5,
        },
        blocks: (2, 9),
        low: Kilograms(0.5),
        expected: Kilograms(0.75),
        levels: vec![level(3, 1, 2), level(5, 2, 3), level(9, 4, 4)],
    }
}

/// Fewest and most blocks, and how far each level goes.
fn told(amounts: Option<Amounts>) -> Option<((u32, u32), Vec<u32>)> {
    let ends = |amounts: &Amounts| amounts.levels.iter().map(|level| level.up_to).collect();
    amounts.map(|amounts| (amounts.blocks, ends(&amounts)))
}

#[test]
fn at_most_cuts_the_levels_off() {
    let at_most = |most| told(amounts().at_most(most));
    assert_eq!(at_most(12), Some(((2, 9), vec![3, 5, 9])));
    assert_eq!(at_most(9), Some(((2, 9), vec![3, 5, 9])));
    assert_eq!(at_most(8), Some(((2, 8), vec![3, 5, 8])));
    assert_eq!(at_most(5), Some(((2, 5), vec![3, 5])));
    assert_eq!(at_most(4), Some(((2, 4), vec![3, 4])));
    assert_eq!(at_most(3), Some(((2, 3), vec![3])));
    assert_eq!(at_most(2), Some(((2, 2), vec![2])));
    assert_eq!(at_most(1), None);
}

#[test]
fn at_least_takes_away_the_levels_below() {
    let at_least = |least| told(amounts().at_least(least));
    assert_eq!(at_least(1), Some(((2, 9), vec![3, 5, 9])));
    assert_eq!(at_least(3), Some(((3, 9), vec![3, 5, 9])));
    assert_eq!(at_least(4), Some(((4, 9), vec![5, 9])));
    assert_eq!(at_least(6), Some(((6, 9), vec![9])));
    assert_eq!(at_least(9), Some(((9, 9), vec![9])));
    assert_eq!(at_least(10), None);
}

#[test]
fn just_so_many_blocks_have_one_level() {
    for (blocks, level) in [(2, 3), (3, 3), (4, 5), (5, 5), (6, 9), (9, 9)] {
        let expected = Some(((blocks, blocks), vec![level]));
        assert_eq!(told(amounts().exactly(blocks)), expected, "{blocks}");
    }
    assert_eq!(told(amounts().exactly(1)), None);
    assert_eq!(told(amounts().exactly(10)), None);
    let mut least = amounts();
    least.keep_least();
    assert_eq!(told(Some(least)), Some(((2, 2), vec![3])));
    assert_eq!(amounts().least_strips(), 4);
}

#[test]
fn a_shelf_raises_what_its_flats_hold() {
    for (flats, warm, most) in [
        (1, None, 0),
        (2, None, 3),
        (3, None, 5),
        (4, None, 9),
        (5, None, 9),
        // On the mat only as long as they are not potted up.
        (4, Some(0), 0),
        (4, Some(1), 3),
        (4, Some(2), 5),
        (4, Some(3), 5),
        (4, Some(4), 9),
        (2, Some(4), 3),
    ] {
        assert_eq!(amounts().raised_on(flats, warm), most, "{flats} {warm:?}");
    }
    let level = |blocks| amounts().level(blocks).map(|level| level.up_to);
    let found: Vec<Option<u32>> = (2..=10).map(level).collect();
    let expected = [3, 3, 5, 5, 9, 9, 9, 9].map(Some);
    assert_eq!(found[..8], expected);
    assert_eq!(found[8], None);
}

#[test]
fn blocks_are_rounded_up_but_for_a_milligram() {
    for (per_block, amount, blocks) in [
        (0.5, 0.0, 1),
        (0.5, 0.4, 1),
        (0.5, 0.5, 1),
        (0.5, 0.500_000_9, 1),
        (0.5, 0.500_002, 2),
        (0.5, 1.0, 2),
        (0.5, 1.2, 3),
        (0.0, 1.0, u32::MAX),
    ] {
        assert_eq!(
            blocks_for(Kilograms(per_block), Kilograms(amount)),
            blocks,
            "{amount} kg"
        );
    }
}

/// The tomato of the tiny garden: blocks of two plants on two strips, 0.25 kg a plant in a poor year, so
/// 50 portions of 40 g want four. Four cells and four pots a flat; a plant takes so many seeds that
/// nineteen of twenty times it comes up, at least one a child.
#[test]
fn levels_end_where_one_more_block_takes_another_flat() {
    let levels = |change: fn(&mut Garden)| {
        let mut garden = tiny_garden();
        garden.shelf.flats = 20;
        garden.shelf.warm_flats = 20;
        change(&mut garden);
        let all = Candidates::enumerate(&garden);
        let tomato = all.all.iter().find(|c| c.shelf.is_some()).unwrap();
        let levels = tomato.amounts.levels.iter();
        let levels = levels
            .map(|l| (l.up_to, l.sown, l.kept))
            .collect::<Vec<_>>();
        (tomato.amounts.blocks, levels)
    };
    // Ten seeds for ten children in three flats; of four plants five are potted up, a tenth to spare.
    let expected = ((2, 2), vec![(2, 3, 2)]);
    assert_eq!(levels(|_| {}), expected);
    // A cell a flat and a pot a flat.
    let single = |garden: &mut Garden| {
        let indoor = garden.ingredients[1].crop.indoor.as_mut().unwrap();
        (indoor.cells_per_flat, indoor.pots_per_flat) = (1, Some(1));
    };
    assert_eq!(levels(single), ((2, 2), vec![(2, 10, 5)]));
}

/// The same on eight strips with a trellis, for one to four blocks: each level has the flats that its blocks take,
/// and the next takes others.
#[test]
fn a_level_is_a_run_of_blocks_that_take_the_same_flats() {
    for (cells, pots) in [
        (1, Some(1)),
        (2, Some(40)),
        (40, Some(2)),
        (3, Some(4)),
        (40, Some(40)),
        (2, None),
    ] {
        let mut garden = tiny_garden();
        garden.beds[0].trellis = garden.beds[0].length;
        garden.shelf.flats = 40;
        garden.shelf.warm_flats = 40;
        garden.grades[1].classes[0].children = 2;
        let tomato = &mut garden.ingredients[1];
        tomato.least_share.0 = 0.25;
        let indoor = tomato.crop.indoor.as_mut().unwrap();
        (indoor.cells_per_flat, indoor.pots_per_flat) = (cells, pots);
        let all = Candidates::enumerate(&garden);
        let found = all.all.iter().find(|c| c.shelf.is_some()).unwrap();
        let Amounts {
            block,
            blocks,
            levels,
            ..
        } = &found.amounts;
        assert_eq!((block.plants, *blocks), (2, (1, 4)));
        for blocks in 1..=4 {
            let level = found.amounts.level(blocks).unwrap();
            let wanted = need(&garden.ingredients[1], Method::Indoor, 2, blocks * 2);
            let flats = (wanted.flats_sown, wanted.flats_kept);
            assert_eq!(
                (level.sown, level.kept),
                flats,
                "{cells} {pots:?}, {blocks}"
            );
        }
        let others = |pair: &[Level]| (pair[0].sown, pair[0].kept) != (pair[1].sown, pair[1].kept);
        assert!(levels.windows(2).all(others), "{levels:?}");
        assert_eq!(levels.last().map(|level| level.up_to), Some(4));
    }
}
