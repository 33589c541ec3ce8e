//! Beans that two grades grow together in the tiny garden, worked by hand. Grade 1 has classes 1a (Tuesday) and 1b
//! (Thursday) of 20 children in every second week from 2 March on, grade 2 has 2a (Monday) of 10 in every week.

use tureen::calendar::Date;
use tureen::candidates::{Context, rounds};
use tureen::checker::check;
use tureen::facts::Facts;
use tureen::garden::{Garden, GradeAt, HandOver, Team};
use tureen::growth::need_in;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{Step, StepKind};

use crate::support::day;
use crate::support::gardens::{shared_beans, tiny_garden};
use crate::support::plans::{shared_bean_plan, tiny_plan};

fn both() -> Team {
    [GradeAt(0), GradeAt(1)].into_iter().collect()
}

/// The days of the rounds that begin by a day, each with its class.
fn rounds_by(garden: &Garden, last: &str) -> Vec<Vec<(String, Date)>> {
    let all = rounds(&Context::new(garden), both());
    let early = all.iter().filter(|round| round.last() <= day(last));
    let named = early.map(|round| {
        let visits = round.visits.iter();
        let named = visits.map(|(class, date)| (garden.class(*class).name.clone(), *date));
        named.collect()
    });
    named.collect()
}

#[test]
fn a_round_is_one_lesson_of_each_class_of_both_grades_within_two_weeks() {
    let round = |days: [&str; 3]| {
        let classes = ["1a", "1b", "2a"].into_iter().zip(days);
        let visits = classes.map(|(class, date)| (class.to_owned(), day(date)));
        visits.collect::<Vec<_>>()
    };
    // From the weeks of 1, 8 and 15 March on; 22 March would take 1a to 30 March.
    let expected = [
        round(["2027-03-02", "2027-03-04", "2027-03-01"]),
        round(["2027-03-16", "2027-03-18", "2027-03-08"]),
        round(["2027-03-16", "2027-03-18", "2027-03-15"]),
    ];
    assert_eq!(rounds_by(&shared_beans(), "2027-03-25"), expected);
}

/// Fifty children: 48 plants of half a minute each take 10 + 24 / 50 minutes to pick, and where every child sows
/// three there are 150 seeds. Grade 1 alone has forty.
#[test]
fn work_and_seed_are_shared_by_all_children() {
    let mut garden = shared_beans();
    assert_eq!(garden.children_of(both()), 50);
    let plan = shared_bean_plan(&garden);
    let picks: Vec<f64> = plan.plantings[0]
        .picks()
        .map(|pick| pick.minutes.0)
        .collect();
    assert_eq!(picks, [10.48; 2]);
    let alone = tiny_plan(&tiny_garden());
    assert!(
        alone.plantings[0]
            .picks()
            .all(|pick| pick.minutes.0 == 10.6)
    );
    garden.ingredients[0].each_child_sows = 3;
    let bean = garden.ingredient_named("bean").unwrap();
    let method = garden[bean].methods[0];
    assert_eq!(need_in(&garden, bean, both(), method, 48).seeds, 150);
}

#[test]
fn the_plan_by_hand_keeps_the_rules_and_the_program_finds_one_as_good() {
    let garden = shared_beans();
    check(&garden, shared_bean_plan(&garden)).expect("a plan that keeps the rules");
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("no plan");
    };
    assert_eq!(plan.plantings[0].grades, ["1", "2"]);
    assert_eq!(plan.plantings[1].grades, ["2"]);
    let classes = |step: &Step| {
        let turns = step.when.turns().into_iter();
        turns
            .filter_map(|(by, _)| by.class().map(str::to_owned))
            .collect::<Vec<_>>()
    };
    let steps = plan.plantings[0]
        .steps
        .iter()
        .filter(|step| step.kind != StepKind::Cure);
    assert!(
        steps
            .map(classes)
            .all(|classes| classes == ["1a", "1b", "2a"])
    );
    let checked = check(&garden, plan).expect("a plan that keeps the rules");
    let ready: Vec<usize> = checked
        .replay()
        .ingredients
        .iter()
        .map(|i| i.ready_years())
        .collect();
    assert_eq!(ready, [2, 3]);
}

/// Both take part by the beans alone. With the tomato of grade 2 there are three seats and two grades; with a third
/// grade that may grow it, it does, and nobody grows two things.
#[test]
fn who_shares_a_crop_takes_part() {
    let mut garden = shared_beans();
    assert_eq!(
        (garden.most_grades(), garden.each_grade_grows_one()),
        (2, false)
    );
    garden.ingredients.truncate(1);
    assert_eq!(
        (garden.most_grades(), garden.each_grade_grows_one()),
        (2, true)
    );
    let mut garden = shared_beans();
    garden.grades.push(garden.grades[1].clone());
    garden.ingredients[1].teams = (0..3).map(|grade| GradeAt(grade).into()).collect();
    assert_eq!(
        (garden.most_grades(), garden.each_grade_grows_one()),
        (3, true)
    );
    assert_eq!(garden.share_out(&[]), [both(), GradeAt(2).into()]);
}

/// Each of the grades by its own rule: after the first has left, its heir tends its part together with the others.
#[test]
fn each_grade_hands_over_by_its_own_rule() {
    let mut garden = shared_beans();
    garden.school_year.moves_up = Some(day("2027-05-01"));
    garden.grades.push(garden.grades[1].clone());
    let (before, after) = (day("2027-04-30"), day("2027-05-01"));
    assert!(garden.same_children(both(), after));
    garden.grades[0].hand_over = HandOver::Leaves {
        adopter: GradeAt(2),
    };
    let heirs: Team = [GradeAt(1), GradeAt(2)].into_iter().collect();
    assert_eq!(
        (
            garden.tending(both(), before),
            garden.tending(both(), after)
        ),
        (both(), heirs)
    );
    assert!(garden.same_children(both(), before) && !garden.same_children(both(), after));
    garden.grades[0].hand_over = HandOver::Leaves {
        adopter: GradeAt(1),
    };
    assert_eq!(garden.tending(both(), after), GradeAt(1).into());
}

/// Grade 1 leaves in May and a third grade takes its part over: what is left of the beans is done by 2a and 3a, and
/// only grade 1 has left them.
#[test]
fn who_takes_over_comes_in_the_place_of_who_leaves() {
    let mut garden = shared_beans();
    let mut third = garden.grades[1].clone();
    third.id = "3".to_owned();
    third.classes[0].name = "3a".to_owned();
    garden.grades.push(third);
    garden.school_year.moves_up = Some(day("2027-05-01"));
    garden.grades[0].hand_over = HandOver::Leaves {
        adopter: GradeAt(2),
    };
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("no plan");
    };
    let picked = |pick: &Step| {
        let turns = pick.when.turns().into_iter();
        turns
            .filter_map(|(by, _)| by.class().map(str::to_owned))
            .collect::<Vec<_>>()
    };
    assert!(
        plan.plantings[0]
            .picks()
            .all(|pick| picked(pick) == ["2a", "3a"])
    );
    let checked = check(&garden, plan).expect("a plan that keeps the rules");
    let facts = Facts::new(&garden, &checked);
    let bean = &facts.plan.plantings[0];
    assert_eq!(
        (facts.team_of(bean), facts.left_by(bean)),
        (both(), GradeAt(0).into())
    );
    let adopted = |grade| facts.ours(grade).adopted.len();
    assert_eq!([0, 1, 2].map(|grade| adopted(GradeAt(grade))), [0, 0, 1]);
}

#[test]
fn a_bed_of_one_of_them_is_open_to_them() {
    let mut bed = shared_beans().beds[0].clone();
    bed.of = vec![GradeAt(1)];
    assert!(bed.is_open_to(both()) && bed.is_open_to(GradeAt(1).into()));
    assert!(!bed.is_open_to(GradeAt(0).into()));
}
