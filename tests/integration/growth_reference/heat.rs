//! Heat that ends a crop, heat in which it sets no fruit, cold that makes it flower, and what bulbs wait for, worked
//! by hand.

use tureen::garden::{Bulbs, Chill, Crop, DayLengthKind, KindOfThePlace, LongDay, NoFruit, Spoils};
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
            day_length: LongDay::Hours(Hours(14.0)),
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

/// Onions need no winter: five long days, of the kind that is grown at the place.
#[test]
fn onions_make_bulbs_in_the_long_days_of_their_kind() {
    let onion = Crop {
        bulbs: Some(Bulbs {
            cold_nights: 0,
            below: Celsius(10.0),
            day_length: LongDay::Kind(KindOfThePlace::ByLatitude),
            days: 5,
        }),
        ..plain()
    };
    let days = with_spell(0..0, 16.0);
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let ripe = |latitude, planted| {
        let light = Light::of(Latitude(latitude), from_march(&days));
        CropSeason::new(&onion, open_ground(), &year, &light)
            .planted(planted)
            .ripe
    };
    // At 40 N a long-day kind has its fifth day of 14 hours on day 73, as above; ripe on day 55 by warmth alone.
    assert_eq!(ripe(40.0, 5), Some(73));
    // Planted later it waits for its warmth: 50 days.
    assert_eq!(ripe(40.0, 40), Some(90));
    // Days of 14 hours there are over in mid-August: what is planted then makes no bulbs, though there are fifty
    // warm days left.
    assert_eq!(ripe(40.0, 159), None);
    // At 30 N, and south of the equator in its autumn, a short-day kind does with 11.5 hours, which day 5 has.
    assert_eq!(ripe(30.0, 5), Some(55));
    assert_eq!(ripe(-30.0, 5), Some(55));
}

/// Day lengths that two extension services give for the three kinds: Iowa State (Horticulture and Home Pest News, "What
/// is a long-day type onion variety?") and Oregon State (July 2006). Read. The latitudes are common practice.
#[test]
fn the_kind_of_onion_follows_the_latitude() {
    let kinds = [
        (0.0, DayLengthKind::Short, 10.0..=12.0, 11.0..=13.0),
        (34.9, DayLengthKind::Short, 10.0..=12.0, 11.0..=13.0),
        (-35.0, DayLengthKind::Intermediate, 12.0..=14.0, 13.0..=14.0),
        (37.9, DayLengthKind::Intermediate, 12.0..=14.0, 13.0..=14.0),
        (38.0, DayLengthKind::Long, 14.0..=16.0, 14.0..=16.0),
        (-61.0, DayLengthKind::Long, 14.0..=16.0, 14.0..=16.0),
    ];
    for (latitude, kind, iowa, oregon) in kinds {
        let found = DayLengthKind::at(Latitude(latitude));
        assert_eq!(found, kind, "{latitude}");
        let Hours(hours) = found.day_length();
        assert!(
            iowa.contains(&hours) && oregon.contains(&hours),
            "{latitude}: {hours}"
        );
    }
}

/// Ten days under 10 C make it flower if it is young.
fn chilled() -> Crop {
    Crop {
        chill: Some(Chill {
            below: Celsius(10.0),
            days: 10,
            within: 30,
        }),
        ..plain()
    }
}

#[test]
fn a_cold_spell_makes_a_young_plant_flower_and_no_other() {
    let planted = |days: &[Daily], on| end(season(&chilled(), days).planted(on));
    let flowers = |day| (None, Some((day, Loss::Bolted)));
    // The tenth cold day is day 29.
    assert_eq!(planted(&with_spell(20..30, 9.5), 10), flowers(29));
    // Nine of 9.2 C and one of 16 C have a mean of 9.88 C; the first such ten days end a day sooner.
    assert_eq!(planted(&with_spell(20..29, 9.2), 10), flowers(28));
    // Ten days of just 10 C, or nine of 9.5 C, do it no harm.
    assert!(planted(&with_spell(20..30, 10.0), 10).0.is_some());
    assert!(planted(&with_spell(20..29, 9.5), 10).0.is_some());
    // All of the spell comes after the day of planting, and ends within thirty days of it.
    assert!(planted(&with_spell(20..30, 9.5), 20).0.is_some());
    assert_eq!(planted(&with_spell(20..31, 9.5), 20), flowers(30));
    assert_eq!(planted(&with_spell(31..41, 9.5), 10), flowers(40));
    assert!(planted(&with_spell(32..42, 9.5), 10).0.is_some());
}
