//! What ingredients of several sowings want of strips at the least, together with the others. Their
//! plantings may have one block each, so only all sowings of one together say how much that is.

use crate::candidates::Candidate;
use crate::garden::IngredientAt;
use crate::model::columns::of;
use crate::model::program::{Program, Terms};
use crate::model::setting::Setting;

use super::crowds::Crowd;

/// What is held of an ingredient where it is in the pot.
pub struct Floor<'a> {
    /// The fewest blocks of each candidate that is made.
    pub fewest: &'a [u32],
    /// A share of the target at low yield that all ingredients have, beside their own least shares.
    pub share: f64,
}

/// Adds the rows of least shares.
pub fn add_least(program: &mut Program, setting: &Setting<'_>, crowds: &[Crowd]) {
    let all = setting.candidates.all.iter();
    let fewest: Vec<u32> = all.map(|c| c.amounts.blocks.0).collect();
    let floor = Floor {
        fewest: &fewest,
        share: 0.0,
    };
    add_rows(program, setting, crowds, &floor);
}

/// Adds for each crowd the rows that follow from what its ingredients want in all:
///
/// - the strips of all that are in the pot, and of plantings that are made, are at most its strips;
/// - so no more ingredients are in the pot than those that want fewest.
pub fn add_rows(program: &mut Program, setting: &Setting<'_>, crowds: &[Crowd], floor: &Floor<'_>) {
    let mut rows: Vec<(Terms, f64)> = Vec::new();
    for crowd in crowds {
        let strips = f64::from(crowd.strips());
        let wanted: Vec<(IngredientAt, u32)> = setting
            .garden
            .ingredient_positions()
            .filter_map(|at| Some((at, least_strips(setting, crowd, at, floor)?)))
            .collect();
        let several = |at: IngredientAt| setting.garden[at].most_plantings() > 1;
        if !wanted.iter().any(|(at, _)| several(*at)) {
            continue;
        }
        let in_pot = |at: IngredientAt| setting.columns.in_pot[at.0];
        let of_several = wanted.iter().filter(|(at, _)| several(*at));
        let mut row: Terms = of_several
            .map(|(at, strips)| (in_pot(*at), f64::from(*strips)))
            .collect();
        let made = crowd.own(setting).filter(|(_, c)| !several(c.ingredient));
        row.extend(made.map(|(k, c)| {
            let strips = floor.fewest[k.0] * c.amounts.block.strips;
            (setting.columns.made[k.0], f64::from(strips))
        }));
        rows.push((row, strips));
        let most = most_together(&wanted, crowd.strips());
        if most < wanted.len() {
            let all = wanted.iter().map(|(at, _)| (in_pot(*at), 1.0));
            rows.push((all.collect(), most as f64));
        }
    }
    for (k, (row, rhs)) in rows.iter().enumerate() {
        if program.greatest(row) > *rhs && !rows[..k].contains(&(row.clone(), *rhs)) {
            program.at_most(row.clone(), *rhs);
        }
    }
}

/// How many ingredients fit at the most, if those that want fewest strips go first.
fn most_together(wanted: &[(IngredientAt, u32)], strips: u32) -> usize {
    let mut each: Vec<u32> = wanted.iter().map(|(_, strips)| *strips).collect();
    each.sort_unstable();
    let mut left = strips;
    let fits = |wanted: &u32| {
        let fits = *wanted <= left;
        left = left.saturating_sub(*wanted);
        fits
    };
    each.into_iter().take_while(fits).count()
}

/// The strips that an ingredient takes in a crowd at the least where it is in the pot; `None` if it
/// may be grown outside of the crowd.
fn least_strips(
    setting: &Setting<'_>,
    crowd: &Crowd,
    at: IngredientAt,
    floor: &Floor<'_>,
) -> Option<u32> {
    let ingredient = &setting.garden[at];
    let own = || of(setting.candidates, at);
    if own().next().is_none() || own().any(|(_, c)| !crowd.has(c)) {
        return None;
    }
    let strips = |c: &Candidate| c.amounts.block.strips;
    if ingredient.most_plantings() == 1 {
        return own().map(|(k, c)| floor.fewest[k.0] * strips(c)).min();
    }
    let share = ingredient.least_share.0.max(floor.share);
    let target = ingredient.target(setting.garden.feast.portions);
    // Strips for a kilogram where they give most of it, and so for all, in whole blocks.
    let for_one = own().map(|(_, c)| f64::from(strips(c)) / c.amounts.low.0);
    let in_parts = for_one.fold(f64::INFINITY, f64::min) * target.0 * share;
    let unit = own().map(|(_, c)| strips(c)).min().unwrap_or(1).max(1);
    let alike = own().all(|(_, c)| strips(c) == unit);
    let whole = (in_parts * (1.0 - 1e-9) - 1e-9).ceil().max(0.0) as u32;
    Some(if alike {
        whole.next_multiple_of(unit)
    } else {
        whole
    })
}
