//! Which part of a weather file counts.

use tureen::project;

use super::{MINIMAL, catalogue, load, steady_weather};

#[test]
fn a_record_counts_from_the_year_that_is_named() {
    let weather = steady_weather(6 * 365);
    let from = |year: &str| {
        let key = format!("weather = \"autumn.csv\"\nweather_from = {year}");
        let text = MINIMAL.replacen("weather = \"autumn.csv\"", &key, 1);
        project::load_text("garden.toml", &text, Some(&weather), catalogue())
    };
    let labels = |year: &str| -> Vec<i32> {
        let garden = from(year).unwrap_or_else(|found| panic!("{found}"));
        let years = garden.weather.years(garden.horizon());
        years.iter().map(|year| year.label).collect()
    };
    assert_eq!(labels("1990"), [2014, 2015, 2016, 2017, 2018, 2019]);
    assert_eq!(labels("2014"), labels("1990"));
    assert_eq!(labels("2017"), [2017, 2018, 2019]);
    assert_eq!(labels("2019"), [2019]);
    let told = from("2020").unwrap_err().to_string();
    assert!(
        told.contains("no weather year is left from 2020 on"),
        "{told}"
    );
    assert!(told.contains("the last one begins in 2019"), "{told}");
    let means = "monthly = { tmin_c = [5,5,5,5,5,5,5,5,5,5,5,5], tmax_c = [15,15,15,15,15,15,15,15,15,15,15,15], \
                 rain_mm = [9,9,9,9,9,9,9,9,9,9,9,9] }\nweather_from = 2014";
    let text = MINIMAL.replacen("weather = \"autumn.csv\"", means, 1);
    let told = load(&text).unwrap_err().to_string();
    assert!(
        told.contains("`weather_from` needs a weather file"),
        "{told}"
    );
}
