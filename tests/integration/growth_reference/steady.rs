//! Days to ripe in steady weather, worked by hand, and what one degree is worth.

use tureen::garden::{Germination, Ripening};
use tureen::growth::requirement::days_at;
use tureen::units::{Celsius, DegreeDays};

use super::crops::plain;

fn near(days: Option<f64>, wanted: f64) -> bool {
    days.is_some_and(|days| (days - wanted).abs() < 1e-9)
}

/// 65 packet days from sowing at 16 C, of which 5 to come up; over a base of -5 C a day brings
/// 21 degree-days, so 60 x 21 = 1260 are needed. At 15 C it takes 5 + 1260 / 20 = 68 days.
/// Planted, 50 x 21 = 1050: 52.5 days at 15 C.
#[test]
fn one_degree_colder_is_three_days_later() {
    let crop = plain();
    assert!(near(days_at(&crop, false, Celsius(16.0)), 65.0));
    assert!(near(days_at(&crop, false, Celsius(15.0)), 68.0));
    assert!(near(days_at(&crop, true, Celsius(16.0)), 50.0));
    assert!(near(days_at(&crop, true, Celsius(15.0)), 52.5));
}

/// A seed that takes longer to come up at the reference leaves fewer of its packet days to grow
/// in: 12 days at 10 C and 6 at 20 C, so 9 at 15 C, and 65 - 9 = 56 days x 20 = 1120
/// degree-days. At 20 C it is ripe after 6 + 1120 / 25 = 50.8 days.
#[test]
fn days_to_come_up_at_the_reference_are_taken_off() {
    let mut crop = plain();
    let mut days = [None; 9];
    (days[2], days[3], days[4]) = (Some(12.0), Some(9.0), Some(6.0));
    crop.germination = Germination::Table(days);
    crop.ripening.reference = Celsius(15.0);
    assert!(near(days_at(&crop, false, Celsius(15.0)), 65.0));
    assert!(near(days_at(&crop, false, Celsius(20.0)), 50.8));
}

/// A published sum counts from sowing, and knows no reference: 1050 / 21 = 50 days at 16 C,
/// but never less than it takes to come up. Below the base nothing grows.
#[test]
fn a_published_sum_and_no_warmth() {
    let mut crop = plain();
    crop.ripening.thermal_from_sowing = Some(DegreeDays(1050.0));
    assert!(near(days_at(&crop, false, Celsius(16.0)), 50.0));
    crop.ripening.thermal_from_sowing = Some(DegreeDays(42.0));
    assert!(near(days_at(&crop, false, Celsius(16.0)), 5.0));
    assert_eq!(days_at(&crop, true, Celsius(-5.0)), None);
    crop.ripening.days_from_planting = None;
    crop.ripening.days_from_sowing = None;
    crop.ripening.thermal_from_sowing = None;
    assert_eq!(days_at(&crop, true, Celsius(16.0)), None);
}

/// The plateau holds for the steady count as well: with a short end of 50 days from planting no day brings more
/// than 1050 / 40 = 26.25 degree-days, so at 25 C it takes 40 days from planting. With one of 60 days from sowing
/// no day brings more than 1260 / (48 - 5), so sown it takes 48. A crop that is a tenth quicker has a tenth
/// less of all: 36 days.
#[test]
fn more_warmth_than_it_can_use_makes_it_no_quicker() {
    let mut crop = plain();
    crop.ripening.short_from_planting = Some(50.0);
    crop.ripening.short_from_sowing = Some(60.0);
    let planted = |crop: &_, mean| days_at(crop, true, Celsius(mean));
    assert!(near(planted(&crop, 16.0), 50.0));
    assert!(near(planted(&crop, 21.25), 40.0));
    assert!(near(planted(&crop, 25.0), 40.0));
    crop.germination = Germination::Table([Some(5.0); 9]);
    assert!(near(days_at(&crop, false, Celsius(25.0)), 48.0));
    crop.ripening = crop.ripening.taking(0.9);
    assert!(near(planted(&crop, 16.0), 45.0));
    assert!(near(planted(&crop, 25.0), 36.0));
}

/// Taking a tenth longer stretches all that is counted, and nothing else.
#[test]
fn a_tenth_longer() {
    let mut crop = plain();
    crop.ripening.thermal_from_sowing = Some(DegreeDays(1050.0));
    crop.ripening.short_from_sowing = Some(60.0);
    crop.ripening.short_from_planting = Some(40.0);
    let longer = crop.ripening.taking(1.1);
    let close = |a: Option<f64>, b: f64| a.is_some_and(|a| (a - b).abs() < 1e-9);
    assert!(close(longer.days_from_sowing, 71.5));
    assert!(close(longer.days_from_planting, 55.0));
    assert!(close(longer.short_from_sowing, 66.0));
    assert!(close(longer.short_from_planting, 44.0));
    assert!(close(longer.thermal_from_sowing.map(|sum| sum.0), 1155.0));
    let back = Ripening {
        days_from_sowing: crop.ripening.days_from_sowing,
        days_from_planting: crop.ripening.days_from_planting,
        short_from_sowing: crop.ripening.short_from_sowing,
        short_from_planting: crop.ripening.short_from_planting,
        thermal_from_sowing: crop.ripening.thermal_from_sowing,
        ..longer
    };
    assert_eq!(back, crop.ripening);
}
