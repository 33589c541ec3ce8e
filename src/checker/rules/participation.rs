//! Every class of a grade takes part in its steps, and as many grades as can be grow something.
//! One grade grows an ingredient.

use std::collections::{BTreeMap, BTreeSet};

use crate::checker::fault::Fault;
use crate::checker::planting::{Planting, Step, Visit, When};
use crate::checker::run::Run;
use crate::garden::{ClassAt, GradeAt, IngredientAt};

/// All faults: steps done by the wrong hands, classes that are missing, doubled, or of a
/// grade that does not tend the planting on that day; grades that may not grow what they grow,
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
    let id = |grade: &GradeAt| garden[*grade].id.clone();
    let mut faults = Vec::new();
    let mut of: BTreeMap<IngredientAt, GradeAt> = BTreeMap::new();
    for planting in &run.plantings {
        let (name, may) = (&planting.name, &planting.ingredient.grades);
        let first = *of.entry(planting.at).or_insert(planting.grade);
        if first != planting.grade {
            faults.push(Fault::SecondGrade {
                planting: name.clone(),
                expected: id(&first),
                got: id(&planting.grade),
            });
        } else if !may.contains(&planting.grade) {
            faults.push(Fault::Grade {
                planting: name.clone(),
                expected: may.iter().map(id).collect(),
                got: id(&planting.grade),
            });
        }
    }
    let growing: BTreeSet<GradeAt> = of.into_values().collect();
    let expected = garden.most_grades();
    if growing.len() < expected {
        let may = |g: &GradeAt| garden.ingredients.iter().any(|i| i.grades.contains(g));
        let idle = garden
            .grade_positions()
            .filter(|g| may(g) && !growing.contains(g));
        faults.push(Fault::GradesLeftOut {
            expected,
            got: growing.len(),
            idle: idle.map(|g| id(&g)).collect(),
        });
    }
    faults
}

/// A step is done by hands that may do it.
fn right_hands(step: &Step<'_>) -> bool {
    let may = step.plan.kind.facts().hands;
    may.contains(&step.plan.when.hands())
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
        run.garden.tending(planting.grade, date)
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
