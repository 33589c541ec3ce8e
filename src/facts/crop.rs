//! What a crop's figures come to: degree-days until it is ripe, days until it is up, room in a bed.

use crate::garden::{Crop, Method};
use crate::growth::Block;
use crate::growth::germination::days_to_emerge;
use crate::growth::requirement::{self, Requirement};
use crate::units::{Celsius, DegreeDays, Metres, STRIP};

/// Crops that stand still below a warmer base than this are called warm-season: the bases of the
/// catalogue fall into two groups, up to 5 C and from 6.7 C on (common practice; the line is ours).
const WARM_BASE: Celsius = Celsius(6.0);

/// Soil temperatures of the published tables.
const SOIL: [Celsius; 9] = [
    Celsius(0.0),
    Celsius(5.0),
    Celsius(10.0),
    Celsius(15.0),
    Celsius(20.0),
    Celsius(25.0),
    Celsius(30.0),
    Celsius(35.0),
    Celsius(40.0),
];

/// From when degree-days are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CountedFrom {
    /// From sowing.
    Sowing,
    /// From coming up.
    ComingUp,
    /// From planting out.
    PlantingOut,
}

/// A whole number of rows in a bed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rows {
    /// Plants that stand in them.
    pub plants: u32,
    /// The length of bed that they take.
    pub length: Metres,
}

/// True if it is a crop of the warm season; else it is one of the cool season.
#[must_use]
pub fn is_warm_season(crop: &Crop) -> bool {
    crop.ripening.base > WARM_BASE
}

/// True if it may be set out as a plant.
#[must_use]
pub fn as_plants(crop: &Crop) -> bool {
    crop.methods
        .iter()
        .any(|m| matches!(m, Method::Indoor | Method::Bought))
}

/// True if it may be sown or planted in the bed as seed, pieces, sets or cloves.
#[must_use]
pub fn in_bed(crop: &Crop) -> bool {
    crop.methods
        .iter()
        .any(|m| matches!(m, Method::Direct | Method::Pieces))
}

/// Days until it is ripe, as packets say, for the ways in which it is started.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PacketDays {
    /// From sowing in the bed.
    pub sown: Option<f64>,
    /// From planting out.
    pub planted: Option<f64>,
}

/// The days of a packet. Those from sowing are also told where there are no others.
#[must_use]
pub fn packet_days(crop: &Crop) -> PacketDays {
    let ripening = &crop.ripening;
    let sown = in_bed(crop) || ripening.days_from_planting.is_none();
    PacketDays {
        sown: ripening.days_from_sowing.filter(|_| sown),
        planted: ripening.days_from_planting.filter(|_| as_plants(crop)),
    }
}

/// Degree-days until it is ripe where it is sown; `None` if it is not.
#[must_use]
pub fn ripe_when_sown(crop: &Crop) -> Option<(CountedFrom, DegreeDays)> {
    let (start, need) = Requirement::of(crop).sown.filter(|_| in_bed(crop))?;
    let from = match start {
        requirement::Start::Sowing => CountedFrom::Sowing,
        requirement::Start::Emergence => CountedFrom::ComingUp,
    };
    Some((from, need))
}

/// Degree-days until it is ripe where it is planted out; `None` if it is not.
#[must_use]
pub fn ripe_when_planted(crop: &Crop) -> Option<(CountedFrom, DegreeDays)> {
    let need = Requirement::of(crop).planted.filter(|_| as_plants(crop))?;
    Some((CountedFrom::PlantingOut, need))
}

/// The days under which it is not ripe, however warm it is, for the ways in which it is started.
#[must_use]
pub fn at_the_quickest(crop: &Crop) -> PacketDays {
    let ripening = &crop.ripening;
    let least = |short: Option<f64>| short.map(|days| days * requirement::QUICKEST.0);
    PacketDays {
        sown: least(ripening.short_from_sowing).filter(|_| in_bed(crop)),
        planted: least(ripening.short_from_planting).filter(|_| as_plants(crop)),
    }
}

/// Days until it is up in soil of the temperatures of the published tables; `None` where it does not
/// come up.
#[must_use]
pub fn days_to_come_up(crop: &Crop) -> [(Celsius, Option<f64>); 9] {
    SOIL.map(|soil| (soil, days_to_emerge(&crop.germination, soil)))
}

/// The fewest strips of a bed in which its rows come out whole; `None` if it does not fit into a
/// bed of that width.
#[must_use]
pub fn rows_in_bed(crop: &Crop, width: Metres) -> Option<Rows> {
    let block = Block::of(crop, width)?;
    Some(Rows {
        plants: block.plants,
        length: STRIP * f64::from(block.strips),
    })
}
