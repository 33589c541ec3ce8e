//! Who does it: families in a break, an adult who thins, grades that move up, several
//! classes on one shelf.

use tureen::checker::{Fault, check};
use tureen::garden::{Break, Care, Garden, GradeAt, HandOver, Method};
use tureen::growth::{Unready, effort};
use tureen::plan::{Plan, Planting, Rule, StepKind, When};
use tureen::units::Minutes;

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{
    bare_plan, from_to, place, promise, sessions, step, tiny_bean, tiny_plan, tiny_tomato,
};

use super::refused;

fn plan_with(garden: &Garden, bean: Planting, ready: u32, whole: u32) -> Plan {
    let promises = vec![
        promise("bean", ready, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![bean, tiny_tomato()], promises, whole)
}

#[test]
fn an_adult_may_thin_in_term_without_minutes() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[0].steps[1] = step(StepKind::Thin, When::Adult(day("2027-04-14")));
    assert!(check(&garden, plan).is_ok());
}

#[test]
fn families_pick_for_all_classes_in_a_break_in_which_they_care() {
    // On the Wednesday between the rounds: ripe on 15 and 17 May at 15 C.
    let mut garden = tiny_garden();
    garden.school_year.breaks.push(Break {
        name: "May week".to_owned(),
        from: day("2027-05-19"),
        to: day("2027-05-21"),
        care: Care::Families,
    });
    let mut bean = tiny_bean();
    bean.steps[3] = step(StepKind::Pick, When::Families(day("2027-05-19")));
    bean.steps[4] = from_to(StepKind::Cure, "2027-05-20", "2027-05-22");
    let plan = plan_with(&garden, bean, 2, 2);
    assert!(check(&garden, plan.clone()).is_ok());

    garden.school_year.breaks[1].care = Care::Staff;
    let violations = refused(&garden, plan);
    assert_eq!(violations.len(), 1, "{violations:#?}");
    assert_eq!(violations[0].rule, Rule::Sessions);
    assert!(matches!(violations[0].fault, Fault::NobodyThere { .. }));
}

/// Grade 1 leaves the school on 3 May; grade 2, of ten children, picks for it.
fn adopted_garden() -> Garden {
    let mut garden = tiny_garden();
    garden.school_year.moves_up = Some(day("2027-05-03"));
    garden.grades[0].hand_over = HandOver::Leaves {
        adopter: GradeAt(1),
    };
    garden
}

/// The bean picked by class 2a on 10 and 24 May, with the minutes of ten children.
fn adopted_plan(garden: &Garden) -> Plan {
    let mut bean = tiny_bean();
    bean.steps[2] = sessions(StepKind::Pick, &[("2a", "2027-05-10")]);
    bean.steps[3] = sessions(StepKind::Pick, &[("2a", "2027-05-24")]);
    bean.steps[4] = from_to(StepKind::Cure, "2027-05-25", "2027-05-27");
    let mut plan = plan_with(garden, bean, 2, 2);
    let bean = &garden.ingredients[0];
    for step in &mut plan.plantings[0].steps[2..4] {
        step.minutes = effort(step.kind, bean, Method::Direct, 10).minutes(48);
    }
    plan
}

#[test]
fn after_moving_up_the_adopting_grade_picks_all_parts() {
    let garden = adopted_garden();
    let checked = check(&garden, adopted_plan(&garden)).unwrap();
    // 48 plants among ten children, half a minute each, and ten minutes to set up.
    assert_eq!(checked.plan().plantings[0].steps[2].minutes, Minutes(12.4));
    // Part of it was sown on 18 March and is ripe on 17 May at 15 C, 24 May is in time; a
    // pick on 17 May alone would do too, but one on 10 May alone would not.
    let late = Err(Unready::NotRipe);
    let ready = &checked.replay().ingredients[0].ready;
    assert_eq!(*ready, [Ok(()), Ok(()), late, late]);
}

#[test]
fn a_part_that_is_not_ripe_holds_the_whole_planting_back() {
    // Sown on 16 March and, by the other class, on 25 March: at 15 C ripe on 15 and 24 May.
    // Picked only by 18 May the second part is not ripe.
    let mut garden = adopted_garden();
    garden.grades[0].classes[1].slots[0].from = day("2027-03-11");
    let mut plan = adopted_plan(&garden);
    let bean = &mut plan.plantings[0];
    bean.steps[0] = sessions(StepKind::Sow, &[("1a", "2027-03-16"), ("1b", "2027-03-25")]);
    bean.steps[1] = step(StepKind::Thin, When::Adult(day("2027-04-14")));
    bean.steps[0].minutes = tiny_plan(&garden).plantings[0].steps[0].minutes;
    assert!(check(&garden, plan.clone()).is_ok());
    let bean = &mut plan.plantings[0];
    bean.steps[3].when = sessions(StepKind::Pick, &[("2a", "2027-05-17")]).when;
    bean.steps[4] = from_to(StepKind::Cure, "2027-05-18", "2027-05-20");
    plan.promise.ingredients[0].ready_years = 1;
    plan.promise.whole_dish_years = 1;
    let checked = check(&garden, plan).unwrap();
    let ready = &checked.replay().ingredients[0].ready;
    assert_eq!(ready[0], Err(Unready::NotRipe));
    assert_eq!(ready[1], Ok(()));
}

#[test]
fn after_moving_up_the_leaving_grade_does_nothing_more() {
    let garden = adopted_garden();
    let violations = refused(&garden, plan_with(&garden, tiny_bean(), 2, 2));
    let turns: Vec<_> = violations
        .iter()
        .filter_map(|v| match &v.fault {
            Fault::Visits {
                class,
                expected,
                got,
                ..
            } => Some((class.as_str(), *expected, *got)),
            _ => None,
        })
        .collect();
    let round = [("1a", 0, 1), ("1b", 0, 1), ("2a", 1, 0)];
    assert_eq!(turns, [round, round].concat());
}

#[test]
fn a_class_that_moves_up_within_a_round_leaves_its_turn_to_others() {
    // Grade 1 leaves on 12 May: 1a still picks on 11 May, 1b on 13 May no more, and 2a on 17
    // May cannot end what another grade began.
    let mut garden = adopted_garden();
    garden.school_year.moves_up = Some(day("2027-05-12"));
    let mut bean = tiny_bean();
    let visits = [
        ("1a", "2027-05-11"),
        ("1b", "2027-05-13"),
        ("2a", "2027-05-17"),
    ];
    bean.steps[2] = sessions(StepKind::Pick, &visits);
    let violations = refused(&garden, plan_with(&garden, bean, 2, 2));
    let turns = violations.iter().filter_map(|v| match &v.fault {
        Fault::Visits {
            step,
            class,
            expected,
            got,
        } if step.number == 3 => Some((class.as_str(), *expected, *got)),
        _ => None,
    });
    assert_eq!(turns.collect::<Vec<_>>(), [("1b", 0, 1), ("2a", 0, 1)]);
}

#[test]
fn two_steps_in_one_session_share_its_minutes() {
    // On 13 April class 1a thins for 10.12 minutes; a second step of 10 minutes and more
    // does not fit into 20.
    let mut garden = tiny_garden();
    garden.ingredients[0].max_sowings = 2;
    garden.grades[0].classes[0].slots[0].minutes = Minutes(20.0);
    let mut first = tiny_bean();
    first.plants = 24;
    first.places = vec![place("B", 1, 2)];
    let mut second = first.clone();
    second.places = vec![place("B", 3, 2)];
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    let plan = bare_plan(&garden, vec![first, second, tiny_tomato()], promises, 2);
    let overfull = refused(&garden, plan.clone());
    assert!(overfull.iter().all(|v| matches!(
        &v.fault,
        Fault::SessionOverfull { class, expected, got, .. }
            if class == "1a" && *expected == 20.0 && *got > 20.0
    )));
    // Sowing, thinning and both picks.
    assert_eq!(overfull.len(), 4);
    garden.grades[0].classes[0].slots[0].minutes = Minutes(21.0);
    assert!(check(&garden, plan).is_ok());
}
