//! Dates, numbers and lists as people read them.

use chrono::Datelike;

use crate::calendar::{Date, Time};
use crate::garden::Garden;
use crate::units::{Kilograms, Minutes};

/// Writes dates; those outside the year of the feast carry their year. The spaces within a
/// date do not break at the end of a line; a page turns them into plain ones.
#[derive(Debug, Clone, Copy)]
pub struct Dates {
    /// The year that goes without saying; `None`: all do.
    year: Option<i32>,
}

impl Dates {
    /// Dates as they read in the year of a garden's feast.
    #[must_use]
    pub fn of(garden: &Garden) -> Self {
        Self {
            year: Some(garden.feast.day.year()),
        }
    }

    /// The same dates without any year, for tables that tell the years beside them.
    #[must_use]
    pub fn without_years(self) -> Self {
        Self { year: None }
    }

    fn bare(self, day: Date) -> bool {
        self.year.is_none_or(|year| year == day.year())
    }

    /// `Tue 9 Feb`.
    #[must_use]
    pub fn day(self, day: Date) -> String {
        day.format(if self.bare(day) {
            "%a\u{a0}%-d\u{a0}%b"
        } else {
            "%a\u{a0}%-d\u{a0}%b\u{a0}%Y"
        })
        .to_string()
    }

    /// `9 Feb`.
    #[must_use]
    pub fn short(self, day: Date) -> String {
        day.format(if self.bare(day) {
            "%-d\u{a0}%b"
        } else {
            "%-d\u{a0}%b\u{a0}%Y"
        })
        .to_string()
    }

    /// `Tue 9 Feb to Thu 18 Feb`, or the day alone.
    #[must_use]
    pub fn days(self, from: Date, to: Date) -> String {
        if from == to {
            self.day(from)
        } else {
            format!("{} to {}", self.day(from), self.day(to))
        }
    }

    /// `9-18 Feb` or `9 Feb - 4 Mar`, for table cells.
    #[must_use]
    pub fn span(self, from: Date, to: Date) -> String {
        if from == to {
            self.short(from)
        } else if (from.year(), from.month()) == (to.year(), to.month()) {
            format!("{}-{}", from.day(), self.short(to))
        } else {
            format!("{} - {}", self.short(from), self.short(to))
        }
    }
}

/// `Tue 9 Feb 2027`, whatever the year.
#[must_use]
pub fn full_day(day: Date) -> String {
    day.format("%a %-d %b %Y").to_string()
}

/// `9 Feb`, of no particular year.
#[must_use]
pub fn month_day(day: Date) -> String {
    day.format("%-d\u{a0}%b").to_string()
}

/// `9 February`, of no particular year.
#[must_use]
pub fn full_month(day: Date) -> String {
    day.format("%-d\u{a0}%B").to_string()
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
pub fn count(n: u32, thing: &str) -> String {
    let ending = match thing {
        _ if n == 1 => "",
        _ if thing.ends_with('s') => "es",
        _ => "s",
    };
    match thing.strip_suffix("ry") {
        Some(stem) if n != 1 => format!("{n} {stem}ries"),
        _ => format!("{n} {thing}{ending}"),
    }
}

/// A number with as many digits as a scale in a kitchen shows: `60 g`, `4.8 kg`, `27 kg`.
#[must_use]
pub fn mass(mass: Kilograms) -> String {
    let kg = mass.0;
    if kg < 0.995 {
        format!("{:.0}\u{a0}g", (kg * 100.0).round() * 10.0)
    } else if kg < 9.95 {
        format!("{kg:.1}\u{a0}kg")
    } else {
        format!("{kg:.0}\u{a0}kg")
    }
}

/// `4.8 to 7.6 kg`, or one figure where both read the same.
#[must_use]
pub fn mass_range(low: Kilograms, high: Kilograms) -> String {
    let (low, high) = (mass(low), mass(high));
    match (low.split_once('\u{a0}'), high.split_once('\u{a0}')) {
        _ if low == high => high,
        (Some((number, a)), Some((_, b))) if a == b => format!("{number} to {high}"),
        _ => format!("{low} to {high}"),
    }
}

/// `25 min`; a begun minute counts.
#[must_use]
pub fn minutes(minutes: Minutes) -> String {
    format!("{:.0}\u{a0}min", (minutes.0 - 1e-9).ceil().max(0.0))
}

/// ` 10:15`, to stand behind a day.
#[must_use]
pub fn at(time: Time) -> String {
    time.format("\u{a0}%H:%M").to_string()
}

/// The sentence with its first letter large.
#[must_use]
pub fn sentence(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}
