//! The pick rule: every reason why a part is not in the pot.

use tureen::garden::Picking;
use tureen::growth::{Fate, Loss, Unready, picked_and_kept};

use super::crops::plain;

/// Ripe on day 75, past on day 96.
const RIPE: Fate = Fate {
    up: Some(15),
    ripe: Some(75),
    gone: Some((96, Loss::Past)),
};

/// Keeps 3 days after 2 days of cure.
fn picking() -> Picking {
    Picking {
        cure_days: 2,
        storage_days: 3,
        ..plain().picking
    }
}

fn picked(fate: Fate, picks: &[usize], eaten: usize) -> Result<usize, Unready> {
    picked_and_kept(&fate, &picking(), picks, eaten)
}

#[test]
fn the_first_session_at_which_it_is_ripe() {
    assert_eq!(picked(RIPE, &[61, 68, 75, 82], 80), Ok(75));
    assert_eq!(picked(RIPE, &[74, 81, 88], 86), Ok(81));
    assert_eq!(picked(RIPE, &[95], 100), Ok(95));
    assert_eq!(picked(RIPE, &[75], 75), Ok(75));
}

#[test]
fn it_must_keep() {
    assert_eq!(picked(RIPE, &[75], 80), Ok(75));
    assert_eq!(picked(RIPE, &[75], 81), Err(Unready::DoesNotKeep));
    // The rule has no foresight: a later session would have kept.
    assert_eq!(picked(RIPE, &[75, 82], 85), Err(Unready::DoesNotKeep));
}

#[test]
fn not_ripe_in_time() {
    assert_eq!(picked(RIPE, &[61, 68], 80), Err(Unready::NotRipe));
    assert_eq!(picked(RIPE, &[], 80), Err(Unready::NotRipe));
    assert_eq!(picked(RIPE, &[68, 82], 80), Err(Unready::NotRipe));
    let unripe = Fate {
        ripe: None,
        gone: None,
        ..RIPE
    };
    assert_eq!(picked(unripe, &[75, 82], 85), Err(Unready::NotRipe));
}

#[test]
fn lost_before_the_session() {
    assert_eq!(picked(RIPE, &[68, 96], 99), Err(Unready::Past));
    for (loss, reason) in [
        (Loss::Frost, Unready::Frost),
        (Loss::Bolted, Unready::Bolted),
        (Loss::Past, Unready::Past),
    ] {
        let lost = Fate {
            gone: Some((80, loss)),
            ..RIPE
        };
        assert_eq!(picked(lost, &[79], 80), Ok(79));
        assert_eq!(picked(lost, &[80], 82), Err(reason));
        let unripe = Fate { ripe: None, ..lost };
        assert_eq!(picked(unripe, &[82], 82), Err(reason));
    }
}

#[test]
fn never_up() {
    let never = Fate {
        up: None,
        ripe: None,
        gone: None,
    };
    assert_eq!(picked(never, &[75], 80), Err(Unready::NotUp));
    for (loss, reason) in [
        (Loss::NotSown, Unready::NotSown),
        (Loss::NotPlanted, Unready::NotPlanted),
        (Loss::Rotted, Unready::Rotted),
    ] {
        let too_cold = Fate {
            gone: Some((60, loss)),
            ..never
        };
        assert_eq!(picked(too_cold, &[75], 80), Err(reason));
    }
}
