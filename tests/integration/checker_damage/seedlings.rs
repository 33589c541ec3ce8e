//! Seedlings that stand on the shelf when the plan begins: the plan passes that takes them up where they are,
//! and every damage to it, or to what is given, is found.

use tureen::checker::{Fault, Violation, check};
use tureen::garden::{Begun, BegunAt, Garden, Method, Reached, Source, Spot};
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{Plan, Planting, Rule, StepKind};

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{bare_plan, place, promise, sessions, tiny_bean, tiny_tomato};

use super::refused;

/// How many seedlings there are: in cells by fours they take three flats, five of them in pots two.
const SEEDLINGS: u32 = 9;

/// The tiny garden, planned from 15 March on: the tomatoes were sown on 8 March.
fn garden() -> Garden {
    let mut garden = tiny_garden();
    garden.school_year.start = day("2027-03-15");
    garden.ingredients[1].source = Source::Begun(BegunAt(0));
    garden.ingredients[1].methods.clear();
    garden.begun = vec![Begun {
        spot: Spot::Shelf {
            seedlings: SEEDLINGS,
        },
        reached: Reached::Sown,
        since: day("2027-03-08"),
    }];
    garden
}

/// The tiny garden's tomato from its seedlings: all but the sowing is still to be done.
fn tomato() -> Planting {
    let mut tomato = tiny_tomato();
    tomato.method = Method::Seedlings;
    tomato.on_mat = false;
    tomato.steps.remove(0);
    tomato
}

/// The plan of both, before its numbers are filled in.
fn plan_with(garden: &Garden, tomato: Planting) -> Plan {
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![tiny_bean(), tomato], promises, 2)
}

/// The same of seedlings that were potted up on 29 March.
fn in_pots() -> (Garden, Planting) {
    let mut garden = garden();
    garden.begun[0].since = day("2027-03-29");
    garden.begun[0].reached = Reached::PottedUp {
        sown: day("2027-03-08"),
    };
    let mut tomato = tomato();
    tomato.steps.remove(0);
    (garden, tomato)
}

#[test]
fn seedlings_are_taken_up_where_they_stand() {
    let garden = garden();
    let checked = check(&garden, plan_with(&garden, tomato())).unwrap();
    let planting = &checked.plan().plantings[1];
    let numbers = (planting.seeds, planting.flats_sown, planting.flats_kept);
    assert_eq!(numbers, (0, 3, 2));
    // Weeks from Monday 15 March: in cells until they are potted up on 29 March, in pots until 19 April.
    let replay = checked.replay();
    assert_eq!(
        replay.flats_by_week,
        [3, 3, 3, 2, 2, 2, 0, 0, 0, 0, 0, 0, 0]
    );
    assert_eq!(replay.warm_flats_by_week, [0; 13]);
    let needs = &replay.unattended[0].needs;
    assert_eq!(*needs, [("tomato".to_owned(), StepKind::PotUp)]);
}

#[test]
fn seedlings_in_pots_keep_them_until_they_are_planted_out() {
    let (garden, tomato) = in_pots();
    let checked = check(&garden, plan_with(&garden, tomato)).unwrap();
    // Nine pots by fours, from 29 March on.
    assert_eq!(
        checked.replay().flats_by_week,
        [0, 0, 3, 3, 3, 3, 0, 0, 0, 0, 0, 0, 0]
    );
}

#[test]
fn seedlings_need_care_before_they_are_potted_up() {
    let mut garden = garden();
    garden.school_year.days_off = vec![day("2027-03-22"), day("2027-03-19")];
    let checked = check(&garden, plan_with(&garden, tomato())).unwrap();
    let first = &checked.replay().unattended[0];
    assert_eq!(first.gap.from, day("2027-03-19"));
    assert!(first.needs.contains(&("tomato".to_owned(), StepKind::Sow)));
}

#[test]
fn the_model_plans_what_is_left_to_do() {
    for (garden, kinds) in [
        (
            garden(),
            vec![StepKind::PotUp, StepKind::Harden, StepKind::PlantOut],
        ),
        (in_pots().0, vec![StepKind::Harden, StepKind::PlantOut]),
    ] {
        let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
            panic!("there is a plan");
        };
        let planting = plan.plantings.iter().find(|p| p.ingredient == "tomato");
        let planting = planting.unwrap();
        assert_eq!(planting.method, Method::Seedlings);
        let planned: Vec<StepKind> = planting.steps.iter().map(|s| s.kind).collect();
        assert!(planned.starts_with(&kinds), "{planned:?}");
        assert_eq!(planned[kinds.len()], StepKind::Pick);
        check(&garden, plan).unwrap();
    }
}

#[test]
fn too_few_seedlings_make_no_plan() {
    // The least share are two plants; they stand in twos.
    for (seedlings, is_planned) in [(1, false), (2, true)] {
        let mut garden = garden();
        garden.begun[0].spot = Spot::Shelf { seedlings };
        garden.ingredients[1].least_share.0 = 0.25;
        let outcome = solve(&garden, &Options::default());
        assert_eq!(matches!(outcome, Outcome::Planned(_)), is_planned);
    }
}

/// A damage: its name, the edit, the rule that it breaks, and what the fault must be.
type Damage<T> = (&'static str, fn(&mut T), Rule, fn(&Fault) -> bool);

fn found(violations: &[Violation], rule: Rule, is: fn(&Fault) -> bool) -> bool {
    let mut of_rule = violations.iter().filter(|v| v.rule == rule);
    of_rule.any(|v| is(&v.fault))
}

/// Damages to the plan.
const PLANS: &[Damage<Plan>] = &[
    (
        "sown once more",
        |plan| {
            let sown = sessions(StepKind::Sow, &[("2a", "2027-03-15")]);
            plan.plantings[1].steps.insert(0, sown);
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Steps { .. }),
    ),
    (
        "not potted up",
        |plan| {
            plan.plantings[1].steps.remove(0);
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Steps { .. }),
    ),
    (
        "not hardened off",
        |plan| {
            plan.plantings[1].steps.remove(1);
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Steps { .. }),
    ),
    (
        "potted up too late to root",
        |plan| {
            plan.plantings[1].steps[0] = sessions(StepKind::PotUp, &[("2a", "2027-04-12")]);
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Day { .. }),
    ),
    (
        "another way of growing",
        |plan| plan.plantings[1].method = Method::Indoor,
        Rule::Readiness,
        |fault| matches!(fault, Fault::Method { .. }),
    ),
    (
        "seed counted",
        |plan| plan.plantings[1].seeds = SEEDLINGS,
        Rule::Amount,
        |fault| matches!(fault, Fault::Number { .. }),
    ),
    (
        "a flat of cells too few",
        |plan| plan.plantings[1].flats_sown -= 1,
        Rule::Amount,
        |fault| matches!(fault, Fault::Number { .. }),
    ),
    (
        "a flat of pots too many",
        |plan| plan.plantings[1].flats_kept += 1,
        Rule::Amount,
        |fault| matches!(fault, Fault::Number { .. }),
    ),
    (
        "on the mat",
        |plan| plan.plantings[1].on_mat = true,
        Rule::Shelf,
        |fault| matches!(fault, Fault::Mat { .. }),
    ),
    (
        "nowhere",
        |plan| plan.plantings[1].places = Vec::new(),
        Rule::Space,
        |fault| matches!(fault, Fault::Place { .. }),
    ),
    (
        "without the trellis that it climbs",
        |plan| plan.plantings[1].places = vec![place("A", 3, 4)],
        Rule::Space,
        |fault| matches!(fault, Fault::Place { .. }),
    ),
];

/// Damages to what is given.
const GARDENS: &[Damage<Garden>] = &[
    (
        "fewer seedlings than plants",
        |garden| garden.begun[0].spot = Spot::Shelf { seedlings: 3 },
        Rule::Amount,
        |fault| {
            let expected = Fault::TooFewSeedlings {
                planting: name(),
                expected: 3,
                got: 4,
            };
            *fault == expected
        },
    ),
    (
        "sown a week later",
        |garden| garden.begun[0].since = day("2027-03-15"),
        Rule::Readiness,
        |fault| matches!(fault, Fault::Age { got: 5, .. }),
    ),
    (
        "sown a week earlier",
        |garden| garden.begun[0].since = day("2027-03-07"),
        Rule::Readiness,
        |fault| matches!(fault, Fault::Age { got: 7, .. }),
    ),
    (
        "sown less than two weeks before potting up",
        |garden| garden.begun[0].since = day("2027-03-16"),
        Rule::Readiness,
        |fault| matches!(fault, Fault::Day { .. }),
    ),
    (
        "in pots already",
        |garden| {
            let sown = day("2027-03-08");
            garden.begun[0].reached = Reached::PottedUp { sown };
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Steps { .. }),
    ),
    (
        "in a bed already",
        |garden| {
            let (bed, strips) = (
                tureen::garden::BedAt(0),
                tureen::garden::Strips::from_start(4),
            );
            garden.begun[0].spot = Spot::Bed { bed, strips };
            garden.begun[0].reached = Reached::PlantedOut;
        },
        Rule::Readiness,
        |fault| matches!(fault, Fault::Method { .. }),
    ),
    (
        "a smaller shelf",
        |garden| garden.shelf.flats = 2,
        Rule::Shelf,
        |fault| matches!(fault, Fault::ShelfFull { got: 3, .. }),
    ),
    (
        "a shelf that is lent until they are still there",
        |garden| garden.shelf.until = Some(day("2027-04-18")),
        Rule::Shelf,
        |fault| matches!(fault, Fault::ShelfClosed { .. }),
    ),
    (
        "a shelf that is not there yet",
        |garden| garden.shelf.from = day("2027-03-16"),
        Rule::Shelf,
        |fault| matches!(fault, Fault::ShelfClosed { .. }),
    ),
];

/// How faults name the tomato.
fn name() -> tureen::checker::PlantingRef {
    tureen::checker::PlantingRef {
        number: 2,
        ingredient: "tomato".to_owned(),
    }
}

#[test]
fn every_damage_to_a_plan_with_seedlings_is_found() {
    let garden = garden();
    for (damage, edit, rule, is) in PLANS {
        let mut plan = plan_with(&garden, tomato());
        edit(&mut plan);
        let violations = refused(&garden, plan);
        assert!(found(&violations, *rule, *is), "{damage}: {violations:#?}");
    }
}

#[test]
fn every_damage_to_the_given_seedlings_is_found() {
    for (damage, edit, rule, is) in GARDENS {
        let mut garden = garden();
        let plan = plan_with(&garden, tomato());
        edit(&mut garden);
        let violations = refused(&garden, plan);
        assert!(found(&violations, *rule, *is), "{damage}: {violations:#?}");
    }
}

#[test]
fn what_was_potted_up_a_day_too_late_may_not_be_planted_out() {
    let (mut garden, tomato) = in_pots();
    garden.begun[0].since = day("2027-04-09");
    check(&garden, plan_with(&garden, tomato.clone())).unwrap();
    garden.begun[0].since = day("2027-04-10");
    let violations = refused(&garden, plan_with(&garden, tomato));
    let is_day = |fault: &Fault| matches!(fault, Fault::Day { .. });
    assert!(
        found(&violations, Rule::Readiness, is_day),
        "{violations:#?}"
    );
}
