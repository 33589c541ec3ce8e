//! Every class of a grade takes part in its steps, and as many grades as can be grow something.
//! One grade grows an ingredient, or those that the file names together.

use std::collections::{BTreeMap, BTreeSet};

use crate::checker::fault::Fault;
use crate::checker::planting::{Planting, Step, Visit, When};
use crate::checker::run::Run;
use crate::garden::{ClassAt, GradeAt, IngredientAt, Team};

/// All faults: steps done by the wrong hands, classes that are missing, doubled, or of a
/// grade that does not tend the planting on that day; teams that may not grow what they grow,
/// two for one ingredient, and grades that are left with nothing.
pub fn faults(run: &Run<'_>) -> Vec<Fault> {
    let mut faults = grades(run);
    for planting in &run.plantings {
        for step in planting.steps.iter().filter(|step| !run.has_begun(step)) {
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

/// Who grows what.
fn grades(run: &Run<'_>) -> Vec<Fault> {
    let garden = run.garden;
    let ids = |team: Team| garden.ids_of(team);
    let mut faults = Vec::new();
    let mut of: BTreeMap<IngredientAt, Team> = BTreeMap::new();
    for planting in &run.plantings {
        let (name, may) = (&planting.name, &planting.ingredient.teams);
        let first = *of.entry(planting.at).or_insert(planting.team);
        if first != planting.team {
            faults.push(Fault::SecondTeam {
                planting: name.clone(),
                expected: ids(first),
                got: ids(planting.team),
            });
        } else if !may.contains(&planting.team) {
            faults.push(Fault::Team {
                planting: name.clone(),
                expected: may.iter().map(|team| ids(*team)).collect(),
                got: ids(planting.team),
            });
        }
    }
    let growing: BTreeSet<GradeAt> = of.into_values().flat_map(Team::grades).collect();
    let expected = garden.most_grades();
    if growing.len() < expected {
        let may = |g: &GradeAt| garden.ingredients.iter().any(|i| i.may_be_grown_by(*g));
        let idle = garden
            .grade_positions()
            .filter(|g| may(g) && !growing.contains(g));
        faults.push(Fault::GradesLeftOut {
            expected,
            got: growing.len(),
            idle: idle.map(|g| garden[g].id.clone()).collect(),
        });
    }
    faults
}

/// A step is done by hands that may do it.
fn right_hands(step: &Step<'_>) -> bool {
    let may = step.plan.kind.facts().hands;
    may.contains(&step.plan.when.hands())
}

/// The classes of the team that tends the planting come exactly once each, all others never.
fn classes(
    run: &Run<'_>,
    planting: &Planting<'_>,
    step: &Step<'_>,
    visits: &[Visit],
) -> Vec<Fault> {
    let tending = |day| {
        let date = run.horizon.date(day);
        run.garden.tending(planting.team, date)
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
        own.any(|v| !tending(v.day).has(class.grade))
    };
    came.into_iter()
        .filter_map(|(class, got)| {
            let expected = u32::from(whose_turn.has(class.grade) && !late(class));
            (got != expected).then(|| Fault::Visits {
                step: step.name.clone(),
                class: run.garden.class(class).name.clone(),
                expected,
                got,
            })
        })
        .collect()
}
