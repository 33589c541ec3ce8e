//! What a single thing is called and how a single fact is said: dates, amounts, lists, steps, places,
//! faults, cautions, figures of crops, and the watering list in every language. Which of them stand
//! on a page, and in which order, is the matter of `report`.

pub(crate) mod acts;
pub mod aims;
pub mod along;
mod amounts;
pub mod answers;
pub(crate) mod binds;
pub(crate) mod care;
pub mod carry_over;
pub mod cautions;
pub mod children;
mod dates;
pub(crate) mod day_length;
pub(crate) mod day_limits;
pub mod decisions;
pub(crate) mod drop_reasons;
pub(crate) mod faults;
pub mod figures;
pub mod forecast;
pub mod fortnight;
pub(crate) mod handling;
pub mod happened;
pub(crate) mod idle;
pub(crate) mod instead;
pub mod kept_picked;
pub mod kitchen;
pub mod lessons;
pub(crate) mod no_plan;
pub(crate) mod occasion;
pub(crate) mod other_plans;
pub mod places;
pub(crate) mod plantings;
pub(crate) mod promise;
pub(crate) mod repairs;
pub mod rule_words;
pub mod station;
pub mod step_names;
pub mod step_words;
pub(crate) mod steps;
pub mod tasks;
pub(crate) mod turned_over;
pub mod unfolded;
pub mod view;
pub mod warmth;
pub mod water;
pub(crate) mod watering;

use std::fmt::Display;

use chrono::Datelike;

use crate::garden::{Garden, Locale};
use crate::units::Minutes;

/// Writes dates, times and amounts by the customs of a locale. Dates outside the year of the
/// feast carry their year. The spaces within a date or an amount do not break at the end of a
/// line; a page turns them into plain ones.
#[derive(Debug, Clone, Copy)]
pub struct Words {
    locale: Locale,
    /// The year that goes without saying; `None`: all do.
    year: Option<i32>,
}

impl Words {
    /// Words as they read in a garden's locale, in the year of its feast.
    #[must_use]
    pub fn of(garden: &Garden) -> Self {
        Self {
            locale: garden.locale,
            year: Some(garden.feast.day.year()),
        }
    }

    /// Words of a locale for what belongs to no garden; dates have no year.
    #[must_use]
    pub fn in_locale(locale: Locale) -> Self {
        Self { locale, year: None }
    }

    /// The same words with dates without any year, for tables that tell the years beside them.
    #[must_use]
    pub fn without_years(self) -> Self {
        Self { year: None, ..self }
    }

    /// How dates, times and amounts are written, in a sentence.
    #[must_use]
    pub fn customs(self) -> String {
        let customs = self.choose(
            "the day before the month, 24 hours, kilograms, metres and litres",
            "the month before the day, 12 hours, pounds, feet and US gallons",
        );
        format!(
            "Language and customs: {} ({customs}). The file itself keeps its own units.",
            self.locale.tag()
        )
    }

    /// One of two texts, as the locale asks.
    fn choose<T>(self, british: T, american: T) -> T {
        match self.locale {
            Locale::British => british,
            Locale::American => american,
        }
    }
}

/// `a`, `a and b`, `a, b and c`.
#[must_use]
pub fn list<S: AsRef<str>>(items: &[S]) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} and {}", head.join(", "), last.as_ref())
        }
    }
}

/// `a`, `a or b`, `a, b or c`.
#[must_use]
pub fn choice(items: &[String]) -> String {
    match items {
        [head @ .., last] if !head.is_empty() => format!("{} or {last}", head.join(", ")),
        _ => items.concat(),
    }
}

/// `1 flat`, `2 flats`, `2 classes`, `2 tries`.
#[must_use]
pub fn count<N: Display + From<u8> + PartialEq>(n: N, thing: &str) -> String {
    let one = n == N::from(1);
    let ending = match thing {
        _ if one => "",
        _ if thing.ends_with('s') => "es",
        _ => "s",
    };
    match thing.strip_suffix("ry") {
        Some(stem) if !one => format!("{n} {stem}ries"),
        _ => format!("{n} {thing}{ending}"),
    }
}

/// `25 min`; a begun minute counts.
#[must_use]
pub fn minutes(minutes: Minutes) -> String {
    format!("{:.0}\u{a0}min", (minutes.0 - 1e-9).ceil().max(0.0))
}

/// The sentence with its first letter large.
#[must_use]
pub fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
