//! The water that the beds of a plan need beside the rain, week by week.

use chrono::Datelike;

use crate::calendar::Date;
use crate::garden::{BedAt, Method, SeedSize};
use crate::growth::water::{
    counted_rain, crop_coefficient, reference_evapotranspiration, stages, to_give, water_use,
};
use crate::plan::StepKind;
use crate::units::{Litres, Millimetres, STRIP, SquareMetres};
use crate::weather::{Daily, WeatherYear};

use super::planting::Planting;
use super::replay::day_up;
use super::run::Run;

/// The share of the weather years that need no more than a dry year.
const DRY: f64 = 0.9;

/// Water to give, in an ordinary and in a dry year. For a week the weather of the weeks just
/// before and after it counts as well, as if it had been its own.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WaterNeed {
    /// The median of the weather years.
    pub ordinary: Litres,
    /// Nine of ten weather years need no more.
    pub dry: Litres,
}

/// The water that a plan's beds need. Patches outside the beds are not in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Watering {
    /// Per bed, then per week of the span; `None` where nothing stands.
    pub beds: Vec<Vec<Option<WaterNeed>>>,
    /// Per bed: the most of it that is planted at one time, seen week by week.
    pub planted: Vec<SquareMetres>,
    /// Per week: all beds together. A dry week of one bed need not be one of another, so it is
    /// not the sum of theirs.
    pub weeks: Vec<WaterNeed>,
    /// The whole span.
    pub whole: WaterNeed,
    /// Seed in the bed that must be looked after day by day.
    pub seedbeds: Vec<Seedbed>,
}

/// Seed in a bed until it is up.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Seedbed {
    /// The ingredient.
    pub ingredient: String,
    /// True for large seed. It lies deep and rots where it is watered every day (common
    /// practice), so it is only looked at.
    pub lies_deep: bool,
    /// The beds.
    pub beds: Vec<BedAt>,
    /// The first day of sowing.
    pub from: Date,
    /// The day on which the last seed is up in the median weather year; the day of the last
    /// sowing if it never is.
    pub up: Date,
}

/// A planting in its beds: when, how thirsty, and on how much of which bed.
struct Standing {
    first: usize,
    last: usize,
    /// Crop coefficients from the first day to the last.
    coefficients: Vec<f64>,
    areas: Vec<(BedAt, SquareMetres)>,
}

impl Watering {
    /// Grows the whole plan and counts what it drinks.
    pub(super) fn of(run: &Run<'_>) -> Self {
        let garden = run.garden;
        let standing: Vec<Standing> = run
            .plantings
            .iter()
            .filter_map(|p| Standing::of(run, p))
            .collect();
        let years = garden.weather.years(run.horizon);
        let skies: Vec<Vec<Sky>> = years.iter().map(|year| sky(run, year)).collect();
        let weeks = run.horizon.weeks();
        let needs = |bed: Option<BedAt>, week: usize| {
            let here = near(week, weeks).flat_map(|w| skies.iter().map(move |sky| (w, sky)));
            WaterNeed::of(here.map(|(w, sky)| litres(&standing, bed, week, &sky[w * 7..])))
        };
        let stands =
            |bed: BedAt, week: usize| standing.iter().any(|s| s.area(Some(bed), week).0 > 0.0);
        let of_bed = |bed: BedAt| {
            let week = |w: usize| stands(bed, w).then(|| needs(Some(bed), w));
            (0..weeks).map(week).collect()
        };
        let whole = |sky: &Vec<Sky>| {
            (0..weeks)
                .map(|week| litres(&standing, None, week, &sky[week * 7..]))
                .sum()
        };
        Self {
            beds: garden.bed_positions().map(of_bed).collect(),
            planted: garden
                .bed_positions()
                .map(|bed| most_planted(&standing, bed))
                .collect(),
            weeks: (0..weeks).map(|week| needs(None, week)).collect(),
            whole: WaterNeed::of(skies.iter().map(whole)),
            seedbeds: seedbeds(run),
        }
    }
}

impl WaterNeed {
    /// From the figures of past weeks or years.
    fn of(seen: impl Iterator<Item = Litres>) -> Self {
        let mut seen: Vec<Litres> = seen.collect();
        seen.sort_by(|a, b| a.0.total_cmp(&b.0));
        let last = seen.len().saturating_sub(1);
        let at = |share: f64| {
            let rank = (share * last as f64).ceil() as usize;
            seen.get(rank).copied().unwrap_or_default()
        };
        Self {
            ordinary: at(0.5),
            dry: at(DRY),
        }
    }
}

impl Standing {
    /// `None` if it stands in no bed. It drinks from the day on which it comes into the bed to
    /// the last day set aside for picking. The stages begin when the first seed is up in the
    /// median weather year; until then the ground counts as in the initial stage.
    fn of(run: &Run<'_>, planting: &Planting<'_>) -> Option<Self> {
        let first = match planting.plan.method {
            Method::Growing => planting.grows_since?,
            _ => planting.bedding()?.first,
        };
        let last = planting.picks().map(|p| p.last).max()?.max(first);
        let up = day_up(run, planting, first).map_or(first, |up| up.min(last));
        let crop = &planting.ingredient.crop;
        let (water, stages) = (water_use(crop), stages(crop, (last - up + 1) as f64));
        let coefficients = (first..=last)
            .map(|day| crop_coefficient(&water, &stages, day as f64 - up as f64))
            .collect();
        let areas = planting.places.iter().map(|place| {
            let strips = f64::from(place.within(run.garden).count);
            let width = run.garden[place.bed].width;
            (place.bed, (STRIP * strips).by(width))
        });
        Some(Self {
            first,
            last,
            coefficients,
            areas: areas.collect(),
        })
    }

    /// The water to give in a week, under the sky of seven days.
    fn depth(&self, week: usize, sky: &[Sky]) -> Millimetres {
        let days = self.first.max(week * 7)..=self.last.min(week * 7 + 6);
        let (mut lost, mut rain) = (Millimetres(0.0), Millimetres(0.0));
        for day in days {
            let seen = (
                sky.get(day - week * 7),
                self.coefficients.get(day - self.first),
            );
            if let (Some(sky), Some(coefficient)) = seen {
                lost = lost + sky.reference * *coefficient;
                rain = rain + sky.rain;
            }
        }
        to_give(lost, rain)
    }

    /// How much of a bed it takes in a week; of all beds if none is named.
    fn area(&self, bed: Option<BedAt>, week: usize) -> SquareMetres {
        let here = self
            .areas
            .iter()
            .filter(|(b, _)| bed.is_none_or(|bed| bed == *b));
        here.filter(|_| (self.first / 7..=self.last / 7).contains(&week))
            .map(|(_, area)| *area)
            .sum()
    }
}

/// The week itself and its neighbours in the span: with three times as many weeks to look at,
/// one wet week of the record does not stand out.
fn near(week: usize, weeks: usize) -> std::ops::Range<usize> {
    week.saturating_sub(1)..(week + 2).min(weeks)
}

/// The water to give in a week, to one bed or to all, under the sky of seven days.
fn litres(standing: &[Standing], bed: Option<BedAt>, week: usize, sky: &[Sky]) -> Litres {
    standing
        .iter()
        .map(|s| (s, s.area(bed, week)))
        .filter(|(_, area)| area.0 > 0.0)
        .map(|(s, area)| s.depth(week, sky).on(area))
        .sum()
}

/// Of one day: what grass would lose, and the rain that counts.
struct Sky {
    reference: Millimetres,
    rain: Millimetres,
}

/// The days of a weather year.
fn sky(run: &Run<'_>, year: &WeatherYear<'_>) -> Vec<Sky> {
    let day = |(number, day): (usize, &Daily)| {
        let ordinal = run.horizon.date(number).ordinal();
        let reference =
            reference_evapotranspiration(run.garden.latitude, ordinal, day.tmin, day.tmax);
        Sky {
            reference,
            rain: counted_rain(day.rain, reference),
        }
    };
    year.days.iter().enumerate().map(day).collect()
}

/// How much of a bed is planted at the most: in a week in which something comes into it.
fn most_planted(standing: &[Standing], bed: BedAt) -> SquareMetres {
    let weeks = standing.iter().map(|s| s.first / 7);
    weeks
        .map(|week| standing.iter().map(|s| s.area(Some(bed), week)).sum())
        .fold(SquareMetres(0.0), SquareMetres::max)
}

/// All seedbeds, in order of time.
fn seedbeds(run: &Run<'_>) -> Vec<Seedbed> {
    let seedbeds = run.plantings.iter().filter_map(|p| seedbed(run, p));
    let mut seedbeds: Vec<Seedbed> = seedbeds.collect();
    seedbeds.sort_by_key(|s| s.from);
    seedbeds
}

/// The seedbed of a planting that is sown in its bed: the same that the plan counts where
/// nobody is on site.
fn seedbed(run: &Run<'_>, planting: &Planting<'_>) -> Option<Seedbed> {
    if planting.plan.method != Method::Direct {
        return None;
    }
    let sow = planting.step(StepKind::Sow)?;
    let up = day_up(run, planting, sow.last).unwrap_or(sow.last);
    Some(Seedbed {
        ingredient: planting.name.ingredient.clone(),
        lies_deep: planting.ingredient.crop.seed_size == SeedSize::Large,
        beds: planting.places.iter().map(|p| p.bed).collect(),
        from: run.horizon.date(sow.first),
        up: run.horizon.date(up),
    })
}
