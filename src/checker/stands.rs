//! What stands where: the plantings of a plan on their strips, for their days. The one place at which it is
//! decided which plantings share a stand; today each has its own.

use crate::garden::Strips;
use crate::plan::{PlantingAt, Stand};

use super::days::in_bed;
use super::planting::Planting;
use super::run::Run;

/// All stands, in the order of the plantings; strips that a planting has side by side are one.
pub fn stands(run: &Run<'_>) -> Vec<Stand> {
    let plantings = run.plantings.iter().enumerate();
    plantings
        .flat_map(|(at, planting)| of_planting(run, PlantingAt(at), planting))
        .collect()
}

fn of_planting(run: &Run<'_>, at: PlantingAt, planting: &Planting<'_>) -> Vec<Stand> {
    let Some(days) = in_bed(run, planting) else {
        return Vec::new();
    };
    let mut places: Vec<_> = planting.places.iter().collect();
    places.sort_by_key(|place| (place.bed, place.plan.run()));
    let mut stands: Vec<Stand> = Vec::new();
    for place in places {
        let strips: Strips = place.within(run.garden);
        match stands.last_mut() {
            Some(stand) if stand.bed == place.bed && stand.strips.after() == strips.first => {
                stand.strips.count += strips.count;
            }
            _ => stands.push(Stand {
                bed: place.bed,
                strips,
                days,
                plantings: vec![at],
            }),
        }
    }
    stands
}
