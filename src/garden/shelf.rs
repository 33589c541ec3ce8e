//! The seedling shelf.

use crate::calendar::Date;
use crate::units::Celsius;

/// The shelf on which seedlings stand, in standard flats of about 28 x 54 cm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shelf {
    /// How many flats it holds.
    pub flats: u32,
    /// How many of them stand on a heat mat.
    pub warm_flats: u32,
    /// Temperature of the room.
    pub room: Celsius,
    /// The first day on which it may be used.
    pub from: Date,
    /// The last day on which it may be used, if it is lent.
    pub until: Option<Date>,
}

/// Temperature of a flat on a heat mat (common practice: 24 to 27 C).
pub const MAT: Celsius = Celsius(25.0);

impl Shelf {
    /// True if the shelf is open on a day.
    #[must_use]
    pub fn open_on(&self, day: Date) -> bool {
        self.from <= day && self.until.is_none_or(|until| day <= until)
    }
}
