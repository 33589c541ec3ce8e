//! From when to when somebody has to keep a planting picked, and in how many weather years the plan counts on it.

use crate::calendar::Date;
use crate::growth::picked_and_kept;
use crate::plan::PlantingAt;

use super::harvest::{Seasons, fate, parts};
use super::planting::Planting;
use super::run::Run;

/// What bears on while somebody picks, until it is picked for the dish.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct KeptPicked {
    /// Which planting.
    pub planting: PlantingAt,
    /// The day on which it is ripe in the median weather year.
    pub from: Date,
    /// The last day on which it may be picked for the dish.
    pub to: Date,
    /// The weather years in which it is ready only because it was kept picked.
    pub counts: usize,
}

/// All that is kept picked for longer than a pick may wait, in the order of the plan.
pub fn kept_picked(run: &Run<'_>, seasons: &[Seasons]) -> Vec<KeptPicked> {
    let plantings = run.plantings.iter().zip(seasons).enumerate();
    plantings
        .filter_map(|(at, (planting, seasons))| of_planting(run, PlantingAt(at), planting, seasons))
        .collect()
}

fn of_planting(
    run: &Run<'_>,
    at: PlantingAt,
    planting: &Planting<'_>,
    seasons: &Seasons,
) -> Option<KeptPicked> {
    let picking = &planting.ingredient.crop.picking;
    let bears = picking.while_picked?;
    let eaten = run.horizon.day_number(run.garden.feast.day)?;
    let to = planting.picks().map(|pick| pick.last).max()?;
    let holds = picking.holds_in_ground_days as usize;
    let parts = parts(planting, &[]);
    let mut ripe = Vec::new();
    let mut counts = 0;
    for season in seasons {
        let fates = parts
            .iter()
            .map(|part| (part, fate(run, planting, season, part.start)));
        let (mut all_ready, mut one_late) = (true, false);
        for (part, fate) in fates {
            ripe.extend(fate.ripe);
            match picked_and_kept(&fate, picking, &part.picks, eaten) {
                Ok(day) => one_late |= fate.ripe.is_some_and(|ripe| day > ripe + holds),
                Err(_) => all_ready = false,
            }
        }
        counts += usize::from(all_ready && one_late);
    }
    ripe.sort_unstable();
    let from = *ripe.get(ripe.len() / 2)?;
    (from + (bears.every_days as usize) < to).then(|| KeptPicked {
        planting: at,
        from: run.horizon.date(from),
        to: run.horizon.date(to),
        counts,
    })
}
