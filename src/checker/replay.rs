//! What the replay of a plan saw, for reports.

use chrono::Datelike;

use crate::garden::{Gap, Method};
use crate::growth::CropSeason;
use crate::growth::germination::median_up;
use crate::plan::{Aim, PlantingAt, Stand, StepAt, StepKind};

use super::days::{bed_use, by_week, on_shelf_from, shelf_use};
use super::harvest::{Harvest, IngredientReplay, fate};
use super::kept_picked::KeptPicked;
use super::packet_days::PacketDays;
use super::planting::{Planting, Step};
use super::rules::rotation;
use super::run::Run;
use super::stands::stands;

/// What the replay of a plan saw, for reports.
#[derive(Debug, Clone, PartialEq)]
pub struct Replay {
    /// Labels of the weather years.
    pub years: Vec<i32>,
    /// Per ingredient, in the order of the project file.
    pub ingredients: Vec<IngredientReplay>,
    /// Per weather year: the whole dish is ready for the feast.
    pub dish_ready: Vec<bool>,
    /// Per weather year: the whole dish is ready for the rain date, if there is one.
    pub dish_ready_on_rain_date: Option<Vec<bool>>,
    /// Per week of the span: most flats on the shelf on one day.
    pub flats_by_week: Vec<u32>,
    /// Per week of the span: most flats on the heat mat on one day.
    pub warm_flats_by_week: Vec<u32>,
    /// Per bed, then per week: most strips in use on one day.
    pub strips_by_week: Vec<Vec<u32>>,
    /// The steps without slack that the aim of that name counts: one cancelled session loses
    /// them, whatever other plantings do.
    pub fragile: Vec<StepAt>,
    /// What the plan reaches of every aim, in order.
    pub counted: Vec<(Aim, f64)>,
    /// Gaps in which something needs daily care, and what.
    pub unattended: Vec<Unattended>,
    /// What has to be kept picked, so that it goes on bearing until the dish.
    pub kept_picked: Vec<KeptPicked>,
    /// Bed and family pairs that keep the hard years of rotation, but not the wished ones.
    pub rotation_wishes_missed: Vec<RotationMiss>,
    /// The plan if packet days are a tenth out.
    pub packet_days: PacketDays,
}

impl Replay {
    /// In how many weather years the whole dish is ready for the feast.
    #[must_use]
    pub fn whole_dish_years(&self) -> usize {
        self.dish_ready.iter().filter(|ready| **ready).count()
    }
}

/// A gap in which plantings need daily care.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unattended {
    /// The gap.
    pub gap: Gap,
    /// Ingredients that need care, and the step whose result needs it (`Sow`: a seedbed or
    /// seedlings, `PotUp`: potted seedlings).
    pub needs: Vec<(String, StepKind)>,
}

/// A rotation wish that the plan does not keep.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RotationMiss {
    /// The bed's id.
    pub bed: String,
    /// The ingredient.
    pub ingredient: String,
    /// The crop family.
    pub family: String,
    /// The year in which the bed carried the family.
    pub grew_in: i32,
}

impl Replay {
    /// Puts together what was seen.
    pub(super) fn new(
        run: &Run<'_>,
        harvest: Harvest,
        (fragile, counted): (Vec<StepAt>, Vec<(Aim, f64)>),
        kept_picked: Vec<KeptPicked>,
    ) -> Self {
        let (flats, warm) = shelf_use(run);
        let stands = stands(run);
        Self {
            packet_days: PacketDays::of(run.garden, run.plan),
            years: harvest.years,
            ingredients: harvest.ingredients,
            dish_ready: harvest.dish_ready,
            dish_ready_on_rain_date: harvest.dish_ready_on_rain_date,
            flats_by_week: by_week(&flats),
            warm_flats_by_week: by_week(&warm),
            strips_by_week: run
                .garden
                .bed_positions()
                .map(|bed| by_week(&bed_use(run, &stands, bed).0))
                .collect(),
            fragile,
            counted,
            unattended: unattended(run),
            kept_picked,
            rotation_wishes_missed: wishes_missed(run, &stands),
        }
    }
}

/// The gaps in which something needs daily care, and what.
pub(super) fn unattended(run: &Run<'_>) -> Vec<Unattended> {
    let tender: Vec<_> = run
        .plantings
        .iter()
        .flat_map(|p| {
            let spans = tender_spans(run, p).into_iter();
            spans.map(|(kind, from, to)| (&p.name.ingredient, kind, from, to))
        })
        .collect();
    let date = |day| run.horizon.date(day);
    run.gaps
        .iter()
        .map(|gap| {
            let touched = tender
                .iter()
                .filter(|(_, _, from, to)| gap.touches(date(*from), date(*to)));
            let mut needs: Vec<_> = touched.map(|(i, kind, ..)| ((*i).clone(), *kind)).collect();
            needs.sort();
            needs.dedup();
            Unattended { gap: *gap, needs }
        })
        .filter(|u| !u.needs.is_empty())
        .collect()
}

/// Spans (day numbers, both ends included) in which a planting needs daily care, each with
/// the step whose result needs it: seedlings on the shelf from sowing to planting out, and a
/// seedbed until it is up in the median weather year.
fn tender_spans(run: &Run<'_>, planting: &Planting<'_>) -> Vec<(StepKind, usize, usize)> {
    let last = |kind| planting.step(kind).map(|step| step.last);
    let out = last(StepKind::PlantOut);
    let until = |step: &Step<'_>| match (step.plan.kind, planting.plan.method) {
        (StepKind::Sow, Method::Direct) => {
            Some(day_up(run, planting, step.last).unwrap_or(step.last))
        }
        (StepKind::Sow, Method::Indoor) => out.and(last(StepKind::PotUp).or(out)),
        (StepKind::PotUp, Method::Indoor | Method::Seedlings) => out,
        (StepKind::Sow | StepKind::PotUp | StepKind::Harden | StepKind::PlantOut, _)
        | (StepKind::Thin | StepKind::Pick | StepKind::Cure, _) => None,
    };
    let steps = StepKind::ALL.iter().filter_map(|kind| planting.step(*kind));
    let spans = steps.filter_map(|step| Some((step.plan.kind, step.first, until(step)?)));
    given_span(run, planting).into_iter().chain(spans).collect()
}

/// The span in which seedlings that stood on the shelf already need care, until they are potted up or planted out.
fn given_span(run: &Run<'_>, planting: &Planting<'_>) -> Option<(StepKind, usize, usize)> {
    let last = |kind| planting.step(kind).map(|step| step.last);
    let seedlings = planting.seedlings?;
    let kind = match seedlings.potted_up {
        Some(_) => StepKind::PotUp,
        None => StepKind::Sow,
    };
    let out = last(StepKind::PlantOut);
    let until = out.and(last(StepKind::PotUp).or(out))?;
    Some((kind, on_shelf_from(run, planting)?, until))
}

/// The day on which seed sown on `day` is up in the median of the weather years in which it comes
/// up; `None` if there are none.
pub fn day_up(run: &Run<'_>, planting: &Planting<'_>, day: usize) -> Option<usize> {
    let garden = run.garden;
    let climate = garden[planting.places.first()?.bed].microclimate();
    let crop = &planting.ingredient.crop;
    let years = garden.weather.years(run.horizon);
    let seasons = years
        .iter()
        .map(|year| CropSeason::new(crop, climate, year, &run.light));
    median_up(seasons.map(|season| fate(run, planting, &season, day).up))
}

/// Places where the family grew within the wished years, before the plan or in it. Where it grew
/// within the hard ones the plan is refused and this is not asked.
fn wishes_missed(run: &Run<'_>, stands: &[Stand]) -> Vec<RotationMiss> {
    let mut missed = Vec::new();
    for (at, planting) in run.plantings.iter().enumerate() {
        let rotation = &planting.ingredient.crop.rotation;
        let Some(year) = rotation::planting_year(run, planting) else {
            continue;
        };
        let wished = |passed: i32| rotation.should_wait(passed);
        let earlier = planting.places.iter().filter_map(|place| {
            let grew_in = rotation::last_grew(run.garden, place, &rotation.family, year)?;
            wished(year - grew_in).then_some((place.bed, grew_in))
        });
        let own = rotation::family_before(run, stands, PlantingAt(at), wished).into_iter();
        let own = own.map(|b| (b.bed, run.horizon.date(b.cleared).year()));
        for (bed, grew_in) in earlier.chain(own) {
            let miss = RotationMiss {
                bed: run.garden[bed].id.clone(),
                ingredient: planting.name.ingredient.clone(),
                family: rotation.family.clone(),
                grew_in,
            };
            if !missed.contains(&miss) {
                missed.push(miss);
            }
        }
    }
    missed
}
