//! The neat search for a layout, by hand: whole where that can be, on the plot that it fills best; else
//! shared out, the roomiest plot first.

use tureen::candidates::{CandidateAt, Candidates, PlotSet};
use tureen::garden::BedAt;
use tureen::model::{Chosen, neat_layout};

use super::wishes::beans;

/// The strips that plantings of so many get of each bed, all there at once; `None` if no layout is found.
fn strips(beds: &[u32], plantings: &[u32]) -> Option<Vec<Vec<(usize, u32)>>> {
    let garden = beans(0, beds);
    let all = Candidates::enumerate(&garden);
    let block = all.all[0].amounts.block.strips;
    let chosen: Vec<Chosen> = plantings
        .iter()
        .map(|strips| Chosen {
            candidate: CandidateAt(0),
            blocks: strips / block,
        })
        .collect();
    let parts = neat_layout(&garden, &all, &chosen)?;
    let of_one = |parts: &Vec<tureen::model::Part>| {
        let parts = parts.iter().map(|part| (part.plot.0, part.blocks * block));
        parts.collect()
    };
    Some(parts.iter().map(of_one).collect())
}

#[test]
fn one_planting_is_whole_where_it_can_be() {
    for (beds, wanted, expected) in [
        (&[8, 6][..], 6, Some(vec![(1, 6)])),
        (&[6, 8], 6, Some(vec![(0, 6)])),
        (&[4, 4], 6, Some(vec![(0, 4), (1, 2)])),
        (&[3, 5], 6, Some(vec![(1, 5), (0, 1)])),
        (&[3, 2], 6, None),
        (&[3, 3], 6, Some(vec![(0, 3), (1, 3)])),
    ] {
        let found = strips(beds, &[wanted]);
        assert_eq!(found, expected.map(|parts| vec![parts]), "{beds:?}");
    }
}

#[test]
fn of_two_plantings_as_few_are_split_as_can_be() {
    // Both whole, though the first fits the shorter bed too; one split where no other way is.
    assert_eq!(
        strips(&[4, 6], &[4, 6]),
        Some(vec![vec![(0, 4)], vec![(1, 6)]])
    );
    let split = |found: Vec<Vec<(usize, u32)>>| found.iter().filter(|p| p.len() > 1).count();
    assert_eq!(strips(&[5, 5], &[4, 6]).map(split), Some(1));
    assert_eq!(strips(&[5, 5], &[5, 6]), None);
}

/// The larger one chooses first, whatever comes first in the list.
#[test]
fn the_larger_planting_chooses_first() {
    let alike = |plantings: &[u32]| strips(&[6, 6], plantings);
    assert_eq!(alike(&[4, 6]), Some(vec![vec![(1, 4)], vec![(0, 6)]]));
    assert_eq!(alike(&[6, 4]), Some(vec![vec![(0, 6)], vec![(1, 4)]]));
    // Of two that are alike the first does.
    assert_eq!(alike(&[4, 4]), Some(vec![vec![(0, 4)], vec![(1, 4)]]));
}

/// Where one may stand on the first bed only, it chooses before a larger one that may stand on both.
#[test]
fn a_planting_with_less_choice_chooses_first() {
    let garden = beans(0, &[7, 6]);
    let mut all = Candidates::enumerate(&garden);
    let mut tied = all.all[0].clone();
    assert_eq!(tied.plots.iter().count(), 2);
    tied.plots = PlotSet::of(&all.plots, |plot| plot.bed == BedAt(0));
    all.all = vec![all.all[0].clone(), tied];
    let block = all.all[0].amounts.block.strips;
    let chosen = [(0, 4), (1, 2)].map(|(candidate, strips)| Chosen {
        candidate: CandidateAt(candidate),
        blocks: strips / block,
    });
    let parts = neat_layout(&garden, &all, &chosen).unwrap();
    let plots = parts.iter().map(|parts| parts[0].plot.0);
    // The small one leaves five strips of seven, which the large one fills best.
    assert_eq!(plots.collect::<Vec<_>>(), [0, 0]);
}

/// What grew before the plan counts less than a planting in two pieces.
#[test]
fn a_wish_is_broken_before_a_planting_is_split() {
    let grew = |beds: &[u32]| {
        let mut garden = beans(2, beds);
        garden.beds[0].grew = vec![(2026, vec!["bean".to_owned()])];
        let all = Candidates::enumerate(&garden);
        let chosen = [Chosen {
            candidate: CandidateAt(0),
            blocks: 6 / all.all[0].amounts.block.strips,
        }];
        let parts = neat_layout(&garden, &all, &chosen).unwrap();
        parts[0].iter().map(|part| part.plot.0).collect::<Vec<_>>()
    };
    assert_eq!(grew(&[6, 6]), [1]);
    assert_eq!(grew(&[6, 9]), [1]);
    assert_eq!(grew(&[6, 5]), [0]);
}
