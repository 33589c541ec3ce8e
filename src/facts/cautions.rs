//! The cautions that apply: allergens, poisonous parts, hands, soil, tools, food service. Which of
//! them, and of whom; what they say is worded elsewhere.

use std::collections::BTreeMap;

use crate::garden::{Garden, GradeAt, Ingredient};

/// An allergen of the dish.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Allergen<'a> {
    /// What it is called.
    pub name: &'a str,
    /// The ingredients that carry it, in the order of the file.
    pub carried_by: Vec<&'a str>,
}

/// Grades that may grow an ingredient and are younger than is usual for it.
#[derive(Debug, Clone, PartialEq)]
pub struct Young<'a> {
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// The grades, in the order of the file.
    pub grades: Vec<GradeAt>,
    /// From which age on children can do all that it asks of them.
    pub least_age: u32,
}

/// Something to take care of.
#[derive(Debug, Clone, PartialEq)]
pub enum Caution<'a> {
    /// What the nurse is asked about: every dish, whatever the program knows of it.
    Allergies(Vec<Allergen<'a>>),
    /// What the crop list or the file says of an ingredient.
    Own(&'a Ingredient),
    /// Children who are young for what they may grow.
    Young(Young<'a>),
    /// Hands are washed.
    Hands,
    /// Seed may be treated.
    Seed,
    /// Soil may carry lead.
    Soil,
    /// Stings, ticks, cuts, shoes, sprays.
    Outdoors,
    /// Sun and heat.
    Heat,
    /// Tools, stoves and heat.
    Tools,
    /// The rules for serving food.
    FoodService,
    /// Work for licensed trades.
    Trades,
    /// Electricity beside water.
    HeatMat,
    /// Which compost counts as safe.
    Compost,
}

/// The allergens of the dish, by name.
#[must_use]
pub fn allergens(garden: &Garden) -> Vec<Allergen<'_>> {
    let mut by_name: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
    for ingredient in &garden.ingredients {
        if let Some(name) = &ingredient.crop.caution.allergen {
            by_name.entry(name).or_default().push(&ingredient.name);
        }
    }
    let allergen = |(name, carried_by)| Allergen { name, carried_by };
    by_name.into_iter().map(allergen).collect()
}

/// Every caution that applies to the whole plan.
#[must_use]
pub fn of_the_plan(garden: &Garden) -> Vec<Caution<'_>> {
    let ingredients = || garden.ingredients.iter();
    let own = ingredients().filter(|i| has_caution(i)).map(Caution::Own);
    let young = ingredients().filter_map(|i| Some(Caution::Young(young(garden, i)?)));
    let mat = (garden.shelf.warm_flats > 0).then_some(Caution::HeatMat);
    let mut all = vec![Caution::Allergies(allergens(garden))];
    all.extend(own);
    all.extend(young);
    all.extend([Caution::Hands, Caution::Seed]);
    all.extend(for_every_school());
    all.extend(mat);
    all.push(Caution::Compost);
    all
}

/// What a school decides; each ingredient's own cautions stand where it is grown and cooked.
#[must_use]
pub fn for_the_school(garden: &Garden) -> Vec<Caution<'_>> {
    let mut all = vec![Caution::Allergies(allergens(garden))];
    all.extend(for_every_school());
    all
}

/// True if there is something to be said of an ingredient: there always is of a crop that the file adds,
/// of which the program knows nothing itself.
#[must_use]
pub fn has_caution(ingredient: &Ingredient) -> bool {
    !ingredient.crop.caution.text.trim().is_empty() || ingredient.crop.like.is_some()
}

/// What every school sees to (common practice).
fn for_every_school<'a>() -> [Caution<'a>; 6] {
    [
        Caution::Soil,
        Caution::Outdoors,
        Caution::Heat,
        Caution::Tools,
        Caution::FoodService,
        Caution::Trades,
    ]
}

fn young<'a>(garden: &Garden, ingredient: &'a Ingredient) -> Option<Young<'a>> {
    let least_age = ingredient.least_age()?;
    let grades = ingredient.teams.iter().flat_map(|team| team.grades());
    let grades: Vec<GradeAt> = grades
        .filter(|grade| ingredient.is_too_hard_for(&garden[*grade]))
        .collect();
    (!grades.is_empty()).then_some(Young {
        ingredient,
        grades,
        least_age,
    })
}
