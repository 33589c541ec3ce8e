//! What holds in any weather.

use proptest::prelude::*;
use tureen::garden::{Crop, DegreeDayMethod, Germination, NoFruit, Spoils};
use tureen::growth::{CropSeason, Fate, Light, Loss};
use tureen::units::{Celsius, Latitude};
use tureen::weather::{Daily, WeatherYear};

use super::crops::{day, from_march, open_ground, plain};

/// Frost never, heat never too much.
fn unharmed(method: DegreeDayMethod) -> Crop {
    let mut crop = plain();
    crop.frost_limit = Celsius(-100.0);
    crop.germination = Germination::Range {
        min: Celsius(2.0),
        optimum: Celsius(60.0),
        max: Celsius(80.0),
        days: 2.0,
    };
    crop.ground.rots_after = None;
    crop.ripening.base = Celsius(5.0);
    crop.ripening.upper = Some(Celsius(35.0));
    crop.ripening.method = method;
    crop.picking.holds_in_ground_days = 1000;
    crop
}

fn weather() -> impl Strategy<Value = Vec<Daily>> {
    prop::collection::vec((-5.0..15.0f64, 0.0..15.0f64), 200).prop_map(|days| {
        days.iter()
            .map(|(tmin, range)| day(*tmin, tmin + range))
            .collect()
    })
}

fn methods() -> impl Strategy<Value = DegreeDayMethod> {
    prop_oneof![Just(DegreeDayMethod::Average), Just(DegreeDayMethod::Sine)]
}

fn grown(crop: &Crop, days: &[Daily]) -> CropSeason {
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days,
    };
    CropSeason::new(
        crop,
        open_ground(),
        &year,
        &Light::of(Latitude(45.0), from_march(days)),
    )
}

/// Days on which the soil, the mean of the air over a week, has at least 4 C.
fn workable_days(days: &[Daily]) -> Vec<bool> {
    (0..days.len())
        .map(|day| {
            let week = &days[day.saturating_sub(6)..=day];
            let mean: f64 = week.iter().map(|d| (d.tmin.0 + d.tmax.0) / 2.0).sum();
            mean / week.len() as f64 >= 4.0
        })
        .collect()
}

/// Later, where never is latest.
fn order(day: Option<usize>) -> usize {
    day.unwrap_or(usize::MAX)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn later_is_never_earlier(days in weather(), method in methods()) {
        let season = grown(&unharmed(method), &days);
        let workable = workable_days(&days);
        for fates in [
            (0..200).map(|d| season.sown(d)).collect::<Vec<_>>(),
            (0..200).map(|d| season.planted(d)).collect(),
        ] {
            prop_assert!((0..200).all(|d| workable[d] || fates[d].up.is_none()));
            let begun: Vec<&Fate> = (0..200).filter(|d| workable[*d]).map(|d| &fates[d]).collect();
            for pair in begun.windows(2) {
                prop_assert!(order(pair[0].up) <= order(pair[1].up));
                prop_assert!(order(pair[0].ripe) <= order(pair[1].ripe));
            }
        }
    }

    /// The days of a fate come in order, whatever frost and long days do.
    #[test]
    fn days_come_in_order(
        days in weather(), limit in -5.0..5.0f64, holds in 0..40u32, rots_after in 1..60u32, sown in 0..200usize,
        above in 8.0..20.0f64, spell in 1..30u32,
    ) {
        let mut crop = plain();
        crop.frost_limit = Celsius(limit);
        crop.picking.holds_in_ground_days = holds;
        crop.ground.rots_after = Some(rots_after);
        crop.spoils = Some(Spoils { above: Celsius(above), days: spell });
        crop.no_fruit = Some(NoFruit { nights: Celsius(above), noons: Celsius(2.0 * above), days: spell });
        let fate = grown(&crop, &days).sown(sown);
        prop_assert!(fate.up.is_none_or(|up| up > sown && up < 200 && up - sown <= rots_after as usize));
        let rotted = fate.gone.filter(|(_, why)| *why == Loss::Rotted);
        prop_assert!(rotted.is_none_or(|(day, _)| fate.up.is_none() && day == sown + rots_after as usize + 1));
        if let (Some((gone, Loss::Heat)), Some(up)) = (fate.gone, fate.up) {
            prop_assert!(gone >= up + spell as usize);
        }
        if let Some(ripe) = fate.ripe {
            prop_assert!(fate.up.is_some_and(|up| up <= ripe) && ripe < 200);
            prop_assert!(fate.gone.is_none_or(|(gone, _)| ripe < gone && gone <= ripe + holds as usize + 1));
        }
    }
}
