//! What a forecast of the next days asks for: which plants a frost would kill, what is to be picked before it,
//! days of heat, and whether rain comes.

use std::ops::RangeInclusive;

use crate::calendar::{Date, plus_days};
use crate::garden::{Bed, FrostResponse, Ingredient};
use crate::plan::{Planting, StepKind};
use crate::units::{Celsius, Millimetres};

use super::Facts;
use super::kept_picked::PickingTurns;
use super::spans::span_of;

/// A frost is reckoned with where so little more is forecast than a plant bears: forecasts err by a degree or two,
/// and on a clear night it is colder at the ground and in a hollow than where it is measured (common practice).
pub const DOUBT: Celsius = Celsius(2.0);

/// A cloth over what stands open keeps off about so much (common practice; extension services tell 2 to 4 C of fleece).
pub const CLOTH: Celsius = Celsius(2.0);

/// From here on children's work and young plants need care (common practice; from memory).
pub const HOT: Celsius = Celsius(30.0);

/// What was set out so few days ago has few roots.
const YOUNG: i64 = 14;

/// What is ripe within so many days is picked before a frost.
const NEARLY_RIPE: i64 = 7;

/// Rain is told from so many days on.
const ENOUGH_DAYS: usize = 3;

/// What is expected of one day, as far as it is known. The lowest is that of the night to it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Expected {
    /// Lowest temperature.
    pub low: Option<Celsius>,
    /// Highest temperature.
    pub high: Option<Celsius>,
    /// Rain.
    pub rain: Option<Millimetres>,
}

/// What the next days ask for.
#[derive(Debug, Clone, PartialEq)]
pub struct Ahead<'a> {
    /// The nights on which something is in danger or to be brought in, in order; nights in a row that ask for the same
    /// are one. Where there is none, the coldest that is near freezing.
    pub cold: Vec<Cold<'a>>,
    /// The hot days with their highest temperature.
    pub hot: Vec<(Date, Celsius)>,
    /// What was set out lately, and its beds, where it is hot.
    pub young: Vec<(&'a str, Vec<&'a str>)>,
    /// Rain until a day, where it is told for some days.
    pub rain: Option<(Millimetres, Date)>,
}

/// A cold night, or several in a row.
#[derive(Debug, Clone, PartialEq)]
pub struct Cold<'a> {
    /// The days on whose mornings it is coldest, first and last.
    pub days: (Date, Date),
    /// The lowest temperature.
    pub low: Celsius,
    /// What it could kill.
    pub in_danger: Vec<InDanger<'a>>,
    /// What hardens off outdoors.
    pub outdoors: Vec<&'a str>,
}

impl Cold<'_> {
    fn asks_for_nothing(&self) -> bool {
        self.in_danger.is_empty() && self.outdoors.is_empty()
    }
}

/// A crop that a night could kill.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct InDanger<'a> {
    /// Its name.
    pub ingredient: &'a str,
    /// The beds in which it stands open, and a cloth saves it.
    pub open: Vec<&'a str>,
    /// The beds whose cover saves it.
    pub covered: Vec<&'a str>,
    /// The beds in which it is killed even under a cloth, or under the cover.
    pub lost: Vec<&'a str>,
    /// True if it is, or is nearly, ready to pick.
    pub ripe: bool,
}

/// What stands in a bed on a day.
struct Standing<'a> {
    planting: &'a Planting,
    ingredient: &'a Ingredient,
    bed: &'a Bed,
    since: Date,
}

impl<'a> Facts<'a> {
    /// What the next days ask for, by a plan.
    #[must_use]
    pub fn ahead(&self, forecast: &[(Date, Expected)]) -> Ahead<'a> {
        let bearing = self.kept_picked();
        let nights: Vec<Cold<'a>> = forecast
            .iter()
            .filter_map(|(day, expected)| Some(self.cold(*day, expected.low?, bearing)))
            .collect();
        let (quiet, pressing): (Vec<_>, Vec<_>) =
            nights.into_iter().partition(Cold::asks_for_nothing);
        let mut cold = in_a_row(pressing);
        if cold.is_empty() {
            let near = quiet
                .into_iter()
                .filter(|night| is_near_freezing(night.low));
            // Of nights that are as cold the first.
            cold.extend(near.min_by(|a, b| a.low.0.total_cmp(&b.low.0)));
        }
        let hot: Vec<(Date, Celsius)> = forecast
            .iter()
            .filter_map(|(day, expected)| Some((*day, expected.high.filter(|high| *high >= HOT)?)))
            .collect();
        let young = hot
            .first()
            .map_or_else(Vec::new, |(day, _)| self.young(*day));
        let rain: Vec<(Date, Millimetres)> = forecast
            .iter()
            .filter_map(|(day, expected)| Some((*day, expected.rain?)))
            .collect();
        let enough = rain.len() >= ENOUGH_DAYS;
        let sum = rain.iter().map(|(_, rain)| rain.0).sum();
        Ahead {
            cold,
            hot,
            young,
            rain: rain
                .last()
                .filter(|_| enough)
                .map(|(day, _)| (Millimetres(sum), *day)),
        }
    }

    fn cold(&self, day: Date, low: Celsius, bearing: &[PickingTurns<'_>]) -> Cold<'a> {
        let soon = plus_days(day, NEARLY_RIPE);
        let mut in_danger: Vec<InDanger<'a>> = Vec::new();
        for standing in self.standing_on(day) {
            let Standing {
                planting,
                ingredient,
                bed,
                ..
            } = standing;
            let limit = ingredient.crop.frost_limit;
            let picks = span_of(planting, StepKind::Pick);
            let safe = ingredient.crop.picking.safe_underground
                && picks.is_some_and(|(first, _)| first <= day);
            let killed = matches!(ingredient.crop.frost, FrostResponse::Killed);
            if safe || !killed || low - DOUBT >= limit {
                continue;
            }
            let known = in_danger
                .iter()
                .position(|one| one.ingredient == ingredient.name);
            let at = known.unwrap_or_else(|| {
                in_danger.push(InDanger {
                    ingredient: &ingredient.name,
                    open: Vec::new(),
                    covered: Vec::new(),
                    lost: Vec::new(),
                    ripe: false,
                });
                in_danger.len() - 1
            });
            let Some(one) = in_danger.get_mut(at) else {
                continue;
            };
            let (beds, kept_off) = match &bed.cover {
                Some(cover) => (&mut one.covered, cover.keeps_off),
                None => (&mut one.open, CLOTH),
            };
            let beds = match low + kept_off < limit {
                true => &mut one.lost,
                false => beds,
            };
            if !beds.contains(&bed.id.as_str()) {
                beds.push(&bed.id);
            }
            let bears = |turns: &PickingTurns<'_>| turns.planting == planting && turns.from <= soon;
            one.ripe |= bearing.iter().any(bears) || picks.is_some_and(|(first, _)| first <= soon);
        }
        let outdoors = match is_near_freezing(low) {
            true => self.hardening_on(day),
            false => Vec::new(),
        };
        Cold {
            days: (day, day),
            low,
            in_danger,
            outdoors,
        }
    }

    /// What hardens off in the night to a day.
    fn hardening_on(&self, day: Date) -> Vec<&'a str> {
        let mut names: Vec<&str> = Vec::new();
        for planting in &self.plan.plantings {
            let span = span_of(planting, StepKind::Harden);
            let name = planting.ingredient.as_str();
            if span.is_some_and(|(from, to)| from < day && day <= plus_days(to, 1))
                && !names.contains(&name)
            {
                names.push(name);
            }
        }
        names
    }

    /// What was set out in the last days before a day.
    fn young(&self, day: Date) -> Vec<(&'a str, Vec<&'a str>)> {
        let mut young: Vec<(&str, Vec<&str>)> = Vec::new();
        let standing = self.standing_on(day).into_iter();
        for one in standing.filter(|one| (day - one.since).num_days() <= YOUNG) {
            let (name, bed) = (one.ingredient.name.as_str(), one.bed.id.as_str());
            match young.iter_mut().find(|(known, _)| *known == name) {
                Some((_, beds)) if !beds.contains(&bed) => beds.push(bed),
                Some(_) => {}
                None => young.push((name, vec![bed])),
            }
        }
        young
    }

    /// What stands in the beds on a day and is not picked for the last time before.
    fn standing_on(&self, day: Date) -> Vec<Standing<'a>> {
        let (garden, plan) = (self.garden, self.plan);
        let beds = self.carried().into_iter();
        let dated = beds.flat_map(|bed| bed.stands.into_iter().map(move |stand| (bed.bed, stand)));
        let here = dated.filter(|(_, stand)| (stand.from..=stand.to).contains(&day));
        here.flat_map(|(bed, stand)| {
            let plantings = stand.stand.plantings.clone().into_iter();
            plantings.filter_map(move |at| {
                let planting = plan.plantings.get(at.0)?;
                let ingredient = garden
                    .ingredients
                    .get(garden.ingredient_named(&planting.ingredient)?.0)?;
                let last = span_of(planting, StepKind::Pick).map_or(stand.to, |(_, last)| last);
                let days: RangeInclusive<Date> = stand.from..=last;
                days.contains(&day).then_some(Standing {
                    planting,
                    ingredient,
                    bed: &garden[bed],
                    since: stand.from,
                })
            })
        })
        .collect()
    }
}

/// Air at the ground may freeze.
fn is_near_freezing(low: Celsius) -> bool {
    low - DOUBT <= Celsius(0.0)
}

/// Nights in a row that ask for the same as one.
fn in_a_row(nights: Vec<Cold<'_>>) -> Vec<Cold<'_>> {
    let mut rows: Vec<Cold<'_>> = Vec::new();
    for night in nights {
        match rows.last_mut() {
            Some(row)
                if plus_days(row.days.1, 1) == night.days.0
                    && row.in_danger == night.in_danger
                    && row.outdoors == night.outdoors =>
            {
                row.days.1 = night.days.1;
                row.low = row.low.min(night.low);
            }
            _ => rows.push(night),
        }
    }
    rows
}
