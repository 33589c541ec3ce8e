//! Frost, setback and bolting, worked by hand on plain weather.

use tureen::garden::{Bolting, Crop, FrostResponse, Microclimate};
use tureen::growth::{CropSeason, Fate, Loss};
use tureen::units::{Celsius, Hours, Latitude};
use tureen::weather::WeatherYear;

use super::crops::{day, from_march, open_ground, plain, season, steady_with_frosts};

/// The fate of a sowing on day 10 (up on day 15, ripe on day 75, past on day 96) with frosts.
fn sown_on_10(crop: &Crop, frosts: &[usize]) -> Fate {
    season(crop, &steady_with_frosts(frosts)).sown(10)
}

#[test]
fn frost_kills_leaves_that_are_up() {
    let killed = sown_on_10(&plain(), &[40, 50]);
    assert_eq!(
        killed,
        Fate {
            up: Some(15),
            ripe: None,
            gone: Some((40, Loss::Frost))
        }
    );
    // Before and on the day on which it comes up there is nothing to kill.
    assert_eq!(sown_on_10(&plain(), &[11, 14, 15]).ripe, Some(75));
    assert_eq!(sown_on_10(&plain(), &[16]).ripe, None);
    // A planting day's frost is over when the plants go in.
    let weather = steady_with_frosts(&[40]);
    assert_eq!(season(&plain(), &weather).planted(40).ripe, Some(90));
    assert_eq!(season(&plain(), &weather).planted(39).ripe, None);
}

#[test]
fn frost_after_ripening_ends_the_picking() {
    let frosted = sown_on_10(&plain(), &[80]);
    assert_eq!(frosted.ripe, Some(75));
    assert_eq!(frosted.gone, Some((80, Loss::Frost)));
    // Frost on the very day leaves no day to pick.
    assert_eq!(sown_on_10(&plain(), &[75]).ripe, None);
}

#[test]
fn ripe_roots_are_safe_in_the_ground() {
    let mut root = plain();
    root.picking.safe_underground = true;
    assert_eq!(sown_on_10(&root, &[75, 80]).gone, Some((96, Loss::Past)));
    let unripe = sown_on_10(&root, &[74]);
    assert_eq!((unripe.ripe, unripe.gone), (None, Some((74, Loss::Frost))));
}

#[test]
fn a_cover_and_the_crop_s_own_limit_keep_frost_off() {
    let days = steady_with_frosts(&[40]);
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let under = |crop: &Crop, kept_off| {
        let cover = Microclimate {
            frost_kept_off: Celsius(kept_off),
            ..open_ground()
        };
        CropSeason::new(crop, cover, &year, Latitude(0.0), from_march(&days)).sown(10)
    };
    // A night of -2 C against a limit of 0 C.
    assert_eq!(under(&plain(), 1.9).gone, Some((40, Loss::Frost)));
    assert_eq!(under(&plain(), 2.0).gone, Some((96, Loss::Past)));
    let mut hardy = plain();
    hardy.frost_limit = Celsius(-4.0);
    assert_eq!(under(&hardy, 0.0).gone, Some((96, Loss::Past)));
}

#[test]
fn frost_sets_back_what_it_does_not_kill() {
    let mut crop = plain();
    crop.frost = FrostResponse::SetBack { days: 7.0 };
    crop.picking.holds_in_ground_days = 56;
    let ripe = |frosts: &[usize]| sown_on_10(&crop, frosts).ripe;
    assert_eq!(ripe(&[40]), Some(82));
    assert_eq!(ripe(&[40, 43, 46]), Some(82)); // within a week: once
    assert_eq!(ripe(&[40, 43, 47]), Some(89)); // a week later: again
    assert_eq!(ripe(&[5, 15]), Some(75)); // nothing stood yet
    assert_eq!(ripe(&[75, 80]), Some(75)); // ripe already
    assert_eq!(ripe(&[74, 78]), Some(82)); // the second within the week
    assert_eq!(ripe(&[74, 81]), Some(89)); // the first put ripening off past the second
    assert_eq!(sown_on_10(&crop, &[40]).gone, Some((82 + 57, Loss::Past)));
}

#[test]
fn long_days_bolt() {
    // At 40 N days of 14 h begin on day 129, 9 May: worked from FAO-56 equations 24, 25 and
    // 34 by hand. From 1 March that is day number 69.
    let mut crop = plain();
    crop.bolting = Some(Bolting {
        day_length: Hours(14.0),
        after_days: 10,
    });
    let days = vec![day(16.0, 16.0); 210];
    let year = WeatherYear {
        label: 2027,
        lead: &[],
        days: &days,
    };
    let at = |latitude| {
        CropSeason::new(
            &crop,
            open_ground(),
            &year,
            Latitude(latitude),
            from_march(&days),
        )
    };
    let north = at(40.0);
    // Planted on day 10, ripe on day 60: the tenth long day is 78.
    let early = north.planted(10);
    assert_eq!(
        (early.ripe, early.gone),
        (Some(60), Some((78, Loss::Bolted)))
    );
    // Planted on day 30, ripe on day 80: too late.
    let late = north.planted(30);
    assert_eq!((late.ripe, late.gone), (None, Some((78, Loss::Bolted))));
    // Planted within the long days: they count from the day after.
    assert_eq!(north.planted(74).gone, Some((84, Loss::Bolted)));
    // At 40 S days never are that long. They fall under ten hours on the same 9 May, after
    // 38 days of growth, until day 216, 4 August, which is day number 156: twelve more days.
    let south = at(-40.0).planted(30);
    assert_eq!(
        (south.ripe, south.gone),
        (Some(167), Some((188, Loss::Past)))
    );
}
