//! What the crops of the catalogue do in heat, in cold when they are young, and where winters are mild.

use tureen::calendar::Horizon;
use tureen::catalogue::Catalogue;
use tureen::garden::{Crop, Method, Microclimate, OPEN_GROUND};
use tureen::growth::{CropSeason, Fate, Light, Loss};
use tureen::units::{Celsius, Latitude};
use tureen::weather::Record;

use super::catalogue;
use crate::support::climates::{subtropics, tropics};
use crate::support::day;
use crate::support::weather::{daily, steady_years};

/// Enough to tell one year of ten.
const YEARS: u32 = 21;

/// Two years from 1 January; day numbers are days of the year, less one.
fn horizon() -> Horizon {
    Horizon::spanning(day("2001-01-01"), day("2002-12-31"))
}

fn seasons(crop: &Crop, (latitude, record): &(Latitude, Record)) -> Vec<CropSeason> {
    let open = Microclimate {
        frost_kept_off: Celsius(0.0),
        soil_bonus: OPEN_GROUND,
    };
    let light = Light::of(*latitude, horizon());
    let years = record.years(horizon());
    let season = |year| CropSeason::new(crop, open, year, &light);
    years.iter().map(season).collect()
}

/// What becomes of it if it is started on a day, in all ways that it may be, year by year.
fn fates<'s>(
    crop: &'s Crop,
    seasons: &'s [CropSeason],
    start: usize,
) -> impl Iterator<Item = Vec<Fate>> + 's {
    let as_plants = |m: &Method| matches!(m, Method::Indoor | Method::Bought);
    crop.methods.iter().map(move |method| {
        let fate = move |season: &CropSeason| match as_plants(method) {
            true => season.planted(start),
            false => season.sown(start),
        };
        seasons.iter().map(fate).collect()
    })
}

fn can_be_picked(fate: &Fate, day: usize) -> bool {
    fate.ripe.is_some_and(|ripe| ripe <= day) && fate.gone.is_none_or(|(gone, _)| gone > day)
}

/// The most years of the place in which a crop can be picked on a day of the second year, begun on any Monday
/// of the year before it.
fn most_years(crop: &Crop, place: &(Latitude, Record), day: usize) -> usize {
    let seasons = seasons(crop, place);
    let starts = (day - 364..day).step_by(7);
    let years = starts.flat_map(|start| {
        let ways: Vec<Vec<Fate>> = fates(crop, &seasons, start).collect();
        ways.into_iter()
            .map(|fates| fates.iter().filter(|f| can_be_picked(f, day)).count())
    });
    years.max().unwrap_or(0)
}

fn named<'c>(catalogue: &'c Catalogue, name: &str) -> &'c Crop {
    catalogue.get(name).unwrap_or_else(|| panic!("no {name}"))
}

/// Gardeners of the wet tropics grow none of the first in October's heat (from memory), and live on the others.
#[test]
fn crops_of_the_cool_season_cannot_be_had_in_tropical_heat() {
    let catalogue = catalogue();
    let place = tropics(YEARS);
    let october = 365 + 299;
    for name in [
        "spinach",
        "lettuce (leaf)",
        "lettuce (head)",
        "carrot",
        "kale",
        "cabbage",
        "cauliflower",
        "broccoli",
        "shelling pea",
        "snap pea",
        "radish",
        "potato",
        "garlic",
    ] {
        let years = most_years(named(&catalogue, name), &place, october);
        assert!(years * 10 < 20, "{name}: {years}");
    }
    for name in [
        "sweet potato",
        "okra",
        "eggplant",
        "cowpea",
        "amaranth (leaf)",
        "hot pepper",
        "bottle gourd",
        "basil",
        "sweet corn",
    ] {
        let years = most_years(named(&catalogue, name), &place, october);
        assert!(years * 10 >= 20 * 8, "{name}: {years}");
    }
}

/// No tubers over a mean of 27 to 29 C (from memory); in the subtropics they are planted by March and dug
/// by June, and what is planted in May comes to nothing.
#[test]
fn potatoes_make_no_tubers_in_heat() {
    let catalogue = catalogue();
    let potato = named(&catalogue, "potato");
    let steady = |mean: f64| {
        let years = steady_years(&[daily(mean - 5.0, mean + 5.0); 3]);
        let seasons = seasons(potato, &(Latitude(0.0), years));
        seasons[0].begun(10, false)
    };
    assert!(steady(22.0).ripe.is_some());
    assert!(steady(25.0).ripe.is_some());
    assert_eq!(steady(28.0).ripe, None);
    let place = subtropics(YEARS);
    let seasons = seasons(potato, &place);
    let ripe = |start: usize, by: usize| {
        let fates = seasons.iter().map(|season| season.sown(start));
        fates
            .filter(|fate| fate.ripe.is_some_and(|ripe| ripe <= by))
            .count()
    };
    let (march, june, may, winter) = (60, 165, 130, 334);
    assert!(
        ripe(march, june) * 10 >= seasons.len() * 8,
        "{}",
        ripe(march, june)
    );
    assert!(
        ripe(may, winter) * 10 <= seasons.len(),
        "{}",
        ripe(may, winter)
    );
}

/// Garlic of July stands until it has had a winter, and bulbs in the spring after it; without a winter never.
#[test]
fn garlic_needs_a_winter_and_long_days() {
    let catalogue = catalogue();
    let garlic = named(&catalogue, "garlic");
    let place = subtropics(YEARS);
    let grown = seasons(garlic, &place);
    let (july, november, april, september) = (196, 314, 365 + 90, 365 + 270);
    for season in &grown {
        for start in [july, november] {
            let ripe = season.sown(start).ripe;
            assert!(ripe.is_none_or(|ripe| ripe > april), "{ripe:?}");
        }
    }
    let by = |start: usize| {
        let ripe = |season: &&CropSeason| season.sown(start).ripe.is_some_and(|r| r < september);
        grown.iter().filter(ripe).count()
    };
    assert!(by(november) * 10 >= grown.len() * 8, "{}", by(november));
    let warm = seasons(garlic, &tropics(YEARS));
    assert!((0..365).all(|day| warm.iter().all(|season| season.sown(day).ripe.is_none())));
}

/// Broccoli and cauliflower grow well in summers by a cold sea, of 10 to 11 C (common practice in the far north and south); a fortnight of days
/// that do not pass 10 C makes them button. Bok choy runs to seed already at 9 C.
#[test]
fn cold_makes_young_plants_flower_but_a_cool_summer_does_not() {
    let catalogue = catalogue();
    let flowers = |name: &str, low: f64, high: f64| {
        let years = steady_years(&[daily(low, high); 3]);
        let seasons = seasons(named(&catalogue, name), &(Latitude(0.0), years));
        let gone = seasons[0].planted(10).gone;
        gone.is_some_and(|(_, loss)| loss == Loss::Bolted)
    };
    for name in ["broccoli", "cauliflower"] {
        assert!(!flowers(name, 6.5, 15.0), "{name}");
        assert!(!flowers(name, 4.0, 13.0), "{name}");
        assert!(flowers(name, 2.0, 10.0), "{name}");
    }
    for name in ["bok choy", "napa cabbage"] {
        assert!(!flowers(name, 6.5, 15.0), "{name}");
        assert!(flowers(name, 4.5, 13.5), "{name}");
    }
}
