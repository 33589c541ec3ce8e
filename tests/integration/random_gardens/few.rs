//! Small gardens that soon have all said: two or three made-up crops of many blocks on one or two beds, in
//! four steady years; the seed is the case.

use tureen::candidates::{Candidate, Candidates};
use tureen::garden::{Garden, GradeAt, Ingredient, Method};
use tureen::growth::{Block, need};
use tureen::units::{Centimetres, Share};

use crate::support::crops::{raised_crop, sown_crop};
use crate::support::gardens::{bed, ingredient, tiny_garden};

use super::dice::Dice;

/// Up to so many plantings of each ingredient.
const FEW: usize = 3;

/// The garden of a seed: the tiny garden with other crops and beds.
pub fn garden(seed: u64) -> Garden {
    let dice = &mut Dice::new(seed);
    let mut garden = tiny_garden();
    let ids = ["A", "B"].into_iter().take(dice.int(1, 2) as usize);
    garden.beds = ids
        .map(|id| {
            let strips = dice.int(4, 12);
            bed(id, strips, dice.one(&[0, 0, strips / 2]))
        })
        .collect();
    garden.shelf.flats = dice.int(3, 12);
    garden.shelf.warm_flats = dice.int(0, garden.shelf.flats);
    garden.ingredients = (0..dice.int(2, 3)).map(|k| of_dish(dice, k)).collect();
    garden
}

/// A few plantings of each ingredient of a garden, drawn from all.
pub fn ways(garden: &Garden, seed: u64) -> Candidates {
    let dice = &mut Dice::new(seed);
    let mut all = Candidates::enumerate(garden);
    let mut few: Vec<Candidate> = Vec::new();
    for at in garden.ingredient_positions() {
        let mut own: Vec<&Candidate> = all.all.iter().filter(|c| c.ingredient == at).collect();
        for _ in 0..FEW.min(own.len()) {
            few.push(own.swap_remove(dice.below(own.len())).clone());
        }
    }
    // In their order, so that nothing but the choice differs.
    all.all.retain(|c| few.contains(c));
    all
}

/// An ingredient of a number that wants one to five blocks.
fn of_dish(dice: &mut Dice, number: u32) -> Ingredient {
    let name = format!("crop {number}");
    let raised = dice.chance(0.35);
    let mut crop = match raised {
        true => raised_crop(&name, dice.one(&[20.0, 30.0])),
        false => sown_crop(&name, dice.one(&[20.0, 25.0, 30.0, 40.0])),
    };
    let method = match raised {
        true => Method::Indoor,
        false => Method::Direct,
    };
    // Blocks of one, two or three strips.
    crop.spacing.between_rows = Centimetres(dice.one(&[30.0, 60.0, 45.0]));
    crop.rotation.family = format!("family {}", dice.below(3));
    crop.rotation.years_hard = dice.int(0, 1);
    crop.picking.storage_days = dice.one(&[40, 70]);
    let plants = Block::of(&crop, tiny_garden().beds[0].width).map_or(1, |block| block.plants);
    let mut own = ingredient(crop, GradeAt(dice.below(2)), 1.0);
    own.max_sowings = dice.one(&[1, 1, 2, 2, 3]);
    own.least_share = Share(dice.one(&[0.1, 0.2, 0.5]));
    let block = need(&own, method, 1, plants).low;
    let portions = f64::from(tiny_garden().feast.portions);
    own.grams_per_portion = block.0 * 1000.0 / portions * dice.real(1.0, 5.0);
    own
}
