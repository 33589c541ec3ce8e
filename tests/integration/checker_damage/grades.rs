//! Who grows what: a grade that may not, one that the project does not know, two for one
//! ingredient, and grades that are left with nothing.

use tureen::checker::{Fault, Named, PlantingRef, check};
use tureen::garden::{Garden, GradeAt};
use tureen::plan::{Plan, Rule};

use crate::support::gardens::tiny_garden;
use crate::support::plans::{bare_plan, promise, tiny_bean, tiny_plan, tiny_tomato};

use super::refused;

/// The tiny garden in which either grade may grow either crop.
fn open_garden() -> Garden {
    let mut garden = tiny_garden();
    for ingredient in &mut garden.ingredients {
        ingredient.teams = vec![GradeAt(0).into(), GradeAt(1).into()];
    }
    garden
}

fn planting(number: usize, ingredient: &str) -> PlantingRef {
    PlantingRef {
        number,
        ingredient: ingredient.to_owned(),
    }
}

/// The faults of a plan that are about who grows what.
fn of_grades(garden: &Garden, plan: Plan) -> Vec<Fault> {
    let violations = refused(garden, plan).into_iter();
    let rule = violations.filter(|v| v.rule == Rule::Participation);
    rule.map(|v| v.fault)
        .filter(|fault| !matches!(fault, Fault::Visits { .. }))
        .collect()
}

#[test]
fn what_the_grades_grow_is_looked_up_in_the_plan() {
    let garden = open_garden();
    let plan = tiny_plan(&garden);
    assert_eq!(plan.plantings[1].grades, ["1"], "filled in from the first");
    // Tomato is tended by class 2a, so it must be said to be grown by grade 2.
    let mut tomato = tiny_tomato();
    tomato.grades = vec!["2".to_owned()];
    let promises = || {
        vec![
            promise("bean", 2, 0.96, 1.44),
            promise("tomato", 3, 1.0, 2.0),
        ]
    };
    let plan = bare_plan(&garden, vec![tiny_bean(), tomato.clone()], promises(), 2);
    assert!(check(&garden, plan).is_ok());

    // Then grade 2 has nothing, and its class comes where it is not its turn.
    tomato.grades = vec!["1".to_owned()];
    let plan = bare_plan(&garden, vec![tiny_bean(), tomato], promises(), 2);
    let violations = refused(&garden, plan);
    let idle = Fault::GradesLeftOut {
        expected: 2,
        got: 1,
        idle: vec!["2".to_owned()],
    };
    assert!(violations.iter().any(|v| v.fault == idle));
    assert!(violations.iter().any(|v| matches!(
        &v.fault,
        Fault::Visits { class, expected: 0, .. } if class == "2a"
    )));
}

#[test]
fn another_grade_than_the_file_names_is_refused() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[1].grades = vec!["1".to_owned()];
    let wrong = Fault::Team {
        planting: planting(2, "tomato"),
        expected: vec![vec!["2".to_owned()]],
        got: vec!["1".to_owned()],
    };
    assert_eq!(of_grades(&garden, plan)[0], wrong);
}

#[test]
fn a_grade_that_the_project_does_not_know_is_the_only_fault() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[1].grades = vec!["9".to_owned()];
    let [violation] = refused(&garden, plan).try_into().expect("one fault");
    let unknown = Fault::Unknown {
        kind: Named::Grade,
        name: "9".to_owned(),
    };
    assert_eq!(
        (violation.rule, violation.fault),
        (Rule::Participation, unknown)
    );
}

#[test]
fn two_grades_for_one_ingredient_are_refused() {
    let mut garden = open_garden();
    garden.ingredients[0].max_sowings = 2;
    let mut plan = tiny_plan(&garden);
    let mut second = plan.plantings[0].clone();
    second.grades = vec!["2".to_owned()];
    plan.plantings.insert(1, second);
    let wrong = Fault::SecondTeam {
        planting: planting(2, "bean"),
        expected: vec!["1".to_owned()],
        got: vec!["2".to_owned()],
    };
    assert!(of_grades(&garden, plan).contains(&wrong));
}

/// How many grades can grow something, counted by hand.
#[test]
fn as_many_grades_take_part_as_can() {
    let most = |grades: usize, lists: &[&[usize]]| {
        let mut garden = tiny_garden();
        garden.grades = vec![garden.grades[0].clone(); grades];
        let one = garden.ingredients[0].clone();
        let ingredient = |list: &&[usize]| {
            let mut ingredient = one.clone();
            ingredient.teams = list.iter().map(|grade| GradeAt(*grade).into()).collect();
            ingredient
        };
        garden.ingredients = lists.iter().map(ingredient).collect();
        (garden.most_grades(), garden.each_grade_grows_one())
    };
    assert_eq!(most(3, &[&[0], &[0]]), (1, false));
    assert_eq!(most(3, &[&[0], &[1]]), (2, true));
    assert_eq!(most(3, &[&[0, 1, 2], &[0, 1, 2]]), (2, true));
    assert_eq!(most(2, &[&[0, 1], &[0, 1], &[0, 1]]), (2, false));
    // The first must make room for the second, and that for the third.
    assert_eq!(most(3, &[&[0, 1], &[0, 2], &[0]]), (3, true));
    assert_eq!(most(4, &[&[0, 1], &[0, 1], &[0, 1], &[2, 3]]), (3, false));
}
