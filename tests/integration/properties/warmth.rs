//! Warmer weather never delays the first pick, for all crops of the catalogue, under the limits of heat: up to the
//! plateau it hastens it, above it leaves it as it is. Conditions: the soil is never warmer than the seed likes
//! best; heat that ends a crop and the cold that bulbs need are left aside; so are frost and long days, because
//! what is up earlier meets frosts and long days that a later one escapes.

use proptest::prelude::*;
use tureen::catalogue::Catalogue;
use tureen::garden::{Crop, FrostResponse, Germination};
use tureen::growth::{CropSeason, Fate, Light, Loss};
use tureen::units::{Celsius, Latitude};
use tureen::weather::{Daily, WeatherYear};

use crate::growth_reference::crops::{day, from_march, open_ground};

/// From 1 March on.
const DAYS: usize = 210;

/// The catalogue, and every crop of it that no frost and no long day harms.
fn unharmed() -> Vec<Crop> {
    let catalogue = Catalogue::load().unwrap();
    let crops = catalogue.names().filter_map(|name| catalogue.get(name));
    crops
        .map(|crop| Crop {
            frost_limit: Celsius(-100.0),
            bolting: None,
            spoils: None,
            no_fruit: None,
            chill: None,
            bulbs: None,
            ..crop.clone()
        })
        .collect()
}

/// The temperature at which seed comes up fastest.
fn best(germination: &Germination) -> f64 {
    match germination {
        Germination::Range { optimum, .. } => optimum.0,
        Germination::Table(days) | Germination::Extended { days, .. } => {
            let columns = (0..)
                .step_by(5)
                .zip(days)
                .filter_map(|(t, d)| Some((t, (*d)?)));
            let fastest = columns.min_by(|a, b| a.1.total_cmp(&b.1));
            f64::from(fastest.expect("it comes up").0)
        }
    }
}

/// Days whose means lie between -3 and 12 C.
fn weather() -> impl Strategy<Value = Vec<Daily>> {
    let one = (-3.0..12.0f64, 0.0..9.0f64);
    prop::collection::vec(one, DAYS).prop_map(|days| {
        let extremes = days
            .iter()
            .map(|(mean, half)| day(mean - half, mean + half));
        extremes.collect()
    })
}

fn warmer(days: &[Daily], by: f64) -> Vec<Daily> {
    let one = |d: &Daily| day(d.tmin.0 + by, d.tmax.0 + by);
    days.iter().map(one).collect()
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
        &Light::of(Latitude(50.0), from_march(days)),
    )
}

/// Later, where never is latest.
fn order(day: Option<usize>) -> usize {
    day.unwrap_or(usize::MAX)
}

/// The first of weekly sessions at which it is ripe.
fn first_pick(fate: &Fate) -> usize {
    order(fate.ripe).div_ceil(7)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn warmth_never_delays_the_first_pick(
        days in weather(),
        spring in 0.0..8.0f64,
        share in 0.0..1.0f64,
        sown in 0..60usize,
    ) {
        for crop in unharmed() {
            // As warm as may be, and some of the way to it.
            let most = (best(&crop.germination) - 12.0).max(0.0);
            let (least, most) = (spring.min(most), most);
            let (cool, warm) = (warmer(&days, least * share), warmer(&days, most));
            let (cool, warm) = (grown(&crop, &cool), grown(&crop, &warm));
            for (cool, warm) in [(cool.sown(sown), warm.sown(sown)), (cool.planted(sown), warm.planted(sown))] {
                prop_assert!(order(warm.up) <= order(cool.up), "{}", crop.name);
                prop_assert!(order(warm.ripe) <= order(cool.ripe), "{}", crop.name);
                prop_assert!(first_pick(&warm) <= first_pick(&cool), "{}", crop.name);
            }
        }
    }
}

/// Why the conditions are there: each alone can make warmth a harm.
#[test]
fn each_condition_is_needed() {
    let catalogue = Catalogue::load().unwrap();
    // Seed: lettuce comes up at 28 C but not at 33 C.
    let lettuce = catalogue.get("lettuce (leaf)").unwrap();
    let steady = |t: f64| grown(lettuce, &[day(t, t); DAYS]).sown(10).up;
    assert!(steady(28.0).is_some() && steady(33.0).is_none());

    // Frost: beans that come up before the last frost are lost to it.
    let bean = catalogue.get("bush bean").unwrap();
    assert_eq!(bean.frost, FrostResponse::Killed);
    let mut spring = vec![day(16.0, 17.0); DAYS];
    spring[28] = day(-5.0, 20.0);
    let (cool, warm) = (grown(bean, &spring), grown(bean, &warmer(&spring, 3.0)));
    assert!(cool.sown(14).ripe.is_some());
    assert_eq!(warm.sown(14).gone, Some((28, Loss::Frost)));

    // Heat: broccoli bolts at a mean that suits beans.
    let broccoli = catalogue.get("broccoli").unwrap();
    let planted = |t: f64| grown(broccoli, &[day(t, t); DAYS]).planted(10);
    assert!(planted(18.0).ripe.is_some());
    assert!(matches!(planted(25.0).gone, Some((_, Loss::Heat))) && planted(25.0).ripe.is_none());

    // Long days: what is up earlier has seen enough of them earlier.
    let mut spinach = catalogue.get("spinach").unwrap().clone();
    spinach.frost_limit = Celsius(-100.0);
    let bolts = |t: f64| grown(&spinach, &[day(t, t); DAYS]).sown(70).gone;
    assert!(bolts(16.0).is_some_and(|w| w < bolts(6.0).unwrap_or((DAYS, Loss::Past))));
}
