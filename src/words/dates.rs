//! Dates and times of day.

use chrono::Datelike;

use super::Words;
use crate::calendar::{Date, Time};

impl Words {
    fn bare(self, day: Date) -> bool {
        self.year.is_none_or(|year| year == day.year())
    }

    /// `Tue 9 Feb`; `Tue Feb 9`.
    #[must_use]
    pub fn day(self, day: Date) -> String {
        let pattern = if self.bare(day) {
            self.choose("%a\u{a0}%-d\u{a0}%b", "%a\u{a0}%b\u{a0}%-d")
        } else {
            self.choose(
                "%a\u{a0}%-d\u{a0}%b\u{a0}%Y",
                "%a,\u{a0}%b\u{a0}%-d,\u{a0}%Y",
            )
        };
        day.format(pattern).to_string()
    }

    /// `9 Feb`; `Feb 9`.
    #[must_use]
    pub fn short(self, day: Date) -> String {
        if self.bare(day) {
            return self.month_day(day);
        }
        let pattern = self.choose("%-d\u{a0}%b\u{a0}%Y", "%b\u{a0}%-d,\u{a0}%Y");
        day.format(pattern).to_string()
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

    /// `9-18 Feb` or `9 Feb - 4 Mar`; `Feb 9-18` or `Feb 9 - Mar 4`, for table cells.
    #[must_use]
    pub fn span(self, from: Date, to: Date) -> String {
        if from == to {
            return self.short(from);
        }
        if (from.year(), from.month()) != (to.year(), to.month()) {
            return format!("{} - {}", self.short(from), self.short(to));
        }
        let american = || {
            let year = match self.bare(to) {
                true => String::new(),
                false => format!(",\u{a0}{}", to.year()),
            };
            format!("{}-{}{year}", self.month_day(from), to.day())
        };
        let british = || format!("{}-{}", from.day(), self.short(to));
        self.choose::<&dyn Fn() -> String>(&british, &american)()
    }

    /// `Tue 9 Feb 2027`; `Tue, Feb 9, 2027`, whatever the year.
    #[must_use]
    pub fn full_day(self, day: Date) -> String {
        let pattern = self.choose("%a %-d %b %Y", "%a, %b %-d, %Y");
        day.format(pattern).to_string()
    }

    /// `9 Feb`; `Feb 9`, of no particular year.
    #[must_use]
    pub fn month_day(self, day: Date) -> String {
        let pattern = self.choose("%-d\u{a0}%b", "%b\u{a0}%-d");
        day.format(pattern).to_string()
    }

    /// `9 February`; `February 9`, of no particular year.
    #[must_use]
    pub fn full_month(self, day: Date) -> String {
        let pattern = self.choose("%-d\u{a0}%B", "%B\u{a0}%-d");
        day.format(pattern).to_string()
    }

    /// `February`.
    #[must_use]
    pub fn month(self, day: Date) -> String {
        day.format("%B").to_string()
    }

    /// `Feb 2027`.
    #[must_use]
    pub fn month_of_year(self, day: Date) -> String {
        day.format("%b %Y").to_string()
    }

    /// `Feb`.
    #[must_use]
    pub fn short_month(self, day: Date) -> String {
        day.format("%b").to_string()
    }

    /// `14:05`; `2:05 pm`.
    #[must_use]
    pub fn time(self, time: Time) -> String {
        let pattern = self.choose("%H:%M", "%-I:%M\u{a0}%P");
        time.format(pattern).to_string()
    }

    /// ` 10:15`; ` 10:15 am`, to stand behind a day.
    #[must_use]
    pub fn at(self, time: Time) -> String {
        format!("\u{a0}{}", self.time(time))
    }
}
