//! The garden from above: beds with what stands in them, patches, areas. Lengths are in metres.

use crate::garden::{Bed, BedAt, GradeAt, Position, Runs};
use crate::plan::PlantingAt;
use crate::units::Metres;

use super::Facts;
use super::stands::{Carries, Dated};

/// Where a piece of ground lies.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ground {
    /// Its south-west corner, if the file gives one.
    pub at: Option<Position>,
    /// How far it reaches east and north.
    pub extent: (Metres, Metres),
}

/// What stands together on the map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Planted {
    /// Where it stands, and when.
    pub dated: Dated,
    /// True if it is of the grade that the map stresses; on a map that stresses none, always.
    pub ours: bool,
}

/// A bed on the map.
#[derive(Debug, Clone, PartialEq)]
pub struct MapBed {
    /// Which bed.
    pub bed: BedAt,
    /// Where it lies.
    pub ground: Ground,
    /// Which way its length runs.
    pub runs: Runs,
    /// The length of its part with a trellis.
    pub trellis: Metres,
    /// True if one planting follows another on some strip.
    pub has_followers: bool,
    /// What stands there, in the order in which it comes.
    pub planted: Vec<Planted>,
}

/// How much of the beds and patches the file gives no place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unplaced {
    /// None of them.
    None,
    /// Some of them.
    Some,
    /// All of them.
    All,
}

/// The whole map.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    /// The beds in the order of the file.
    pub beds: Vec<MapBed>,
    /// Perennial patches in the order of the file.
    pub patches: Vec<Ground>,
    /// Areas that are never planted, in the order of the file.
    pub areas: Vec<Ground>,
    /// What has no place.
    pub unplaced: Unplaced,
    /// True if the sun is in the north.
    pub south: bool,
}

/// Length and width of a patch of which the file gives no size.
const PATCH: (Metres, Metres) = (Metres(1.0), Metres(1.0));

impl Map {
    /// True if any bed has a trellis.
    #[must_use]
    pub fn has_trellis(&self) -> bool {
        self.beds.iter().any(|bed| bed.trellis.0 > 0.0)
    }

    /// True if one planting follows another on some strip of a bed.
    #[must_use]
    pub fn has_followers(&self) -> bool {
        self.beds.iter().any(|bed| bed.has_followers)
    }
}

impl Facts<'_> {
    /// The map with what one grade grows stressed; `None` if there is neither bed nor patch.
    #[must_use]
    pub fn map(&self, stressed: Option<GradeAt>) -> Option<Map> {
        let garden = self.garden;
        let beds = self.carried().into_iter();
        let beds: Vec<MapBed> = beds
            .map(|carries| self.map_bed(&garden[carries.bed], &carries, stressed))
            .collect();
        let patches = garden.patches.iter().map(|patch| Ground {
            at: patch.at,
            extent: patch.size.unwrap_or(PATCH),
        });
        let patches: Vec<Ground> = patches.collect();
        let areas = garden.areas.iter().map(|area| Ground {
            at: Some(area.at),
            extent: area.size,
        });
        let all = || beds.iter().map(|bed| &bed.ground).chain(&patches);
        let lost = all().filter(|ground| ground.at.is_none()).count();
        let unplaced = match (all().count(), lost) {
            (0, _) => return None,
            (_, 0) => Unplaced::None,
            (all, lost) if all == lost => Unplaced::All,
            _ => Unplaced::Some,
        };
        Some(Map {
            areas: areas.collect(),
            unplaced,
            south: garden.latitude.0 < 0.0,
            beds,
            patches,
        })
    }

    fn map_bed(&self, bed: &Bed, carries: &Carries, stressed: Option<GradeAt>) -> MapBed {
        let is_ours = |at: &PlantingAt| {
            let team = self.plan.planting(*at).map(|p| self.team_of(p));
            stressed.is_none_or(|grade| team.is_some_and(|team| team.has(grade)))
        };
        let planted = |dated: &Dated| Planted {
            ours: dated.stand.plantings.iter().any(is_ours),
            dated: dated.clone(),
        };
        MapBed {
            bed: carries.bed,
            ground: Ground {
                at: bed.at,
                extent: bed.extent(),
            },
            runs: bed.runs,
            trellis: bed.trellis,
            has_followers: carries.has_followers(),
            planted: carries.stands.iter().map(planted).collect(),
        }
    }
}
