//! Pick windows: which sessions to keep free for the harvest, and in which weather years the
//! pick rule then brings it in.

use std::collections::BTreeSet;

use chrono::Weekday;

use crate::calendar::{Date, plus_days};
use crate::garden::{Care, Crop, Garden, IngredientAt, Microclimate};
use crate::growth::{CropSeason, Fate, Light, PickingDays, picked_and_kept};

use super::going_on::PrintedPicks;
use super::rounds::{PickDay, Round};
use super::years::YearSet;

/// The most rounds that a window keeps free.
const LONGEST_WINDOW: usize = 6;

/// So many picks a window keeps where it has them: one, and one to spare.
const FEWEST_PICKS: usize = 2;

/// How far packet days may be out, either way, without a window's losing years by a later beginning.
const PACKET_OUT: f64 = 0.1;

/// A pick window with the years in which it brings the harvest in.
#[derive(Debug, Clone)]
pub struct Window {
    /// Its picks in order of time.
    pub picks: Vec<PickDay>,
    /// The years in which every part is picked and keeps until the feast.
    pub ready: YearSet,
}

/// How something comes to grow in the bed.
#[derive(Debug, Clone, Copy)]
pub enum Beginning<'a> {
    /// The classes start it, each its part, in a round.
    Start(&'a Round),
    /// It was begun on a day before the plan.
    Given(Date),
}

impl Beginning<'_> {
    /// The day from which on all of it is in the bed.
    fn since(self) -> Date {
        match self {
            Self::Start(round) => round.last(),
            Self::Given(day) => day,
        }
    }
}

/// Per part, then per weather year.
type Fates = Vec<Vec<Fate>>;

/// The crop's seasons in one microclimate, one per weather year, and the same for a crop that is a tenth
/// quicker or slower than its packet says.
pub struct Seasons {
    usual: Vec<CropSeason>,
    packet_out: [Vec<CropSeason>; 2],
    as_plants: bool,
    picking: crate::garden::Picking,
    put_by: bool,
    first_day: Date,
    deliver_by: Date,
    eaten: usize,
}

impl Seasons {
    /// Prepares a crop's seasons for a way of growing.
    #[must_use]
    pub fn new(garden: &Garden, crop: &Crop, microclimate: Microclimate, as_plants: bool) -> Self {
        let horizon = garden.horizon();
        let years = garden.weather.years(horizon);
        let light = Light::of(garden.latitude, horizon);
        let picked = PickingDays::of(garden);
        let season = |crop: &Crop, year| {
            CropSeason::new(crop, microclimate, year, &light).picked_on(&picked)
        };
        let taking = |factor: f64| {
            let mut crop = crop.clone();
            crop.ripening = crop.ripening.taking(factor);
            years.iter().map(|year| season(&crop, year)).collect()
        };
        Self {
            usual: years.iter().map(|year| season(crop, year)).collect(),
            packet_out: [1.0 - PACKET_OUT, 1.0 + PACKET_OUT].map(taking),
            as_plants,
            picking: crop.picking,
            put_by: crop.is_put_by(),
            first_day: horizon.first(),
            deliver_by: garden.feast.deliver_by,
            eaten: horizon
                .day_number(garden.feast.day)
                .unwrap_or(horizon.days()),
        }
    }

    /// How many weather years.
    #[must_use]
    pub fn years(&self) -> usize {
        self.usual.len()
    }

    /// The fate in each year of what starts in the bed on a day.
    #[must_use]
    pub fn fates(&self, start: Date) -> Vec<Fate> {
        self.started(&self.usual, start)
    }

    fn started(&self, seasons: &[CropSeason], start: Date) -> Vec<Fate> {
        let day = self.number(start);
        let fate = |s: &CropSeason| {
            if self.as_plants {
                s.planted_when_fit(day)
            } else {
                s.sown_when_fit(day)
            }
        };
        seasons.iter().map(fate).collect()
    }

    /// The fates of all parts of what begins so.
    fn fates_of(&self, seasons: &[CropSeason], beginning: Beginning<'_>) -> Fates {
        match beginning {
            Beginning::Start(round) => (0..round.visits.len())
                .map(|part| self.started(seasons, round.day_of_part(part)))
                .collect(),
            Beginning::Given(day) => {
                let day = self.number(day);
                let begun = |s: &CropSeason| s.begun(day, self.as_plants);
                vec![seasons.iter().map(begun).collect()]
            }
        }
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

/// All picks that leave time to cure before delivery and keep until the feast, by last day.
#[must_use]
pub fn pick_days(garden: &Garden, at: IngredientAt, rounds: &[Round]) -> Vec<PickDay> {
    let mut days: Vec<PickDay> = rounds.iter().cloned().map(PickDay::Round).collect();
    days.extend(family_days(garden).map(PickDay::Families));
    days.retain(|d| d.first() >= garden.as_of() && serves_feast(garden, at, d));
    days.sort_by_key(|d| (d.last(), d.first()));
    days
}

/// True if a pick leaves time to cure before delivery and keeps until the feast.
#[must_use]
pub fn serves_feast(garden: &Garden, at: IngredientAt, pick: &PickDay) -> bool {
    let (picking, feast) = (garden[at].crop.picking, garden.feast);
    let cure = i64::from(picking.cure_days);
    let keeps = cure + i64::from(picking.storage_days);
    plus_days(pick.last(), cure) <= feast.deliver_by && plus_days(pick.first(), keeps) >= feast.day
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

/// The windows worth considering for a planting, of which some picks may be printed: those that have begun are given, and
/// the picks as they were printed are a window, whatever the others are.
#[must_use]
pub fn windows(
    seasons: &Seasons,
    beginning: Beginning<'_>,
    (printed, pick_days): (&PrintedPicks, &[PickDay]),
) -> Vec<Window> {
    let fates = seasons.fates_of(&seasons.usual, beginning);
    let mut windows = match printed.begun.is_empty() {
        true => first_windows(seasons, beginning, &fates, pick_days),
        false => windows_after(seasons, &fates, &printed.begun, pick_days),
    };
    let picks = [&printed.begun[..], &printed.open].concat();
    if !picks.is_empty() && windows.iter().all(|other| other.picks != picks) {
        let ready = seasons.ready(&fates, &picks);
        windows.push(Window { picks, ready });
    }
    // Picks that are given may be too late by now.
    let cure = i64::from(seasons.picking.cure_days);
    let in_time = |last: &PickDay| plus_days(last.last(), cure) <= seasons.deliver_by;
    windows.retain(|window| window.picks.last().is_some_and(in_time));
    windows
}

/// The windows of a planting of which nobody has picked: for every last pick the longest chain of picks before
/// it, with and without families, but begun as late as loses nothing; of what is put by ended as early.
fn first_windows(
    seasons: &Seasons,
    beginning: Beginning<'_>,
    fates: &Fates,
    pick_days: &[PickDay],
) -> Vec<Window> {
    let Some(earliest) = fates.iter().flatten().filter_map(|f| f.ripe).min() else {
        return Vec::new();
    };
    let packet_out = seasons.packet_out.each_ref();
    let packet_out = packet_out.map(|s| seasons.fates_of(s, beginning));
    let since = beginning.since();
    let useful = |d: &&PickDay| d.first() > since && seasons.number(d.last()) >= earliest;
    let mut seen = BTreeSet::new();
    let mut windows = Vec::new();
    for chain in chains(pick_days.iter().filter(useful)) {
        let window = trimmed(seasons, fates, &packet_out, &chain);
        if seen.insert(window.picks.clone()) {
            windows.push(window);
        }
    }
    windows
}

/// The windows of a planting of which somebody has picked already: these picks, with or without a chain of those that are
/// still open.
fn windows_after(
    seasons: &Seasons,
    fates: &Fates,
    begun: &[PickDay],
    pick_days: &[PickDay],
) -> Vec<Window> {
    let since = begun.iter().map(PickDay::last).max();
    let open = pick_days.iter().filter(|d| Some(d.first()) > since);
    let none = std::iter::once(Vec::new());
    let window = |more: Vec<PickDay>| {
        let picks = [begun, &more].concat();
        Window {
            ready: seasons.ready(fates, &picks),
            picks,
        }
    };
    none.chain(chains(open)).map(window).collect()
}

/// For every last pick the longest chain of picks before it, with and without families, each once.
fn chains<'d>(days: impl Iterator<Item = &'d PickDay>) -> Vec<Vec<PickDay>> {
    let all: Vec<&PickDay> = days.collect();
    let of_children = |d: &&&PickDay| matches!(d, PickDay::Round(_));
    let children: Vec<&PickDay> = all.iter().filter(of_children).copied().collect();
    let mut seen = BTreeSet::new();
    let choices = [&all, &children].into_iter();
    let mut chains: Vec<Vec<PickDay>> = choices
        .flat_map(|choice| (0..choice.len()).map(|last| chain_before(choice, last)))
        .collect();
    chains.retain(|chain| seen.insert(chain.clone()));
    chains
}

/// The chain without the first picks that bring nothing: without them it is ready in the same years, also if
/// its packet days are out either way. So it is picked fresh, and those who pick are free until then. What is put by
/// gains nothing in the bed: it goes without the last ones. Two picks stay, so that one can be missed.
fn trimmed(seasons: &Seasons, fates: &Fates, packet_out: &[Fates; 2], chain: &[PickDay]) -> Window {
    let ready = seasons.ready(fates, chain);
    let out = packet_out
        .each_ref()
        .map(|fates| seasons.ready(fates, chain));
    let loses_nothing = |picks: &[PickDay]| {
        let mut out = packet_out.iter().zip(&out);
        seasons.ready(fates, picks) == ready
            && out.all(|(fates, ready)| seasons.ready(fates, picks) == *ready)
    };
    let mut picks = chain;
    while let ([_, rest @ ..], false) | ([rest @ .., _], true) = (picks, seasons.put_by)
        && rest.len() >= FEWEST_PICKS
        && loses_nothing(rest)
    {
        picks = rest;
    }
    Window {
        picks: picks.to_vec(),
        ready,
    }
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
