//! A garden whose season is under way: what has begun goes on as it was begun, and what is left of it is looked at.

use crate::garden::{Garden, IngredientAt, Method, Printed, Season, Shut, Source};
use crate::growth::{Need, need_in, printed_plants};

/// The garden in a season. What has begun goes on with the team and in the way in which it was begun, whatever the
/// file says by now; where what is left of an ingredient is too little, it may be sown once more, or plants are bought.
#[must_use]
pub fn in_season(mut garden: Garden, season: Season) -> Garden {
    fall_out(&mut garden, &season.shut);
    for at in garden.ingredient_positions() {
        open_for_more(&mut garden, &season, at);
    }
    garden.season = Some(season);
    garden
}

/// Takes out of a garden the school that falls out.
pub(super) fn fall_out(garden: &mut Garden, shut: &Shut) {
    for closed in &shut.closed {
        garden.school_year.close(closed);
    }
    for (at, day) in &shut.lessons {
        let grade = garden.grades.get_mut(at.grade.0);
        if let Some(class) = grade.and_then(|grade| grade.classes.get_mut(at.class)) {
            class.falls_out.push(*day);
        }
    }
}

fn open_for_more(garden: &mut Garden, season: &Season, at: IngredientAt) {
    if are_gone(season, at) {
        may_be_sown(garden, at);
    }
    if is_lost(season, at) {
        may_be_bought(garden, at);
    }
    let begun: Vec<&Printed> = season.begun_of(at).map(|(_, printed)| printed).collect();
    let Some(first) = begun.first() else {
        return;
    };
    let least = garden[at].least(garden.feast.portions);
    let there: f64 = begun.iter().map(|printed| low(garden, printed)).sum();
    let more = u32::from(there + 1e-9 < least.0);
    let plantings = u32::try_from(begun.len()).unwrap_or(u32::MAX);
    let Some(ingredient) = garden.ingredients.get_mut(at.0) else {
        return;
    };
    // One team grows an ingredient.
    ingredient.teams = vec![first.team];
    if ingredient.source != Source::Sown {
        return;
    }
    ingredient.max_sowings = ingredient.max_sowings.max(plantings.saturating_add(more));
    for printed in begun {
        if !ingredient.methods.contains(&printed.method) {
            ingredient.methods.push(printed.method);
        }
    }
}

/// True if the seedlings that an ingredient was to come from are gone.
fn are_gone(season: &Season, at: IngredientAt) -> bool {
    let mut gone = season.gone.iter().map(|gone| &gone.what);
    gone.any(|what| what.ingredient == at && what.method == Method::Seedlings)
}

/// In place of seedlings that are gone others may be sown, or plants bought.
fn may_be_sown(garden: &mut Garden, at: IngredientAt) {
    if let Some(ingredient) = garden.ingredients.get_mut(at.0) {
        ingredient.source = Source::Sown;
        ingredient.methods.clone_from(&ingredient.crop.methods);
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
    need_of(garden, printed).low.0 * printed.left.0
}

/// What a printed planting takes and gives where it stands, as if nothing of it were lost.
pub(super) fn need_of(garden: &Garden, printed: &Printed) -> Need {
    let plants = printed_plants(garden, printed).unwrap_or(0);
    let (at, team) = (printed.ingredient, printed.team);
    need_in(garden, at, team, printed.method, plants)
}
