//! Seedlings fit on the shelf, and warm ones on the heat mat.

use crate::checker::days::{flats_on, shelf_use};
use crate::checker::fault::Fault;
use crate::checker::planting::Planting;
use crate::checker::run::Run;
use crate::garden::Method;

/// All faults: a closed shelf, the mat used wrongly, too many flats on shelf or mat.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let shelf = &run.garden.shelf;
    let mut faults = Vec::new();
    for planting in &run.plantings {
        let on_shelf = |day: &usize| flats_on(run, planting, *day) > 0;
        let closed = |day: &usize| {
            let day = run.horizon.date(*day);
            day >= run.garden.as_of() && !shelf.open_on(day)
        };
        if let Some(day) = (0..run.horizon.days()).find(|d| on_shelf(d) && closed(d)) {
            faults.push(Fault::ShelfClosed {
                planting: planting.name.clone(),
                day: run.horizon.date(day),
            });
        }
        let chosen = planting.given.is_none();
        if chosen && planting.plan.on_mat && !mat_serves(run, planting) {
            faults.push(Fault::Mat {
                planting: planting.name.clone(),
            });
        }
    }
    let (flats, warm) = shelf_use(run);
    faults.extend(overfull(run, false, shelf.flats, &flats));
    faults.extend(overfull(run, true, shelf.warm_flats, &warm));
    faults
}

/// True if a crop may be started on the mat: there is one, and the crop likes it warmer than
/// the room.
fn mat_serves(run: &Run<'_>, planting: &Planting<'_>) -> bool {
    let shelf = &run.garden.shelf;
    let cold = |i: crate::garden::IndoorStart| shelf.room < i.warm_below;
    planting.plan.method == Method::Indoor
        && shelf.warm_flats > 0
        && planting.ingredient.crop.indoor.is_some_and(cold)
}

/// One fault for each run of days with more flats than there is room for, with the most
/// flats of that run.
fn overfull(run: &Run<'_>, mat: bool, room: u32, daily: &[u32]) -> Vec<Fault> {
    let open = |day: &(usize, u32)| run.horizon.date(day.0) >= run.garden.as_of();
    let over: Vec<(usize, u32)> = daily.iter().copied().enumerate().filter(open).collect();
    over.chunk_by(|a, b| (a.1 > room) == (b.1 > room))
        .filter_map(|days| {
            let (first, _) = *days.first()?;
            let most = days.iter().map(|(_, flats)| *flats).max()?;
            (most > room).then(|| Fault::ShelfFull {
                mat,
                day: run.horizon.date(first),
                expected: room,
                got: most,
            })
        })
        .collect()
}
