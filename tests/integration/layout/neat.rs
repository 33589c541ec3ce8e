//! The neat search for a layout, by hand: whole where that can be, on the plot that it fills best; else
//! shared out, the roomiest plot first.

use tureen::candidates::{CandidateAt, Candidates};
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
