//! Warmth has a plateau: at no place, in no weather and from no start is a crop ripe in under four fifths of
//! the short end of its range on packets.

use tureen::garden::Crop;
use tureen::growth::{CropSeason, Light};
use tureen::units::{Celsius, Latitude};
use tureen::weather::Record;

use super::packets::{PACKETS, Packet, Usual, Way};
use super::season::{horizon, open_ground};
use super::{PLACES, catalogue};
use crate::support::climates::{subtropics, tropics};
use crate::support::weather::{daily, steady_years};

/// The part of the short end under which nothing is ripe (common practice; the figure from memory).
const QUICKEST: f64 = 0.8;

/// Years that are made of each hot climate.
const YEARS: u32 = 6;

/// The records on which all crops are started in every week: the places of the calibration, the hot climates,
/// and weather that is the same every day.
fn records() -> Vec<(Latitude, Record)> {
    let hot = [tropics(YEARS), subtropics(YEARS)];
    let steady = [20.0, 25.0, 30.0, 35.0].map(|mean| {
        let years = steady_years(&[daily(mean - 5.0, mean + 5.0); 3]);
        (Latitude(0.0), years)
    });
    let places = PLACES.iter().map(|p| (p.latitude, p.record.clone()));
    places.chain(hot).chain(steady).collect()
}

/// The days of what stands over winter are mostly those of its rest, so they say nothing of how quickly it can
/// grow: no plateau comes of them.
fn overwinters(packet: &Packet) -> bool {
    matches!(packet.usual, Usual::Overwintered)
}

/// The fewest days in which a crop is ripe, from any start, and how many starts get ripe. Nothing kills it, and
/// ground under it is as warm as may be.
fn fewest(crop: &Crop, way: Way, records: &[(Latitude, Record)]) -> (usize, usize) {
    let mut unharmed = crop.clone();
    unharmed.frost_limit = Celsius(-100.0);
    unharmed.bolting = None;
    (unharmed.spoils, unharmed.no_fruit, unharmed.chill) = (None, None, None);
    let (mut least, mut ripe) = (usize::MAX, 0);
    for (latitude, record) in records {
        let light = Light::of(*latitude, horizon());
        for year in record.years(horizon()).iter().take(YEARS as usize) {
            let season = CropSeason::new(&unharmed, open_ground(), year, &light);
            for start in (0..365).step_by(7) {
                let fate = match way {
                    Way::Planted => season.planted(start),
                    Way::Sown => season.sown(start),
                };
                if let Some(day) = fate.ripe {
                    least = least.min(day - start);
                    ripe += 1;
                }
            }
        }
    }
    (least, ripe)
}

#[test]
fn no_crop_is_ripe_in_under_four_fifths_of_the_short_end_on_packets() {
    let catalogue = catalogue();
    let records = records();
    let mut wrong = Vec::new();
    let mut at_it = 0;
    for packet in PACKETS.iter().filter(|p| !overwinters(p)) {
        let crop = catalogue.get(packet.crop).unwrap();
        for (way, (short, _)) in packet.ways() {
            let (days, ripe) = fewest(crop, way, &records);
            assert!(ripe > 500, "{}: {ripe}", packet.crop);
            let least = (f64::from(short) * QUICKEST).ceil();
            if (days as f64) < least {
                wrong.push(format!("{} {way:?}: {days}, not {least}", packet.crop));
            }
            at_it += usize::from((days as f64) < least + 3.0);
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    // The bound is met, not missed by far: most crops come near to it somewhere.
    assert!(at_it >= 60, "{at_it}");
}

/// The short ends of the catalogue are those of the packets.
#[test]
fn short_ends_are_those_of_the_packets() {
    let catalogue = catalogue();
    for packet in PACKETS {
        let ripening = catalogue.get(packet.crop).unwrap().ripening;
        let ways = packet.ways();
        let short = |way| {
            let mut own = ways
                .iter()
                .filter(|(w, _)| *w == way && !overwinters(packet));
            own.next().map(|(_, (short, _))| f64::from(*short))
        };
        assert_eq!(
            ripening.short_from_sowing,
            short(Way::Sown),
            "{}",
            packet.crop
        );
        assert_eq!(
            ripening.short_from_planting,
            short(Way::Planted),
            "{}",
            packet.crop
        );
    }
}

/// Sweet potato needs three to four months anywhere; at a steady 27 C it was ripe in 42 days while nothing
/// held warmth (from memory of its growers: 90 to 120 days).
#[test]
fn sweet_potato_takes_ten_weeks_in_any_heat() {
    let catalogue = catalogue();
    let crop = catalogue.get("sweet potato").unwrap();
    let (days, _) = fewest(crop, Way::Planted, &records());
    assert_eq!(days, 72);
}
