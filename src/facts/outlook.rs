//! What becomes of a crop at a garden's place in the weather years: which frosts harm it, when a
//! start is safe, and when it then gets ripe.

use crate::calendar::{Date, plus_days};
use crate::garden::{Crop, Garden, IndoorStart, Method};
use crate::growth::outlook as grown;
use crate::growth::season::least_soil;
use crate::units::Celsius;
use crate::weather::cold_days::ColdDays;
use crate::weather::rank::nearest_rank;

use super::crop::{as_plants, in_bed};

/// A start that gets ripe in fewer than one of so many years is not told.
pub const HOPE: usize = crate::growth::HOPE;

/// What takes longer to come up has not been on its way but waited for warmth.
const SIX_WEEKS: usize = 42;

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

/// When it is up, in the middle year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Up {
    /// So many days after the start.
    After(usize),
    /// When the cold is over: it waits in the ground, as sets and cloves do.
    Waits,
}

/// What becomes of a start on one day.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Start {
    /// The day.
    pub day: Date,
    /// The days on which its plants are sown on the shelf for it, first and last.
    pub shelf: Option<(Date, Date)>,
    /// When it is up; `None` for plants.
    pub up: Option<Up>,
    /// Of the years in which it gets ripe: the earliest day, that of half of them, the latest.
    pub ripe: [Option<Date>; 3],
    /// How many these years are.
    pub ripe_years: usize,
    /// All years.
    pub years: usize,
    /// What happened in the others, with the number of years.
    pub lost: [(Lost, usize); 6],
}

/// Why it does not get ripe.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lost {
    /// Frost kills it.
    Frost,
    /// The ground is too cold to start it, or it does not come up.
    NotUp,
    /// Seed rots.
    Rotted,
    /// It flowers.
    Bolted,
    /// It is too hot for it.
    Heat,
    /// It lives and is not ripe.
    NotRipe,
}

/// One way of starting it.
#[derive(Debug, Clone, PartialEq)]
pub struct WayAhead {
    /// Which.
    pub way: Way,
    /// The days within which it comes up or rots; `None` where it waits for warmth.
    pub up_within: Option<u32>,
    /// The coldest soil in which it is started.
    pub least_soil: Celsius,
    /// When it is safe.
    pub safe: Safe,
    /// The starts of a year that get ripe often enough, every two weeks.
    pub starts: Vec<Start>,
    /// True if there are other starts, which do not.
    pub others: bool,
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
#[derive(Debug, Clone, PartialEq)]
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
    let on_shelf = way == Way::Plants && crop.methods.contains(&Method::Indoor);
    let indoor = crop.indoor.filter(|_| on_shelf);
    WayAhead {
        way,
        up_within: outlook.up_within(),
        least_soil: least_soil(crop, !way.comes_up()),
        safe: match outlook.first_safe(started) {
            None => Safe::Never,
            Some(day) if outlook.begins_on(day) => Safe::FromMidwinter,
            Some(day) => Safe::From(day),
        },
        others: hopeful.len() < all.len(),
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
        up: nearest_rank(&start.up, 0.5)
            .filter(|_| way.comes_up())
            .map(|days| {
                if days > SIX_WEEKS {
                    Up::Waits
                } else {
                    Up::After(days)
                }
            }),
        ripe: [0.0, 0.5, 1.0].map(|share| start.ripe_by(share)),
        ripe_years: start.ripe.len(),
        years: start.years(),
        lost: [
            (Lost::Frost, start.frost),
            (Lost::NotUp, start.not_up),
            (Lost::Rotted, start.rotted),
            (Lost::Bolted, start.bolted),
            (Lost::Heat, start.hot),
            (Lost::NotRipe, start.not_ripe),
        ],
    }
}
