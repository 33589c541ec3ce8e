//! A crop as the program computes with it: the catalogue's figures, with the project's
//! own figures in their place where it gives them. Groups of figures that the catalogue gives as they are
//! here are read straight into these types.

use serde::Deserialize;

use super::how::How;
use super::kitchen::Kitchen;
use super::method::Method;
use super::outdoors::{Bolting, Bulbs, Chill, FrostResponse, Ground, NoFruit, Spoils, Thinning};
use crate::units::{Celsius, Centimetres, DegreeDays, Kilograms, Share};

/// How much sun a bed has, or a crop needs at the least.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sun {
    /// Under about three hours of direct sun.
    Shade,
    /// Three to six hours.
    Part,
    /// Six hours and more.
    Full,
}

/// Size of the seed, for little hands and for the work it takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SeedSize {
    /// Sown as a pinch, with help.
    Tiny,
    /// Middling.
    Medium,
    /// Single seeds are easily held.
    Large,
}

/// How long seed takes to come up at a soil temperature.
#[derive(Debug, Clone, PartialEq)]
pub enum Germination {
    /// Days at 0, 5, ... 40 C; `None` where it does not germinate or was not tested.
    /// Source: Harrington and Minges 1954.
    Table([Option<f64>; 9]),
    /// A table whose coldest cells nobody tested: below the first printed cell the rate falls on a
    /// straight line to nothing at `least`.
    Extended {
        /// Days at 0, 5, ... 40 C, as in a table.
        days: [Option<f64>; 9],
        /// The published least soil temperature, colder than the first printed cell.
        least: Celsius,
    },
    /// No table: `days` at the optimum, rate proportional to warmth above `min`, none
    /// outside `min..=max`.
    Range {
        /// Least soil temperature.
        min: Celsius,
        /// Best soil temperature.
        optimum: Celsius,
        /// Greatest soil temperature.
        max: Celsius,
        /// Days at the optimum.
        days: f64,
    },
}

/// Raising plants on the shelf.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IndoorStart {
    /// Least age at planting out, weeks from sowing.
    pub weeks_lo: u32,
    /// Greatest age at planting out.
    pub weeks_hi: u32,
    /// Cells of the flat that is sown.
    pub cells_per_flat: u32,
    /// Pots per flat after potting up; `None` if the crop is not potted up.
    pub pots_per_flat: Option<u32>,
    /// It goes on the heat mat until it is up when the room is colder than this.
    pub warm_below: Celsius,
}

/// Average of the day's extremes, or a sine through them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum DegreeDayMethod {
    /// Mean of the extremes, each first held between base and upper limit.
    Average,
    /// Single sine (Baskerville and Emin 1969), horizontal cut-off.
    Sine,
}

/// How much warmth a crop needs until the first pick.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ripening {
    /// Packet days from sowing in the bed, if it may be sown there.
    pub days_from_sowing: Option<f64>,
    /// Packet days from planting out, if it may be planted.
    pub days_from_planting: Option<f64>,
    /// The short end of the range of packet days from sowing: however warm it is, it does not get ripe
    /// much sooner (`growth::requirement`).
    pub short_from_sowing: Option<f64>,
    /// The same from planting out.
    pub short_from_planting: Option<f64>,
    /// Published thermal time from sowing in the bed; takes precedence over packet days.
    pub thermal_from_sowing: Option<DegreeDays>,
    /// The mean temperature at which packet days hold.
    pub reference: Celsius,
    /// No growth below.
    pub base: Celsius,
    /// No more growth above.
    pub upper: Option<Celsius>,
    /// How a day's degree-days are computed.
    pub method: DegreeDayMethod,
}

impl Ripening {
    /// The same crop if it takes `factor` times as long: packet days, their short ends and published
    /// thermal time alike.
    #[must_use]
    pub fn taking(self, factor: f64) -> Self {
        let times = |days: Option<f64>| days.map(|days| days * factor);
        Self {
            days_from_sowing: times(self.days_from_sowing),
            days_from_planting: times(self.days_from_planting),
            short_from_sowing: times(self.short_from_sowing),
            short_from_planting: times(self.short_from_planting),
            thermal_from_sowing: self.thermal_from_sowing.map(|sum| sum * factor),
            ..self
        }
    }
}

/// Picking, holding and keeping.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Picking {
    /// True if it bears again and again; then one pick gives only a share of the season.
    pub keeps_bearing: bool,
    /// Share of a season's yield in one pick; 1 for crops picked once.
    pub one_pick_share: Share,
    /// Days from ripe until it is past in the ground; for crops that keep bearing, days
    /// from first ripe until they stop, whether anybody picks or not.
    pub holds_in_ground_days: u32,
    /// How much longer it bears where it is picked all along; `None` if picking does not
    /// lengthen it.
    #[serde(default)]
    pub while_picked: Option<WhilePicked>,
    /// True if frost does not harm the ripe crop in the ground (roots, bulbs).
    #[serde(default)]
    pub safe_underground: bool,
    /// Days of curing or drying after the pick before it can be used; 0 for none.
    #[serde(default)]
    pub cure_days: u32,
    /// Days that it keeps after pick and cure.
    pub storage_days: u32,
}

/// How long a crop bears where somebody keeps it picked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WhilePicked {
    /// The most days from one pick to the next, and from first ripe to the first.
    pub every_days: u32,
    /// Days from first ripe after which it stops even so; frost or heat may end it sooner.
    pub bears_days: u32,
}

/// Harvest of one plant over its season, as grown.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Yield {
    /// In a poor year.
    pub low: Kilograms,
    /// In an ordinary year.
    pub expected: Kilograms,
    /// Share that is left after trimming.
    pub usable: Share,
}

/// Distances at which it stands.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spacing {
    /// Between plants in a row.
    pub in_row: Centimetres,
    /// Between rows.
    pub between_rows: Centimetres,
}

/// What a bed must offer.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Needs {
    /// Least sun.
    pub sun: Sun,
    /// Least depth of soil.
    pub soil: Centimetres,
    /// True if it climbs.
    pub trellis: bool,
}

/// Rotation group and how long it should keep away.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rotation {
    /// The group: nightshade, onion, cabbage ...
    pub family: String,
    /// Years that it must stay away from a bed.
    pub years_hard: u32,
    /// Years that it should stay away.
    pub years_wished: u32,
}

impl Rotation {
    /// True if so few years have passed since the ground carried the family that it must keep
    /// away.
    #[must_use]
    pub fn must_wait(&self, passed: i32) -> bool {
        keeps_away(self.years_hard, passed)
    }

    /// True if so few years have passed since the ground carried the family that it should
    /// keep away.
    #[must_use]
    pub fn should_wait(&self, passed: i32) -> bool {
        keeps_away(self.years_wished, passed)
    }
}

/// A limit of 0 keeps nothing away, a limit of 1 what grew in this or the last calendar year.
fn keeps_away(limit: u32, passed: i32) -> bool {
    limit > 0 && u32::try_from(passed).is_ok_and(|passed| passed <= limit)
}

/// Crop coefficients of the FAO-56 stages.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WaterUse {
    /// Initial stage.
    pub initial: f64,
    /// Mid-season.
    pub mid: f64,
    /// End of the late season.
    pub end: f64,
}

/// Lengths of the four FAO-56 stages, in days as published. A planting that takes longer or
/// shorter stretches all four alike.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Stages {
    /// From the start until a tenth of the ground is covered.
    pub initial: f64,
    /// Until the ground is covered.
    pub development: f64,
    /// Until ripening begins to show.
    pub mid: f64,
    /// Until the last pick.
    pub late: f64,
}

/// Ages in years from which on children do the work well, as school gardens commonly see it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Ages {
    /// To sow it, where its seed is fine; `None` or 0 if every child can.
    pub sowing: Option<u32>,
    /// To harvest it, where it is cut with a knife; `None` or 0 if every child can.
    pub harvest: Option<u32>,
}

impl Ages {
    /// The age at which children can do everything, for the ways in which it may be grown.
    /// Only what is sown needs hands for its seed.
    #[must_use]
    pub fn least(&self, methods: &[Method]) -> Option<u32> {
        self.to_sow(methods).max(self.to_harvest())
    }

    /// The age for the harvest.
    #[must_use]
    pub fn to_harvest(&self) -> Option<u32> {
        self.harvest.filter(|age| *age > 0)
    }

    /// The age for sowing, for the ways in which it may be grown.
    #[must_use]
    pub fn to_sow(&self, methods: &[Method]) -> Option<u32> {
        let sown = |method: &Method| matches!(method, Method::Direct | Method::Indoor);
        let age = self.sowing.filter(|age| *age > 0);
        age.filter(|_| methods.iter().any(sown))
    }
}

/// What a reader must be told.
#[derive(Debug, Clone, PartialEq, Eq, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Caution {
    /// Text in plain words; empty for none.
    pub text: String,
    /// The allergen to ask the nurse about, if any.
    pub allergen: Option<String>,
}

/// One crop.
#[derive(Debug, Clone, PartialEq)]
pub struct Crop {
    /// Its name in the catalogue, or in the project file that adds it.
    pub name: String,
    /// The crop of the catalogue whose figures it takes where the file that adds it gives none; `None`
    /// for a crop of the catalogue.
    pub like: Option<String>,
    /// Botanical name.
    pub botanical: String,
    /// Rotation.
    pub rotation: Rotation,
    /// The ways of sowing or planting that work, best first; empty for perennials that only
    /// stand. Never `Growing` or `Patch`.
    pub methods: Vec<Method>,
    /// Coming up.
    pub germination: Germination,
    /// Share of seeds that germinate.
    pub germinates: Share,
    /// Soil to start it in, and how long seed lies in it.
    pub ground: Ground,
    /// When its rows are thinned; `None` for what is sown at its distance or not sown in the bed.
    pub thinning: Option<Thinning>,
    /// Raising on the shelf.
    pub indoor: Option<IndoorStart>,
    /// Warmth until ripe.
    pub ripening: Ripening,
    /// A hardened plant's leaves bear this; anything colder is frost to it.
    pub frost_limit: Celsius,
    /// What frost does.
    pub frost: FrostResponse,
    /// When long days end it.
    pub bolting: Option<Bolting>,
    /// When heat ends it.
    pub spoils: Option<Spoils>,
    /// When heat leaves it without fruit.
    pub no_fruit: Option<NoFruit>,
    /// When cold makes it flower too soon.
    pub chill: Option<Chill>,
    /// What its bulbs wait for.
    pub bulbs: Option<Bulbs>,
    /// Picking, holding, keeping.
    pub picking: Picking,
    /// Harvest per plant.
    pub yields: Yield,
    /// Spacing.
    pub spacing: Spacing,
    /// What a bed must offer.
    pub needs: Needs,
    /// Seed size.
    pub seed_size: SeedSize,
    /// So many years seed that is kept cool and dry comes up well, the one for which it was bought among them; `None` for
    /// what is not sown.
    pub seed_keeps_years: Option<u32>,
    /// From which age on it suits children.
    pub ages: Ages,
    /// Water use, where published.
    pub water: Option<WaterUse>,
    /// Lengths of the stages, where published.
    pub stages: Option<Stages>,
    /// How a kitchen handles it.
    pub kitchen: Kitchen,
    /// Cautions.
    pub caution: Caution,
    /// How it is grown and picked; every crop of the catalogue says it.
    pub how: Option<How>,
}
