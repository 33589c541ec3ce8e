//! Rounded figures: none is a negative nothing, none goes on in a unit that is too small for it, and
//! each is as near to the truth as its digits say.

use proptest::prelude::*;
use tureen::garden::Locale;
use tureen::units::{
    Celsius, Centimetres, Kilograms, Litres, Metres, Millimetres, Minutes, Share, rounded,
};
use tureen::words::Words;

/// The first figure of a text that is nothing and has a sign.
pub fn negative_nothing(text: &str) -> Option<&str> {
    let signs = text.match_indices('-').map(|(at, _)| at);
    signs
        .filter(|at| {
            let before = text[..*at].chars().next_back();
            before.is_none_or(|c| !c.is_alphanumeric())
        })
        .map(|at| {
            let figure = text[at + 1..].find(|c: char| !c.is_ascii_digit() && c != '.');
            &text[at..figure.map_or(text.len(), |end| at + 1 + end)]
        })
        .find(|figure| {
            let digits = figure[1..].trim_end_matches('.');
            !digits.is_empty() && digits.chars().all(|c| matches!(c, '0' | '.'))
        })
}

#[test]
fn a_negative_nothing_is_seen() {
    for bad in ["-0 C", "is -0.00 kg.", "(-0.0)", "1,-0.0,2", "ends at -0."] {
        assert!(negative_nothing(bad).is_some(), "{bad}");
    }
    for good in [
        "-0.5 C",
        "0-10",
        "2027-01-02",
        "-10 C",
        "100-0 %",
        "a - 0",
        "-",
    ] {
        assert_eq!(negative_nothing(good), None, "{good}");
    }
}

/// Everything that writes a rounded figure.
fn all(value: f64) -> Vec<String> {
    let mut texts = vec![
        rounded(value, 0),
        rounded(value, 3),
        format!("{:.0}", Celsius(value)),
        format!("{:.2}", Kilograms(value)),
        format!("{:.1}", Minutes(value)),
        Share(value).to_string(),
    ];
    for locale in Locale::ALL {
        let words = Words::in_locale(locale);
        let (mass, length) = (Kilograms(value), Metres(value));
        texts.extend([
            words.mass(mass),
            words.mass_range(mass, Kilograms(value / 2.0)),
            words.mass_in_both(mass),
            words.mass_range_in_both(mass, mass),
            words.portion(value),
            words.exact_mass(mass),
            words.small_mass(mass),
            words.figure_of_mass(mass),
            words.mass_a_length(mass),
            words.length(length),
            words.length_in_both(length),
            words.size(length, length),
            words.ground(length, length),
            words.short_length(Centimetres(value)),
            words.rain(Millimetres(value)),
            words.rain_of_a_year(Millimetres(value)),
            words.volume(Litres(value)),
            words.volume_in_both(Litres(value)),
            words.temperatures(Celsius(value), Celsius(value)),
            words.temperatures(Celsius(value), Celsius(0.0)),
        ]);
    }
    texts
}

proptest! {
    #[test]
    fn no_figure_is_a_negative_nothing(value in -60.0..60.0_f64, by in 0..12_i32) {
        for value in [value, value * 10.0_f64.powi(-by), -0.0, -32.0 / 1.8 - 1e-9] {
            for text in all(value) {
                prop_assert_eq!(negative_nothing(&text), None, "{} of {}", &text, value);
            }
        }
    }
}

/// A text of one figure, in its smaller unit, and how far off its last digit may be.
fn read(text: &str, unit: &str, larger: &str, of: f64) -> (f64, f64) {
    let (figure, symbol) = text.split_once('\u{a0}').unwrap();
    let factor = match symbol {
        _ if symbol == unit => 1.0,
        _ if symbol == larger => of,
        _ => panic!("{text}"),
    };
    let digits = figure.split_once('.').map_or(0, |(_, after)| after.len());
    let last = factor * 10.0_f64.powi(-i32::try_from(digits).unwrap());
    (figure.parse::<f64>().unwrap() * factor, last)
}

/// A pound has 16 ounces (NIST SP 811).
#[test]
fn masses_are_near_the_truth_and_change_their_unit_in_time() {
    let [british, american] = [Locale::British, Locale::American].map(Words::in_locale);
    for step in 1..4_000 {
        let ounces = f64::from(step) / 20.0;
        let mass = Kilograms(ounces / 16.0 * 0.453_592_37);
        let text = american.mass(mass);
        let (told, last) = read(&text, "oz", "lb", 16.0);
        assert!(
            (told - ounces).abs() <= last / 2.0 + 1e-9,
            "{text} of {ounces} oz"
        );
        let in_ounces = text.ends_with("oz");
        let exact = mass.to_pounds().ounces();
        assert_eq!(in_ounces, exact < 15.5, "{text} of {exact} oz");
        assert!(!text.starts_with("10.0"), "{text}");

        let small = american.small_mass(mass);
        let (told, last) = read(&small, "oz", "lb", 16.0);
        assert!(
            (told - ounces).abs() <= last / 2.0 + 1e-9,
            "{small} of {ounces} oz"
        );
        assert!(!small.starts_with("16.0"), "{small}");

        let grams = f64::from(step);
        for text in [
            british.mass(Kilograms(grams / 1000.0)),
            british.small_mass(Kilograms(grams / 1000.0)),
        ] {
            let (told, last) = read(&text, "g", "kg", 1000.0);
            // A scale in a kitchen shows tens of grams.
            let last = if text.ends_with("\u{a0}g") {
                last.max(10.0)
            } else {
                last
            };
            assert!(
                (told - grams).abs() <= last / 2.0 + 1e-9,
                "{text} of {grams} g"
            );
            assert!(!text.starts_with("1000"), "{text}");
        }
    }
}

/// Fifteen and a half ounces would be told as 16; the nearest masses that numbers can hold lie beside
/// it.
#[test]
fn no_mass_is_told_as_sixteen_ounces() {
    let about = 15.5 / 16.0 * 0.453_592_37_f64;
    let american = Words::in_locale(Locale::American);
    let told = [about.next_down(), about.next_up()].map(|kg| american.mass(Kilograms(kg)));
    assert_eq!(told, ["15\u{a0}oz", "1.0\u{a0}lb"]);
}

#[test]
fn portions_have_two_digits_under_an_ounce() {
    let american = Words::in_locale(Locale::American);
    let ounce = 453.592_37 / 16.0;
    let told = [0.5, 0.99, 0.996, 1.0, 2.04].map(|ounces| american.portion_figure(ounces * ounce));
    assert_eq!(told, ["0.50", "0.99", "1.0", "1.0", "2.0"]);
}
