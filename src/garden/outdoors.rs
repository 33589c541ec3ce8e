//! What becomes of a crop under the open sky: the ground in which it is started, the thinning of its rows,
//! frost, long days, heat, cold when it is young, and what bulbs wait for.

use serde::Deserialize;

use crate::units::{Celsius, Hours, Latitude};

/// What the ground must be for a start outdoors. No crop of the catalogue asks for more than 18 C,
/// since soil is not measured here but made of the air's mean (`growth::soil`).
#[derive(Debug, Clone, Copy, PartialEq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ground {
    /// Nothing is sown in colder soil, and no piece, set or clove planted: the least that growers
    /// wait for.
    pub sow: Option<Celsius>,
    /// No plant is set out in colder soil.
    pub set_out: Option<Celsius>,
    /// Seed, or pieces, that are not up so many days after they went into the ground have rotted.
    /// `None` for sets and cloves, which wait for warmth, and for what is only planted.
    pub rots_after: Option<u32>,
}

/// When a row that was sown too close is thinned, in days after it has come up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Thinning {
    /// The first day: before it, seedlings cannot be told apart or held.
    pub after: u32,
    /// The last day: after it, they have crowded each other.
    pub before: u32,
}

/// What frost does to standing leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FrostResponse {
    /// The planting is lost.
    Killed,
    /// The planting loses this many packet days and grows again.
    SetBack {
        /// Packet days lost, at the reference temperature.
        days: f64,
    },
}

/// When long days end a crop.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bolting {
    /// Day length that counts as long.
    pub day_length: Hours,
    /// Long days after emergence (or planting out) until it bolts.
    pub after_days: u32,
}

/// Heat that ends a crop of the cool season: it bolts, turns bitter, or makes no tubers.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spoils {
    /// The mean of a spell that is over this ends it.
    pub above: Celsius,
    /// How long a spell is, in days.
    pub days: u32,
}

/// Heat in which a crop sets no fruit.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct NoFruit {
    /// A day whose lowest temperature is over this is too hot.
    pub nights: Celsius,
    /// So is one whose highest is over this.
    pub noons: Celsius,
    /// After so many of them in a row nothing sets.
    pub days: u32,
}

/// Cold that makes a young plant flower too soon: it runs to seed, or makes a head the size of a button.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Chill {
    /// The mean of a spell that is under this ends it.
    pub below: Celsius,
    /// How long a spell is, in days.
    pub days: u32,
    /// Days after it is up, or planted, within which the whole spell must lie: older plants bear it.
    pub within: u32,
}

/// The length of a day that counts as long.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(untagged)]
pub enum LongDay {
    /// So many hours of light, of all kinds of the crop.
    Hours(Hours),
    /// That of the kinds which are grown at the place.
    Kind(KindOfThePlace),
}

/// The kind whose day length suits the latitude.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum KindOfThePlace {
    /// As it is written in the files of the catalogue.
    #[serde(rename = "kind of the place")]
    ByLatitude,
}

/// Kinds of onions by the length of the days in which they make bulbs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DayLengthKind {
    /// For low latitudes, where it grows through the winter.
    Short,
    /// Between the two.
    Intermediate,
    /// For high latitudes, where it grows through the summer.
    Long,
}

impl DayLengthKind {
    /// All kinds, with the latitude under which each is grown: the last one beyond (common practice).
    pub const ALL: [(Self, Option<Latitude>); 3] = [
        (Self::Short, Some(Latitude(35.0))),
        (Self::Intermediate, Some(Latitude(38.0))),
        (Self::Long, None),
    ];

    /// The kind that is grown at a latitude.
    #[must_use]
    pub fn at(latitude: Latitude) -> Self {
        let under = |up_to: Option<Latitude>| up_to.is_none_or(|up_to| latitude.0.abs() < up_to.0);
        let mut all = Self::ALL.into_iter();
        all.find(|(_, up_to)| under(*up_to))
            .map_or(Self::Long, |(kind, _)| kind)
    }

    /// The day length from which it makes bulbs. Iowa State Extension gives 10 to 12, 12 to 14 and 14 or more hours, Oregon
    /// State Extension (2006) 11 to 13, 13 to 14 and 14 or more: what both allow.
    #[must_use]
    pub fn day_length(self) -> Hours {
        match self {
            Self::Short => Hours(11.5),
            Self::Intermediate => Hours(13.5),
            Self::Long => Hours(14.0),
        }
    }
}

impl LongDay {
    /// Hours of light at a place.
    #[must_use]
    pub fn at(self, latitude: Latitude) -> Hours {
        match self {
            Self::Hours(hours) => hours,
            Self::Kind(KindOfThePlace::ByLatitude) => DayLengthKind::at(latitude).day_length(),
        }
    }
}

impl Bulbs {
    /// The kind that suits a latitude, where kinds differ by the day length in which they make bulbs.
    #[must_use]
    pub fn kind_at(&self, latitude: Latitude) -> Option<DayLengthKind> {
        match self.day_length {
            LongDay::Kind(KindOfThePlace::ByLatitude) => Some(DayLengthKind::at(latitude)),
            LongDay::Hours(_) => None,
        }
    }
}

/// What a crop waits for until it makes bulbs.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bulbs {
    /// So many cold nights since it was planted, in a row or not; 0 if it needs none.
    pub cold_nights: u32,
    /// A night is cold if its lowest temperature is below this.
    pub below: Celsius,
    /// After them, the length of a day that counts as long.
    pub day_length: LongDay,
    /// Bulbs are ripe after so many long days, and not before.
    pub days: u32,
}
