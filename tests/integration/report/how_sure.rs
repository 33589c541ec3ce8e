//! What the plan says of the years that it stands on.

use tureen::garden::Garden;
use tureen::report;
use tureen::weather::Record;

use super::{plain, tiny};
use crate::support::weather::{daily, steady_years};

/// The screen of the tiny plan, as if its garden had this weather.
fn screen(weather: Record) -> String {
    let (garden, checked) = tiny();
    let garden = Garden { weather, ..garden };
    let text = report::plan(&garden, &checked, plain(160));
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
    expect(&text, "prediction interval by joint sampling");
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
