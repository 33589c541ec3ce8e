//! What a year leaves to the next: what grew in which bed, and seed that is still good.

use chrono::Datelike;

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::garden::{
    Bed, Crop, Garden, Ingredient, Method, Printed, Season, Source, Strips, Turns,
};
use crate::pipeline::Unfolded;
use crate::plan::{Plan, Planting};
use crate::project::carry_over::Grown;

use super::spans::is_sown;

/// What a year leaves.
#[derive(Debug, Clone, PartialEq)]
pub struct Carried<'a> {
    /// What grew in the beds, in the order of the file.
    pub grown: Vec<Grown>,
    /// Where that is known from.
    pub known: KnownFrom,
    /// Names of the plan that the file does not know any more.
    pub unknown: Vec<String>,
    /// Seed, ingredient by ingredient.
    pub seed: Vec<Seed<'a>>,
    /// True if the last day that matters is over.
    pub is_over: bool,
}

/// From what it is known what grew.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KnownFrom {
    /// Nothing but the file.
    File,
    /// The saved plan.
    Plan,
    /// The saved plan and the diary.
    Diary,
}

/// Seed of an ingredient.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seed<'a> {
    /// The ingredient.
    pub ingredient: &'a Ingredient,
    /// How many seeds the plan counts for the year.
    pub counted: u32,
    /// The year for which they were bought.
    pub bought: i32,
    /// The last year in which what is left comes up well, where that is known.
    pub good_until: Option<i32>,
}

/// An ingredient whose family has stood too recently in every bed that suits it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WithoutABed<'a> {
    /// The ingredient's name.
    pub ingredient: &'a str,
    /// Its family.
    pub family: &'a str,
    /// So many years it must keep away.
    pub years: u32,
    /// The first year in which one of the beds is ready for it again.
    pub again: i32,
}

/// What a year leaves by a day, by the saved plan and what the diary made of it.
#[must_use]
pub fn carried<'a>(
    garden: &'a Garden,
    plan: Option<&Plan>,
    unfolded: Option<&Unfolded>,
    on: Date,
) -> Carried<'a> {
    let is_over = on > garden.last_day();
    let season = unfolded.and_then(|unfolded| unfolded.garden.season.as_ref());
    let (known, of_plan) = match (season, plan) {
        (Some(season), _) => (KnownFrom::Diary, really_grown(garden, season, is_over)),
        (None, Some(plan)) => (KnownFrom::Plan, planned(garden, plan)),
        (None, None) => (KnownFrom::File, begun(garden)),
    };
    let cleared = garden.former.iter().map(|former| Grown {
        bed: garden[former.bed].id.clone(),
        year: former.cleared.year(),
        crop: former.name.clone(),
    });
    let plantings = || plan.into_iter().flat_map(|plan| &plan.plantings);
    let names = plantings().map(|planting| planting.ingredient.clone());
    let mut unknown: Vec<String> = names
        .filter(|name| garden.ingredient_named(name).is_none())
        .collect();
    unknown.dedup();
    let seed = garden.ingredients.iter();
    let mut grown: Vec<Grown> = cleared.chain(of_plan).collect();
    let order = |grown: &Grown| garden.bed_with_id(&grown.bed).map(|at| at.0);
    grown.sort_by_key(order);
    Carried {
        grown,
        known,
        unknown,
        seed: seed
            .filter_map(|ingredient| seed_of(ingredient, plantings()))
            .collect(),
        is_over,
    }
}

/// What grew before this year keeps away from a bed in the next no crop that can be sown or planted, neither one of the
/// program's nor one of the file's.
#[must_use]
pub fn keeps_away_since(garden: &Garden, catalogue: &Catalogue) -> i32 {
    let own = garden.ingredients.iter().map(|ingredient| &ingredient.crop);
    let all = catalogue.names().filter_map(|name| catalogue.get(name));
    let years = |crop: &Crop| crop.rotation.years_hard.max(crop.rotation.years_wished);
    let planted = all.chain(own).filter(|crop| !crop.methods.is_empty());
    let longest = planted.map(years).max().unwrap_or(0);
    let next = garden.start().year().saturating_add(1);
    next.saturating_sub(i32::try_from(longest).unwrap_or(i32::MAX))
}

/// The ingredients of a new project for which rotation leaves no bed.
#[must_use]
pub fn without_a_bed(next: &Garden) -> Vec<WithoutABed<'_>> {
    let sown = next.ingredients.iter().filter(|i| is_sown(i));
    let without = sown.filter_map(|ingredient| {
        let crop = &ingredient.crop;
        let is_open = |bed: &Bed| ingredient.teams.iter().any(|team| bed.is_open_to(*team));
        let beds = next.bed_positions().filter_map(|at| {
            let bed = &next[at];
            let strips = match crop.needs.trellis {
                true => bed.trellis_strips(),
                false => bed.strips(),
            };
            let place = (at, Strips::from_start(strips));
            (strips > 0 && bed.suits(crop) && is_open(bed))
                .then(|| next.years_since(place, crop, next.feast.day))
        });
        let beds: Vec<Option<i32>> = beds.collect();
        let tired = beds
            .iter()
            .map(|passed| passed.filter(|passed| crop.rotation.must_wait(*passed)));
        // One that is not tired is enough; where no bed suits it, that is no matter of rotation.
        let longest = tired.collect::<Option<Vec<i32>>>()?.into_iter().max()?;
        let wait = i32::try_from(crop.rotation.years_hard).ok()? + 1 - longest;
        Some(WithoutABed {
            ingredient: &ingredient.name,
            family: &crop.rotation.family,
            years: crop.rotation.years_hard,
            again: next.feast.day.year() + wait,
        })
    });
    without.collect()
}

/// What stood for the dish before a plan was made; it is cleared after the feast.
fn begun(garden: &Garden) -> Vec<Grown> {
    let begun = garden.ingredients.iter().filter_map(|ingredient| {
        let Source::Begun(at) = ingredient.source else {
            return None;
        };
        let (bed, _) = garden[at].in_bed()?;
        Some(Grown {
            bed: garden[bed].id.clone(),
            year: garden.feast.day.year(),
            crop: ingredient.crop.name.clone(),
        })
    });
    begun.collect()
}

/// What the plan grows; it is cleared after its last pick.
fn planned(garden: &Garden, plan: &Plan) -> Vec<Grown> {
    let grown = plan.plantings.iter().filter_map(|planting| {
        let ingredient = &garden[garden.ingredient_named(&planting.ingredient)?];
        let last = planting.picks().filter_map(|step| step.when.last()).max();
        let year = last.unwrap_or(garden.feast.day).year();
        Some(planting.places.iter().map(move |place| Grown {
            bed: place.bed.clone(),
            year,
            crop: ingredient.crop.name.clone(),
        }))
    });
    grown.flatten().collect()
}

/// What stood by the plan as the diary changed it, and what was lost after it had come into its bed. What had not
/// begun when the season was over never stood.
fn really_grown(garden: &Garden, season: &Season, is_over: bool) -> Vec<Grown> {
    let stood = season.printed.iter();
    let stood = stood.filter(|printed| !is_over || printed.begun(season.as_of));
    let stood = stood.map(|printed| {
        let last = printed.picks.iter().filter_map(last_of).max();
        (printed, last.unwrap_or(garden.feast.day))
    });
    let lost = season.gone.iter().map(|gone| (&gone.what, gone.on));
    let lost = lost.filter(|(what, on)| in_bed_from(what).is_none_or(|first| first <= *on));
    let all = stood.chain(lost).flat_map(|(printed, cleared)| {
        printed.places.iter().map(move |(bed, _)| Grown {
            bed: garden[*bed].id.clone(),
            year: cleared.year(),
            crop: garden[printed.ingredient].crop.name.clone(),
        })
    });
    all.collect()
}

/// The day on which a planting came into its bed, where the plan brought it there.
fn in_bed_from(printed: &Printed) -> Option<Date> {
    let sown = printed
        .sow
        .as_ref()
        .filter(|_| printed.method != Method::Indoor);
    printed.plant_out.as_ref().or(sown)?.first()
}

fn last_of(turns: &Turns) -> Option<Date> {
    turns.0.iter().map(|(_, day)| *day).max()
}

/// Seed of an ingredient, if any was sown.
fn seed_of<'a, 'p>(
    ingredient: &'a Ingredient,
    plantings: impl Iterator<Item = &'p Planting>,
) -> Option<Seed<'a>> {
    let sown = |p: &&Planting| {
        p.ingredient == ingredient.name && matches!(p.method, Method::Direct | Method::Indoor)
    };
    let sown: Vec<&Planting> = plantings.filter(sown).collect();
    let steps = sown.iter().flat_map(|planting| &planting.steps);
    let bought = steps.filter_map(|step| step.when.first()).min()?.year();
    let keeps = ingredient.crop.seed_keeps_years.map(i32::try_from);
    Some(Seed {
        ingredient,
        counted: sown.iter().map(|planting| planting.seeds).sum(),
        bought,
        good_until: keeps.and_then(|years| Some(bought + years.ok()? - 1)),
    })
}
