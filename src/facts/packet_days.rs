//! What hangs on packet days: at which mean temperature they are taken to hold, and what becomes
//! of the plan if they are a tenth out.

use std::collections::BTreeMap;

use crate::checker::{self, DaysOut, IngredientReplay};
use crate::garden::{Ingredient, IngredientAt, Method, Source};
use crate::growth::Unready;
use crate::growth::requirement::days_at;
use crate::plan::Planting;
use crate::units::{Celsius, DegreeDays};

use super::Facts;

/// By this share packet days are taken to be out.
pub const OUT_BY: f64 = checker::OUT_BY;

/// More years lost or won than one in so many are told one by one; fewer are noise.
const ONE_YEAR_IN: usize = 15;

/// Which way packet days are out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Out {
    /// Crops take fewer days.
    Fewer,
    /// Crops take more days.
    More,
}

/// The days until an ingredient is ripe.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Days {
    /// The days.
    pub days: f64,
    /// True if they are counted from planting, else from sowing.
    pub from_planting: bool,
    /// Published degree-days that stand in their place.
    pub warmth: Option<DegreeDays>,
    /// The mean temperature at which they hold.
    pub hold_at: Celsius,
    /// How many more it takes where it is a degree colder; `None`: it does not grow there.
    pub later: Option<u32>,
}

/// An ingredient with its days, and its ready years.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// Which.
    pub ingredient: IngredientAt,
    /// Its days; `None` where they are not known.
    pub days: Option<Days>,
    /// As planned.
    pub planned: usize,
    /// If it takes fewer days.
    pub fewer: usize,
    /// If it takes more days.
    pub more: usize,
}

/// An ingredient that is ready in many years more or fewer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Changed {
    /// Which.
    pub ingredient: IngredientAt,
    /// As planned.
    pub planned: usize,
    /// If packet days are out.
    pub ready: usize,
    /// What fails most often in the years that are lost, and whether other things do as well.
    pub why: Option<(Unready, bool)>,
}

/// What becomes of the plan if packet days are out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IfOut {
    /// Which way.
    pub out: Out,
    /// What changes much.
    pub changed: Vec<Changed>,
    /// The most that anything else changes, in years.
    pub others: usize,
    /// Ready years of the whole dish.
    pub dish: usize,
}

impl Facts<'_> {
    /// The ingredients that are grown, with their days.
    #[must_use]
    pub fn packet_rows(&self) -> Vec<Row> {
        let out = &self.replay.packet_days;
        let row = |(at, ingredient, seen): (IngredientAt, &Ingredient, &IngredientReplay)| {
            let planting = self.plantings_named(&ingredient.name).next();
            Row {
                ingredient: at,
                days: planting.and_then(|p| days(ingredient, self.counts_as_plants(p, ingredient))),
                planned: seen.ready_years(),
                fewer: out.fewer.ready_years(at.0),
                more: out.more.ready_years(at.0),
            }
        };
        let grown = self.ingredients().filter(|(_, i, _)| is_grown(i));
        grown.map(row).collect()
    }

    /// True if a planting's days are counted from planting.
    fn counts_as_plants(&self, planting: &Planting, ingredient: &Ingredient) -> bool {
        match (planting.method, ingredient.source) {
            (Method::Indoor | Method::Bought | Method::Seedlings, _) => true,
            (_, Source::Begun(at)) => self.garden[at].as_plants(),
            _ => false,
        }
    }

    /// What becomes of the plan if packet days are out.
    #[must_use]
    pub fn if_days_are_out(&self, out: Out) -> IfOut {
        let seen_out = self.days_out(out);
        let mut if_out = IfOut {
            out,
            changed: Vec::new(),
            others: 0,
            dish: seen_out.dish_if_all,
        };
        for (at, _, seen) in self.ingredients().filter(|(_, i, _)| is_grown(i)) {
            let (planned, ready) = (seen.ready_years(), seen_out.ready_years(at.0));
            let change = planned.abs_diff(ready);
            if change * ONE_YEAR_IN > self.years() {
                if_out.changed.push(Changed {
                    ingredient: at,
                    planned,
                    ready,
                    why: why(seen_out, at, seen),
                });
            } else {
                if_out.others = if_out.others.max(change);
            }
        }
        if_out
    }

    fn days_out(&self, out: Out) -> &DaysOut {
        match out {
            Out::Fewer => &self.replay.packet_days.fewer,
            Out::More => &self.replay.packet_days.more,
        }
    }

    /// The worse way for an ingredient, with the ready years that it leaves, if that costs much.
    #[must_use]
    pub fn at_risk_of_days(
        &self,
        at: IngredientAt,
        seen: &IngredientReplay,
    ) -> Option<(Out, usize)> {
        let ways = [Out::More, Out::Fewer];
        let ready = ways.map(|out| (out, self.days_out(out).ready_years(at.0)));
        let (out, ready) = ready.into_iter().min_by_key(|(_, ready)| *ready)?;
        let lost = seen.ready_years().saturating_sub(ready);
        (lost * ONE_YEAR_IN > self.years()).then_some((out, ready))
    }
}

/// True if it has days to ripe at all.
fn is_grown(ingredient: &Ingredient) -> bool {
    !matches!(ingredient.source, Source::Patch(_))
}

fn days(ingredient: &Ingredient, from_planting: bool) -> Option<Days> {
    let ripening = &ingredient.crop.ripening;
    let at = |mean| days_at(&ingredient.crop, from_planting, mean);
    let days = at(ripening.reference)?;
    let colder = at(ripening.reference - Celsius(1.0));
    Some(Days {
        days,
        from_planting,
        warmth: ripening.thermal_from_sowing.filter(|_| !from_planting),
        hold_at: ripening.reference,
        later: colder.map(|colder| (colder - days).round().max(0.0) as u32),
    })
}

/// What fails most often in the years that are lost; of two, what comes nearest to the pot.
fn why(out: &DaysOut, at: IngredientAt, seen: &IngredientReplay) -> Option<(Unready, bool)> {
    if out.ready_years(at.0) >= seen.ready_years() {
        return None;
    }
    let now = out.ready.get(at.0).into_iter().flatten();
    let years = seen.ready.iter().zip(now);
    let lost = years.filter(|(planned, _)| planned.is_ok());
    let mut reasons: BTreeMap<Unready, usize> = BTreeMap::new();
    for why in lost.filter_map(|(_, now)| now.err()) {
        *reasons.entry(why).or_default() += 1;
    }
    let most = reasons.iter().max_by_key(|(why, n)| (**n, **why));
    most.map(|(why, _)| (*why, reasons.len() > 1))
}
