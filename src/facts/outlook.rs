//! What becomes of a crop at a garden's place in the weather years: which frosts harm it, when a
//! start is safe, and when it then gets ripe.

use crate::calendar::{Date, plus_days};
use crate::garden::{Crop, Garden, IndoorStart, Method};
use crate::growth::outlook as grown;
use crate::weather::cold_days::ColdDays;
use crate::weather::rank::nearest_rank;

use super::crop::{as_plants, in_bed};

/// A start that gets ripe in fewer than one of so many years is not told.
pub const HOPE: usize = crate::growth::HOPE;

/// Days after which seed in the ground is at risk from more than cold (common practice).
const LONG_IN_THE_GROUND: usize = 60;

/// How a crop is started in the bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    /// Seed.
    Sown,
    /// Pieces, sets or cloves.
    Pieces,
    /// Plants.
    Plants,
}

impl Way {
    /// True if what is started must come up first.
    #[must_use]
    pub fn comes_up(self) -> bool {
        match self {
            Self::Sown | Self::Pieces => true,
            Self::Plants => false,
        }
    }
}

/// The first day on which a start is safe in nine years of ten.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Safe {
    /// On no day of spring.
    Never,
    /// From the middle of winter on.
    FromMidwinter,
    /// From a day on.
    From(Date),
}

/// What becomes of a start on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Start {
    /// The day.
    pub day: Date,
    /// The days on which its plants are sown on the shelf for it, first and last.
    pub shelf: Option<(Date, Date)>,
    /// Days until it is up in the middle year; `None` for plants.
    pub up: Option<usize>,
    /// Of the years in which it gets ripe: the earliest day, that of half of them, the latest.
    pub ripe: [Option<Date>; 3],
    /// How many these years are.
    pub ripe_years: usize,
    /// All years.
    pub years: usize,
    /// What happened in the others, with the number of years.
    pub lost: [(Lost, usize); 4],
}

/// Why it does not get ripe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lost {
    /// Frost kills it.
    Frost,
    /// It does not come up.
    NotUp,
    /// It flowers.
    Bolted,
    /// It lives and is not ripe.
    NotRipe,
}

/// One way of starting it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WayAhead {
    /// Which.
    pub way: Way,
    /// The most days that seed should take to come up; `None` where it may wait for warmth.
    pub up_within: Option<usize>,
    /// When it is safe.
    pub safe: Safe,
    /// The starts of a year that get ripe often enough, every two weeks.
    pub starts: Vec<Start>,
    /// True if there are other starts, which do not.
    pub others: bool,
    /// True if any of the starts lies in the ground so long that it is at risk from more than cold.
    pub lies_long: bool,
}

/// The frosts that harm a crop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct HarmfulFrosts {
    /// Springs with one, and all springs.
    pub springs: (usize, usize),
    /// Autumns with one, and all autumns.
    pub autumns: (usize, usize),
    /// One spring in ten has one after this day.
    pub after: Option<Date>,
    /// One autumn in ten has one before this day.
    pub before: Option<Date>,
}

/// A crop at a place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outlook {
    /// Weather years, each grown on into the next.
    pub years: usize,
    /// The frosts that harm it.
    pub frosts: HarmfulFrosts,
    /// The ways in which it may be started.
    pub ways: Vec<WayAhead>,
}

impl Outlook {
    /// Grows a crop in open ground at a garden's place.
    #[must_use]
    pub fn of(garden: &Garden, crop: &Crop) -> Self {
        let year = chrono::Datelike::year(&garden.feast.day);
        let (record, latitude) = (&garden.weather, garden.latitude);
        let outlook = grown::Outlook::new(crop, record, latitude, year);
        let seed = match crop.methods.contains(&Method::Direct) {
            true => Way::Sown,
            false => Way::Pieces,
        };
        let ways = [(seed, in_bed(crop)), (Way::Plants, as_plants(crop))];
        let possible = ways.into_iter().filter(|(_, possible)| *possible);
        Self {
            years: outlook.years(),
            frosts: harmful_frosts(garden, crop),
            ways: possible
                .map(|(way, _)| ahead(&outlook, crop, way))
                .collect(),
        }
    }
}

fn harmful_frosts(garden: &Garden, crop: &Crop) -> HarmfulFrosts {
    let days = garden.weather.days();
    let harmful = ColdDays::of(&garden.weather, garden.latitude, |day| {
        days[day].tmin < crop.frost_limit
    });
    HarmfulFrosts {
        springs: harmful.springs(),
        autumns: harmful.autumns(),
        after: harmful.still_after(0.1),
        before: harmful.already_before(0.1),
    }
}

fn ahead(outlook: &grown::Outlook, crop: &Crop, way: Way) -> WayAhead {
    let started = match way.comes_up() {
        true => grown::Way::Sown,
        false => grown::Way::Planted,
    };
    let all = outlook.starts(started);
    let is_hopeful = |s: &&grown::Start| !s.ripe.is_empty() && s.ripe.len() * HOPE >= s.years();
    let hopeful: Vec<&grown::Start> = all.iter().filter(is_hopeful).collect();
    let lies_long = |s: &&grown::Start| s.up.last().is_some_and(|n| *n >= LONG_IN_THE_GROUND);
    let on_shelf = way == Way::Plants && crop.methods.contains(&Method::Indoor);
    let indoor = crop.indoor.filter(|_| on_shelf);
    WayAhead {
        way,
        up_within: outlook.up_within(),
        safe: match outlook.first_safe(started) {
            None => Safe::Never,
            Some(day) if outlook.begins_on(day) => Safe::FromMidwinter,
            Some(day) => Safe::From(day),
        },
        others: hopeful.len() < all.len(),
        lies_long: way.comes_up() && hopeful.iter().any(lies_long),
        starts: hopeful
            .iter()
            .map(|start| told(start, indoor.as_ref(), way))
            .collect(),
    }
}

fn told(start: &grown::Start, indoor: Option<&IndoorStart>, way: Way) -> Start {
    let sown = |weeks: u32| plus_days(start.day, -7 * i64::from(weeks));
    Start {
        day: start.day,
        shelf: indoor.map(|indoor| (sown(indoor.weeks_hi), sown(indoor.weeks_lo))),
        up: nearest_rank(&start.up, 0.5).filter(|_| way.comes_up()),
        ripe: [0.0, 0.5, 1.0].map(|share| start.ripe_by(share)),
        ripe_years: start.ripe.len(),
        years: start.years(),
        lost: [
            (Lost::Frost, start.frost),
            (Lost::NotUp, start.not_up),
            (Lost::Bolted, start.bolted),
            (Lost::NotRipe, start.not_ripe),
        ],
    }
}
