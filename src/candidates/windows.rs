//! Pick windows: which sessions to keep free for the harvest, and in which weather years the
//! pick rule then brings it in.

use chrono::Weekday;

use crate::calendar::{Date, plus_days};
use crate::garden::{Care, Crop, Garden, IngredientAt, Method, Microclimate};
use crate::growth::{CropSeason, Fate, picked_and_kept};

use super::rounds::{PickDay, Round};
use super::years::YearSet;

/// The most rounds that a window keeps free.
const LONGEST_WINDOW: usize = 6;

/// A pick window with the years in which it brings the harvest in.
#[derive(Debug, Clone)]
pub struct Window {
    /// Its picks in order of time.
    pub picks: Vec<PickDay>,
    /// The years in which every part is picked and keeps until the feast.
    pub ready: YearSet,
}

/// The crop's seasons in one microclimate, one per weather year.
pub struct Seasons {
    each: Vec<CropSeason>,
    as_plants: bool,
    picking: crate::garden::Picking,
    first_day: Date,
    eaten: usize,
}

impl Seasons {
    /// Prepares a crop's seasons for a way of growing.
    #[must_use]
    pub fn new(garden: &Garden, crop: &Crop, microclimate: Microclimate, as_plants: bool) -> Self {
        let horizon = garden.horizon();
        let each = garden
            .weather
            .years(horizon)
            .iter()
            .map(|year| CropSeason::new(crop, microclimate, year, garden.latitude, horizon))
            .collect();
        Self {
            each,
            as_plants,
            picking: crop.picking,
            first_day: horizon.first(),
            eaten: horizon
                .day_number(garden.feast.day)
                .unwrap_or(horizon.days()),
        }
    }

    /// How many weather years.
    #[must_use]
    pub fn years(&self) -> usize {
        self.each.len()
    }

    /// The fate in each year of what starts in the bed on a day.
    #[must_use]
    pub fn fates(&self, start: Date) -> Vec<Fate> {
        let day = self.number(start);
        let fate = |s: &CropSeason| {
            if self.as_plants {
                s.planted(day)
            } else {
                s.sown(day)
            }
        };
        self.each.iter().map(fate).collect()
    }

    /// The same of what was begun before the plan.
    #[must_use]
    pub fn fates_of_begun(&self, since: Date) -> Vec<Fate> {
        let day = self.number(since);
        let begun = |s: &CropSeason| s.begun(day, self.as_plants);
        self.each.iter().map(begun).collect()
    }

    /// The years in which every part, given its fates, is picked in a window and keeps.
    #[must_use]
    pub fn ready(&self, fates_of_parts: &[Vec<Fate>], picks: &[PickDay]) -> YearSet {
        let parts = fates_of_parts
            .len()
            .max(picks.iter().map(PickDay::parts).max().unwrap_or(1));
        let days: Vec<Vec<usize>> = (0..parts)
            .map(|j| {
                picks
                    .iter()
                    .map(|p| self.number(p.day_of_part(j)))
                    .collect()
            })
            .collect();
        YearSet::of(self.years(), |year| {
            days.iter().enumerate().all(|(j, days)| {
                let fate = &fates_of_parts[j % fates_of_parts.len()][year];
                picked_and_kept(fate, &self.picking, days, self.eaten).is_ok()
            })
        })
    }

    fn number(&self, day: Date) -> usize {
        usize::try_from((day - self.first_day).num_days()).unwrap_or(0)
    }
}

/// True if what starts in the bed starts as plants.
#[must_use]
pub fn starts_as_plants(method: Method) -> bool {
    matches!(method, Method::Indoor | Method::Bought)
}

/// All picks that leave time to cure before delivery and keep until the feast, by last day.
#[must_use]
pub fn pick_days(garden: &Garden, at: IngredientAt, rounds: &[Round]) -> Vec<PickDay> {
    let picking = garden[at].crop.picking;
    let cure = i64::from(picking.cure_days);
    let keeps = cure + i64::from(picking.storage_days);
    let mut days: Vec<PickDay> = rounds.iter().cloned().map(PickDay::Round).collect();
    days.extend(family_days(garden).map(PickDay::Families));
    days.retain(|d| {
        plus_days(d.last(), cure) <= garden.feast.deliver_by
            && plus_days(d.first(), keeps) >= garden.feast.day
    });
    days.sort_by_key(|d| (d.last(), d.first()));
    days
}

/// The Saturdays of breaks in which families care.
pub fn family_days(garden: &Garden) -> impl Iterator<Item = Date> {
    garden
        .school_year
        .breaks
        .iter()
        .filter(|b| b.care == Care::Families)
        .flat_map(|b| {
            crate::calendar::days_between(b.from, b.to)
                .filter(|d| chrono::Datelike::weekday(d) == Weekday::Sat)
        })
}

/// The windows worth considering for a planting that starts in the bed in `start`: for every
/// last pick the longest chain of picks before it, with and without families.
#[must_use]
pub fn windows(seasons: &Seasons, start: &Round, pick_days: &[PickDay]) -> Vec<Window> {
    let fates: Vec<Vec<Fate>> = (0..start.visits.len())
        .map(|j| seasons.fates(start.day_of_part(j)))
        .collect();
    windows_of(seasons, &fates, start.last(), pick_days)
}

/// The same for fates already known, of something in the bed since `since`.
#[must_use]
pub fn windows_of(
    seasons: &Seasons,
    fates: &[Vec<Fate>],
    since: Date,
    pick_days: &[PickDay],
) -> Vec<Window> {
    let Some(earliest) = fates.iter().flatten().filter_map(|f| f.ripe).min() else {
        return Vec::new();
    };
    let useful: Vec<&PickDay> = pick_days
        .iter()
        .filter(|d| d.first() > since && seasons.number(d.last()) >= earliest)
        .collect();
    let children: Vec<&PickDay> = useful
        .iter()
        .copied()
        .filter(|d| matches!(d, PickDay::Round(_)))
        .collect();
    let mut chains: Vec<Vec<PickDay>> = Vec::new();
    for choice in [&useful, &children] {
        for last in 0..choice.len() {
            let chain = chain_before(choice, last);
            if !chains.contains(&chain) {
                chains.push(chain);
            }
        }
    }
    chains
        .into_iter()
        .map(|picks| Window {
            ready: seasons.ready(fates, &picks),
            picks,
        })
        .collect()
}

/// The chain of picks that ends with the pick at `last`, each wholly before the next.
fn chain_before(choice: &[&PickDay], last: usize) -> Vec<PickDay> {
    let mut chain = vec![choice[last].clone()];
    let mut first = choice[last].first();
    for day in choice[..last].iter().rev() {
        if chain.len() == LONGEST_WINDOW {
            break;
        }
        if day.last() < first {
            first = day.first();
            chain.push((*day).clone());
        }
    }
    chain.reverse();
    chain
}
