//! What a planting's strips take and give, from the places in the plan alone.

use crate::garden::{Garden, Ingredient, Method, Source, Spot};
use crate::growth::{self, Block, Need};

use super::planting::Planting;

/// The ways of growing that an ingredient allows.
pub fn methods(garden: &Garden, ingredient: &Ingredient) -> Vec<Method> {
    match ingredient.source {
        Source::Sown => ingredient.methods.clone(),
        Source::Begun(at) => vec![match garden[at].spot {
            Spot::Bed { .. } => Method::Growing,
            Spot::Shelf { .. } => Method::Seedlings,
        }],
        Source::Patch(_) => vec![Method::Patch],
    }
}

/// The block of a planting, from how rows lie in its first bed.
pub fn block(garden: &Garden, planting: &Planting<'_>) -> Option<Block> {
    let first = planting.places.first()?;
    Block::of(&planting.ingredient.crop, garden[first.bed].rows())
}

/// All strips of a planting that its beds really have.
pub fn strips(garden: &Garden, planting: &Planting<'_>) -> u32 {
    planting.places.iter().map(|p| p.within(garden).count).sum()
}

/// What a planting takes and gives. The children are those of its grade.
/// A patch gives what the garden says of one pick.
pub fn need(garden: &Garden, planting: &Planting<'_>) -> Option<Need> {
    let ingredient = planting.ingredient;
    if !methods(garden, ingredient).contains(&planting.plan.method) {
        return None;
    }
    if let Source::Patch(at) = ingredient.source {
        let patch = &garden[at];
        return Some(Need {
            plants: 0,
            seeds: 0,
            flats_sown: 0,
            flats_kept: 0,
            low: patch.low,
            expected: patch.expected,
        });
    }
    let block = block(garden, planting)?;
    let plants = block.plants_on(strips(garden, planting));
    let need = growth::need_in(
        garden,
        planting.at,
        planting.team,
        planting.plan.method,
        plants,
    );
    let left = planting.given.map_or(1.0, |printed| printed.left.0);
    Some(Need {
        low: need.low * left,
        expected: need.expected * left,
        ..need
    })
}
