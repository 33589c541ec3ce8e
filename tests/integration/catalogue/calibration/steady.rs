//! Days to the first pick where every day has the same mean: the table of the README, and bounds on it.

use std::fmt::Write;

use tureen::garden::{Crop, Microclimate};
use tureen::growth::requirement::Requirement;
use tureen::growth::{CropSeason, Light, Loss};
use tureen::units::{Celsius, Latitude};

use super::packets::{PACKETS, Packet, Usual, Way};
use super::season::{horizon, open_ground};
use super::{catalogue, held_by_the_readme};
use crate::support::weather::{daily, steady_years};

/// Means of the days, C. Nights are 5 C colder, noons 5 C warmer; the soil has the mean.
const MEANS: [f64; 5] = [10.0, 15.0, 20.0, 25.0, 30.0];

/// What comes of a crop in steady weather.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Steady {
    /// Ripe after so many days.
    Ripe(usize),
    /// Ended by heat.
    TooHot,
    /// It cannot be started, rots, does not grow, or is ended by long days or late.
    Never,
}

/// A crop begun on the hundredth day of two years of twelve-hour days.
fn steady(crop: &Crop, way: Way, mean: f64) -> Steady {
    let record = steady_years(&[daily(mean - 5.0, mean + 5.0); 3]);
    let climate = Microclimate {
        soil_bonus: Celsius(0.0),
        ..open_ground()
    };
    let light = Light::of(Latitude(0.0), horizon());
    let season = CropSeason::new(crop, climate, &record.years(horizon())[0], &light);
    let fate = match way {
        Way::Planted => season.planted(100),
        Way::Sown => season.sown(100),
    };
    match (fate.ripe, fate.gone) {
        (Some(ripe), _) => Steady::Ripe(ripe - 100),
        (None, Some((_, Loss::Heat))) => Steady::TooHot,
        (None, _) => Steady::Never,
    }
}

/// All crops that are grown in a year, with their ways and ranges on packets. Garlic needs a winter.
fn all() -> impl Iterator<Item = (&'static Packet, Way, (u32, u32))> {
    let packets = PACKETS.iter();
    let in_a_year = packets.filter(|p| !matches!(p.usual, Usual::Overwintered));
    in_a_year.flat_map(|packet| {
        let ways = packet.ways().into_iter();
        ways.map(move |(way, range)| (packet, way, range))
    })
}

#[test]
fn the_table_of_steady_warmth_is_what_comes_out() {
    let catalogue = catalogue();
    let mut table = String::from(
        "| crop | from | packet | 10 C | 15 C | 20 C | 25 C | 30 C |\n| --- | --- | --- |",
    );
    table.push_str(" ---: |".repeat(MEANS.len()).as_str());
    table.push('\n');
    for (packet, way, (short, long)) in all() {
        let crop = catalogue.get(packet.crop).unwrap();
        write!(
            table,
            "| {} | {} | {short}-{long} |",
            packet.crop,
            way.word()
        )
        .unwrap();
        for mean in MEANS {
            match steady(crop, way, mean) {
                Steady::Ripe(days) => write!(table, " {days} |").unwrap(),
                Steady::TooHot => table.push_str(" too hot |"),
                Steady::Never => table.push_str(" - |"),
            }
        }
        table.push('\n');
    }
    held_by_the_readme(&table);
}

/// Bounds that a gardener signs (common practice): nothing is ripe in under four fifths of the short end; all
/// crops at 20 C and over keep within the long end; cool ones at 15 C take a quarter longer at the most, at 10 C
/// two and a quarter times as long.
#[test]
fn steady_warmth_keeps_within_bounds() {
    let catalogue = catalogue();
    let (mut wrong, mut seen) = (Vec::new(), 0);
    for (packet, way, (short, long)) in all() {
        let crop = catalogue.get(packet.crop).unwrap();
        for mean in MEANS {
            let most = match (packet.is_warm(), mean as u32) {
                (false, ..=10) => 2.25,
                (false, ..=15) => 1.25,
                (true, ..=15) => continue,
                _ => 1.0,
            };
            let Steady::Ripe(days) = steady(crop, way, mean) else {
                continue;
            };
            seen += 1;
            let bounds = 0.8 * f64::from(short)..=most * f64::from(long);
            if !bounds.contains(&(days as f64)) {
                let name = packet.crop;
                wrong.push(format!(
                    "{name} {way:?} at {mean} C: {days}, not {bounds:?}"
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(seen > 300, "{seen}");
}

/// The coldest of the best monthly means and the warmest mean that crops bear, Fahrenheit, by the classes of
/// MH1997-MONTHS.
const CLASSES: [(f64, f64, &[&str]); 7] = [
    (
        55.0,
        85.0,
        &[
            "chives",
            "leek",
            "onion (from seed)",
            "onion (from sets)",
            "shallot",
        ],
    ),
    (
        60.0,
        75.0,
        &[
            "beet",
            "broad bean",
            "broccoli",
            "brussels sprouts",
            "cabbage",
            "chard",
            "collards",
            "kale",
            "kohlrabi",
            "parsnip",
            "radish",
            "rutabaga",
            "spinach",
            "turnip",
            "carrot",
            "cauliflower",
            "celeriac",
            "celery",
            "napa cabbage",
            "endive",
            "fennel",
            "lettuce (leaf)",
            "lettuce (head)",
            "mustard",
            "parsley",
            "shelling pea",
            "snap pea",
            "snow pea",
            "potato",
        ],
    ),
    (60.0, 80.0, &["lima bean", "bush bean", "pole bean"]),
    (60.0, 95.0, &["sweet corn", "cowpea"]),
    (
        65.0,
        90.0,
        &[
            "pumpkin",
            "summer squash",
            "winter squash",
            "cucumber",
            "melon",
        ],
    ),
    (70.0, 80.0, &["sweet pepper", "tomato"]),
    (
        70.0,
        95.0,
        &[
            "eggplant",
            "hot pepper",
            "okra",
            "sweet potato",
            "watermelon",
        ],
    ),
];

/// Where warmth stops to hasten a crop it is neither colder than where the work says that it grows best nor warmer than it
/// bears. Four that our packet days and bases put outside, by 2.2 C at the most, are named.
#[test]
fn the_plateau_lies_where_crops_are_said_to_grow() {
    let catalogue = catalogue();
    let celsius = |f: f64| (f - 32.0) / 1.8;
    let mut outside = Vec::new();
    for (best, most, names) in CLASSES {
        for name in names {
            let crop = catalogue.get(name).unwrap();
            let need = Requirement::of(crop);
            let ways = [need.most_when_sown, need.most_when_planted];
            assert!(ways.iter().any(Option::is_some), "{name}");
            for day in ways.into_iter().flatten() {
                let plateau = crop.ripening.base.0 + day.0;
                if !(celsius(best)..=celsius(most)).contains(&plateau) {
                    outside.push(format!("{name} {plateau:.1}"));
                }
            }
        }
    }
    let known = ["celeriac 24.8", "snap pea 14.9", "potato 26.1", "okra 20.8"];
    assert_eq!(outside, known);
}
