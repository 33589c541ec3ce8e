//! Minutes of a session, worked by hand from the stated figures.

use tureen::garden::{IndoorStart, Method, SeedSize};
use tureen::growth::{minutes, need};
use tureen::plan::StepKind;
use tureen::units::Celsius;

use super::crops::{ingredient, plain};

#[track_caller]
fn takes(step: StepKind, method: Method, size: SeedSize, expected: f64) {
    let mut crop = plain();
    crop.seed_size = size;
    crop.indoor = Some(IndoorStart {
        weeks_lo: 5,
        weeks_hi: 7,
        cells_per_flat: 72,
        pots_per_flat: Some(18),
        warm_below: Celsius(20.0),
    });
    let mut dish = ingredient(crop);
    dish.each_child_sows = 10; // 20 children sow 200 seeds
    let need = need(&dish, method, 20, 40);
    let found = minutes(step, &dish.crop, &need, 20).0;
    assert!((found - expected).abs() < 1e-9, "{step:?}: {found}");
}

#[test]
fn each_child_does_its_part_after_ten_minutes_of_setting_up() {
    use Method::{Direct, Indoor};
    use SeedSize::{Large, Medium, Tiny};
    takes(StepKind::Sow, Direct, Tiny, 10.5);
    takes(StepKind::Sow, Direct, Medium, 11.0);
    takes(StepKind::Sow, Direct, Large, 12.0);
    takes(StepKind::Sow, Indoor, Tiny, 14.0);
    takes(StepKind::PotUp, Indoor, Tiny, 13.3); // 44 pots, 2.2 a child
    takes(StepKind::PlantOut, Indoor, Tiny, 13.0);
    takes(StepKind::Thin, Direct, Tiny, 10.4);
    takes(StepKind::Pick, Direct, Tiny, 11.0);
}

#[test]
fn steps_without_a_session_take_no_minutes() {
    takes(StepKind::Harden, Method::Indoor, SeedSize::Tiny, 0.0);
    takes(StepKind::Cure, Method::Direct, SeedSize::Tiny, 0.0);
}
