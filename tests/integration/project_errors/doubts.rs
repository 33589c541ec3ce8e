//! What a valid file says and can hardly mean: each is named, and sound projects are not doubted.

use tureen::calendar::{Date, plus_days};
use tureen::garden::Garden;
use tureen::project;
use tureen::report;

use super::{MINIMAL, catalogue, day};

const MEANS: &str = "tmin_c = [-9, -8, -4, 1, 7, 12, 15, 14, 9, 4, -1, -6]\n\
                     tmax_c = [0, 2, 7, 14, 20, 25, 28, 26, 22, 15, 8, 2]\n\
                     rain_mm = [60, 55, 65, 75, 80, 90, 90, 90, 80, 75, 75, 65]\n";

fn loaded(text: &str, weather: Option<&str>) -> Garden {
    project::load_text("garden.toml", text, weather, catalogue())
        .unwrap_or_else(|found| panic!("{found}"))
}

/// The smallest file with monthly means.
fn with_means(latitude: f64, means: &str) -> Garden {
    let text = MINIMAL
        .replace(
            "weather = \"autumn.csv\"",
            &format!("\n[place.monthly]\n{means}"),
        )
        .replace("44.3", &latitude.to_string());
    loaded(&text, None)
}

/// The smallest file with a record of so many days from 2014 on.
fn with_record(latitude: f64, days: i64, extremes: impl Fn(i64, Date) -> (f64, f64)) -> Garden {
    let lines = (0..days).map(|n| {
        let date = plus_days(day("2014-01-01"), n);
        let (tmin, tmax) = extremes(n, date);
        format!("{date},{tmin},{tmax},1\n")
    });
    let weather = format!("date,tmin_c,tmax_c,rain_mm\n{}", lines.collect::<String>());
    loaded(
        &MINIMAL.replace("44.3", &latitude.to_string()),
        Some(&weather),
    )
}

/// Lows and highs of a northern year, warmest late in July.
fn northern(n: i64, _: Date) -> (f64, f64) {
    let turn = (n as f64 - 115.0) / 365.25 * std::f64::consts::TAU;
    let low = 4.0 + 11.0 * turn.sin() + (n % 7) as f64 / 10.0;
    (low, low + 10.0)
}

fn doubted(garden: &Garden) -> Vec<String> {
    let doubts = garden.doubts.iter();
    doubts
        .map(|doubt| format!("{}: {}", doubt.what, doubt.why))
        .collect()
}

#[track_caller]
fn only_doubt(garden: &Garden, parts: &[&str]) {
    let doubts = doubted(garden);
    assert_eq!(doubts.len(), 1, "{doubts:#?}");
    for part in parts {
        assert!(doubts[0].contains(part), "{part}: {}", doubts[0]);
    }
}

#[test]
fn sound_projects_are_not_doubted() {
    assert_eq!(doubted(&with_means(44.3, MEANS)), [""; 0]);
    assert_eq!(doubted(&with_record(44.3, 1096, northern)), [""; 0]);
    let scenarios = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    for entry in std::fs::read_dir(scenarios).expect("scenarios") {
        let path = entry.expect("an entry").path().join("garden.toml");
        let garden = project::load(&path, catalogue()).unwrap_or_else(|found| panic!("{found}"));
        if path.to_string_lossy().contains("two-beds") {
            // Its weather was made for sums by hand, and looks like it.
            only_doubt(&garden, &["1243 days from 2021-01-01 on with 10 to 20 C"]);
        } else {
            assert_eq!(doubted(&garden), [""; 0], "{}", path.display());
        }
    }
}

#[test]
fn a_forgotten_minus_is_told_on_both_sides_of_the_equator() {
    let parts = ["latitude = -44.3", "January", "latitude = 44.3"];
    only_doubt(&with_means(-44.3, MEANS), &parts);
    only_doubt(
        &with_record(-44.3, 1096, northern),
        &["latitude = -44.3", "latitude = 44.3"],
    );
    let southern = |n, date| northern(n + 183, date);
    assert_eq!(doubted(&with_record(-44.3, 1096, southern)), [""; 0]);
    only_doubt(
        &with_record(44.3, 1096, southern),
        &["summer north", "latitude = -44.3"],
    );
    // Between the tropics it tells nothing.
    assert_eq!(doubted(&with_record(-20.0, 1096, northern)), [""; 0]);
}

#[test]
fn frost_dates_of_another_place_are_told() {
    let with = |dates: &str| with_means(44.3, &format!("{MEANS}{dates}"));
    let fitting =
        with("last_frost = \"10 May\"\nlate_frost = \"25 May\"\nfirst_frost = \"Oct 5\"\n");
    assert_eq!(doubted(&fitting), [""; 0]);
    only_doubt(
        &with("last_frost = \"28 June\"\n"),
        &["last_frost: 28 June", "the same place"],
    );
    only_doubt(
        &with("early_frost = \"1 December\"\n"),
        &["early_frost: 1 December"],
    );
}

#[test]
fn a_wrong_sign_and_a_day_far_off_are_told() {
    let june = MEANS.replace("7, 12, 15", "7, -53.4, 15");
    only_doubt(
        &with_means(44.3, &june),
        &["tmin_c", "-53.4 C in June", "7 and 15 C"],
    );
    let one_day = |n, date| match date == day("2015-06-14") {
        true => (-53.4, 20.0),
        false => northern(n, date),
    };
    let parts = [
        "-53.4 C as lowest temperature on 2015-06-14",
        "a wrong sign",
    ];
    only_doubt(&with_record(44.3, 1096, one_day), &parts);
}

/// A month may be 15 degrees off what lies between its neighbours, over New Year too; of two lists each is
/// looked at.
#[test]
fn a_month_is_doubted_beyond_fifteen_degrees() {
    let list = |key: &str, month: usize, off: f64| {
        let steady = |n: usize, level: f64| level + if n == month { off } else { 0.0 };
        let figures = |level: f64, own: bool| {
            let all = (0..12).map(|n| if own { steady(n, level) } else { level });
            all.map(|t| t.to_string()).collect::<Vec<_>>().join(", ")
        };
        let (low, high) = (
            figures(-5.0, key == "tmin_c"),
            figures(25.0, key == "tmax_c"),
        );
        let rain = ["60"; 12].join(", ");
        format!("tmin_c = [{low}]\ntmax_c = [{high}]\nrain_mm = [{rain}]\n")
    };
    for key in ["tmin_c", "tmax_c"] {
        for (month, name) in [(0, "January"), (5, "June"), (11, "December")] {
            // No side of the equator is told of a place without a winter.
            for off in [15.0, -15.0] {
                let garden = with_means(10.0, &list(key, month, off));
                assert_eq!(doubted(&garden), [""; 0], "{key} {name} {off}");
            }
            for off in [15.5, -15.5] {
                let garden = with_means(10.0, &list(key, month, off));
                let level = if key == "tmin_c" { -5.0 } else { 25.0 };
                let parts = [
                    format!("{key}: {} C in {name}", level + off),
                    format!("around it have {level} and {level} C"),
                ];
                only_doubt(&garden, &parts.each_ref().map(String::as_str));
            }
        }
    }
}

/// A day may be 40 degrees off an ordinary one of its month; how many more there are is told.
#[test]
fn a_day_is_doubted_beyond_forty_degrees() {
    let with = |low: f64, high: f64, days: &[i64]| {
        let days = days.to_vec();
        with_record(10.0, 1096, move |n, _| match days.contains(&n) {
            true => (low, high),
            false => (5.0 + (n % 2) as f64 / 100.0, 15.0),
        })
    };
    // Near the equator nothing else is told of so steady a record, in which no two days in a row are alike.
    assert_eq!(doubted(&with(-35.0, 15.0, &[200])), [""; 0]);
    assert_eq!(doubted(&with(5.0, 55.0, &[200])), [""; 0]);
    only_doubt(
        &with(-35.1, 15.0, &[200]),
        &["-35.1 C as lowest temperature on 2014-07-20: "],
    );
    only_doubt(
        &with(5.0, 55.1, &[0, 200]),
        &[
            "55.1 C as highest temperature on 2014-01-01, and 1 more like it",
            "has 15 C",
        ],
    );
    only_doubt(
        &with(-40.0, 60.0, &[10, 20, 1095]),
        &["-40 C as lowest temperature on 2014-01-11, and 5 more like it"],
    );
}

/// The tropic itself is no part of the tropics; the coldest month of every season is known.
#[test]
fn the_side_of_the_equator_is_told_by_the_coldest_month() {
    let coldest = |month: usize| {
        let figures = |level: f64| {
            let all = (0..12).map(|n| if n == month { level - 3.0 } else { level });
            all.map(|t| t.to_string()).collect::<Vec<_>>().join(", ")
        };
        let (low, high, rain) = (figures(5.0), figures(15.0), ["60"; 12].join(", "));
        format!("tmin_c = [{low}]\ntmax_c = [{high}]\nrain_mm = [{rain}]\n")
    };
    for month in 0..12 {
        let north_is_wrong = (4..=8).contains(&month);
        let south_is_wrong = !(3..=9).contains(&month);
        for (latitude, wrong) in [
            (23.3, false),
            (23.4, north_is_wrong),
            (44.3, north_is_wrong),
            (-23.3, false),
            (-23.4, south_is_wrong),
            (-44.3, south_is_wrong),
        ] {
            let garden = with_means(latitude, &coldest(month));
            let told = doubted(&garden);
            assert_eq!(!told.is_empty(), wrong, "{latitude}, {month}: {told:?}");
        }
    }
}

/// Up to 35 degrees a year may have a mean of 35 C, then 0.7 degrees less with each.
#[test]
fn a_year_is_doubted_beyond_the_warmest_of_its_latitude() {
    let steady = |mean: f64| {
        let figures = |t: f64| vec![t.to_string(); 12].join(", ");
        let (low, high, rain) = (figures(mean - 5.0), figures(mean + 5.0), figures(60.0));
        format!("tmin_c = [{low}]\ntmax_c = [{high}]\nrain_mm = [{rain}]\n")
    };
    for (latitude, most) in [
        (10.0, 35.0),
        (-10.0, 35.0),
        (35.0, 35.0),
        (45.0, 28.0),
        (-55.0, 21.0),
    ] {
        let below = doubted(&with_means(latitude, &steady(most - 0.5)));
        assert!(!below.iter().any(|d| d.contains("Fahrenheit")), "{below:?}");
        let above = doubted(&with_means(latitude, &steady(most + 0.5)));
        assert!(above.iter().any(|d| d.contains("Fahrenheit")), "{latitude}");
    }
}

#[test]
fn days_that_stood_still_are_told() {
    let still = |length: i64| {
        move |n: i64, date| match (60..60 + length).contains(&n) {
            true => (0.0, 0.0),
            false => northern(n, date),
        }
    };
    only_doubt(
        &with_record(44.3, 1096, still(60)),
        &["60 days from 2014-03-02 on", "0 to 0 C"],
    );
    only_doubt(&with_record(44.3, 1096, still(20)), &["20 days"]);
    // Of several runs the longest, of two of a length the first.
    let runs = |lengths: [i64; 2]| {
        with_record(44.3, 1096, move |n, date| {
            match (60..60 + lengths[0]).contains(&n) || (200..200 + lengths[1]).contains(&n) {
                true => (0.0, 0.0),
                false => northern(n, date),
            }
        })
    };
    only_doubt(&runs([25, 30]), &["30 days from 2014-07-20 on"]);
    only_doubt(&runs([30, 25]), &["30 days from 2014-03-02 on"]);
    only_doubt(&runs([25, 25]), &["25 days from 2014-03-02 on"]);
    // Only the lows or only the highs stay the same: that is no missing day.
    for low in [true, false] {
        let half = |n: i64, date| match ((60..120).contains(&n), northern(n, date)) {
            (true, (_, high)) if low => (-3.0, high.max(0.0)),
            (true, (low, _)) => (low, 12.0),
            (false, extremes) => extremes,
        };
        assert_eq!(doubted(&with_record(44.3, 1096, half)), [""; 0]);
    }
    assert_eq!(doubted(&with_record(44.3, 1096, still(19))), [""; 0]);
}

#[test]
fn fahrenheit_is_told() {
    // A cool coast in degrees Fahrenheit: no figure is out of range, but no year is so warm.
    let means = "tmin_c = [28, 28, 29, 33, 39, 45, 48, 47, 43, 37, 32, 29]\n\
                 tmax_c = [36, 37, 38, 42, 49, 54, 57, 56, 50, 44, 39, 37]\n\
                 rain_mm = [60, 55, 65, 75, 80, 90, 90, 90, 80, 75, 75, 65]\n";
    only_doubt(
        &with_means(64.1, means),
        &["41 C over the year", "Fahrenheit", "41 F are 5 C"],
    );
    let record = |n, date| {
        let (low, high) = northern(n, date);
        (low * 0.6 + 34.0, high * 0.6 + 36.0)
    };
    only_doubt(
        &with_record(50.0, 1096, record),
        &["over the year", "Fahrenheit"],
    );
}

#[test]
fn a_long_bed_and_a_short_record_are_told() {
    let weather = super::AUTUMN;
    let bed = |length: &str| {
        loaded(
            &MINIMAL.replace("length_m = 3.6", &format!("length_m = {length}")),
            Some(weather),
        )
    };
    let doubts = doubted(&bed("15.5"));
    assert!(
        doubts[1].starts_with("bed \"1\": length_m = 15.5: "),
        "{doubts:?}"
    );
    only_doubt(&bed("15"), &["a weather record of 58 days"]);
    only_doubt(&with_record(44.3, 364, northern), &["364 days"]);
    assert_eq!(doubted(&with_record(44.3, 365, northern)), [""; 0]);
}

#[test]
fn check_and_plan_tell_doubts_at_their_head() {
    let (mut garden, checked) = crate::report::tiny();
    let look = tureen::page::Look {
        width: 100,
        color: false,
    };
    let heading = "LOOK AT THIS AGAIN";
    assert!(!report::plan(&garden, &checked).text(look).contains(heading));
    let doubt = tureen::garden::Doubt {
        what: "bed 1".to_owned(),
        why: "metres?".to_owned(),
    };
    garden.doubts.push(doubt);
    for page in [report::understood(&garden), report::plan(&garden, &checked)] {
        let text = page.text(look);
        let head: Vec<&str> = text.lines().take(8).collect();
        assert!(head.iter().any(|line| line.starts_with(heading)), "{text}");
        assert!(
            head.iter().any(|line| line.ends_with("bed 1: metres?")),
            "{text}"
        );
    }
}
