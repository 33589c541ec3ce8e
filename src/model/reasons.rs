//! Why no plan is possible: which ingredients cannot be in the pot, and which limits they
//! press on, with quantities.

use crate::calendar::{Date, monday_of};
use crate::candidates::{Candidates, DropReason, Dropped, PlotSet, blocks_for, families, fullest};
use crate::garden::{Garden, GradeAt, IngredientAt, Method, Source, Team};
use crate::growth::{Block, need, widest_rows};

use super::columns::{Columns, of};
use super::stages::Staged;

/// Why no plan keeps all rules.
#[derive(Debug, Clone, PartialEq)]
pub struct Impossible {
    /// Ingredients that can be in the pot together; as many as can be if `proved`.
    pub possible_together: Vec<IngredientAt>,
    /// The others.
    pub left_out: Vec<LeftOut>,
    /// True if no larger set is possible.
    pub proved: bool,
    /// Limits that all ingredients together pass, the most overdrawn first.
    pub pressure: Vec<Pressure>,
}

/// An ingredient that cannot be in the pot.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// Which.
    pub ingredient: IngredientAt,
    /// Why.
    pub why: Why,
}

/// Why an ingredient cannot be in the pot.
#[derive(Debug, Clone, PartialEq)]
pub enum Why {
    /// No planting of it works even by itself; reasons with the number of plantings that each
    /// one ruled out.
    NoWay {
        /// The reasons, the most frequent first.
        reasons: Vec<(DropReason, u32)>,
    },
    /// No rule forbids every planting of it, but not enough of it fits in beside the rest. Whether
    /// it would by itself is not looked at here.
    Crowded,
}

/// A limit that all ingredients together pass.
#[derive(Debug, Clone, PartialEq)]
pub enum Pressure {
    /// Strips of bed.
    Beds {
        /// Strips that the least shares want.
        wanted: u32,
        /// Strips that are free.
        strips: u32,
        /// Each ingredient's part, the largest first.
        parts: Vec<(IngredientAt, u32)>,
        /// Monday of the tightest week; `None` if nothing of it can be planted in any week.
        week: Option<Date>,
    },
    /// Strips for a crop family of which a strip carries only one planting.
    Family {
        /// The family.
        family: String,
        /// Strips that the least shares of its ingredients want in all, without those that stand in a bed already.
        wanted: u32,
        /// Strips on which any of them may stand, without those on which one stands already.
        strips: u32,
        /// Each ingredient's part, the largest first.
        parts: Vec<(IngredientAt, u32)>,
    },
    /// Grades that grow something.
    Grades {
        /// How many must.
        wanted: u32,
        /// How many can at the most.
        can: u32,
        /// Grades for which nothing works that they may grow.
        without: Vec<GradeAt>,
    },
    /// Flats on the shelf.
    Shelf {
        /// Flats that the least shares want.
        wanted: u32,
        /// Flats that stand ready.
        flats: u32,
        /// Each ingredient's part, the largest first.
        parts: Vec<(IngredientAt, u32)>,
    },
}

impl Pressure {
    /// Wanted against what there is.
    fn ratio(&self) -> f64 {
        let (wanted, there) = match self {
            Pressure::Beds { wanted, strips, .. } | Pressure::Family { wanted, strips, .. } => {
                (*wanted, *strips)
            }
            Pressure::Shelf { wanted, flats, .. } => (*wanted, *flats),
            Pressure::Grades { wanted, can, .. } => (*wanted, *can),
        };
        f64::from(wanted) / f64::from(there).max(0.5)
    }
}

/// Explains a first stage in which some ingredient stayed out.
#[must_use]
pub fn impossible(
    garden: &Garden,
    candidates: &Candidates,
    columns: &Columns,
    first: &Staged,
) -> Impossible {
    let in_pot = |at: &IngredientAt| first.values[columns.in_pot[at.0].0] > 0.5;
    let left_out = garden
        .ingredient_positions()
        .filter(|at| !in_pot(at))
        .map(|ingredient| LeftOut {
            ingredient,
            why: why(candidates, ingredient),
        })
        .collect();
    let mut pressure: Vec<Pressure> = beds(garden, candidates)
        .into_iter()
        .chain(families_short(garden, candidates))
        .chain(shelf(garden))
        .chain(grades(garden, candidates))
        .collect();
    pressure.sort_by(|a, b| b.ratio().total_cmp(&a.ratio()));
    Impossible {
        possible_together: garden.ingredient_positions().filter(in_pot).collect(),
        left_out,
        proved: first.laid_out && first.aims.iter().all(crate::plan::AimResult::proved),
        pressure,
    }
}

fn why(candidates: &Candidates, at: IngredientAt) -> Why {
    if of(candidates, at).next().is_some() {
        return Why::Crowded;
    }
    let dropped: &Dropped = &candidates.dropped[at.0];
    let mut reasons: Vec<(DropReason, u32)> = dropped.iter().map(|(r, n)| (*r, *n)).collect();
    reasons.sort_by_key(|(reason, n)| (std::cmp::Reverse(*n), *reason));
    Why::NoWay { reasons }
}

/// No school has more; keeps the products of absurd figures within bounds.
const MOST_BLOCKS: u32 = 100_000;

/// The children of the smallest team that may grow an ingredient.
fn fewest_children(garden: &Garden, at: IngredientAt) -> u32 {
    let teams = garden[at].teams.iter();
    let children = teams.map(|team| garden.children_of(*team));
    children.min().unwrap_or(0)
}

/// The plants of an ingredient's least share in the widest bed, with their strips.
fn least_plants(garden: &Garden, at: IngredientAt) -> Option<(u32, u32)> {
    let ingredient = &garden[at];
    let method = *ingredient.methods.first()?;
    if ingredient.source != Source::Sown {
        return None;
    }
    let block = Block::of(&ingredient.crop, widest_rows(garden, &ingredient.crop)?)?;
    let one = need(
        ingredient,
        method,
        fewest_children(garden, at),
        block.plants,
    );
    let least = ingredient.least(garden.feast.portions);
    let blocks = blocks_for(one.low, least).min(MOST_BLOCKS);
    Some((blocks * block.plants, blocks * block.strips))
}

/// Strips that all ingredients want on the day on which fewest are free for what stands.
fn beds(garden: &Garden, candidates: &Candidates) -> Option<Pressure> {
    let horizon = garden.horizon();
    let always = |at: IngredientAt, day: usize| {
        of(candidates, at).all(|(_, c)| c.bed_days.0 <= day && day <= c.bed_days.1)
    };
    // Where nothing can be planted at all, the last day tells what the beds could hold.
    let at_last = (horizon.days() - 1, horizon.days() - 1);
    fullest(candidates.all.iter().map(|c| c.bed_days).chain([at_last]))
        .into_iter()
        .map(|day| {
            let date = horizon.date(day);
            let free = candidates.plots.iter().filter(|p| p.is_free_on(date));
            let strips = free.map(|p| p.strips.count).sum();
            let mut parts: Vec<(IngredientAt, u32)> = garden
                .ingredient_positions()
                .filter(|at| always(*at, day))
                .filter_map(|at| Some((at, least_plants(garden, at)?.1)))
                .collect();
            parts.sort_by_key(|(at, strips)| (std::cmp::Reverse(*strips), *at));
            let wanted = parts.iter().map(|p| p.1).sum();
            Pressure::Beds {
                wanted,
                strips,
                week: parts
                    .iter()
                    .any(|(at, _)| of(candidates, *at).next().is_some())
                    .then(|| monday_of(date)),
                parts,
            }
        })
        .max_by(|a, b| a.ratio().total_cmp(&b.ratio()))
        .filter(|p| p.ratio() > 1.0)
}

/// The fewest strips that an ingredient is to be planted on.
fn least_strips(garden: &Garden, candidates: &Candidates, at: IngredientAt) -> Option<u32> {
    match garden[at].source {
        Source::Sown => Some(least_plants(garden, at)?.1),
        Source::Begun(_) => {
            let own = of(candidates, at);
            own.map(|(_, c)| c.amounts.least_strips()).min()
        }
        Source::Patch(_) => None,
    }
}

/// True if an ingredient stands in a bed already.
fn stands(garden: &Garden, at: IngredientAt) -> bool {
    matches!(garden[at].source, Source::Begun(begun) if garden[begun].in_bed().is_some())
}

/// Families that want more strips than there are for them, where no strip carries two of one: what stands in the
/// beds already keeps its own to itself.
fn families_short(garden: &Garden, candidates: &Candidates) -> Vec<Pressure> {
    let plots = |ingredients: &[IngredientAt]| {
        let own = candidates.all.iter();
        let own = own.filter(|c| ingredients.contains(&c.ingredient));
        own.fold(PlotSet::default(), |plots, c| plots.or(c.plots))
    };
    let of_one = |(family, ingredients): (&str, Vec<IngredientAt>)| {
        let (standing, planted): (Vec<IngredientAt>, Vec<IngredientAt>) =
            ingredients.iter().partition(|at| stands(garden, **at));
        let taken = plots(&standing);
        let free = plots(&planted).iter().filter(|plot| !taken.has(*plot));
        let strips = free.map(|plot| candidates[plot].strips.count).sum();
        let parts = planted
            .iter()
            .filter_map(|at| Some((*at, least_strips(garden, candidates, *at)?)));
        let mut parts: Vec<(IngredientAt, u32)> = parts.collect();
        parts.sort_by_key(|(at, strips)| (std::cmp::Reverse(*strips), *at));
        Pressure::Family {
            family: family.to_owned(),
            wanted: parts.iter().map(|part| part.1).sum(),
            strips,
            parts,
        }
    };
    let families = families(garden, &candidates.all).into_iter();
    let several = families.filter(|(_, ingredients)| ingredients.len() > 1);
    several.map(of_one).filter(|p| p.ratio() > 1.0).collect()
}

/// Flats that the ingredients want that can only be raised on the shelf, and those that seedlings take already.
fn shelf(garden: &Garden) -> Option<Pressure> {
    let mut parts: Vec<(IngredientAt, u32)> = garden
        .ingredient_positions()
        .filter_map(|at| {
            if let Some(seedlings) = garden.seedlings_of(at) {
                let indoor = garden[at].crop.indoor?;
                return Some((at, seedlings.flats(&indoor)));
            }
            if garden[at].methods != [Method::Indoor] {
                return None;
            }
            let (plants, _) = least_plants(garden, at)?;
            let ingredient = &garden[at];
            let children = fewest_children(garden, at);
            let need = need(ingredient, Method::Indoor, children, plants);
            Some((at, need.flats_sown.max(need.flats_kept)))
        })
        .collect();
    parts.sort_by_key(|(at, flats)| (std::cmp::Reverse(*flats), *at));
    let wanted = parts.iter().map(|p| p.1).sum();
    let pressure = Pressure::Shelf {
        wanted,
        flats: garden.shelf.flats,
        parts,
    };
    (wanted > garden.shelf.flats).then_some(pressure)
}

/// Grades that must grow something by the file, where not as many can.
fn grades(garden: &Garden, candidates: &Candidates) -> Option<Pressure> {
    let works = |at: IngredientAt, team: &Team| of(candidates, at).any(|(_, c)| c.team == *team);
    let mut able = garden.clone();
    for at in garden.ingredient_positions() {
        able.ingredients[at.0].teams.retain(|team| works(at, team));
    }
    let may = |grade: &GradeAt| garden.ingredients.iter().any(|i| i.may_be_grown_by(*grade));
    let can = |grade: &GradeAt| able.ingredients.iter().any(|i| i.may_be_grown_by(*grade));
    let (wanted, most) = (garden.most_grades(), able.most_grades());
    (garden.has_open_grades() && most < wanted).then(|| Pressure::Grades {
        wanted: wanted as u32,
        can: most as u32,
        without: garden
            .grade_positions()
            .filter(|g| may(g) && !can(g))
            .collect(),
    })
}
