//! Dates, times and amounts by the customs of each locale, worked by hand; no page of one locale
//! writes as the other does.

use tureen::calendar::Time;
use tureen::checker::check;
use tureen::explain::least_space;
use tureen::garden::{Garden, GradeAt, Locale};
use tureen::model::Options;
use tureen::page::Look;
use tureen::page::Page;
use tureen::report;
use tureen::units::{Centimetres, Kilograms, Litres, Metres, Millimetres, SquareMetres};
use tureen::words::Words;

use super::plain;
use super::screens::compare;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

/// Text with plain spaces for those that do not break.
fn spaced(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

/// The tiny garden in a locale; its feast is in 2027.
fn garden(locale: Locale) -> Garden {
    Garden {
        locale,
        ..tiny_garden()
    }
}

/// The same text of both locales, British first.
fn both(text: impl Fn(Words) -> String) -> [String; 2] {
    Locale::ALL.map(|locale| spaced(&text(Words::of(&garden(locale)))))
}

#[test]
fn dates_carry_their_year_only_outside_the_year_of_the_feast() {
    assert_eq!(
        both(|w| w.day(day("2027-02-09"))),
        ["Tue 9 Feb", "Tue Feb 9"]
    );
    assert_eq!(
        both(|w| w.day(day("2026-10-13"))),
        ["Tue 13 Oct 2026", "Tue, Oct 13, 2026"]
    );
    assert_eq!(both(|w| w.short(day("2027-02-09"))), ["9 Feb", "Feb 9"]);
    assert_eq!(
        both(|w| w.short(day("2026-02-09"))),
        ["9 Feb 2026", "Feb 9, 2026"]
    );
    assert_eq!(
        both(|w| w.without_years().short(day("2026-02-09"))),
        ["9 Feb", "Feb 9"]
    );
    assert_eq!(
        both(|w| w.full_day(day("2027-10-08"))),
        ["Fri 8 Oct 2027", "Fri, Oct 8, 2027"]
    );
}

#[test]
fn spans_name_the_month_once_where_they_can() {
    let span = |from: &str, to: &str| both(|w| w.span(day(from), day(to)));
    assert_eq!(span("2027-02-09", "2027-02-18"), ["9-18 Feb", "Feb 9-18"]);
    assert_eq!(
        span("2027-02-09", "2027-03-04"),
        ["9 Feb - 4 Mar", "Feb 9 - Mar 4"]
    );
    assert_eq!(span("2027-02-09", "2027-02-09"), ["9 Feb", "Feb 9"]);
    assert_eq!(
        span("2026-02-09", "2026-02-18"),
        ["9-18 Feb 2026", "Feb 9-18, 2026"]
    );
    assert_eq!(
        span("2026-12-29", "2027-01-04"),
        ["29 Dec 2026 - 4 Jan", "Dec 29, 2026 - Jan 4"]
    );
    assert_eq!(
        both(|w| w.days(day("2027-02-09"), day("2027-02-18"))),
        ["Tue 9 Feb to Thu 18 Feb", "Tue Feb 9 to Thu Feb 18"]
    );
}

#[test]
fn days_of_no_year_carry_none() {
    assert_eq!(both(|w| w.month_day(day("2001-02-09"))), ["9 Feb", "Feb 9"]);
    assert_eq!(
        both(|w| w.full_month(day("2001-02-09"))),
        ["9 February", "February 9"]
    );
}

#[test]
fn the_clock_has_24_hours_or_12() {
    let at = |h, m| both(|w| w.time(Time::from_hms_opt(h, m, 0).unwrap()));
    assert_eq!(at(10, 15), ["10:15", "10:15 am"]);
    assert_eq!(at(14, 5), ["14:05", "2:05 pm"]);
    assert_eq!(at(12, 0), ["12:00", "12:00 pm"]);
    assert_eq!(at(9, 0), ["09:00", "9:00 am"]);
}

/// A pound is 453.6 g: 0.064 kg is 2.26 oz, 0.3 kg 10.6 oz, 4.76 kg 10.49 lb, 1.7 kg 3.75 lb.
#[test]
fn masses_have_the_digits_of_a_kitchen_scale() {
    let mass = |kg| both(|w| w.mass(Kilograms(kg)));
    assert_eq!(mass(0.064), ["60 g", "2.3 oz"]);
    assert_eq!(mass(0.3), ["300 g", "11 oz"]);
    assert_eq!(mass(0.444), ["440 g", "1.0 lb"]);
    assert_eq!(mass(0.994), ["990 g", "2.2 lb"]);
    assert_eq!(mass(0.996), ["1.0 kg", "2.2 lb"]);
    assert_eq!(mass(4.76), ["4.8 kg", "10 lb"]);
    assert_eq!(mass(9.96), ["10 kg", "22 lb"]);
    let range = |low, high| both(|w| w.mass_range(Kilograms(low), Kilograms(high)));
    assert_eq!(range(4.76, 7.64), ["4.8 to 7.6 kg", "10 to 17 lb"]);
    assert_eq!(range(0.91, 1.7), ["910 g to 1.7 kg", "2.0 to 3.7 lb"]);
    assert_eq!(range(0.2, 1.7), ["200 g to 1.7 kg", "7.1 oz to 3.7 lb"]);
    assert_eq!(range(2.0, 2.0), ["2.0 kg", "4.4 lb"]);
    let portion = |grams| both(|w| w.portion(grams));
    assert_eq!(portion(25.0), ["25 g", "0.88 oz"]);
    assert_eq!(portion(2.5), ["2.5 g", "0.09 oz"]);
    assert_eq!(portion(120.0), ["120 g", "4.2 oz"]);
    assert_eq!(
        both(|w| w.exact_mass(Kilograms(4.76))),
        ["4.76 kg", "10.49 lb"]
    );
    assert_eq!(both(|w| w.small_mass(Kilograms(0.036))), ["36 g", "1.3 oz"]);
    assert_eq!(
        both(|w| w.small_mass(Kilograms(1.2))),
        ["1.20 kg", "2.65 lb"]
    );
    assert_eq!(
        both(|w| w.mass_a_length(Kilograms(0.7))),
        ["0.7 kg a metre", "0.47 lb a foot"]
    );
}

#[test]
fn a_handout_gives_both_units_and_the_own_one_first() {
    assert_eq!(
        both(|w| w.mass_in_both(Kilograms(4.8))),
        ["4.8 kg (11 lb)", "11 lb (4.8 kg)"]
    );
    assert_eq!(
        both(|w| w.mass_range_in_both(Kilograms(4.76), Kilograms(7.64))),
        ["4.8 to 7.6 kg (10 to 17 lb)", "10 to 17 lb (4.8 to 7.6 kg)"]
    );
    assert_eq!(
        both(|w| w.length_in_both(Metres(3.6))),
        ["3.6 m (12 ft)", "12 ft (3.6 m)"]
    );
    assert_eq!(
        both(|w| w.volume_in_both(Litres(40.0))),
        ["40 L (11 gal)", "11 gal (40 L)"]
    );
}

#[test]
fn lengths_and_rain() {
    assert_eq!(
        both(|w| w.size(Metres(3.6), Metres(1.2))),
        ["3.6 x 1.2 m", "11.8 x 3.9 ft"]
    );
    let short = |cm| both(|w| w.short_length(Centimetres(cm)));
    assert_eq!(short(30.0), ["30 cm", "12 in"]);
    assert_eq!(short(2.5), ["2.5 cm", "1 in"]);
    assert_eq!(short(5.0), ["5 cm", "2 in"]);
    assert_eq!(both(|w| w.rain(Millimetres(12.7))), ["13 mm", "0.5 in"]);
    assert_eq!(
        both(|w| w.rain_of_a_year(Millimetres(1016.0))),
        ["1016 mm", "40 in"]
    );
}

/// 62 litres are 16.4 US gallons; 2.54 mm on 4.3 m2 are 10.9 litres, which are 2.9 gallons.
#[test]
fn water_is_told_in_litres_or_gallons_and_their_cans() {
    let [litres, gallons] = Locale::ALL.map(|locale| Words::in_locale(locale).water());
    assert_eq!((litres.unit, litres.can), ("litres", 10.0));
    assert_eq!((gallons.unit, gallons.can), ("gallons", 2.0));
    let water = Litres(62.0);
    assert_eq!((litres.told(water), gallons.told(water)), (60.0, 16.0));
    assert_eq!((litres.cans(water), gallons.cans(water)), (6.0, 8.0));
    let year = Litres(8200.0);
    assert_eq!((litres.tens(year), gallons.tens(year)), (8200.0, 2170.0));
    let area = SquareMetres(4.3);
    assert_eq!(
        [litres, gallons].map(|m| m.saved_by_gauge(area)),
        ["4.3", "2.9"]
    );
}

/// All pages of the tiny garden in a locale, wide enough for columns to stand well apart.
fn pages(locale: Locale) -> Vec<(&'static str, String)> {
    let garden = garden(locale);
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    let least = least_space(&garden, &checked, &Options::default());
    let catalogue = tureen::catalogue::Catalogue::load().unwrap();
    let crop = |name| report::crop(&catalogue, catalogue.entry(name).unwrap(), Some(&garden));
    let pages = [
        ("understood", report::understood(&garden)),
        ("plan", report::plan(&garden, &checked)),
        ("grade", report::grade(&garden, &checked, GradeAt(0))),
        ("principal", report::principal(&garden, &checked, &least)),
        ("watering", report::watering(&garden, &checked)),
        ("climate", report::climate(&garden)),
        ("carrot", crop("carrot")),
        ("tomato", crop("tomato")),
        ("chives", crop("chives")),
    ];
    let text = |(name, page): (_, Page)| (name, page.text(plain(200)));
    pages.into_iter().map(text).collect()
}

/// Words that only one of the locales uses.
const METRIC: [&str; 13] = [
    "kg",
    "g",
    "m",
    "cm",
    "mm",
    "L",
    "litre",
    "litres",
    "metre",
    "metres",
    "millimetre",
    "gram",
    "grams",
];
const CUSTOMARY: [&str; 9] = [
    "lb", "oz", "ft", "in.", "gallon", "gallons", "foot", "feet", "inch",
];

fn months() -> Vec<String> {
    let first = |m| day(&format!("2027-{m:02}-01"));
    let names = |m| {
        [
            first(m).format("%b").to_string(),
            first(m).format("%B").to_string(),
        ]
    };
    (1..=12).flat_map(names).collect()
}

/// The words of a page, with the pairs of a number and a month in either order.
fn foreign(text: &str, units: &[&str], month_first: bool) -> Vec<String> {
    let months = months();
    let is_month = |word: &str| months.iter().any(|m| m == word);
    let is_day = |word: &str| {
        let digits = word.split(['-', '*']).next().unwrap_or("");
        digits.parse::<u32>().is_ok_and(|n| (1..=31).contains(&n))
    };
    let mut found = Vec::new();
    // Notes of the catalogue and the works behind it are told as they stand there.
    let end = ["\nNOTES\n", "\nSOURCES\n"].map(|heading| text.find(heading));
    let end = end.into_iter().flatten().min().unwrap_or(text.len());
    let text = &text[..end];
    for line in text.lines() {
        for cell in line.split("  ") {
            // What ends in a sign, as `27 May: 11 min`, or is followed by one, as `7 January (1 week)`, is no
            // date with what follows.
            let raw: Vec<&str> = cell.split_whitespace().collect();
            let words: Vec<&str> = raw
                .iter()
                .map(|w| w.trim_matches(|c: char| !c.is_alphanumeric()))
                .collect();
            let joined = |at: &usize| {
                raw[*at].ends_with(char::is_alphanumeric)
                    && raw[*at + 1].starts_with(char::is_alphanumeric)
            };
            let unit = words.iter().filter(|word| units.contains(word));
            found.extend(unit.map(|word| format!("{word} in: {line}")));
            let pairs = words.windows(2).enumerate();
            let other_way = pairs.filter(|(at, pair)| match month_first {
                true => joined(at) && is_day(pair[0]) && is_month(pair[1]),
                false => joined(at) && is_month(pair[0]) && is_day(pair[1]),
            });
            found.extend(other_way.map(|(_, pair)| format!("{} {} in: {line}", pair[0], pair[1])));
        }
    }
    found
}

#[test]
fn no_page_writes_as_the_other_locale_does() {
    for (locale, units, month_first) in [
        (Locale::American, &METRIC[..], true),
        (Locale::British, &CUSTOMARY[..], false),
    ] {
        for (name, text) in pages(locale) {
            let found = foreign(&text, units, month_first);
            assert!(
                found.is_empty(),
                "{name}, {locale:?}:\n{}",
                found.join("\n")
            );
        }
    }
    // What looks for them would find them.
    for ((name, british), (_, american)) in pages(Locale::British)
        .into_iter()
        .zip(pages(Locale::American))
    {
        assert_ne!(british, american, "{name}");
        let wrong = [
            foreign(&british, &METRIC, true),
            foreign(&american, &CUSTOMARY, false),
        ];
        assert!(wrong.iter().all(|found| !found.is_empty()), "{name}");
    }
}

#[test]
fn a_whole_plan_in_american_english() {
    let garden = garden(Locale::American);
    let checked = check(&garden, tiny_plan(&garden)).unwrap();
    let look = Look {
        width: 100,
        color: false,
    };
    compare("plan-american", &report::plan(&garden, &checked).text(look));
    let watering = report::watering(&garden, &checked).text(look);
    compare("watering-american", &watering);
    assert!(report::understood(&garden).text(look).contains("en-US"));
}
