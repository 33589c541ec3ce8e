//! Frost, setback and bolting, worked by hand on plain weather.

use tureen::garden::{Bolting, Crop, FrostResponse, Microclimate};
use tureen::growth::{CropSeason, Fate, Light, Loss};
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
        CropSeason::new(
            crop,
            cover,
            &year,
            &Light::of(Latitude(0.0), from_march(&days)),
        )
        .sown(10)
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
            &Light::of(Latitude(latitude), from_march(&days)),
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

/// Ten cold days of 12 C, in which nothing comes up, then 16 C. The soil, a mean of seven days, passes
/// 15 C on the sixth warm day: (12 + 6 x 16) / 7 = 15.4 C.
fn cold_then_mild() -> Vec<tureen::weather::Daily> {
    let mut days = vec![day(12.0, 12.0); 10];
    days.extend(vec![day(16.0, 16.0); 200]);
    days
}

#[test]
fn seed_that_is_not_up_in_time_has_rotted() {
    // Warm enough from day 15 on, so up on day 19 by the end of a fifth warm day: 17 days after day 2.
    let up_after = |rots_after| {
        let mut crop = plain();
        crop.ground.rots_after = rots_after;
        season(&crop, &cold_then_mild()).sown(2)
    };
    assert_eq!(up_after(None).up, Some(19));
    assert_eq!(up_after(Some(17)), up_after(None));
    // A day less, and on the eighteenth of them it is certain.
    let rotten = Fate {
        up: None,
        ripe: None,
        gone: Some((19, Loss::Rotted)),
    };
    assert_eq!(up_after(Some(16)), rotten);
    // Plants are up; seed of before the plan rots like any other.
    let mut crop = plain();
    crop.ground.rots_after = Some(16);
    let season = season(&crop, &cold_then_mild());
    assert_eq!(season.planted(2).up, Some(2));
    assert_eq!(season.begun(2, false), rotten);
    assert_eq!(season.begun(2, true).up, Some(2));
    // Where the span ends first, nobody knows.
    assert_eq!(season.sown(207).gone, None);
}

#[test]
fn nothing_is_started_in_soil_colder_than_the_crop_asks_for() {
    let mut crop = plain();
    (crop.ground.sow, crop.ground.set_out) = (Some(Celsius(14.0)), Some(Celsius(13.0)));
    let asks = season(&crop, &cold_then_mild());
    // (3 x 12 + 4 x 16) / 7 = 14.3 C on day 13; a day before it is 13.7 C.
    assert_eq!(asks.sown(12).gone, Some((12, Loss::NotSown)));
    assert_eq!(asks.sown(13).up, Some(19));
    // (5 x 12 + 2 x 16) / 7 = 13.1 C on day 11; a day before it is 12.6 C.
    assert_eq!(asks.planted(10).gone, Some((10, Loss::NotPlanted)));
    assert_eq!(asks.planted(11).up, Some(11));
    // What stands already was begun, whatever it asks for.
    assert_eq!(asks.begun(10, true).up, Some(10));
    assert_eq!(asks.begun(12, false).up, Some(19));
    // However little a crop asks for, the ground must be one that can be worked.
    crop.ground.sow = Some(Celsius(-3.0));
    let frozen = season(&crop, &vec![day(3.9, 3.9); 30]);
    assert_eq!(frozen.sown(2).gone, Some((2, Loss::NotSown)));
}

#[test]
fn a_start_waits_two_weeks_for_fit_ground() {
    let mut crop = plain();
    (crop.ground.sow, crop.ground.set_out) = (Some(Celsius(14.0)), Some(Celsius(13.0)));
    // Twenty days of 12 C, then 16 C: fit to sow on day 23, to plant on day 21, worked as above.
    let mut days = vec![day(12.0, 12.0); 20];
    days.extend(vec![day(16.0, 16.0); 190]);
    let season = season(&crop, &days);
    for planned in [9, 12, 23] {
        assert_eq!(season.sown_when_fit(planned), season.sown(23), "{planned}");
    }
    for planned in [7, 10, 21] {
        assert_eq!(
            season.planted_when_fit(planned),
            season.planted(21),
            "{planned}"
        );
    }
    // A fit day is not put off.
    assert_eq!(season.sown_when_fit(30), season.sown(30));
    // A fifteenth day is one too many.
    assert_eq!(season.sown_when_fit(8).gone, Some((8, Loss::NotSown)));
    assert_eq!(season.planted_when_fit(6).gone, Some((6, Loss::NotPlanted)));
    for beyond in [210, usize::MAX] {
        assert_eq!(season.sown_when_fit(beyond), season.sown(beyond));
    }
}
