//! How a file writes its days.

use crate::calendar::Date;

use super::super::meant;

/// The order of day, month and year.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Order {
    /// `1998-04-07`, `19980407`, `1998/4/7`.
    YearFirst,
    /// `07.04.1998`, `7/4/1998`.
    DayFirst,
    /// `4/7/1998`.
    MonthFirst,
}

impl Order {
    /// The order in which most of the texts are written that tell it; `None` if none does, because no day
    /// of them is after the twelfth.
    pub fn of<'t>(texts: impl Iterator<Item = &'t str>) -> Option<Self> {
        let (mut first, mut second, mut told) = (0, 0, true);
        for (a, b, c) in texts.filter_map(|text| parts(text).filter(|_| !text.contains('.'))) {
            match (a > 31, c > 31) {
                (true, _) => return Some(Self::YearFirst),
                (false, true) => {
                    told = false;
                    first += usize::from(a > 12);
                    second += usize::from(b > 12);
                }
                (false, false) => {}
            }
        }
        match first.cmp(&second) {
            _ if told => Some(Self::YearFirst),
            std::cmp::Ordering::Greater => Some(Self::DayFirst),
            std::cmp::Ordering::Less => Some(Self::MonthFirst),
            std::cmp::Ordering::Equal => None,
        }
    }

    /// The day that a text tells in this order; hours after it say nothing of a day's record.
    pub fn day(self, text: &str) -> Option<Date> {
        let day = match parts(text) {
            Some((year, month, day)) if year > 31 => date(year, month, day),
            // Points stand between day, month and year wherever they stand.
            Some((day, month, year)) if self == Self::DayFirst || text.contains('.') => {
                date(year, month, day)
            }
            Some((month, day, year)) if self == Self::MonthFirst => date(year, month, day),
            Some(_) => None,
            // `7 April 1998`: the name of the month leaves one reading.
            None => match meant::dates(text).as_slice() {
                [day] => Some(*day),
                _ => None,
            },
        };
        day.filter(|day| (1700..=2200).contains(&chrono::Datelike::year(day)))
    }
}

/// A date of three numbers.
pub fn date(year: u32, month: u32, day: u32) -> Option<Date> {
    Date::from_ymd_opt(i32::try_from(year).ok()?, month, day)
}

/// True for a text that may be a day in any order.
pub fn is_day(text: &str) -> bool {
    parts(text).is_some() || !meant::dates(text).is_empty()
}

/// The three numbers of a day; eight digits in a row are those of year, month and day (ISO 8601, basic
/// format).
fn parts(text: &str) -> Option<(u32, u32, u32)> {
    let day = text.split(['T', ' ']).next().unwrap_or_default();
    let number = |part: &str| {
        let digits = (1..=4).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        digits.then(|| part.parse::<u32>().ok())?
    };
    if day.len() >= 8 && day.bytes().all(|b| b.is_ascii_digit()) {
        // Digits of hours and minutes may follow.
        let part = |from, to| day.get(from..to).and_then(number);
        return Some((part(0, 4)?, part(4, 6)?, part(6, 8)?));
    }
    let mut parts = day.split(['-', '/', '.']);
    let (a, b, c) = (parts.next()?, parts.next()?, parts.next()?);
    let whole = parts.next().is_none() && (a.len() == 4) != (c.len() == 4);
    whole.then(|| Some((number(a)?, number(b)?, number(c)?)))?
}
