//! What holds where a person says nothing: the smallest school that can grow the dish.

use chrono::{Datelike, NaiveDate, Weekday};

use super::figures::Measures;
use super::school::{Beds, Class, Draft, Span};
use crate::calendar::{Date, Time, plus_days};
use crate::units::Metres;
use crate::weather::normals::Normals;

/// A place in the temperate north.
const LATITUDE: f64 = 44.0;

/// Weeks before the feast in which the first seed may be sown: long enough for all dishes of the list.
const WEEKS_BEFORE: i64 = 30;

/// The least weeks to a feast that nobody has named: the quickest dish takes about so long.
const LEAST_WEEKS: i64 = 12;

/// A gap between terms that is longer than so many days is the summer's.
const LONG_GAP: i64 = 28;

/// Children of a class.
const CHILDREN: u32 = 24;

/// Days on which the classes of a small school come, one after the other.
const DAYS: [Weekday; 4] = [Weekday::Mon, Weekday::Tue, Weekday::Wed, Weekday::Thu];

impl Draft {
    /// Degrees to the north.
    #[must_use]
    pub fn latitude(&self) -> f64 {
        self.latitude.unwrap_or(LATITUDE)
    }

    /// The station whose means hold where none were said.
    #[must_use]
    pub fn station(&self) -> Option<&(Metres, Normals)> {
        self.near.get(self.station)
    }

    /// True if no means were said, and no station is near.
    #[must_use]
    pub fn is_of_no_place(&self) -> bool {
        !self.means.is_said() && self.near.is_empty()
    }

    /// The lowest, the highest and the rain of each month, in the person's unit.
    #[must_use]
    pub fn rows(&self) -> [[f64; 12]; 3] {
        let station = self.station().map(|(_, station)| station);
        self.means.rows(station, self.south(), self.measures)
    }

    /// True south of the equator.
    #[must_use]
    pub fn south(&self) -> bool {
        self.latitude() < 0.0
    }

    /// The day of the feast: the third Friday of the month amid the dish's own, the later one of two, as soon as
    /// there is time to grow it.
    #[must_use]
    pub fn feast(&self) -> Date {
        let (first, last) = self.dish.months_at(self.south());
        let month = (first - 1 + ((last + 12 - first) % 12).div_ceil(2)) % 12 + 1;
        let soonest = plus_days(self.today, 7 * LEAST_WEEKS);
        let friday = |year| NaiveDate::from_weekday_of_month_opt(year, month, Weekday::Fri, 3);
        let year = self.today.year();
        let next = (year..=year + 2)
            .filter_map(friday)
            .find(|day| *day >= soonest);
        self.feast.or(next).unwrap_or(soonest)
    }

    /// When school is in: all the time from the first sowing to a fortnight after the feast.
    #[must_use]
    pub fn terms(&self) -> Vec<Span> {
        if !self.terms.is_empty() {
            return self.terms.clone();
        }
        let from = plus_days(self.feast(), -7 * WEEKS_BEFORE).max(self.today);
        let to_monday = (7 - from.weekday().num_days_from_monday()) % 7;
        vec![Span {
            name: "School year".to_owned(),
            from: plus_days(from, i64::from(to_monday)),
            to: plus_days(self.feast(), 14),
        }]
    }

    /// All classes: one for each ingredient.
    #[must_use]
    pub fn classes(&self) -> Vec<Class> {
        if !self.classes.is_empty() {
            return self.classes.clone();
        }
        let grades = 1..=self.dish.ingredients.len();
        let class = |(grade, day)| Class {
            name: format!("{grade}a"),
            children: CHILDREN,
            day,
            at: Time::from_hms_opt(10, 15, 0),
            every: 1,
        };
        grades.zip(DAYS.into_iter().cycle()).map(class).collect()
    }

    /// All beds: one for each ingredient.
    #[must_use]
    pub fn beds(&self) -> Vec<Beds> {
        if !self.beds.is_empty() {
            return self.beds.clone();
        }
        let count = u32::try_from(self.dish.ingredients.len()).unwrap_or(1);
        let (length, width) = match self.measures {
            Measures::Metric => (3.6, 1.2),
            Measures::Feet => (12.0, 4.0),
        };
        vec![Beds {
            count,
            length,
            width,
        }]
    }

    /// How many beds there are.
    #[must_use]
    pub fn bed_count(&self) -> u32 {
        self.beds().iter().map(|beds| beds.count).sum()
    }

    /// So many beds have a trellis: two, or as many as were said.
    #[must_use]
    pub fn trellises(&self) -> u32 {
        self.trellises.unwrap_or(2).min(self.bed_count())
    }

    /// Trays on the shelf: six, or as many as were said.
    #[must_use]
    pub fn flats(&self) -> u32 {
        self.flats.unwrap_or(6)
    }

    /// How warm the room of the shelf is, in the person's unit.
    #[must_use]
    pub fn room(&self) -> f64 {
        self.room.unwrap_or(match self.measures {
            Measures::Metric => 19.0,
            Measures::Feet => 66.0,
        })
    }

    /// Children of all classes.
    #[must_use]
    pub fn children(&self) -> u32 {
        self.classes().iter().map(|class| class.children).sum()
    }

    /// Who eats: every child, or as many as were said.
    #[must_use]
    pub fn portions(&self) -> u32 {
        self.portions.unwrap_or_else(|| self.children())
    }

    /// The summer in which the grades move up, if there is a long gap between two terms.
    #[must_use]
    pub fn moves_up(&self) -> Option<Date> {
        let terms = self.terms();
        let mut pairs = terms.iter().zip(terms.iter().skip(1));
        let long = |(first, next): &(&Span, &Span)| (next.from - first.to).num_days() > LONG_GAP;
        pairs.find(long).map(|(_, next)| next.from)
    }
}
