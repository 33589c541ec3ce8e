//! Step 2 of the solution by hand: in which weather years what is sown on each session is ripe.

use tureen::calendar::Date;
use tureen::garden::{Garden, IngredientAt};
use tureen::growth::{CropSeason, Fate, Light, Loss};

use super::{LETTUCE, RADISH, day, garden};

/// A plain warm year, the year with the frost night, the cold year.
const WARM: i32 = 2021;
const FROST: i32 = 2024;
const COLD: i32 = 2025;

/// What becomes of a crop in a bed; days as dates of the plan.
struct Seen {
    up: Option<Date>,
    ripe: Option<Date>,
    gone: Option<(Date, Loss)>,
}

fn grow(garden: &Garden, at: IngredientAt, bed: &str, year: i32, start: Date) -> Seen {
    let horizon = garden.horizon();
    let years = garden.weather.years(horizon);
    let weather = years.iter().find(|w| w.label == year).unwrap();
    let bed = garden.beds.iter().find(|b| b.id == bed).unwrap();
    let season = CropSeason::new(
        &garden[at].crop,
        bed.microclimate(),
        weather,
        &Light::of(garden.latitude, horizon),
    );
    let number = horizon.day_number(start).unwrap();
    let Fate { up, ripe, gone } = if at == LETTUCE {
        season.planted(number)
    } else {
        season.sown(number)
    };
    let date = |day| horizon.date(day);
    Seen {
        up: up.map(date),
        ripe: ripe.map(date),
        gone: gone.map(|(day, loss)| (date(day), loss)),
    }
}

#[test]
fn five_years_of_weather() {
    let garden = garden();
    let years = garden.weather.years(garden.horizon());
    let labels: Vec<i32> = years.iter().map(|w| w.label).collect();
    assert_eq!(labels, [2021, 2022, 2023, 2024, 2025]);
}

/// 32 packet days x (13 - 4.4) = 275.2 degree-days; a warm day gives 15 - 4.4 = 10.6, so 26
/// days; a cold day 12 - 4.4 = 7.6, so 37 days.
#[test]
fn lettuce_is_ripe_26_days_after_planting_and_37_in_the_cold_year() {
    let garden = garden();
    let ripe = |year, start| grow(&garden, LETTUCE, "A", year, start).ripe;
    assert_eq!(ripe(WARM, day(5, 11)), Some(day(6, 6)));
    assert_eq!(ripe(WARM, day(5, 25)), Some(day(6, 20)));
    assert_eq!(ripe(COLD, day(5, 11)), Some(day(6, 17)));
    // 1 July and 4 July lie beyond the plan's last week.
    assert_eq!(ripe(COLD, day(5, 25)), None);
    assert_eq!(ripe(WARM, day(6, 8)), None);
}

/// The frost night of -5 C kills lettuce, which bears -3, in bed A; fleece keeps off 2 C.
#[test]
fn fleece_saves_the_lettuce_from_the_frost() {
    let garden = garden();
    let bare = grow(&garden, LETTUCE, "A", FROST, day(5, 25));
    assert_eq!(bare.gone, Some((day(5, 28), Loss::Frost)));
    assert_eq!(bare.ripe, None);
    let covered = grow(&garden, LETTUCE, "B", FROST, day(5, 25));
    assert_eq!(covered.ripe, Some(day(6, 20)));
    assert_eq!(covered.gone, None);
}

/// Up after 6 days at 15 C (HM1954), which is also the reference, so (28 - 6) packet days x 10.6
/// = 233.2 degree-days and 22 days more. Open ground is 2 C warmer than the air: 17 C, between 6 days at 15 C and
/// 4 at 20 C, so up after 5.2, that is 6 days. In the cold year 14 C, between 11 days at 10 C and 6 at 15 C:
/// up after 7 days, ripe 233.2 / 7.6 = 30.7, that is 31 days later.
#[test]
fn radish_is_ripe_four_weeks_after_sowing_and_38_days_in_the_cold_year() {
    let garden = garden();
    let warm = grow(&garden, RADISH, "A", WARM, day(5, 27));
    assert_eq!(warm.up, Some(day(6, 2)));
    assert_eq!(warm.ripe, Some(day(6, 24)));
    let cold = grow(&garden, RADISH, "A", COLD, day(5, 13));
    assert_eq!(cold.up, Some(day(5, 20)));
    assert_eq!(cold.ripe, Some(day(6, 20)));
    assert_eq!(grow(&garden, RADISH, "A", COLD, day(5, 27)).ripe, None);
}

/// Sown a session earlier it is past its ten days on 21 June, or dead by frost; sown on the
/// day before the frost it is not up yet and comes through.
#[test]
fn radish_misses_the_day_if_it_is_sown_a_session_earlier() {
    let garden = garden();
    let warm = grow(&garden, RADISH, "A", WARM, day(5, 13));
    assert_eq!(warm.ripe, Some(day(6, 10)));
    assert_eq!(warm.gone, Some((day(6, 21), Loss::Past)));
    let frost = grow(&garden, RADISH, "A", FROST, day(5, 13));
    assert_eq!(frost.gone, Some((day(5, 28), Loss::Frost)));
    let late = grow(&garden, RADISH, "A", FROST, day(5, 27));
    assert_eq!(late.ripe, Some(day(6, 24)));
}
