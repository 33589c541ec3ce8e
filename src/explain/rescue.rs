//! The rescue ladder of an ingredient: until when it can be sown again, bought as plants, or
//! replaced by a quick crop, with the rest of the plan as it stands. Every rung was put into
//! the plan and replayed by the checker.

use rayon::prelude::*;

use crate::candidates::{Candidate, Candidates};
use crate::catalogue::Catalogue;
use crate::checker::{CheckedPlan, check, keeps_rules, promise};
use crate::deadline::Deadline;
use crate::garden::{Crop, Garden, Ingredient, IngredientAt, Method, Source, Spot};
use crate::growth::least_ready_years;
use crate::model::planting;
use crate::plan::{Plan, Planting, Stand, Step, When};

use super::free_strips::FreeStrips;

/// What is done instead.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Rescue {
    /// The ingredient is sown again.
    SowAgain,
    /// Bought plants of it are planted.
    BoughtPlants,
    /// A quick crop, by its name, is sown in its place.
    QuickCrop(String),
}

/// One rung of a rescue ladder.
#[derive(Debug, Clone, PartialEq)]
pub struct RescueRung {
    /// What is done.
    pub rescue: Rescue,
    /// The last sessions in which it can be begun.
    pub until: When,
    /// The garden in which the ingredient is grown so.
    pub garden: Garden,
    /// The plan with it in place of all plantings of the ingredient. Its aims are left out.
    pub checked: CheckedPlan,
    /// Weather years in which the ingredient is then ready.
    pub ready_years: usize,
}

/// The ways out for one ingredient, by date; after the last there is only buying.
#[derive(Debug, Clone, PartialEq)]
pub struct RescueLadder {
    /// The ingredient.
    pub ingredient: IngredientAt,
    /// The rungs; each later than the one before it.
    pub rungs: Vec<RescueRung>,
}

/// A crop is quick if its packet says so many days from sowing, or fewer.
const QUICK_DAYS: f64 = 60.0;
/// So many quick crops are tried, the quickest first.
const MOST_CROPS: usize = 6;
/// So many plantings with the same first day are put into the plan.
const MOST_TRIES: usize = 200;

/// The rescue ladders of all ingredients, in the order of the dish; what is not found in time is
/// left out. A rung counts if the
/// ingredient is then ready in half of the promised years, and in one weather year of ten.
#[must_use]
pub fn rescue_ladders(
    garden: &Garden,
    checked: &CheckedPlan,
    catalogue: &Catalogue,
    deadline: &Deadline,
) -> Vec<RescueLadder> {
    let all: Vec<IngredientAt> = garden.ingredient_positions().collect();
    let stands = checked.stands(garden);
    let standing = (checked.plan(), stands.as_slice());
    all.into_par_iter()
        .map(|at| RescueLadder {
            ingredient: at,
            rungs: rungs((garden, checked), standing, at, catalogue, deadline),
        })
        .collect()
}

/// The rungs of one ingredient. One that ends no later than a cheaper one is of no use.
fn rungs(
    (garden, checked): (&Garden, &CheckedPlan),
    standing: (&Plan, &[Stand]),
    at: IngredientAt,
    catalogue: &Catalogue,
    deadline: &Deadline,
) -> Vec<RescueRung> {
    let old = &garden[at];
    let replay = checked.replay();
    let promised = replay
        .ingredients
        .get(at.0)
        .map_or(0, |seen| seen.ready_years());
    let least = least_ready_years(replay.years.len());
    let wanted = promised.div_ceil(2).max(least);
    let try_with = |rescue: Rescue, crop: &Crop, methods: Vec<Method>| {
        if deadline.is_over() {
            return None;
        }
        let garden = with(garden, at, crop, methods)?;
        latest(&garden, standing, (at, wanted), rescue, deadline)
    };
    let Some(sown) = sown_again(garden, old) else {
        return Vec::new();
    };
    let bought = old
        .crop
        .methods
        .iter()
        .copied()
        .filter(|m| *m == Method::Bought);
    let mut found: Vec<RescueRung> = Vec::new();
    found.extend(try_with(Rescue::SowAgain, &old.crop, sown));
    found.extend(try_with(Rescue::BoughtPlants, &old.crop, bought.collect()));
    found.extend(in_its_place(garden, old, catalogue, |crop| {
        let rescue = Rescue::QuickCrop(crop.name.clone());
        try_with(rescue, crop, children_sow(&crop.methods))
    }));
    let mut last = None;
    found.retain(|rung| {
        let later = rung.until.last() > last;
        last = last.max(rung.until.last());
        later
    });
    found
}

/// The rung on which another crop is sown: the first that the cook would take and that can be had,
/// or else, of the quick ones, that with the last day.
fn in_its_place(
    garden: &Garden,
    old: &Ingredient,
    catalogue: &Catalogue,
    rung: impl Fn(&Crop) -> Option<RescueRung>,
) -> Option<RescueRung> {
    if !old.instead.is_empty() {
        let mut wished = old.instead.iter().filter(|crop| is_new(garden, crop));
        return wished.find_map(rung);
    }
    // Of several with the same last day the quickest is the first.
    let later = |best: RescueRung, rung: RescueRung| match rung.until.last() > best.until.last() {
        true => rung,
        false => best,
    };
    let quick = quick_crops(garden, catalogue).into_iter();
    quick.filter_map(rung).reduce(later)
}

/// The ways in which an ingredient that has failed can be sown; `None` where nothing can be done but buying.
fn sown_again(garden: &Garden, old: &Ingredient) -> Option<Vec<Method>> {
    match old.source {
        Source::Sown => Some(children_sow(&old.methods)),
        Source::Patch(_) => Some(children_sow(&old.crop.methods)),
        Source::Begun(begun) => match garden[begun].spot {
            Spot::Shelf { .. } => Some(children_sow(&old.crop.methods)),
            // It was begun in another season, and the cold that such a crop asks is not modelled.
            Spot::Bed { .. } => None,
        },
    }
}

fn children_sow(methods: &[Method]) -> Vec<Method> {
    let sown = |m: &Method| *m != Method::Bought;
    methods.iter().copied().filter(sown).collect()
}

/// True if the dish does not hold a crop.
fn is_new(garden: &Garden, crop: &Crop) -> bool {
    garden.ingredients.iter().all(|i| i.crop.name != crop.name)
}

/// Crops that the dish does not hold and that are soon ripe from seed, the quickest first.
fn quick_crops<'c>(garden: &Garden, catalogue: &'c Catalogue) -> Vec<&'c Crop> {
    let days = |crop: &Crop| crop.ripening.days_from_sowing.unwrap_or(f64::INFINITY);
    let mut quick: Vec<&Crop> = catalogue
        .names()
        .filter_map(|name| catalogue.get(name))
        .filter(|crop| days(crop) <= QUICK_DAYS && crop.methods.contains(&Method::Direct))
        .filter(|crop| is_new(garden, crop))
        .collect();
    quick.sort_by(|a, b| days(a).total_cmp(&days(b)));
    quick.truncate(MOST_CROPS);
    quick
}

/// The garden with an ingredient that is sown or planted anew, once; `None` if there is no way
/// to do so.
fn with(garden: &Garden, at: IngredientAt, crop: &Crop, methods: Vec<Method>) -> Option<Garden> {
    if methods.is_empty() {
        return None;
    }
    let mut changed = Garden {
        season: garden.season.as_ref().map(|season| season.without(at)),
        ..garden.clone()
    };
    let ingredient = changed.ingredients.get_mut(at.0)?;
    *ingredient = Ingredient {
        crop: crop.clone(),
        source: Source::Sown,
        methods,
        max_sowings: 1,
        ..ingredient.clone()
    };
    Some(changed)
}

/// The planting that begins last and does, put into the plan in place of all of its ingredient.
fn latest(
    garden: &Garden,
    standing: (&Plan, &[Stand]),
    (at, wanted): (IngredientAt, usize),
    rescue: Rescue,
    deadline: &Deadline,
) -> Option<RescueRung> {
    let name = &garden[at].name;
    let (plan, stands) = standing;
    let is_lost = |p: &Planting| p.ingredient == *name;
    let free = FreeStrips::of(garden, plan, stands, is_lost);
    let rest: Vec<&Planting> = plan.plantings.iter().filter(|p| !is_lost(p)).collect();
    let alone = garden.with_ingredients(|other| other == at);
    let own = alone.ingredient_named(name)?;
    let found = Candidates::within(&alone, deadline).ok()?;
    let mut candidates: Vec<&Candidate> = found.all.iter().collect();
    candidates.retain(|c| c.ingredient == own && c.ready.len() as usize >= wanted);
    candidates.sort_by_key(|c| (std::cmp::Reverse((begins(c), c.ready.len())), c.tasks.len()));
    for same_day in candidates.chunk_by(|a, b| begins(a) == begins(b)) {
        for candidate in same_day.iter().take(MOST_TRIES) {
            if deadline.is_over() {
                return None;
            }
            let plots = candidate.plots.iter().map(|plot| &found[plot]);
            let Some(places) = free.places(plots, candidate, &alone[own].crop.rotation) else {
                continue;
            };
            let mut here = (*candidate).clone();
            here.ingredient = at;
            let new = planting(garden, &here, candidate.amounts.blocks.0, places);
            let rung = put_in(garden, &rest, new, at, wanted, &rescue);
            if rung.is_some() {
                return rung;
            }
        }
    }
    None
}

/// The last and first day of the step with which a candidate begins.
fn begins(candidate: &Candidate) -> Option<(crate::calendar::Date, crate::calendar::Date)> {
    let (_, round) = candidate.steps.rounds().next()?;
    Some((round.last(), round.first()))
}

/// The rung of a planting that is put into the plan, if the checker passes it.
fn put_in(
    garden: &Garden,
    rest: &[&Planting],
    new: Planting,
    at: IngredientAt,
    wanted: usize,
    rescue: &Rescue,
) -> Option<RescueRung> {
    let until = new.steps.first().map(|step: &Step| step.when.clone())?;
    let before = |p: &&Planting| garden.ingredient_named(&p.ingredient) < Some(at);
    let mut plantings: Vec<Planting> = rest.iter().copied().cloned().collect();
    let place = rest.iter().take_while(|p| before(p)).count();
    plantings.insert(place, new);
    let mut plan = Plan {
        promise: crate::plan::Promise {
            weather_years: 0,
            whole_dish_years: 0,
            ingredients: Vec::new(),
        },
        plantings,
        aims: Vec::new(),
        unseen: None,
    };
    if !keeps_rules(garden, &plan) {
        return None;
    }
    plan.promise = promise(garden, &plan);
    let checked = check(garden, plan).ok()?;
    let ready_years = checked.replay().ingredients.get(at.0)?.ready_years();
    (ready_years >= wanted).then(|| RescueRung {
        rescue: rescue.clone(),
        until,
        garden: garden.clone(),
        checked,
        ready_years,
    })
}
