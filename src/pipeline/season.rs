//! A garden whose season is under way: what has begun goes on as it was begun, and what is left of it is looked at.

use crate::garden::{Garden, IngredientAt, Method, Printed, Season, Source};
use crate::growth::{Block, need_in};

/// The garden in a season. What has begun goes on with the grade and in the way in which it was begun, whatever the
/// file says by now; where what is left of an ingredient is too little, it may be sown once more, or plants are bought.
#[must_use]
pub fn in_season(mut garden: Garden, season: Season) -> Garden {
    for at in garden.ingredient_positions() {
        open_for_more(&mut garden, &season, at);
    }
    garden.season = Some(season);
    garden
}

fn open_for_more(garden: &mut Garden, season: &Season, at: IngredientAt) {
    if is_lost(season, at) {
        may_be_bought(garden, at);
    }
    let begun: Vec<&Printed> = season.begun_of(at).map(|(_, printed)| printed).collect();
    if begun.is_empty() || garden[at].source != Source::Sown {
        return;
    }
    let least = garden[at].least(garden.feast.portions);
    let there: f64 = begun.iter().map(|printed| low(garden, printed)).sum();
    let more = u32::from(there + 1e-9 < least.0);
    let plantings = u32::try_from(begun.len()).unwrap_or(u32::MAX);
    let Some(ingredient) = garden.ingredients.get_mut(at.0) else {
        return;
    };
    ingredient.max_sowings = ingredient.max_sowings.max(plantings.saturating_add(more));
    for printed in begun {
        if !ingredient.grades.contains(&printed.grade) {
            ingredient.grades.push(printed.grade);
        }
        if !ingredient.methods.contains(&printed.method) {
            ingredient.methods.push(printed.method);
        }
    }
}

/// True if some of an ingredient, or all, is lost.
fn is_lost(season: &Season, at: IngredientAt) -> bool {
    let partly = season.begun_of(at).any(|(_, printed)| printed.left.0 < 1.0);
    partly || season.gone.iter().any(|gone| gone.what.ingredient == at)
}

/// In place of what is lost plants may be bought.
fn may_be_bought(garden: &mut Garden, at: IngredientAt) {
    let Some(ingredient) = garden.ingredients.get_mut(at.0) else {
        return;
    };
    let (can, may) = (&ingredient.crop.methods, &mut ingredient.methods);
    if ingredient.source == Source::Sown
        && can.contains(&Method::Bought)
        && !may.contains(&Method::Bought)
    {
        may.push(Method::Bought);
    }
}

/// Kilograms that what has begun still brings in a poor year.
fn low(garden: &Garden, printed: &Printed) -> f64 {
    let crop = &garden[printed.ingredient].crop;
    let first = printed.places.first();
    let block = first.and_then(|(bed, _)| Block::of(crop, garden[*bed].rows()));
    let plants = block.map_or(0, |block| {
        (printed.strips() / block.strips.max(1)).saturating_mul(block.plants)
    });
    let (at, grade) = (printed.ingredient, printed.grade);
    need_in(garden, at, grade, printed.method, plants).low.0 * printed.left.0
}
