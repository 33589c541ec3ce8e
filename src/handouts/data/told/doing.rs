//! What is done, in the form of the data file.

use crate::facts::tasks::{self, Doer, Task};
use crate::facts::things;
use crate::garden::Garden;
use crate::harmless::plain;
use crate::plan::StepKind;
use crate::words::tasks::title;

use super::super::shape::{Chance, Clock, Hands, Kind, Part, Spot, Step, Thing};
use super::time::day;

/// One thing to do.
pub fn step(garden: &Garden, task: &Task<'_>) -> Step {
    let (hands, class) = match task.who {
        Doer::Class(at) => (Hands::Class, Some(plain(&garden.class(at).name))),
        Doer::Families => (Hands::Families, None),
        Doer::Adult => (Hands::Adult, None),
        Doer::Anyone => (Hands::Anyone, None),
    };
    Step {
        planting: task.at.planting.0,
        kind: kind(task.kind),
        title: plain(&title(task)),
        hands,
        class,
        place: spot(task.spot),
        from: day(task.from),
        to: day(task.to),
        at: task.begins.map(|at| Clock(at.format("%H:%M").to_string())),
        minutes: task.whole_minutes(),
        part: task.part.map(|part| Part {
            part: part.part,
            of: part.total,
            thing: thing(part.thing),
        }),
        chance: task.chance.map(|chance| Chance {
            number: chance.number,
            of: chance.of,
        }),
    }
}

/// What is done.
pub fn kind(kind: StepKind) -> Kind {
    match kind {
        StepKind::Sow => Kind::Sow,
        StepKind::PotUp => Kind::PotUp,
        StepKind::Harden => Kind::Harden,
        StepKind::PlantOut => Kind::PlantOut,
        StepKind::Thin => Kind::Thin,
        StepKind::Pick => Kind::Pick,
        StepKind::Cure => Kind::Cure,
    }
}

/// What is handed out.
pub fn thing(thing: things::Thing) -> Thing {
    match thing {
        things::Thing::Seed => Thing::Seed,
        things::Thing::SeedPiece => Thing::SeedPiece,
        things::Thing::BoughtPlant => Thing::BoughtPlant,
        things::Thing::Plant => Thing::Plant,
    }
}

fn spot(spot: tasks::Spot) -> Spot {
    match spot {
        tasks::Spot::Shelf => Spot::Shelf,
        tasks::Spot::NearShelf => Spot::NearShelf,
        tasks::Spot::DryingPlace => Spot::DryingPlace,
        tasks::Spot::Strips => Spot::Strips,
        tasks::Spot::Patch => Spot::Patch,
    }
}
