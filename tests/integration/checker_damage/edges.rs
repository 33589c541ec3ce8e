//! Just enough and just too little: what lies on the edge of a rule passes, one day or one
//! unit further it does not.

use chrono::Weekday;
use tureen::checker::{self, DayLimit, Fault, Violation, check};
use tureen::garden::{Garden, Germination, GradeAt, HarvestDay, Method};
use tureen::growth::Unready;
use tureen::plan::{Aim, Plan, Planting, StepKind, When};
use tureen::units::{Celsius, Minutes};

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{
    bare_plan, from_to, place, planting, promise, sessions, tiny_bean, tiny_plan, tiny_tomato,
};

use super::refused;

/// What is wrong with the tiny plan in a changed garden.
fn wrong(edit: fn(&mut Garden)) -> Vec<Violation> {
    let mut garden = tiny_garden();
    let plan = tiny_plan(&garden);
    edit(&mut garden);
    check(&garden, plan).err().unwrap_or_default()
}

/// The edit: the garden's edge, then one step beyond it.
type Edge = (&'static str, fn(&mut Garden), fn(&mut Garden));

const EDGES: &[Edge] = &[
    (
        "the kitchen needs it on the day of the last pick",
        |g| g.feast.deliver_by = day("2027-06-07"),
        |g| g.feast.deliver_by = day("2027-06-06"),
    ),
    (
        "the bed is free on the day of sowing",
        |g| g.beds[1].free_from = Some(day("2027-03-16")),
        |g| g.beds[1].free_from = Some(day("2027-03-17")),
    ),
    (
        "the shelf opens on the day of sowing",
        |g| g.shelf.from = day("2027-03-08"),
        |g| g.shelf.from = day("2027-03-09"),
    ),
    (
        "the shelf is lent from the day after planting out",
        |g| g.shelf.until = Some(day("2027-04-19")),
        |g| g.shelf.until = Some(day("2027-04-18")),
    ),
    (
        "seedlings as young as may be",
        |g| g.ingredients[1].crop.indoor.as_mut().unwrap().weeks_hi = 9,
        |g| {
            let indoor = g.ingredients[1].crop.indoor.as_mut().unwrap();
            (indoor.weeks_lo, indoor.weeks_hi) = (7, 9);
        },
    ),
    (
        "seedlings as old as may be",
        |g| g.ingredients[1].crop.indoor.as_mut().unwrap().weeks_lo = 4,
        |g| {
            let indoor = g.ingredients[1].crop.indoor.as_mut().unwrap();
            (indoor.weeks_lo, indoor.weeks_hi) = (4, 5);
        },
    ),
    (
        "a family comes back in the year after its hard years, or has none",
        |g| {
            g.ingredients[1].crop.rotation.years_hard = 0;
            g.beds[0].grew[0].0 = 2027;
        },
        |g| {
            g.ingredients[1].crop.rotation.years_hard = 1;
            g.beds[0].grew[0].0 = 2026;
        },
    ),
    (
        "seed is up on the day of potting up: 21 days after sowing",
        |g| slow_seed(g, 21.0),
        |g| slow_seed(g, 21.5),
    ),
    (
        "the room is as warm as the seed wants it",
        |g| g.shelf.room.0 = 19.9,
        |g| g.shelf.room.0 = 20.0,
    ),
];

/// Seed of the tomato takes so many days on the mat, and in all warmth.
fn slow_seed(garden: &mut Garden, days: f64) {
    garden.ingredients[1].crop.germination = tureen::garden::Germination::Table([Some(days); 9]);
}

#[test]
fn the_edge_passes_and_one_step_beyond_does_not() {
    for (edge, at, beyond) in EDGES {
        let violations = wrong(*at);
        assert!(violations.is_empty(), "{edge}: {violations:#?}");
        let violations = wrong(*beyond);
        assert_eq!(violations.len(), 1, "{edge}: {violations:#?}");
    }
}

fn days(violations: &[Violation]) -> Vec<(DayLimit, StepKind, Option<tureen::calendar::Date>)> {
    let faults = violations.iter().filter_map(|v| match &v.fault {
        Fault::Day {
            step, limit, from, ..
        } => Some((*limit, step.kind, *from)),
        _ => None,
    });
    faults.collect()
}

/// Tomatoes raised by grade 1, whose second class may meet on another day. No break.
fn raised_by_two() -> Garden {
    let mut garden = tiny_garden();
    garden.school_year.breaks.clear();
    garden.ingredients[1].teams = vec![GradeAt(0).into()];
    garden.ingredients.remove(0);
    garden.shelf.flats = 10;
    garden.shelf.warm_flats = 10;
    garden
}

/// Its plan, with the dates of 1a and 1b for sowing, potting up and planting out.
fn two_class_plan(garden: &Garden, dates: [[&str; 2]; 3], harden: [&str; 2]) -> Plan {
    let by = |kind, [a, b]: [&str; 2]| sessions(kind, &[("1a", a), ("1b", b)]);
    let [sow, pot_up, out] = dates;
    let steps = vec![
        by(StepKind::Sow, sow),
        by(StepKind::PotUp, pot_up),
        from_to(StepKind::Harden, harden[0], harden[1]),
        by(StepKind::PlantOut, out),
        by(StepKind::Pick, ["2027-05-25", "2027-05-27"]),
    ];
    let places = vec![place("A", 1, 4)];
    let mut tomato = planting("tomato", Method::Indoor, 4, places, steps);
    tomato.on_mat = true;
    bare_plan(
        garden,
        vec![tomato],
        vec![promise("tomato", 0, 1.0, 2.0)],
        0,
    )
}

#[test]
fn two_weeks_to_potting_up_count_from_the_last_class_that_sowed() {
    let garden = raised_by_two();
    let dates = [
        ["2027-03-02", "2027-03-04"],
        ["2027-03-16", "2027-03-18"],
        ["2027-04-13", "2027-04-15"],
    ];
    let plan = two_class_plan(&garden, dates, ["2027-04-06", "2027-04-12"]);
    let from = Some(day("2027-03-18"));
    let expected = [(DayLimit::AfterSowing, StepKind::PotUp, from)];
    assert_eq!(days(&refused(&garden, plan)), expected);
}

#[test]
fn ten_days_to_planting_out_count_from_the_last_class_that_potted_up() {
    // Class 1b meets every second Monday from 8 March and picks on 31 May.
    let mut garden = raised_by_two();
    let slot = &mut garden.grades[0].classes[1].slots[0];
    (slot.day, slot.from) = (Weekday::Mon, day("2027-03-08"));
    let dates = [
        ["2027-03-02", "2027-03-08"],
        ["2027-03-30", "2027-04-05"],
        ["2027-04-13", "2027-04-19"],
    ];
    let mut plan = two_class_plan(&garden, dates, ["2027-04-06", "2027-04-12"]);
    let pick = sessions(
        StepKind::Pick,
        &[("1a", "2027-05-25"), ("1b", "2027-05-31")],
    );
    plan.plantings[0].steps[4].when = pick.when;
    let from = Some(day("2027-04-15"));
    let expected = [(DayLimit::AfterPottingUp, StepKind::PlantOut, from)];
    assert_eq!(days(&refused(&garden, plan)), expected);
}

#[test]
fn flats_stand_while_the_classes_pot_up_one_after_the_other() {
    // 40 children sow one each in flats of 4, so 10 flats from 2 March. Four plants and one
    // to spare are potted up on 30 March and 1 April into 2 flats, planted out on 13 and 15
    // April. On the mat (25 C) until 9 March, five days after the second class.
    let garden = raised_by_two();
    let dates = [
        ["2027-03-02", "2027-03-04"],
        ["2027-03-30", "2027-04-01"],
        ["2027-04-13", "2027-04-15"],
    ];
    // At 15 C ripe on 23 and 25 May, and it keeps for 14 days: not until 11 June. At 19 C it
    // is ripe on 12 and 14 May and past on 28 and 30 May. So it is never ready, and only kept for
    // 30 days a plan.
    let mut keeping = garden.clone();
    keeping.ingredients[0].crop.picking.storage_days = 30;
    let mut plan = two_class_plan(&garden, dates, ["2027-04-06", "2027-04-12"]);
    plan.promise = checker::promise(&keeping, &plan);
    let checked = check(&keeping, plan).unwrap();
    let replay = checked.replay();
    assert_eq!(replay.flats_by_week[..8], [10, 10, 10, 10, 10, 2, 2, 0]);
    assert_eq!(replay.warm_flats_by_week[..4], [10, 10, 0, 0]);
    let grown = &checked.grown_in(&garden).ingredients[0];
    assert_eq!(grown.ready_years(), 0);
    assert_eq!(grown.ready[0], Err(Unready::DoesNotKeep));
}

#[test]
fn the_larger_of_cells_and_pots_stands_while_classes_pot_up() {
    // Nobody sows more than is needed: 7 seeds in 2 flats. The 5 pots take a flat each. From
    // 30 March, when the first class pots up, 5 flats must fit.
    let mut garden = raised_by_two();
    garden.ingredients[0].each_child_sows = 0;
    garden.ingredients[0].crop.picking.storage_days = 30;
    garden.ingredients[0]
        .crop
        .indoor
        .as_mut()
        .unwrap()
        .pots_per_flat = Some(1);
    let dates = [
        ["2027-03-02", "2027-03-04"],
        ["2027-03-30", "2027-04-01"],
        ["2027-04-13", "2027-04-15"],
    ];
    let mut plan = two_class_plan(&garden, dates, ["2027-04-06", "2027-04-12"]);
    plan.promise = checker::promise(&garden, &plan);
    assert_eq!(plan.plantings[0].flats_sown, 2);
    garden.shelf.flats = 4;
    let violations = refused(&garden, plan);
    let [full] = violations.as_slice() else {
        panic!("{violations:#?}")
    };
    let expected = Fault::ShelfFull {
        mat: false,
        day: day("2027-03-30"),
        expected: 4,
        got: 5,
    };
    assert_eq!(full.fault, expected);
}

#[test]
fn a_flat_leaves_the_mat_on_the_day_on_which_it_is_up() {
    // Sown on Monday 8 March and up after seven days: gone on Monday 15 March.
    let mut garden = tiny_garden();
    slow_seed(&mut garden, 7.0);
    let plan = tiny_plan(&garden);
    let checked = check(&garden, plan).unwrap();
    assert_eq!(checked.replay().warm_flats_by_week[..4], [0, 3, 0, 0]);
}

fn bean_plan(garden: &Garden, bean: Planting, ready: u32, whole: u32) -> Plan {
    let promises = vec![
        promise("bean", ready, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![bean, tiny_tomato()], promises, whole)
}

#[test]
fn a_round_ends_before_its_third_monday() {
    // Class 1b meets every second Monday from 1 March: 15 and 29 March. With 1a on Tuesday 16
    // March the round ends on Sunday 28 March.
    let mut garden = tiny_garden();
    let slot = &mut garden.grades[0].classes[1].slots[0];
    (slot.day, slot.from) = (Weekday::Mon, day("2027-03-01"));
    let mut plan = bean_plan(&garden, tiny_bean(), 2, 2);
    plan.plantings[0].steps[0].when =
        sessions(StepKind::Sow, &[("1a", "2027-03-16"), ("1b", "2027-03-29")]).when;
    let violations = refused(&garden, plan);
    let late = (DayLimit::Round, StepKind::Sow, Some(day("2027-03-16")));
    assert!(days(&violations).contains(&late), "{violations:#?}");
}

#[test]
fn the_part_that_did_worst_gives_the_reason() {
    // 1b sows on 25 March and picks on 20 May, 1a on 16 March and 25 May; ripe beans hold for
    // five days. At 15 C those of 1a are ripe on 15 May and past, those of 1b, ripe on 24
    // May, are not ripe. At 19 C both are past. Such a plan is none; where beans hold for 40 days it
    // is.
    let mut garden = tiny_garden();
    garden.grades[0].classes[1].slots[0].from = day("2027-03-11");
    garden.ingredients[0].crop.picking.holds_in_ground_days = 5;
    let mut bean = tiny_bean();
    bean.steps = vec![
        sessions(StepKind::Sow, &[("1a", "2027-03-16"), ("1b", "2027-03-25")]),
        sessions(
            StepKind::Pick,
            &[("1a", "2027-05-25"), ("1b", "2027-05-20")],
        ),
        from_to(StepKind::Cure, "2027-05-26", "2027-05-28"),
    ];
    let mut holding = garden.clone();
    holding.ingredients[0].crop.picking.holds_in_ground_days = 40;
    let mut plan = bean_plan(&garden, bean, 0, 0);
    plan.promise = checker::promise(&holding, &plan);
    let (late, past) = (Err(Unready::NotRipe), Err(Unready::Past));
    let ready = |plan: &Plan| {
        let checked = check(&holding, plan.clone()).unwrap();
        checked.grown_in(&garden).ingredients[0].ready.clone()
    };
    assert_eq!(ready(&plan), [late, past, late, late]);
    // The order in which the plan lists the classes does not matter.
    if let When::Sessions(visits) = &mut plan.plantings[0].steps[0].when {
        visits.reverse();
    }
    assert_eq!(ready(&plan), [late, past, late, late]);
}

/// Warm flats stand on the mat until the seed is up at the mat's warmth, 25 C: here after five days, at
/// the room's 18 C after eight.
#[test]
fn flats_leave_the_mat_as_soon_as_the_mat_brings_the_seed_up() {
    let mut garden = tiny_garden();
    garden.ingredients[1].crop.germination = Germination::Range {
        min: Celsius(5.0),
        optimum: Celsius(25.0),
        max: Celsius(35.0),
        days: 5.0,
    };
    let mut plan = tiny_plan(&garden);
    let warm = |plan: &Plan| {
        let checked = check(&garden, plan.clone()).unwrap();
        checked.replay().warm_flats_by_week[..4].to_vec()
    };
    assert_eq!(warm(&plan), [0, 3, 0, 0]);
    plan.plantings[1].on_mat = false;
    assert_eq!(warm(&plan), [0, 0, 0, 0]);
}

/// Thinned by an adult it is one step more that others do than the children who sowed.
#[test]
fn what_others_do_is_counted() {
    let garden = tiny_garden();
    let others = |plan: Plan| {
        let aims = Vec::new();
        let checked = check(&garden, Plan { aims, ..plan }).unwrap();
        let mut counted = checked.replay().counted.iter();
        counted.find(|(aim, _)| *aim == Aim::Children).unwrap().1
    };
    let mut plan = tiny_plan(&garden);
    assert_eq!(others(plan.clone()), 0.0);
    plan.plantings[0].steps[1].when = When::Adult(day("2027-04-14"));
    plan.plantings[0].steps[1].minutes = Minutes(0.0);
    assert_eq!(others(plan), 1.0);
}

#[test]
fn a_pick_on_a_day_of_the_harvest_needs_that_day() {
    // The second pick of the beans on Wednesday 26 May, on which neither class has a lesson.
    let harvest = HarvestDay {
        day: day("2027-05-26"),
        minutes: Minutes(45.0),
    };
    let mut garden = tiny_garden();
    garden.school_year.harvest_days.push(harvest);
    let mut bean = tiny_bean();
    let both = [("1a", "2027-05-26"), ("1b", "2027-05-26")];
    bean.steps[3].when = sessions(StepKind::Pick, &both).when;
    bean.steps[4].when = from_to(StepKind::Cure, "2027-05-27", "2027-05-29").when;
    let mut plan = bean_plan(&garden, bean, 0, 0);
    plan.promise = checker::promise(&garden, &plan);
    check(&garden, plan.clone()).unwrap();
    let no_session = |v: &Violation| matches!(v.fault, Fault::NoSession { .. });
    assert_eq!(
        refused(&tiny_garden(), plan.clone())
            .iter()
            .filter(|v| no_session(v))
            .count(),
        2
    );
    // And its minutes.
    garden.school_year.harvest_days[0].minutes = Minutes(10.0);
    let overfull = |v: &Violation| matches!(v.fault, Fault::SessionOverfull { .. });
    assert!(refused(&garden, plan).iter().any(overfull));
}
