//! Years made up from monthly means and the frost dates of the town: they freeze on those dates, keep the
//! means, and differ in nothing where no date is given.

use chrono::Datelike;

use tureen::calendar::Date;
use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::cold_days::{ColdDays, FREEZING};
use tureen::weather::generator::generate;
use tureen::weather::monthly::{FrostDates, Monthly};
use tureen::weather::{Daily, Record};

use crate::support::day;

/// A place made up for the test: its latitude, mean lows and daily range, and its frost dates.
struct Place {
    latitude: f64,
    lows: [f64; 12],
    frosts: [&'static str; 4],
}

/// Cold winters; a short summer, with 56 days between the safe dates of spring and autumn; a mild winter with
/// late frosts, as in a hollow, and one with early ones, as by the sea; and mild winters of the south.
const PLACES: [Place; 5] = [
    Place {
        latitude: 47.0,
        lows: [
            -12.0, -11.0, -7.0, -0.5, 6.5, 11.5, 14.5, 13.5, 9.5, 2.5, -4.5, -9.5,
        ],
        frosts: ["2001-05-18", "2001-06-01", "2001-09-28", "2001-09-14"],
    },
    Place {
        latitude: 64.0,
        lows: [
            -20.0, -18.0, -13.0, -5.0, 1.0, 7.5, 10.5, 9.0, 4.0, -2.5, -10.0, -16.0,
        ],
        frosts: ["2001-06-05", "2001-06-20", "2001-08-28", "2001-08-15"],
    },
    Place {
        latitude: 30.0,
        lows: [
            5.5, 7.0, 10.5, 14.5, 19.0, 22.0, 23.0, 23.0, 20.5, 15.0, 10.0, 6.5,
        ],
        frosts: ["2001-03-05", "2001-03-28", "2001-11-18", "2001-11-02"],
    },
    Place {
        latitude: 42.0,
        lows: [
            1.5, 2.0, 3.5, 6.0, 9.5, 13.0, 15.5, 15.5, 13.0, 9.5, 5.5, 3.0,
        ],
        frosts: ["2001-03-12", "2001-04-02", "2001-12-01", "2001-11-12"],
    },
    Place {
        latitude: -34.0,
        lows: [
            16.5, 16.0, 14.0, 10.5, 7.5, 5.0, 4.0, 5.0, 7.5, 10.0, 12.5, 15.0,
        ],
        frosts: ["2001-09-02", "2001-09-25", "2001-06-05", "2001-05-18"],
    },
];

impl Place {
    fn means(&self) -> Monthly {
        Monthly {
            tmin: self.lows.map(Celsius),
            tmax: self.lows.map(|low| Celsius(low + 11.0)),
            rain: [Millimetres(60.0); 12],
            rain_days: [10.0; 12],
            frosts: FrostDates::default(),
        }
    }

    /// The means with the dates that are chosen of the four.
    fn with(&self, chosen: [bool; 4]) -> Monthly {
        let dates: Vec<Option<Date>> = chosen
            .iter()
            .zip(self.frosts)
            .map(|(chosen, date)| chosen.then(|| day(date)))
            .collect();
        let [last, late, first, early] = dates.try_into().unwrap();
        Monthly {
            frosts: FrostDates {
                last,
                late,
                first,
                early,
            },
            ..self.means()
        }
    }

    /// By how many days each of the four dates of made-up years is later than its own.
    fn late_by(&self, record: &Record) -> [i64; 4] {
        let frosts = ColdDays::frosts(record, Latitude(self.latitude), FREEZING);
        let made = [
            frosts.still_after(0.5),
            frosts.still_after(0.1),
            frosts.already_before(0.5),
            frosts.already_before(0.1),
        ];
        let off = made.into_iter().zip(self.frosts);
        let off: Vec<i64> = off
            .map(|(made, own)| (made.expect("it freezes") - day(own)).num_days())
            .collect();
        off.try_into().unwrap()
    }
}

/// Whether dates ask for more than the means can give.
fn out_of_reach(means: &Monthly) -> [bool; 2] {
    let record = generate(means, 2001, 1, 1);
    record.origin().expect("made from means").out_of_reach
}

/// The mean low of each month.
fn lows(record: &Record) -> [f64; 12] {
    let mut sums = [(0.0, 0.0); 12];
    for (date, Daily { tmin, .. }) in record.held() {
        let (sum, days) = &mut sums[date.month0() as usize];
        *sum += tmin.0;
        *days += 1.0;
    }
    sums.map(|(sum, days)| sum / days)
}

#[test]
fn made_up_years_freeze_on_the_dates_of_the_town() {
    // 500 years tell a median to some two days and one in ten to three or four where the spread is
    // two weeks; so do the 400 that are fitted on.
    for place in PLACES {
        let means = place.with([true; 4]);
        assert_eq!(out_of_reach(&means), [false; 2], "{}", place.latitude);
        let off = place.late_by(&generate(&means, 1500, 500, 11));
        for (days, limit) in off.into_iter().zip([4, 6, 4, 6]) {
            assert!(days.abs() <= limit, "{}: {off:?}", place.latitude);
        }
    }
}

#[test]
fn without_them_the_same_means_freeze_weeks_beside() {
    let mild = &PLACES[2];
    let off = mild.late_by(&generate(&mild.means(), 1500, 500, 11));
    assert!(off.iter().any(|days| days.abs() > 14), "{off:?}");
}

#[test]
fn one_date_alone_is_met_too() {
    for place in PLACES {
        for at in 0..4 {
            let chosen = std::array::from_fn(|n| n == at);
            let off = place.late_by(&generate(&place.with(chosen), 1500, 500, 11));
            let limit = [4, 6, 4, 6][at];
            assert!(off[at].abs() <= limit, "{}, {at}: {off:?}", place.latitude);
        }
    }
}

#[test]
fn the_means_stay() {
    for place in PLACES {
        let made = lows(&generate(&place.with([true; 4]), 1600, 400, 3));
        for (made, own) in made.into_iter().zip(place.lows) {
            assert!(
                (made - own).abs() < 0.4,
                "{}: {made} for {own}",
                place.latitude
            );
        }
    }
}

#[test]
fn dates_that_do_not_belong_to_the_means_are_doubted() {
    let frosts = |last: &str, first: &str| Monthly {
        frosts: FrostDates {
            last: Some(day(last)),
            first: Some(day(first)),
            ..FrostDates::default()
        },
        ..PLACES[0].means()
    };
    // In June lows are 11.5 C; in March nearly every night freezes.
    assert_eq!(
        out_of_reach(&frosts("2001-06-28", "2001-09-28")),
        [true, false]
    );
    assert_eq!(
        out_of_reach(&frosts("2001-03-10", "2001-09-28")),
        [true, false]
    );
    assert_eq!(
        out_of_reach(&frosts("2001-05-18", "2001-12-10")),
        [false, true]
    );
}
