//! What becomes of a crop at a place, for every day on which it could be started: the fates of
//! `CropSeason` over all years of the record, each grown on into the next.

use crate::calendar::{Date, Horizon, monday_of, plus_days};
use crate::garden::{Crop, Microclimate, OPEN_GROUND};
use crate::units::{Celsius, Latitude};
use crate::weather::Record;
use crate::weather::rank::nearest_rank;

use super::light::Light;
use super::season::{CropSeason, Fate, Loss};

/// Weeks in which a crop is started.
const START_WEEKS: usize = 52;

/// Weeks that are looked at: a year of starts, and a year for the last of them to ripen; one
/// week less, so that two calendar years hold them whole.
const WEEKS: usize = 2 * START_WEEKS - 1;

/// Weeks between the starts that are shown.
const EVERY_WEEKS: usize = 2;

/// How a crop is started in the bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Seed, or pieces, sets and cloves, in the bed.
    Sown,
    /// Plants set out.
    Planted,
}

/// A crop in open ground without a cover, through all years of a record.
#[derive(Debug, Clone)]
pub struct Outlook {
    horizon: Horizon,
    seasons: Vec<CropSeason>,
    /// The most days until what is sown must be up; `None` for sets and cloves, which wait.
    up_within: Option<u32>,
}

/// What becomes of it when it is started on one day. All days are days after the start.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Start {
    /// The day of the start.
    pub day: Date,
    /// Days until it is ripe, of the years in which it gets ripe before it is lost, least
    /// first.
    pub ripe: Vec<usize>,
    /// Days until seed is up, of the years in which it comes up, least first.
    pub up: Vec<usize>,
    /// Years in which the ground is too cold, or what waits in it never comes up.
    pub not_up: usize,
    /// Years in which seed rots before it is up.
    pub rotted: usize,
    /// Years in which frost kills it before it is ripe.
    pub frost: usize,
    /// Years in which it bolts before it is ripe.
    pub bolted: usize,
    /// Years in which heat ends it before it is ripe.
    pub hot: usize,
    /// Years in which it lives and does not get ripe.
    pub not_ripe: usize,
}

impl Start {
    /// How many years there are.
    #[must_use]
    pub fn years(&self) -> usize {
        let lost = self.not_up + self.rotted + self.frost + self.bolted + self.hot;
        self.ripe.len() + lost + self.not_ripe
    }

    /// The day by which it is ripe in a share of the years in which it gets ripe.
    #[must_use]
    pub fn ripe_by(&self, share: f64) -> Option<Date> {
        Some(plus_days(self.day, nearest_rank(&self.ripe, share)? as i64))
    }
}

impl Outlook {
    /// Grows a crop through all years of a record. `year` is the calendar year in which the
    /// days are named.
    #[must_use]
    pub fn new(crop: &Crop, record: &Record, latitude: Latitude, year: i32) -> Self {
        let (month, day) = if latitude.0 < 0.0 { (7, 7) } else { (1, 7) };
        let first = Date::from_ymd_opt(year, month, day).map_or(record.first(), monday_of);
        let horizon = Horizon::spanning(first, plus_days(first, WEEKS as i64 * 7 - 1));
        let open = Microclimate {
            frost_kept_off: Celsius(0.0),
            soil_bonus: OPEN_GROUND,
        };
        let light = Light::of(latitude, horizon);
        let seasons = record
            .years(horizon)
            .iter()
            .map(|weather| CropSeason::new(crop, open, weather, &light))
            .collect();
        Self {
            horizon,
            seasons,
            up_within: crop.ground.rots_after,
        }
    }

    /// The days within which what is sown in the bed comes up or rots; `None` for sets and cloves,
    /// which wait in the ground for warmth.
    #[must_use]
    pub fn up_within(&self) -> Option<u32> {
        self.up_within
    }

    /// How many years the record holds, each with the one after it.
    #[must_use]
    pub fn years(&self) -> usize {
        self.seasons.len()
    }

    /// What becomes of the starts of a whole year, every two weeks.
    #[must_use]
    pub fn starts(&self, way: Way) -> Vec<Start> {
        (0..START_WEEKS)
            .step_by(EVERY_WEEKS)
            .map(|week| self.start(way, week * 7))
            .collect()
    }

    fn start(&self, way: Way, day: usize) -> Start {
        let mut start = Start {
            day: self.horizon.date(day),
            ripe: Vec::new(),
            up: Vec::new(),
            not_up: 0,
            rotted: 0,
            frost: 0,
            bolted: 0,
            hot: 0,
            not_ripe: 0,
        };
        for fate in self.seasons.iter().map(|season| fate(season, way, day)) {
            start.up.extend(fate.up.map(|up| up - day));
            match (fate.up, fate.ripe, fate.gone) {
                (None, _, Some((_, Loss::Rotted))) => start.rotted += 1,
                (None, _, _) => start.not_up += 1,
                (_, Some(ripe), _) => start.ripe.push(ripe - day),
                (_, _, Some((_, Loss::Frost))) => start.frost += 1,
                (_, _, Some((_, Loss::Bolted))) => start.bolted += 1,
                (_, _, Some((_, Loss::Heat))) => start.hot += 1,
                (_, None, _) => start.not_ripe += 1,
            }
        }
        start.ripe.sort_unstable();
        start.up.sort_unstable();
        start
    }

    /// The first day of the warming half-year on which a start is safe in nine years of ten:
    /// the ground is warm enough, what is sown comes up, and no frost kills it before the half-year is
    /// over. `None` if there is no such day.
    #[must_use]
    pub fn first_safe(&self, way: Way) -> Option<Date> {
        let half = START_WEEKS * 7 / 2;
        (0..half)
            .find(|day| {
                let safe = |season: &&CropSeason| {
                    let fate = fate(season, way, *day);
                    let killed = matches!(fate.gone, Some((gone, Loss::Frost)) if gone < half);
                    fate.up.is_some() && !killed
                };
                let safe_years = self.seasons.iter().filter(safe).count();
                safe_years > 0 && safe_years * 10 >= self.seasons.len() * 9
            })
            .map(|day| self.horizon.date(day))
    }

    /// True if a day is the first that is looked at.
    #[must_use]
    pub fn begins_on(&self, day: Date) -> bool {
        self.horizon.first() == day
    }
}

fn fate(season: &CropSeason, way: Way, day: usize) -> Fate {
    match way {
        Way::Sown => season.sown(day),
        Way::Planted => season.planted(day),
    }
}
