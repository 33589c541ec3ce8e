//! Day by day: strips in use, flats on the shelf, days without anyone.

use std::collections::BTreeMap;

use crate::garden::{BedAt, CLEARING_DAYS, MAT, Method, StripAt};
use crate::growth::germination::days_to_emerge;
use crate::plan::{PlantingAt, Stand, StepKind};

use super::planting::Planting;
use super::run::Run;

/// Two plantings on one strip on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Clash {
    /// The planting that stands there.
    pub first: PlantingAt,
    /// The planting that is put on top.
    pub second: PlantingAt,
    /// The first such strip.
    pub strip: StripAt,
    /// The first such day number.
    pub day: usize,
}

/// First and last day number on which a planting takes its strips: from sowing or planting
/// in the bed until it is cleared, or beyond the span where that comes later.
pub fn in_bed(run: &Run<'_>, planting: &Planting<'_>) -> Option<(usize, usize)> {
    let from = match planting.plan.method {
        Method::Growing => planting.grows_since?,
        _ => planting.bedding()?.first,
    };
    let cleared = planting
        .picks()
        .map(|p| p.last + CLEARING_DAYS as usize)
        .max();
    let to = cleared.unwrap_or(run.horizon.days());
    Some((from, to))
}

/// Per day: strips of a bed in use; and the clashes in it, one for each pair of plantings.
pub fn bed_use(run: &Run<'_>, stands: &[Stand], bed: BedAt) -> (Vec<u32>, Vec<Clash>) {
    let strips = run.garden[bed].strips() as usize;
    let here: Vec<&Stand> = stands.iter().filter(|stand| stand.bed == bed).collect();
    let mut clashes = BTreeMap::new();
    let used = (0..run.horizon.days())
        .map(|day| {
            let mut taken: Vec<Option<&Stand>> = vec![None; strips];
            for stand in here.iter().filter(|stand| stand.is_on(day)) {
                for strip in stand.strips.iter() {
                    match taken.get_mut(strip.index()) {
                        Some(Some(before)) => {
                            for pair in pairs(before, stand) {
                                clashes.entry(pair).or_insert((strip, day));
                            }
                        }
                        Some(free) => *free = Some(stand),
                        None => {}
                    }
                }
            }
            u32::try_from(taken.iter().flatten().count()).unwrap_or(u32::MAX)
        })
        .collect();
    let clash = |((first, second), (strip, day))| Clash {
        first,
        second,
        strip,
        day,
    };
    (used, clashes.into_iter().map(clash).collect())
}

/// Every planting of one stand with every one of the other.
fn pairs<'s>(
    first: &'s Stand,
    second: &'s Stand,
) -> impl Iterator<Item = (PlantingAt, PlantingAt)> {
    let others = |at: &'s PlantingAt| second.plantings.iter().map(|other| (*at, *other));
    first.plantings.iter().flat_map(others)
}

/// The first day on which a planting stands on the shelf: that of sowing, or, for seedlings that stand there
/// already, the first of which anything is asked.
pub fn on_shelf_from(run: &Run<'_>, planting: &Planting<'_>) -> Option<usize> {
    match (planting.plan.method, planting.seedlings) {
        (Method::Indoor, _) => Some(planting.step(StepKind::Sow)?.first),
        (Method::Seedlings, Some(seedlings)) => {
            let begun = seedlings.potted_up.unwrap_or(seedlings.sown);
            run.horizon.day_number(begun.max(run.garden.start()))
        }
        (Method::Seedlings, None)
        | (Method::Direct | Method::Pieces | Method::Bought, _)
        | (Method::Growing | Method::Patch, _) => None,
    }
}

/// Flats of a planting that stand on the shelf on a day.
pub fn flats_on(run: &Run<'_>, planting: &Planting<'_>, day: usize) -> u32 {
    let (Some(from), Some(out)) = (
        on_shelf_from(run, planting),
        planting.step(StepKind::PlantOut),
    ) else {
        return 0;
    };
    let (sown, kept) = (planting.plan.flats_sown, planting.plan.flats_kept);
    if day < from || day > out.last {
        return 0;
    }
    match planting.step(StepKind::PotUp) {
        Some(pot_up) if day > pot_up.last => kept,
        Some(pot_up) if day >= pot_up.first => sown.max(kept),
        _ => sown,
    }
}

/// Days from sowing on the shelf until the seed is up, rounded up; `None` if it is not within
/// the plan's span.
pub fn days_until_up(run: &Run<'_>, planting: &Planting<'_>) -> Option<usize> {
    let at = if planting.plan.on_mat {
        MAT
    } else {
        run.garden.shelf.room
    };
    let days = days_to_emerge(&planting.ingredient.crop.germination, at)?;
    let days = days.ceil().max(0.0) as usize;
    (days <= run.horizon.days()).then_some(days)
}

/// Flats of a planting that stand on the heat mat on a day: from the first sowing until the
/// seed that was sown last is up.
pub fn warm_flats_on(run: &Run<'_>, planting: &Planting<'_>, day: usize) -> u32 {
    let Some(sow) = planting.step(StepKind::Sow) else {
        return 0;
    };
    let up = days_until_up(run, planting).map_or(usize::MAX, |days| sow.last + days);
    let on_mat = planting.plan.method == Method::Indoor && planting.plan.on_mat;
    if on_mat && sow.first <= day && day < up {
        planting.plan.flats_sown
    } else {
        0
    }
}

/// Per day: flats on the shelf, and those on the mat.
pub fn shelf_use(run: &Run<'_>) -> (Vec<u32>, Vec<u32>) {
    let sum = |flats: &dyn Fn(&Planting<'_>, usize) -> u32| {
        (0..run.horizon.days())
            .map(|day| {
                run.plantings
                    .iter()
                    .fold(0, |n: u32, p| n.saturating_add(flats(p, day)))
            })
            .collect()
    };
    (
        sum(&|p, day| flats_on(run, p, day)),
        sum(&|p, day| warm_flats_on(run, p, day)),
    )
}

/// The greatest of each week's seven days.
pub fn by_week(daily: &[u32]) -> Vec<u32> {
    daily
        .chunks(7)
        .map(|week| week.iter().copied().max().unwrap_or(0))
        .collect()
}
