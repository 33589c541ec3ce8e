//! What a repair changes, and the order in which kinds of repairs are told.

use crate::calendar::Date;
use crate::garden::{Care, Kept};

/// What a repair changes, with the figures that a reader wants to know.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// Fewer grams of an ingredient in a portion; the kitchen buys the rest.
    FewerGrams {
        /// The ingredient.
        ingredient: String,
        /// Grams now.
        from: f64,
        /// Grams then.
        to: f64,
    },
    /// Another grade grows an ingredient.
    AnotherGrade {
        /// The ingredient.
        ingredient: String,
        /// The grade's name.
        grade: String,
    },
    /// More flats on the shelf.
    MoreFlats {
        /// How many more.
        more: u32,
    },
    /// The kitchen takes the harvest later, so that it can still be picked then.
    LaterDelivery {
        /// The day by which it wants it now.
        from: Date,
        /// The day then.
        to: Date,
    },
    /// A day of the harvest, on which all classes meet.
    HarvestDay {
        /// The day.
        day: Date,
        /// How long the session is.
        minutes: f64,
    },
    /// Sessions every week for the classes of a grade that meet every second week.
    EveryWeek {
        /// The grade's id.
        grade: String,
        /// In this term only.
        term: Option<String>,
        /// Sessions more of all its classes together, until the feast.
        more: u32,
    },
    /// Longer sessions for all classes of a grade.
    LongerSessions {
        /// The grade's id.
        grade: String,
        /// Minutes more.
        minutes: u32,
    },
    /// Someone on site in a break.
    SomeoneThere {
        /// The break.
        pause: String,
        /// Who.
        who: Care,
    },
    /// A bed that belongs to some grades is for all.
    BedForAll {
        /// Its id.
        bed: String,
    },
    /// Fleece over beds.
    Cover {
        /// Their ids.
        beds: Vec<String>,
    },
    /// A trellis, or what serves for it, along beds.
    Trellis {
        /// Their ids.
        beds: Vec<String>,
    },
    /// More beds like one that is there.
    MoreBeds {
        /// The bed that they are like.
        like: String,
        /// How many.
        more: u32,
    },
    /// Another day for the feast.
    AnotherDay {
        /// Days later; earlier if negative.
        later: i64,
    },
    /// An ingredient is picked when it is ripe and put by until the day.
    PutBy {
        /// The ingredient.
        ingredient: String,
        /// How.
        kept: Kept,
    },
    /// Another crop for the grade.
    AnotherCrop {
        /// The ingredient.
        ingredient: String,
        /// What is grown instead.
        crop: String,
    },
    /// The ingredient is bought.
    Bought {
        /// The ingredient.
        ingredient: String,
    },
}

impl Kind {
    /// The order in which kinds are told: first what costs money for food, then people, then
    /// things, then the dish itself and its day.
    #[must_use]
    pub fn weight(&self) -> u32 {
        match self {
            Self::FewerGrams { .. } => 0,
            Self::AnotherGrade { .. } => 1,
            Self::LaterDelivery { .. } => 2,
            Self::HarvestDay { .. } => 3,
            Self::SomeoneThere { .. } => 4,
            Self::LongerSessions { .. } => 5,
            Self::EveryWeek { .. } => 6,
            Self::BedForAll { .. } => 7,
            Self::MoreFlats { .. } => 8,
            Self::Cover { .. } => 9,
            Self::Trellis { .. } => 10,
            Self::MoreBeds { .. } => 11,
            Self::PutBy { .. } => 12,
            Self::AnotherCrop { .. } => 13,
            Self::AnotherDay { .. } => 14,
            Self::Bought { .. } => 15,
        }
    }
}
