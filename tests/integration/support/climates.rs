//! Two hot climates, such as frost-free tropics by the sea and humid subtropics have them (monthly means from
//! memory), made into years.

use tureen::units::{Celsius, Latitude, Millimetres};
use tureen::weather::Record;
use tureen::weather::generator::generate;
use tureen::weather::monthly::{FrostDates, Monthly};

/// Latitude, and monthly means of the lowest and the highest temperatures, January first.
type Climate = (f64, [f64; 12], [f64; 12]);

const TROPICS: Climate = (
    18.0,
    [
        21.5, 21.5, 22.0, 22.8, 23.7, 24.4, 24.5, 24.5, 24.2, 23.9, 23.2, 22.2,
    ],
    [
        28.5, 28.7, 29.2, 29.9, 30.6, 31.4, 31.5, 31.6, 31.5, 31.2, 30.2, 29.0,
    ],
);

const SUBTROPICS: Climate = (
    30.0,
    [
        6.5, 8.3, 11.9, 15.7, 20.1, 23.2, 24.0, 23.9, 21.4, 16.2, 11.0, 7.7,
    ],
    [
        17.2, 19.3, 23.1, 26.6, 30.4, 33.2, 34.3, 34.7, 32.2, 27.9, 22.6, 18.4,
    ],
);

/// Years of the frost-free tropics, 18 degrees north.
pub fn tropics(years: u32) -> (Latitude, Record) {
    made(&TROPICS, years)
}

/// Years of the humid subtropics, 30 degrees north.
pub fn subtropics(years: u32) -> (Latitude, Record) {
    made(&SUBTROPICS, years)
}

fn made((latitude, tmin, tmax): &Climate, years: u32) -> (Latitude, Record) {
    let monthly = Monthly {
        tmin: tmin.map(Celsius),
        tmax: tmax.map(Celsius),
        rain: [Millimetres(0.0); 12],
        rain_days: [0.0; 12],
        frosts: FrostDates::default(),
    };
    (Latitude(*latitude), generate(&monthly, 2001, years, 1))
}
