//! One crop in one bed's microclimate through one weather year: when it comes up, ripens
//! and is gone, for any starting day.

use crate::garden::{Bolting, Crop, Microclimate};
use crate::units::{Celsius, DegreeDays, Hours};
use crate::weather::WeatherYear;

use super::bearing::{Bearing, PickingDays};
use super::bulbs::Bulbing;
use super::chill::Chilling;
use super::degree_days::degree_days;
use super::germination;
use super::heat::Heat;
use super::light::Light;
use super::requirement::{Requirement, Start};
use super::soil::soil_temperatures;

/// Why nothing can be picked any more.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Loss {
    /// Never sown: the ground was too cold for it.
    NotSown,
    /// Never planted: the ground was too cold for it.
    NotPlanted,
    /// Sown, not up in time, and rotten.
    Rotted,
    /// Killed by frost.
    Frost,
    /// Bolted in long days.
    Bolted,
    /// Ended by heat: spoilt, or without fruit.
    Heat,
    /// Past its time in the ground.
    Past,
}

/// What becomes of a planting; all days are day numbers of the plan's span.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fate {
    /// The day on which it is up; the planting day itself for plants. `None`: never.
    pub up: Option<usize>,
    /// The first day on which it is ripe; `None` if not within the span or lost before.
    pub ripe: Option<usize>,
    /// The first day on which nothing can be picked any more, and why.
    pub gone: Option<(usize, Loss)>,
}

impl Fate {
    /// Nothing ever comes up.
    const NEVER: Self = Self {
        up: None,
        ripe: None,
        gone: None,
    };

    /// Nothing ever comes up, and from a day on it is certain.
    const fn lost(day: usize, why: Loss) -> Self {
        Self {
            gone: Some((day, why)),
            ..Self::NEVER
        }
    }
}

/// Below this day length crops stand still, however mild the day (common practice: the
/// "ten-hour rule" of winter growers).
pub const STANDSTILL: Hours = Hours(10.0);

/// Colder ground is frozen or too wet to work, so nothing is sown or planted in it
/// (common practice: "as soon as the ground can be worked"; the figure from memory).
pub const WORKABLE: Celsius = Celsius(4.0);

/// The coldest soil in which a crop is sown, or set out as plants: it can be worked, and is as warm as
/// the crop asks for.
#[must_use]
pub fn least_soil(crop: &Crop, as_plants: bool) -> Celsius {
    let asked = match as_plants {
        true => crop.ground.set_out,
        false => crop.ground.sow,
    };
    asked.map_or(WORKABLE, |least| least.max(WORKABLE))
}

/// Where the ground is too cold on the day of the plan, who sows or plants waits up to so many days for it to
/// warm: until the next lesson, or as an adult has time (common practice; the figure from memory).
pub const WAITS: usize = 14;

/// Days within which further frost nights set a crop back no more: it has no new leaves to
/// lose (from memory).
const REGROWTH_DAYS: usize = 7;

/// Sums of many days are compared with this much forgiveness, so that ten days of a tenth
/// make a whole.
const ROUNDING: f64 = 1e-7;

/// Sums and frosts of one crop, microclimate and weather year, from which fates are read.
#[derive(Debug, Clone)]
pub struct CropSeason {
    /// Days on which the ground is warm enough to sow the crop.
    fit_to_sow: Vec<bool>,
    /// Days on which it is warm enough to set it out as plants.
    fit_to_plant: Vec<bool>,
    /// Way to emergence, summed over the days before each day; 1 is up.
    sprouted: Vec<f64>,
    /// Degree-days of what was sown, summed over the days before each day.
    warmth_sown: Vec<f64>,
    /// The same of plants.
    warmth_planted: Vec<f64>,
    /// Days with a frost that the leaves do not bear, in order.
    frosts: Vec<usize>,
    /// Days that count towards bolting, in order.
    long_days: Vec<usize>,
    /// Spells of heat.
    heat: Heat,
    /// Spells of cold.
    chilling: Option<Chilling>,
    /// What bulbs wait for.
    bulbing: Option<Bulbing>,
    need: Requirement,
    bolting: Option<Bolting>,
    rots_after: Option<usize>,
    bearing: Bearing,
    safe_underground: bool,
}

/// By what a planting gets ripe.
#[derive(Debug, Clone, Copy)]
struct Ripens<'s> {
    /// The day on which it went into the bed.
    since: usize,
    /// The day after which warmth is counted.
    after: usize,
    /// The warmth that it needs.
    need: DegreeDays,
    /// Degree-days, summed over the days before each day.
    warmth: &'s [f64],
}

impl CropSeason {
    /// Prepares the sums, once per crop, microclimate and weather year. `light` is that of the same days.
    #[must_use]
    pub fn new(
        crop: &Crop,
        microclimate: Microclimate,
        year: &WeatherYear<'_>,
        light: &Light,
    ) -> Self {
        let soil = soil_temperatures(year, microclimate.soil_bonus);
        let fit = |as_plants| {
            let least = least_soil(crop, as_plants);
            soil.iter().map(|t| *t >= least).collect()
        };
        let ripening = &crop.ripening;
        let need = Requirement::of(crop);
        let warmth: Vec<DegreeDays> = year
            .days
            .iter()
            .zip(light.hours())
            .map(|(day, light)| {
                if *light < STANDSTILL {
                    return DegreeDays(0.0);
                }
                degree_days(
                    ripening.method,
                    ripening.base,
                    ripening.upper,
                    day.tmin,
                    day.tmax,
                )
            })
            .collect();
        let held = |as_plants| sums(warmth.iter().map(|day| need.held(*day, as_plants).0));
        let is_frost =
            |day: usize| year.days[day].tmin + microclimate.frost_kept_off < crop.frost_limit;
        Self {
            fit_to_sow: fit(false),
            fit_to_plant: fit(true),
            sprouted: sums(
                soil.iter()
                    .map(|t| germination::rate(&crop.germination, *t)),
            ),
            warmth_sown: held(false),
            warmth_planted: held(true),
            frosts: (0..year.days.len()).filter(|d| is_frost(*d)).collect(),
            long_days: crop
                .bolting
                .map_or_else(Vec::new, |b| light.days_of(b.day_length)),
            heat: Heat::of(crop, year.days),
            chilling: Chilling::of(crop, year.days),
            bulbing: Bulbing::of(crop, year.days, light),
            need,
            bolting: crop.bolting,
            rots_after: crop.ground.rots_after.map(|days| days as usize),
            bearing: Bearing::unpicked(&crop.picking),
            safe_underground: crop.picking.safe_underground,
        }
    }

    /// The same where somebody keeps it picked on some days; without that nobody does.
    #[must_use]
    pub fn picked_on(self, days: &PickingDays) -> Self {
        let bearing = self.bearing.picked_on(days);
        Self { bearing, ..self }
    }

    /// The fate of seed (or pieces, sets, cloves) sown in the bed on day number `day`.
    /// Nothing counts on the day of sowing itself. Beyond the span, and in ground too cold for
    /// the crop, nothing comes up.
    #[must_use]
    pub fn sown(&self, day: usize) -> Fate {
        match too_cold(&self.fit_to_sow, day, Loss::NotSown) {
            Some(never) => never,
            None => self.of_seed(day),
        }
    }

    /// The fate of what is to be sown on day number `day`, or within `WAITS` days of it as soon as the
    /// ground is fit for it.
    #[must_use]
    pub fn sown_when_fit(&self, day: usize) -> Fate {
        self.sown(first_fit(&self.fit_to_sow, day))
    }

    /// The fate of plants that are to be set out on day number `day`, or within `WAITS` days of it as soon
    /// as the ground is fit for them.
    #[must_use]
    pub fn planted_when_fit(&self, day: usize) -> Fate {
        self.planted(first_fit(&self.fit_to_plant, day))
    }

    /// The fate of what was begun before the plan, on day number `day`: from plants or from seed. That it
    /// was is given, however cold the ground is in a year.
    #[must_use]
    pub fn begun(&self, day: usize, as_plants: bool) -> Fate {
        match (day < self.fit_to_sow.len(), as_plants) {
            (false, _) => Fate::NEVER,
            (true, true) => self.of_plants(day),
            (true, false) => self.of_seed(day),
        }
    }

    /// The fate of seed that is in the ground since a day.
    fn of_seed(&self, day: usize) -> Fate {
        let up = after(&self.sprouted, day, 1.0);
        let rotten = self.rots_after.map(|days| day + days + 1);
        let up = match (up, rotten) {
            (Some(up), None) => up,
            (Some(up), Some(rotten)) if up < rotten => up,
            (_, Some(rotten)) if rotten < self.span() => return Fate::lost(rotten, Loss::Rotted),
            _ => return Fate::NEVER,
        };
        let ripens = self.need.sown.map(|(start, need)| Ripens {
            since: day,
            after: match start {
                Start::Sowing => day,
                Start::Emergence => up,
            },
            need,
            warmth: &self.warmth_sown,
        });
        self.fate(up, ripens)
    }

    /// The fate of plants set out in the bed on day number `day`; none are set out in ground
    /// too cold for them.
    #[must_use]
    pub fn planted(&self, day: usize) -> Fate {
        if let Some(never) = too_cold(&self.fit_to_plant, day, Loss::NotPlanted) {
            return never;
        }
        self.of_plants(day)
    }

    /// The fate of plants that are in the bed since a day.
    fn of_plants(&self, day: usize) -> Fate {
        let ripens = self.need.planted.map(|need| Ripens {
            since: day,
            after: day,
            need,
            warmth: &self.warmth_planted,
        });
        self.fate(day, ripens)
    }

    /// Days of the span.
    fn span(&self) -> usize {
        self.sprouted.len() - 1
    }

    /// The fate of a planting that is up on `up`.
    /// A frost on the day on which it comes up or is planted was over by then.
    fn fate(&self, up: usize, ripens: Option<Ripens<'_>>) -> Fate {
        let ripe = ripens.and_then(|ripens| {
            let bulbs = self.bulbing.as_ref();
            let bulbs = bulbs.map_or(Some(up), |bulbing| bulbing.ripe_from(ripens.since))?;
            Some(self.ripe(up, ripens)?.max(up).max(bulbs))
        });
        let frost = self.killing_frost(up, ripe).map(|d| (d, Loss::Frost));
        let chilled = self.chilling.as_ref().and_then(|cold| cold.ends(up));
        let bolted = self.bolts(up).into_iter().chain(chilled).min();
        let bolted = bolted.map(|d| (d, Loss::Bolted));
        let hot = self.heat.ends(up, ripe, self.safe_underground);
        let hot = hot.map(|d| (d, Loss::Heat));
        let past = ripe.map(|d| (self.bearing.last_day(d) + 1, Loss::Past));
        let gone = [frost, bolted, hot, past]
            .into_iter()
            .flatten()
            .min()
            .filter(|(day, _)| *day < self.span());
        Fate {
            up: Some(up),
            ripe: ripe.filter(|r| gone.is_none_or(|(day, _)| *r < day)),
            gone,
        }
    }

    /// The first day on which the warmth makes the crop ripe. Each frost that sets it back on the way
    /// adds to the need.
    fn ripe(&self, up: usize, ripens: Ripens<'_>) -> Option<usize> {
        let mut need = ripens.need.0;
        let mut ripe = after(ripens.warmth, ripens.after, need)?;
        let Some(set_back) = self.need.set_back else {
            return Some(ripe);
        };
        let mut harmed_from = up + 1;
        for &frost in self.frosts_after(up) {
            if frost >= ripe {
                break;
            }
            if frost >= harmed_from {
                need += set_back.0;
                ripe = after(ripens.warmth, ripens.after, need)?;
                harmed_from = frost + REGROWTH_DAYS;
            }
        }
        Some(ripe)
    }

    /// The first frost that kills it. Ripe roots and bulbs are safe in the ground.
    fn killing_frost(&self, up: usize, ripe: Option<usize>) -> Option<usize> {
        if self.need.set_back.is_some() {
            return None;
        }
        let frost = *self.frosts_after(up).first()?;
        let safe = self.safe_underground && ripe.is_some_and(|r| r <= frost);
        (!safe).then_some(frost)
    }

    /// The day on which the long days after `up` have made it bolt.
    fn bolts(&self, up: usize) -> Option<usize> {
        let bolting = self.bolting?;
        let seen = self.long_days.partition_point(|d| *d <= up);
        let nth = (bolting.after_days as usize).max(1) - 1;
        self.long_days.get(seen + nth).copied()
    }

    fn frosts_after(&self, day: usize) -> &[usize] {
        let seen = self.frosts.partition_point(|d| *d <= day);
        self.frosts.get(seen..).unwrap_or_default()
    }
}

/// The first day on which the ground is fit, of a day and the `WAITS` after it; the day itself if none is.
fn first_fit(fit: &[bool], day: usize) -> usize {
    let mut wait = fit.iter().skip(day).take(WAITS + 1);
    wait.position(|fit| *fit).map_or(day, |waited| day + waited)
}

/// What comes of a start that cannot be made, if the ground is not fit for it on a day, or the day is
/// beyond the span.
fn too_cold(fit: &[bool], day: usize, why: Loss) -> Option<Fate> {
    match fit.get(day) {
        Some(true) => None,
        Some(false) => Some(Fate::lost(day, why)),
        None => Some(Fate::NEVER),
    }
}

/// Sums over the days before each day, and over all days at the end.
fn sums(daily: impl Iterator<Item = f64>) -> Vec<f64> {
    let mut sum = 0.0;
    std::iter::once(0.0)
        .chain(daily.map(|value| {
            sum += value;
            sum
        }))
        .collect()
}

/// The first day by whose end the days after `start` have summed up to `amount`.
fn after(sums: &[f64], start: usize, amount: f64) -> Option<usize> {
    let target = sums.get(start.checked_add(1)?)? + amount - ROUNDING;
    let reached = sums.partition_point(|sum| *sum < target);
    (reached < sums.len()).then(|| reached.saturating_sub(1))
}
