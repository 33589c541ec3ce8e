//! Minutes of a session, worked by hand from the stated figures.

use tureen::garden::{IndoorStart, Method, SeedSize};
use tureen::growth::effort;
use tureen::plan::StepKind;
use tureen::units::{Celsius, Share};

use super::crops::{ingredient, plain};

/// Minutes for 40 plants and 20 children; seed germinates to 80 in 100 and children lose 15.
#[track_caller]
fn takes(step: StepKind, method: Method, size: SeedSize, each_child_sows: u32, expected: f64) {
    let mut crop = plain();
    crop.seed_size = size;
    crop.germinates = Share(0.8);
    crop.indoor = Some(IndoorStart {
        weeks_lo: 5,
        weeks_hi: 7,
        cells_per_flat: 72,
        pots_per_flat: Some(18),
        warm_below: Celsius(20.0),
    });
    let mut dish = ingredient(crop);
    dish.each_child_sows = each_child_sows;
    let found = effort(step, &dish, method, 20).minutes(40).0;
    assert!((found - expected).abs() < 1e-9, "{step:?}: {found}");
}

#[test]
fn each_child_sows_its_own_after_ten_minutes_of_setting_up() {
    use Method::{Direct, Indoor};
    use SeedSize::{Large, Medium, Tiny};
    takes(StepKind::Sow, Direct, Tiny, 10, 10.5);
    takes(StepKind::Sow, Direct, Medium, 10, 11.0);
    takes(StepKind::Sow, Direct, Large, 10, 12.0);
    takes(StepKind::Sow, Indoor, Tiny, 10, 14.0);
}

#[test]
fn the_plants_that_are_wanted_take_their_seed() {
    // 40 plants of seed that grows to 0.8 x 0.85 = 0.68: 58.8 seeds, 2.94 a child.
    let seeds_a_child = 40.0 / 0.68 / 20.0;
    takes(
        StepKind::Sow,
        Method::Direct,
        SeedSize::Large,
        1,
        10.0 + 0.2 * seeds_a_child,
    );
    takes(
        StepKind::Sow,
        Method::Indoor,
        SeedSize::Tiny,
        2,
        10.0 + 0.4 * seeds_a_child,
    );
    takes(StepKind::Sow, Method::Pieces, SeedSize::Large, 1, 12.0);
}

#[test]
fn later_steps_go_by_plants() {
    use Method::{Direct, Indoor};
    use SeedSize::Tiny;
    takes(StepKind::PotUp, Indoor, Tiny, 1, 13.3); // 44 pots, 2.2 a child
    takes(StepKind::PlantOut, Indoor, Tiny, 1, 13.0);
    takes(StepKind::Thin, Direct, Tiny, 1, 10.4);
    takes(StepKind::Pick, Direct, Tiny, 1, 11.0);
}

#[test]
fn steps_without_a_session_take_no_minutes() {
    takes(StepKind::Harden, Method::Indoor, SeedSize::Tiny, 1, 0.0);
    takes(StepKind::Cure, Method::Direct, SeedSize::Tiny, 1, 0.0);
}
