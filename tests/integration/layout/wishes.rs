//! Wished years of rotation between two plantings of the plan itself: they keep off each other's strips
//! where there is room, and no layout is lost for it where there is none.

use tureen::candidates::{CandidateAt, Candidates, breaks_wish, clash};
use tureen::garden::{Garden, IngredientAt};
use tureen::model::{Chosen, neat_layout, strips_of_layout};
use tureen::plan::Place;

use crate::support::crops::sown_crop;
use crate::support::gardens::{bed, tiny_garden};

/// Beans that are soon ripe and must not wait for their family, in beds of so many strips.
pub fn beans(years_wished: u32, beds: &[u32]) -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients.truncate(1);
    let crop = &mut garden.ingredients[0].crop;
    *crop = sown_crop("bean", 20.0);
    crop.picking.storage_days = 70;
    crop.rotation.years_hard = 0;
    crop.rotation.years_wished = years_wished;
    let named = ["A", "B"].into_iter().zip(beds);
    garden.beds = named.map(|(id, strips)| bed(id, *strips, 0)).collect();
    garden
}

/// The places of two plantings of four strips, of which the second begins after the first is
/// cleared.
fn places(garden: &Garden) -> [Vec<Place>; 2] {
    let all = Candidates::enumerate(garden);
    let pairs = (0..all.all.len()).flat_map(|a| (0..all.all.len()).map(move |b| (a, b)));
    let follow = |(a, b): &(usize, usize)| all.all[*a].bed_days.1 < all.all[*b].bed_days.0;
    let (first, second) = pairs.clone().find(follow).unwrap();
    let (a, b) = (&all.all[first], &all.all[second]);
    assert!(!clash(garden, a, b));
    let wished = garden[IngredientAt(0)].crop.rotation.years_wished > 0;
    assert_eq!(breaks_wish(garden, a, b), wished);
    assert_eq!(breaks_wish(garden, b, a), wished);
    let chosen = [first, second].map(|candidate| Chosen {
        candidate: CandidateAt(candidate),
        blocks: 4 / all.all[candidate].amounts.block.strips,
    });
    let parts = neat_layout(garden, &all, &chosen).unwrap();
    let places = strips_of_layout(garden, &all, &chosen, &parts).unwrap();
    places.try_into().unwrap()
}

fn place(bed: &str, first_strip: u32) -> Vec<Place> {
    vec![crate::support::plans::place(bed, first_strip, 4)]
}

#[test]
fn a_family_follows_itself_elsewhere_where_there_is_room() {
    for (beds, with_wish, without) in [
        // Another bed; other strips of the same; the same where there are no others.
        (&[4, 4][..], [("A", 1), ("B", 1)], [("A", 1), ("A", 1)]),
        (&[8], [("A", 1), ("A", 5)], [("A", 1), ("A", 1)]),
        (&[7], [("A", 1), ("A", 1)], [("A", 1), ("A", 1)]),
        (&[4], [("A", 1), ("A", 1)], [("A", 1), ("A", 1)]),
    ] {
        for (wished, expected) in [(1, with_wish), (0, without)] {
            let expected = expected.map(|(bed, first)| place(bed, first));
            assert_eq!(places(&beans(wished, beds)), expected, "{beds:?}, {wished}");
        }
    }
}
