//! Beds, what stands in them, perennial patches and areas that are never planted.

use crate::calendar::Date;
use crate::units::{Celsius, Centimetres, Kilograms, Metres, STRIP};

use super::at::{BedAt, GradeAt};
use super::crop::{Crop, Sun};
use super::strips::{StripAt, Strips};
use super::team::Team;

/// A bed in the ground or raised, or a container.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BedKind {
    /// A bed.
    Bed,
    /// A container: handled as a bed, named otherwise.
    Container,
}

/// A cover over the bed, such as fleece or a tunnel.
#[derive(Debug, Clone, PartialEq)]
pub struct Cover {
    /// What it is.
    pub name: String,
    /// Degrees of frost that it keeps off.
    pub keeps_off: Celsius,
    /// How much warmer the soil is under it.
    pub warms_soil: Celsius,
}

/// Degrees by which open ground in sun, at the depth of seed, is warmer than the mean of the air (from
/// memory: 1 to 4 C where it is bare, in spring and summer).
pub const OPEN_GROUND: Celsius = Celsius(2.0);

/// What of a bed changes how plants grow in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Microclimate {
    /// Degrees of frost kept off.
    pub frost_kept_off: Celsius,
    /// Degrees by which the soil is warmer than the smoothed air.
    pub soil_bonus: Celsius,
}

/// A place on the map, south-west corner, metres east and north of the map's origin.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Position {
    /// Metres east.
    pub x: Metres,
    /// Metres north.
    pub y: Metres,
}

/// Which way a bed's length runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Runs {
    /// Strip 1 is at the west end.
    EastWest,
    /// Strip 1 is at the end away from the sun: the north end in the north, the south end in
    /// the south, so that a trellis there shades nothing.
    NorthSouth,
}

/// How a crop's rows lie in a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Rows {
    /// Across it, over its width.
    Across(Metres),
    /// One row along its trellis.
    AlongTrellis,
}

impl From<Metres> for Rows {
    fn from(width: Metres) -> Self {
        Self::Across(width)
    }
}

/// One bed.
#[derive(Debug, Clone, PartialEq)]
pub struct Bed {
    /// The id by which people name it.
    pub id: String,
    /// Bed or container.
    pub kind: BedKind,
    /// Length, along which strips are counted.
    pub length: Metres,
    /// Width.
    pub width: Metres,
    /// Depth of good soil.
    pub soil: Centimetres,
    /// How much sun it has.
    pub sun: Sun,
    /// Length of the part that has a trellis, from the bed's start; 0 for none.
    pub trellis: Metres,
    /// True if no trellis stands in it and stakes, cages or a net are put up for whatever climbs.
    pub supports_put_up: bool,
    /// True if it is the ground of one row along a trellis, only for what climbs; the rest of the width is a bed
    /// of its own.
    pub along_trellis: bool,
    /// Cover, if any.
    pub cover: Option<Cover>,
    /// Degrees by which the bed's soil is warmer than open ground, without the cover.
    pub soil_bonus: Celsius,
    /// The first day on which it is free.
    pub free_from: Option<Date>,
    /// Years and crop families that it carried, newest first.
    pub grew: Vec<(i32, Vec<String>)>,
    /// Which way its length runs.
    pub runs: Runs,
    /// Where it lies on the map.
    pub at: Option<Position>,
    /// The grades that sow and plant in it; none: all do.
    pub of: Vec<GradeAt>,
}

/// The most plots that the beds of a garden may have.
pub const MOST_PLOTS: usize = 128;

/// A part of a bed that is the same for every crop: with trellis or without, free from one day on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plot {
    /// The bed.
    pub bed: BedAt,
    /// Its strips.
    pub strips: Strips,
    /// True if all of it has a trellis.
    pub trellis: bool,
    /// The first day on which something new may come, if what stood there before still does.
    pub free_from: Option<Date>,
}

impl Plot {
    /// True if nothing of before stands there on a day.
    #[must_use]
    pub fn is_free_on(&self, day: Date) -> bool {
        self.free_from.is_none_or(|free| free <= day)
    }
}

impl Bed {
    /// How many whole strips the bed has.
    #[must_use]
    pub fn strips(&self) -> u32 {
        whole_strips(self.length)
    }

    /// How many strips have a trellis, or can have what serves for it.
    #[must_use]
    pub fn trellis_strips(&self) -> u32 {
        match self.supports_put_up {
            true => self.strips(),
            false => whole_strips(self.trellis).min(self.strips()),
        }
    }

    /// True if all of some strips have a trellis, or can have what serves for it.
    #[must_use]
    pub fn has_trellis(&self, strips: Strips) -> bool {
        strips.after().0 <= self.trellis_strips()
    }

    /// Its strips in parts, in order: those with trellis and those without, and each run that is taken by itself.
    #[must_use]
    pub fn parts(&self, taken: &[Strips]) -> Vec<Strips> {
        let with = Strips::from_start(self.trellis_strips());
        let without = Strips {
            first: with.after(),
            count: self.strips() - with.count,
        };
        let is_free = |strip: &StripAt| !taken.iter().any(|strips| strips.has(*strip));
        let free = [with, without].into_iter();
        let free = free.flat_map(|part| Strips::runs(part.iter().filter(is_free)));
        let mut parts: Vec<Strips> = free.chain(taken.iter().copied()).collect();
        parts.sort_unstable();
        parts
    }

    /// How far it reaches east and north of its south-west corner.
    #[must_use]
    pub fn extent(&self) -> (Metres, Metres) {
        match self.runs {
            Runs::EastWest => (self.length, self.width),
            Runs::NorthSouth => (self.width, self.length),
        }
    }

    /// What changes how plants grow in it.
    #[must_use]
    pub fn microclimate(&self) -> Microclimate {
        let cover = self.cover.as_ref();
        Microclimate {
            frost_kept_off: cover.map_or(Celsius(0.0), |c| c.keeps_off),
            soil_bonus: OPEN_GROUND
                + self.soil_bonus
                + cover.map_or(Celsius(0.0), |c| c.warms_soil),
        }
    }

    /// How rows lie in it.
    #[must_use]
    pub fn rows(&self) -> Rows {
        match self.along_trellis {
            true => Rows::AlongTrellis,
            false => Rows::Across(self.width),
        }
    }

    /// True if a team sows and plants in it: it belongs to nobody, or to one of the team's grades.
    #[must_use]
    pub fn is_open_to(&self, team: Team) -> bool {
        self.of.is_empty() || self.of.iter().any(|grade| team.has(*grade))
    }

    /// True if soil depth and sun suit a crop, and it climbs where only climbers stand. Trellis is a matter
    /// of the plot, rotation one of its own rule.
    #[must_use]
    pub fn suits(&self, crop: &Crop) -> bool {
        let climbs = crop.needs.trellis || !self.along_trellis;
        self.soil >= crop.needs.soil && self.sun >= crop.needs.sun && climbs
    }
}

/// Whole strips in a length; a millimetre of rounding is forgiven.
fn whole_strips(length: Metres) -> u32 {
    ((length.0 + 0.001) / STRIP.0).floor() as u32
}

/// A perennial patch outside the beds, standing every year.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch {
    /// Its id.
    pub id: String,
    /// The crop that stands there.
    pub crop: String,
    /// First day of the year on which it may be picked.
    pub pick_from: Date,
    /// Last day on which it may be picked.
    pub pick_to: Date,
    /// Usable harvest of one pick in a poor year.
    pub low: Kilograms,
    /// Usable harvest of one pick in an ordinary year.
    pub expected: Kilograms,
    /// Length and width for the map.
    pub size: Option<(Metres, Metres)>,
    /// Where it lies on the map.
    pub at: Option<Position>,
}

/// An area on the map that is never planted: flowers, seating, shade, path, tap.
#[derive(Debug, Clone, PartialEq)]
pub struct Area {
    /// What it is.
    pub name: String,
    /// Length and width.
    pub size: (Metres, Metres),
    /// Where it lies.
    pub at: Position,
}
