//! Every class of a grade takes part in its steps.

use std::collections::BTreeMap;

use crate::checker::fault::Fault;
use crate::checker::planting::{Planting, Step, Visit, When};
use crate::checker::run::Run;
use crate::garden::ClassAt;
use crate::plan::{self, StepKind};

/// All faults: steps done by the wrong hands, classes that are missing, doubled, or of a
/// grade that does not tend the planting on that day.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = Vec::new();
    for planting in &run.plantings {
        for step in &planting.steps {
            if !right_hands(step) {
                faults.push(Fault::Hands {
                    step: step.name.clone(),
                });
            }
            if let When::Sessions(visits) = &step.when {
                faults.extend(classes(run, planting, step, visits));
            }
        }
    }
    faults
}

/// Children sow, pot up and plant; an adult or families may thin, families may pick; hardening and
/// curing go on from day to day.
fn right_hands(step: &Step<'_>) -> bool {
    use plan::When::{Adult, Daily, Families, Sessions};
    match step.plan.kind {
        StepKind::Sow | StepKind::PotUp | StepKind::PlantOut => {
            matches!(step.plan.when, Sessions(_))
        }
        StepKind::Thin => matches!(step.plan.when, Sessions(_) | Adult(_) | Families(_)),
        StepKind::Pick => matches!(step.plan.when, Sessions(_) | Families(_)),
        StepKind::Harden | StepKind::Cure => matches!(step.plan.when, Daily { .. }),
    }
}

/// The classes of the grade that tends the planting come exactly once each, all others never.
fn classes(
    run: &Run<'_>,
    planting: &Planting<'_>,
    step: &Step<'_>,
    visits: &[Visit],
) -> Vec<Fault> {
    let tending = |day| {
        let date = run.horizon.date(day);
        run.garden.tending(planting.ingredient.grade, date)
    };
    let whose_turn = tending(step.first);
    let mut came: BTreeMap<ClassAt, u32> = BTreeMap::new();
    for class in run.garden.classes_of(whose_turn) {
        came.insert(class, 0);
    }
    for visit in visits {
        *came.entry(visit.class).or_default() += 1;
    }
    let late = |class: ClassAt| {
        let mut own = visits.iter().filter(|v| v.class == class);
        own.any(|v| tending(v.day) != class.grade)
    };
    came.into_iter()
        .filter_map(|(class, got)| {
            let expected = u32::from(class.grade == whose_turn && !late(class));
            (got != expected).then(|| Fault::Visits {
                step: step.name.clone(),
                class: run.garden.class(class).name.clone(),
                expected,
                got,
            })
        })
        .collect()
}
