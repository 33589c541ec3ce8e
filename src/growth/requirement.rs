//! The warmth that a crop needs until the first pick, from its packet days.

use crate::garden::{Crop, FrostResponse};
use crate::units::{Celsius, DegreeDays, Share};

use super::germination::{days_to_emerge, least_days};

/// Days by which a young plant is ahead of a seedling that has just come up, where a packet
/// gives only one of the two counts. Plants spend four to eight weeks in narrow cells and
/// lose some of it to the move; two weeks is what is left (from memory).
const HEAD_START_DAYS: f64 = 14.0;

/// However warm it is, no crop is ripe in fewer days than this part of the short end of its packet days:
/// a crop grows no faster above the warmth that suits it best, and kinds, places and years differ by no more
/// (common practice; the figure from memory).
pub const QUICKEST: Share = Share(0.8);

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
    /// The most that a day brings to what was sown, however warm it is; `None` if there is no such limit.
    pub most_when_sown: Option<DegreeDays>,
    /// The same of plants.
    pub most_when_planted: Option<DegreeDays>,
}

impl Requirement {
    /// Turns packet days into degree-days at the crop's reference temperature: days times
    /// (reference or upper limit, whichever is less, minus base). Packet days from sowing
    /// are first lessened by the days to come up in soil of the reference temperature, since
    /// the days that it really takes outdoors are counted apart: in steady weather at the
    /// reference temperature a sown crop is ripe after its packet days. Where seed does not
    /// come up at the reference, the days at the best temperature are taken. A published
    /// thermal time from sowing takes precedence over packet days from sowing.
    ///
    /// A day brings at most so much that a crop whose every day brings it is ripe after `QUICKEST` of the
    /// short end of its packet days, the least days to come up included. That is where warmth has its plateau.
    /// It is no less than what a day at the reference brings, so that packet days hold there.
    #[must_use]
    pub fn of(crop: &Crop) -> Self {
        let ripening = &crop.ripening;
        let reference = ripening
            .upper
            .map_or(ripening.reference, |u| ripening.reference.min(u));
        let per_day = (reference - ripening.base).0;
        let thermal = |days: f64| DegreeDays((days * per_day).max(1.0));
        let emergence = days_to_emerge(&crop.germination, reference)
            .or_else(|| least_days(&crop.germination))
            .unwrap_or(0.0);
        let published = ripening.thermal_from_sowing;
        let least_up = least_days(&crop.germination).unwrap_or(0.0);

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
        let sown = published.map(|sum| (Start::Sowing, sum)).or(from_emergence);
        let most = |need: DegreeDays, short: Option<f64>, up: f64| {
            let days = (short? * QUICKEST.0 - up).max(1.0);
            Some((need * (1.0 / days)).max(DegreeDays(per_day)))
        };
        let most_when_sown = sown.and_then(|(start, need)| match start {
            Start::Emergence => most(need, ripening.short_from_sowing, least_up),
            Start::Sowing => most(need, ripening.short_from_sowing, 0.0),
        });
        Self {
            sown,
            planted,
            most_when_sown,
            most_when_planted: planted
                .and_then(|need| most(need, ripening.short_from_planting, 0.0)),
            set_back: match crop.frost {
                FrostResponse::SetBack { days } => Some(thermal(days)),
                FrostResponse::Killed => None,
            },
        }
    }
}

impl Requirement {
    /// A day's degree-days, held to the most that a day brings.
    #[must_use]
    pub fn held(&self, day: DegreeDays, as_plants: bool) -> DegreeDays {
        let most = match as_plants {
            true => self.most_when_planted,
            false => self.most_when_sown,
        };
        most.map_or(day, |most| day.min(most))
    }
}

/// Days from sowing in the bed (or from planting, if `as_plants`) until ripe where every day
/// and the ground have the temperature `mean`; at the reference these are the packet days.
/// `None` if it gives nothing to count by or does not grow at that temperature.
#[must_use]
pub fn days_at(crop: &Crop, as_plants: bool, mean: Celsius) -> Option<f64> {
    let ripening = &crop.ripening;
    let held = ripening.upper.map_or(mean, |upper| mean.min(upper));
    let need = Requirement::of(crop);
    let per_day = need.held(DegreeDays((held - ripening.base).0), as_plants);
    let days = |need: DegreeDays| (per_day.0 > 0.0).then(|| need / per_day);
    if as_plants {
        return days(need.planted?);
    }
    let up = days_to_emerge(&crop.germination, mean)?;
    match need.sown? {
        (Start::Sowing, need) => days(need).map(|days| days.max(up)),
        (Start::Emergence, need) => days(need).map(|days| up + days),
    }
}
