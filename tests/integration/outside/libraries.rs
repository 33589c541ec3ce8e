//! Our formulas against outside libraries. The fixtures were computed by
//! `tests/reference/formulas.py`, which also holds them to the libraries.

use tureen::facts::interval::further_years_95;
use tureen::garden::DegreeDayMethod;
use tureen::growth::amount::{SURE, seeds_for};
use tureen::growth::degree_days::degree_days;
use tureen::growth::water::reference_evapotranspiration;
use tureen::units::{Celsius, Latitude, Share};
use tureen::weather::sun::{day_length, extraterrestrial_radiation};

/// Ours and theirs do the same arithmetic; some take pi to nine digits.
const SAME: f64 = 1e-9;

/// The rows of a fixture: `N` figures each, of which there are many.
fn rows<const N: usize>(fixture: &str) -> Vec<[f64; N]> {
    let mut lines = fixture.lines();
    assert!(lines.next().unwrap().starts_with("# "));
    assert_eq!(lines.next().unwrap().split(',').count(), N);
    let row = |line: &str| -> [f64; N] {
        let cells: Vec<f64> = line.split(',').map(|cell| cell.parse().unwrap()).collect();
        cells.try_into().unwrap()
    };
    let rows: Vec<[f64; N]> = lines.map(row).collect();
    assert!(rows.len() > 90, "{} rows", rows.len());
    rows
}

/// The difference, relative to figures above 1.
fn off(ours: f64, theirs: f64) -> f64 {
    (ours - theirs).abs() / theirs.abs().max(1.0)
}

#[track_caller]
fn same(ours: f64, theirs: f64, row: &[f64]) {
    assert!(off(ours, theirs) <= SAME, "{row:?}: {ours}, not {theirs}");
}

#[test]
fn radiation_and_day_length_are_those_of_refet_and_pyet() {
    for row in rows::<5>(include_str!("../../reference/fixtures/radiation.csv")) {
        let [latitude, day, refet, pyet, hours] = row;
        let ours = extraterrestrial_radiation(Latitude(latitude), day as u32).0;
        same(ours, refet, &row);
        same(ours, pyet, &row);
        same(day_length(Latitude(latitude), day as u32).0, hours, &row);
    }
}

/// Minutes of daylight by which FAO-56's sun may be off, per unit of the latitude's tangent,
/// half a minute besides. Its declination is a plain sine of the day, up to 1.2 degrees south
/// of the true one, most of all in September and October and next to nothing in December; a
/// degree moves the day by 8 minutes times the tangent, and more where the sun hardly sets.
const SINE_SUN: f64 = 10.5;

/// Minutes that almanacs add for the sun's disc and the bending of light, as astral has it, the
/// least and the most of a year: up to so many degrees from the equator.
const DISC_AND_AIR: [(f64, f64, f64); 4] = [
    (20.0, 6.0, 8.0),
    (45.0, 7.5, 11.0),
    (60.0, 10.0, 22.0),
    (65.0, 14.5, 52.0),
];

#[test]
fn day_length_is_near_to_that_of_astral() {
    for row in rows::<4>(include_str!("../../reference/fixtures/daylight.csv")) {
        let [latitude, day, middle, almanac] = row;
        let ours = day_length(Latitude(latitude), day as u32).0;
        let north = latitude.to_radians().tan();
        let minutes = (middle - ours) * 60.0;
        let most = SINE_SUN * north.abs() + 0.5;
        assert!(minutes.abs() <= most, "{row:?}: {minutes} minutes");
        // The true sun is north of ours, or hardly south of it.
        assert!(minutes * north.signum() > -2.5, "{row:?}: {minutes}");
        let mut bounds = DISC_AND_AIR.into_iter();
        let (_, least, most) = bounds.find(|b| latitude.abs() <= b.0).unwrap();
        let minutes = (almanac - middle) * 60.0;
        assert!((least..=most).contains(&minutes), "{row:?}: {minutes}");
    }
}

/// pyet divides by the latent heat at the day's temperature, FAO-56 multiplies by 0.408 at any:
/// 2 % more or less on days of -5 to 40 C, 4 % at -22 C.
#[test]
fn evapotranspiration_is_that_of_pyet() {
    for row in rows::<6>(include_str!(
        "../../reference/fixtures/evapotranspiration.csv"
    )) {
        let [latitude, day, tmin, tmax, fao56, pyet] = row;
        let (tmin, tmax) = (Celsius(tmin), Celsius(tmax));
        let at = Latitude(latitude);
        let ours = reference_evapotranspiration(at, day as u32, tmin, tmax).0;
        same(ours, fao56, &row);
        assert!((ours - pyet).abs() <= 0.04 * pyet + SAME, "{row:?}: {ours}");
    }
}

#[test]
fn the_single_sine_is_the_area_that_scipy_integrates() {
    for row in rows::<5>(include_str!("../../reference/fixtures/degree_days.csv")) {
        let [base, upper, tmin, tmax, sine] = row;
        let [base, upper, tmin, tmax] = [base, upper, tmin, tmax].map(Celsius);
        let ours = degree_days(DegreeDayMethod::Sine, base, Some(upper), tmin, tmax).0;
        same(ours, sine, &row);
    }
}

#[test]
fn seeds_are_the_fewest_by_scipy() {
    for row in rows::<3>(include_str!("../../reference/fixtures/seeds.csv")) {
        let [plants, grows, seeds] = row;
        let ours = seeds_for(plants as u32, Share(grows), SURE);
        assert_eq!(ours, seeds as u32, "{row:?}");
    }
}

#[test]
fn the_further_years_are_those_that_scipy_does_not_tell_apart() {
    for row in rows::<5>(include_str!("../../reference/fixtures/further_years.csv")) {
        let [hits, trials, further, fewest, most] = row.map(|number| number as usize);
        let found = further_years_95(hits, trials, further);
        assert_eq!(found, (fewest, most), "{row:?}");
    }
}
