//! What the program makes of real weather records, written for `tests/reference/weather.py`.

use std::fmt::Write;
use std::path::Path;

use tureen::garden::DegreeDayMethod;
use tureen::growth::degree_days::degree_days;
use tureen::growth::soil::soil_temperatures;
use tureen::project;
use tureen::units::Celsius;
use tureen::weather::WeatherYear;

use super::ours::catalogue;

/// Degree-days of a weather year's span.
fn sum(year: &WeatherYear<'_>, method: DegreeDayMethod, base: f64, upper: Option<f64>) -> f64 {
    let day = |day: &tureen::weather::Daily| {
        let upper = upper.map(Celsius);
        degree_days(method, Celsius(base), upper, day.tmin, day.tmax).0
    };
    year.days.iter().map(day).sum()
}

/// Every folder holds a `garden.toml` with its weather; beside it is written, for each weather
/// year: degree-day sums, and the soil of the first day, on average, and of the last day.
#[test]
#[ignore = "writes files for tests/reference"]
fn write_what_we_make_of_them() {
    let folder = std::env::var("TUREEN_EXPORT").expect("TUREEN_EXPORT names a folder");
    let catalogue = catalogue();
    let mut written = 0;
    for station in Path::new(&folder).read_dir().unwrap() {
        let station = station.unwrap().path();
        let garden = project::load(&station.join("garden.toml"), &catalogue)
            .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)));
        let mut table =
            String::from("year,days,average,sine,sine_upper,soil_first,soil,soil_last\n");
        for year in garden.weather.years(garden.horizon()) {
            let soil = soil_temperatures(&year, Celsius(0.0));
            let mean = soil.iter().copied().sum::<Celsius>().0 / soil.len() as f64;
            let average = sum(&year, DegreeDayMethod::Average, 10.0, Some(30.0));
            let sine = sum(&year, DegreeDayMethod::Sine, 4.4, None);
            let held = sum(&year, DegreeDayMethod::Sine, 10.0, Some(30.0));
            let (first, last) = (soil[0].0, soil[soil.len() - 1].0);
            let (label, days) = (year.label, year.days.len());
            writeln!(
                table,
                "{label},{days},{average},{sine},{held},{first},{mean},{last}"
            )
            .unwrap();
        }
        std::fs::write(station.join("ours.csv"), table).unwrap();
        written += 1;
    }
    assert!(written > 0, "no station in {folder}");
}
