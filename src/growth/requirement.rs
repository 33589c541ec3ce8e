//! The warmth that a crop needs until the first pick, from its packet days.

use crate::garden::{Crop, FrostResponse};
use crate::units::DegreeDays;

use super::germination::least_days;

/// Days by which a young plant is ahead of a seedling that has just come up, where a packet
/// gives only one of the two counts. Plants spend four to eight weeks in narrow cells and
/// lose some of it to the move; two weeks is what is left (from memory).
const HEAD_START_DAYS: f64 = 14.0;

/// From which day on warmth is counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// From the day of sowing.
    Sowing,
    /// From the day on which it is up.
    Emergence,
}

/// Warmth needed until the first pick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Requirement {
    /// For seed sown in the bed, and from when it is counted; `None` if the crop gives
    /// nothing to count by.
    pub sown: Option<(Start, DegreeDays)>,
    /// For plants, from planting.
    pub planted: Option<DegreeDays>,
    /// What a frost night adds, if frost sets the crop back and does not kill it.
    pub set_back: Option<DegreeDays>,
}

impl Requirement {
    /// Turns packet days into degree-days at the crop's reference temperature: days times
    /// (reference or upper limit, whichever is less, minus base). Packet days from sowing
    /// are first lessened by the days to come up at the best soil temperature, since the
    /// days that it really takes outdoors are counted apart. A published thermal time from
    /// sowing takes precedence over packet days from sowing.
    #[must_use]
    pub fn of(crop: &Crop) -> Self {
        let ripening = &crop.ripening;
        let reference = ripening
            .upper
            .map_or(ripening.reference, |u| ripening.reference.min(u));
        let per_day = (reference - ripening.base).0;
        let thermal = |days: f64| DegreeDays((days * per_day).max(1.0));
        let emergence = least_days(&crop.germination).unwrap_or(0.0);
        let published = ripening.thermal_from_sowing;

        let from_emergence = ripening
            .days_from_sowing
            .map(|days| days - emergence)
            .or(ripening.days_from_planting.map(|d| d + HEAD_START_DAYS))
            .map(|days| (Start::Emergence, thermal(days)));
        let not_in_bed = emergence + HEAD_START_DAYS;
        let planted = ripening
            .days_from_planting
            .or(ripening.days_from_sowing.map(|days| days - not_in_bed))
            .map(thermal)
            .or(published.map(|sum| (sum - thermal(not_in_bed)).max(DegreeDays(1.0))));
        Self {
            sown: published.map(|sum| (Start::Sowing, sum)).or(from_emergence),
            planted,
            set_back: match crop.frost {
                FrostResponse::SetBack { days } => Some(thermal(days)),
                FrostResponse::Killed => None,
            },
        }
    }
}
