//! What the plan says of the years that it stands on.

use tureen::garden::Garden;
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::report;
use tureen::units::Latitude;
use tureen::weather::Record;

use super::{plain, tiny};
use crate::support::weather::{daily, steady_years};
use crate::unseen::on_mixed;

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

/// What to expect of 12 more years, by the number that was ready of 12: those of which the chi-square test
/// without correction gives a p-value of 0.05 or more by SciPy 1.17.1.
const BY_SCIPY: [(usize, usize); 13] = [
    (0, 3),
    (0, 5),
    (0, 6),
    (0, 7),
    (1, 8),
    (1, 9),
    (2, 10),
    (3, 11),
    (4, 11),
    (5, 12),
    (6, 12),
    (7, 12),
    (9, 12),
];

#[test]
fn each_ingredient_has_its_range_and_the_method_its_name() {
    let garden = on_mixed(12);
    let checked = plan(&garden, &Options::default()).unwrap();
    let text = report::plan(&garden, &checked).text(plain(160));
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    let unseen = checked.unseen().unwrap();
    let [bean, tomato] = [0, 1].map(|at| BY_SCIPY[unseen.ingredients[at]]);
    assert_ne!(bean, tomato);
    let range = |(fewest, most): (usize, usize)| format!("{fewest} to {most}");
    let (bean, tomato) = (range(bean), range(tomato));
    expect(
        &text,
        &format!("Of 12 more years expect bean in {bean}, tomato in {tomato}."),
    );
    expect(&text, "if the weather goes on as it was. -");
    expect(
        &text,
        "Method: 95 % prediction interval by joint sampling, Krishnamoorthy and Peng 2011.",
    );
    expect(
        &text,
        "counted with a plan that was made the same way without it",
    );
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

/// Twenty-four years, some warmer than others, and a quarter of a degree warmer with each.
fn warming() -> Record {
    let mean = |k: u32| 9.0 + 0.25 * f64::from(k) + 0.8 * f64::from(7 * k % 5);
    let years: Vec<_> = (0..24)
        .map(|k| daily(mean(k) - 5.0, mean(k) + 5.0))
        .collect();
    steady_years(&years)
}

#[test]
fn one_with_a_trend_offers_a_plan_on_its_last_fifteen_years() {
    let on = |weather| {
        let garden = Garden {
            weather,
            ..on_mixed(24)
        };
        let checked = plan(&garden, &Options::default()).unwrap();
        let text = report::plan(&garden, &checked).text(plain(160));
        let short = report::plan_in_short(&garden, &checked, &[], None).text(plain(160));
        let words = |text: String| text.split_whitespace().collect::<Vec<_>>().join(" ");
        (checked, words(text), words(short))
    };
    let (checked, text, short) = on(warming());
    let ready = &checked.replay().dish_ready;
    let count = |years: &[bool]| years.iter().filter(|ready| **ready).count();
    let (earlier, later) = ready.split_at(ready.len() - 15);
    let told = format!(
        "This plan is ready in {} of the last 15 years and in {} of the {} before.",
        count(later),
        count(earlier),
        earlier.len()
    );
    let from = checked.replay().years[earlier.len()];
    for text in [&text, &short] {
        expect(text, &told);
        expect(
            text,
            &format!("tureen try FILE --set place.weather_from={from}"),
        );
    }
    let (_, text, short) = on(on_mixed(24).weather);
    assert!(
        !text.contains("weather_from") && !short.contains("weather_from"),
        "{text}"
    );
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
