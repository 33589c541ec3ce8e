//! What the plan says of the years that it stands on.

use tureen::garden::Garden;
use tureen::report;
use tureen::units::Latitude;
use tureen::weather::Record;

use super::{plain, tiny};
use crate::support::weather::{daily, steady_years};

/// The screen of the tiny plan, as if its garden had this weather.
fn screen(weather: Record) -> String {
    let (garden, checked) = tiny();
    let garden = Garden { weather, ..garden };
    let text = report::plan(&garden, &checked).text(plain(160));
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Twelve years from 2001, each so much warmer than the one before.
fn changing(by: f64) -> Record {
    let years: Vec<_> = (0..12)
        .map(|k| daily(4.0 + by * f64::from(k), 14.0 + by * f64::from(k)))
        .collect();
    steady_years(&years)
}

#[track_caller]
fn expect(text: &str, part: &str) {
    assert!(text.contains(part), "\"{part}\" is missing in\n{text}");
}

#[test]
fn each_ingredient_has_its_range_and_the_method_its_name() {
    let text = screen(changing(0.0));
    // Ready in 2 and 3 of 4 years; by SciPy 1.17.1 the p-value of 3 and 1 of 4 is 0.157, that of
    // 3 and 0 is 0.029.
    expect(
        &text,
        "Of 4 more years expect bean in 0 to 4, tomato in 1 to 4.",
    );
    expect(&text, "if the weather goes on as it was. -");
    expect(
        &text,
        "Method: 95 % prediction interval by joint sampling, Krishnamoorthy and Peng 2011.",
    );
    expect(&text, "years that the plans had not seen");
}

#[test]
fn an_old_record_that_grew_warmer_says_so() {
    let text = screen(changing(0.1));
    expect(
        &text,
        "The years are 2001 to 2012, the last of them 15 years before",
    );
    expect(&text, "it grew warmer, by 1.0 C in ten years");
}

#[test]
fn one_that_grew_cooler_or_stayed_says_so() {
    expect(
        &screen(changing(-0.1)),
        "it grew cooler, by 1.0 C in ten years",
    );
    expect(
        &screen(changing(0.0)),
        "No trend of warmth is certain in them",
    );
}

#[test]
fn made_up_years_are_called_so() {
    let record = changing(0.1);
    let made_up = Record::new(record.first(), record.days().to_vec(), true);
    let text = screen(made_up);
    expect(&text, "The years are made up from monthly means.");
    assert!(!text.contains("grew warmer"), "{text}");
}

#[test]
fn made_up_years_of_a_mild_place_are_called_too_various() {
    let made_up = |low| {
        let days = steady_years(&[daily(low, 14.0), daily(low, 15.0)]);
        screen(Record::new(days.first(), days.days().to_vec(), true))
    };
    let warning = "differ more from one another than real ones";
    expect(&made_up(4.0), warning);
    assert!(!made_up(-1.0).contains(warning));
}

/// South of the equator the tiny plan begins in March, after midsummer, and picks in June.
#[test]
fn the_light_of_autumn_is_named_where_it_falls_on_a_crop() {
    let (garden, checked) = tiny();
    let at = |degrees| {
        let latitude = Latitude(degrees);
        let garden = Garden {
            latitude,
            ..garden.clone()
        };
        let text = report::plan(&garden, &checked).text(plain(160));
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let light = "too little: bean and tomato. A crop of 65 days may then take 80";
    expect(&at(-44.0), light);
    assert!(!at(44.0).contains("weakening light"));
}
