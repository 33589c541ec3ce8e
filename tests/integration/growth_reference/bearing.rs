//! How long a crop bears that somebody keeps picked, or nobody, worked by hand on steady weather.

use tureen::garden::{Crop, WhilePicked};
use tureen::growth::{Loss, PickingDays};

use super::crops::{plain, season, steady_with_frosts};

/// Sown on day 10 it is ripe on day 75; unpicked it bears for 20 days, picked every week for 60.
fn bearer() -> Crop {
    let mut crop = plain();
    crop.picking.keeps_bearing = true;
    crop.picking.while_picked = Some(WhilePicked {
        every_days: 7,
        bears_days: 60,
    });
    crop
}

/// The first day on which nothing can be picked any more, where somebody picks on some days.
fn gone(picked: &[usize], frosts: &[usize]) -> Option<(usize, Loss)> {
    gone_of(&bearer(), picked, frosts)
}

fn gone_of(crop: &Crop, picked: &[usize], frosts: &[usize]) -> Option<(usize, Loss)> {
    let season = season(crop, &steady_with_frosts(frosts));
    let season = season.picked_on(&PickingDays::on(picked.iter().copied()));
    let fate = season.sown(10);
    assert_eq!(fate.ripe, Some(75));
    fate.gone
}

/// Every week from one day to another.
fn weekly(from: usize, to: usize) -> Vec<usize> {
    (from..=to).step_by(7).collect()
}

#[test]
fn picked_every_week_it_bears_to_its_end() {
    assert_eq!(gone(&weekly(75, 200), &[]), Some((136, Loss::Past)));
    // The first pick within a week of first ripeness, whatever was picked before.
    assert_eq!(gone(&weekly(82, 200), &[]), Some((136, Loss::Past)));
    assert_eq!(gone(&weekly(5, 200), &[]), Some((136, Loss::Past)));
}

#[test]
fn it_bears_for_a_week_after_the_last_pick_of_a_chain() {
    assert_eq!(gone(&weekly(75, 103), &[]), Some((111, Loss::Past)));
    // Eight days without a pick break it, however often somebody picks later.
    let mut broken = weekly(75, 103);
    broken.extend(weekly(111, 200));
    assert_eq!(gone(&broken, &[]), Some((111, Loss::Past)));
    broken.insert(5, 110);
    assert_eq!(gone(&broken, &[]), Some((136, Loss::Past)));
}

#[test]
fn unpicked_or_picked_too_late_it_bears_for_its_fixed_days() {
    assert_eq!(gone(&[], &[]), Some((96, Loss::Past)));
    assert_eq!(gone(&weekly(83, 200), &[]), Some((96, Loss::Past)));
    assert_eq!(gone(&[75], &[]), Some((96, Loss::Past)));
    // A season that knows of nobody is one in which nobody picks.
    let unknown = season(&bearer(), &steady_with_frosts(&[])).sown(10);
    assert_eq!(unknown.gone, Some((96, Loss::Past)));
}

/// It holds for five days, shorter than the week between two picks: ripe on day 75 it is past on day 81 if nobody comes.
#[test]
fn what_nobody_picks_bears_for_its_fixed_days_however_few_they_are() {
    let mut crop = bearer();
    crop.picking.holds_in_ground_days = 5;
    let gone = |picked: &[usize]| gone_of(&crop, picked, &[]);
    assert_eq!(gone(&[]), Some((81, Loss::Past)));
    assert_eq!(gone(&weekly(5, 68)), Some((81, Loss::Past)));
    assert_eq!(gone(&weekly(83, 200)), Some((81, Loss::Past)));
    // A pick on the day itself is one, and so is one a week later.
    assert_eq!(gone(&[75]), Some((83, Loss::Past)));
    assert_eq!(gone(&[82]), Some((90, Loss::Past)));
    assert_eq!(gone(&weekly(75, 200)), Some((136, Loss::Past)));
}

#[test]
fn frost_ends_it_sooner() {
    assert_eq!(gone(&weekly(75, 200), &[120]), Some((120, Loss::Frost)));
}

#[test]
fn picking_does_nothing_for_what_it_does_not_lengthen() {
    let season = season(&plain(), &steady_with_frosts(&[]));
    let season = season.picked_on(&PickingDays::on(weekly(75, 200)));
    assert_eq!(season.sown(10).gone, Some((96, Loss::Past)));
}
