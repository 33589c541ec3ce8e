//! Heat that ends a crop, heat in which it sets no fruit, and the cold that bulbs wait for, worked by hand.

use tureen::garden::{Bulbs, Crop, NoFruit, Spoils};
use tureen::growth::{CropSeason, Fate, Light, Loss};
use tureen::units::{Celsius, Hours, Latitude};
use tureen::weather::{Daily, WeatherYear};

use super::crops::{day, from_march, open_ground, plain, season};

/// Ten days over 24.5 C spoil it.
fn spoils() -> Crop {
    Crop {
        spoils: Some(Spoils {
            above: Celsius(24.5),
            days: 10,
        }),
        ..plain()
    }
}

/// 210 days at a steady 16 C, and others at a steady temperature.
fn with_spell(hot: std::ops::Range<usize>, mean: f64) -> Vec<Daily> {
    let one = |n| match hot.contains(&n) {
        true => day(mean, mean),
        false => day(16.0, 16.0),
    };
    (0..210).map(one).collect()
}

fn end(fate: Fate) -> (Option<usize>, Option<(usize, Loss)>) {
    (fate.ripe, fate.gone)
}

#[test]
fn a_hot_spell_ends_what_is_up() {
    let planted = |days: &[Daily], on| end(season(&spoils(), days).planted(on));
    // Planted on day 10 it would be ripe on day 60 or a few days sooner. The tenth hot day is day 39.
    let hot = Some((39, Loss::Heat));
    assert_eq!(planted(&with_spell(30..40, 25.0), 10), (None, hot));
    // Nine days of 26 C and one of 16 C have a mean of 25 C; the first such ten days end a day sooner.
    let hot = Some((38, Loss::Heat));
    assert_eq!(planted(&with_spell(30..39, 26.0), 10), (None, hot));
    // Eight have one of 24 C: 8 x 31 + 39 x 21 = 1067 of 1050 degree-days by day 57, so it is ripe then.
    let ripe = (Some(57), Some((78, Loss::Past)));
    assert_eq!(planted(&with_spell(30..38, 26.0), 10), ripe);
    // A spell of just the limit is not over it.
    assert!(planted(&with_spell(0..210, 24.5), 10).0.is_some());
    // All of the spell must come after it is up: with the planting day ten of them are, without it nine.
    assert!(planted(&with_spell(30..40, 25.0), 29).0.is_none());
    assert!(planted(&with_spell(30..40, 30.0), 36).0.is_some());
}

#[test]
fn heat_after_ripening_ends_the_picking_but_not_what_is_safe_in_the_ground() {
    // Ripe on day 60 and good until day 80; ten hot days end on day 71.
    let weather = with_spell(62..72, 25.0);
    let leaf = season(&spoils(), &weather).planted(10);
    assert_eq!(end(leaf), (Some(60), Some((71, Loss::Heat))));
    let mut root = spoils();
    root.picking.safe_underground = true;
    let root = |days: &[Daily]| end(season(&root, days).planted(10));
    assert_eq!(root(&weather), (Some(60), Some((81, Loss::Past))));
    // Before it is ripe it is lost like any other.
    let unripe = root(&with_spell(30..40, 25.0));
    assert_eq!(unripe, (None, Some((39, Loss::Heat))));
}

/// Two weeks of noons over 35 C or nights over 24 C leave it without fruit.
fn fruit() -> Crop {
    Crop {
        no_fruit: Some(NoFruit {
            nights: Celsius(24.0),
            noons: Celsius(35.0),
            days: 14,
        }),
        frost_limit: Celsius(-10.0),
        ..plain()
    }
}

/// 210 days with a mean of 16 C, some of which have a noon of 36 C. Warmth is the same on all.
fn with_noons(hot: std::ops::Range<usize>) -> Vec<Daily> {
    let one = |n| match hot.contains(&n) {
        true => day(-4.0, 36.0),
        false => day(16.0, 16.0),
    };
    (0..210).map(one).collect()
}

#[test]
fn two_hot_weeks_while_it_sets_leave_no_fruit() {
    // Planted on day 10, ripe on day 60: what sets after day 46 counts.
    let planted = |days: &[Daily]| end(season(&fruit(), days).planted(10));
    let lives = (Some(60), Some((81, Loss::Past)));
    let ends_on = |last| Some((last, Loss::Heat));
    // Hot weeks that are over before that only put off flowers.
    assert_eq!(planted(&with_noons(31..46)), lives);
    assert_eq!(planted(&with_noons(31..47)), (None, ends_on(46)));
    assert_eq!(planted(&with_noons(40..54)), (None, ends_on(53)));
    // Thirteen days are too few.
    assert_eq!(planted(&with_noons(40..53)), lives);
    // Heat from the first pick on ends the picking.
    assert_eq!(planted(&with_noons(50..64)), (Some(60), ends_on(63)));
    assert_eq!(
        planted(&with_noons(70..100)),
        (Some(60), Some((81, Loss::Past)))
    );
    assert_eq!(planted(&with_noons(66..100)), (Some(60), ends_on(79)));
    // Nights and noons make one spell; a day that has neither parts it.
    let mut days = with_noons(45..59);
    days[50] = day(25.0, 25.0);
    assert_eq!(planted(&days).1, ends_on(58));
    days[50] = day(24.0, 35.0);
    assert_ne!(planted(&days).1, ends_on(58));
    // What does not get ripe in the span has nothing to lose.
    let late = season(&fruit(), &with_noons(180..210)).planted(170);
    assert_eq!(end(late), (None, None));
}

/// Bulbs after ten nights under 10 C and five days of 14 hours.
fn bulb() -> Crop {
    Crop {
        bulbs: Some(Bulbs {
            cold_nights: 10,
            below: Celsius(10.0),
            day_length: Hours(14.0),
            days: 5,
        }),
        ..plain()
    }
}

#[test]
fn bulbs_wait_for_cold_nights_and_long_days() {
    // Nights of 8 C until day 20, means of 16 C throughout. At 40 N days of 14 hours begin on day 69
    // (`loss::long_days_bolt`).
    let days: Vec<Daily> = (0..210)
        .map(|n| {
            if n <= 20 {
                day(8.0, 24.0)
            } else {
                day(12.0, 20.0)
            }
        })
        .collect();
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let at = |crop: &Crop, latitude, planted| {
        let light = Light::of(Latitude(latitude), from_march(&days));
        CropSeason::new(crop, open_ground(), &year, &light).planted(planted)
    };
    // Warm enough on day 55; ten cold nights are over on day 15, the fifth long day is day 73.
    assert_eq!(at(&plain(), 40.0, 5).ripe, Some(55));
    assert_eq!(at(&bulb(), 40.0, 5).ripe, Some(73));
    assert_eq!(at(&bulb(), 40.0, 5).gone, Some((94, Loss::Past)));
    // The night of the planting day is over: day 10 has the last ten, day 11 nine.
    assert_eq!(at(&bulb(), 40.0, 10).ripe, Some(73));
    assert_eq!(at(&bulb(), 40.0, 11).ripe, None);
    // Where no day is long enough there are no bulbs.
    assert_eq!(at(&bulb(), 0.0, 5).ripe, None);
    // Slow ones take the warmth that they need.
    let mut slow = bulb();
    slow.ripening.days_from_planting = Some(100.0);
    assert_eq!(at(&slow, 40.0, 5).ripe, Some(105));
}
