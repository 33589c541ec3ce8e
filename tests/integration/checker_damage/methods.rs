//! The other ways of growing: a patch, what stands already, bought plants, pieces, split
//! sowings. Each passes as it should be, and not otherwise.

use tureen::checker::{DayLimit, Fault, PlaceFault, Violation, check};
use tureen::garden::{
    Begun, BegunAt, Garden, Method, Patch, PatchAt, Reached, Source, Spot, Strips,
};
use tureen::growth::Unready;
use tureen::plan::{Plan, Planting, Rule, StepKind};
use tureen::units::Kilograms;

use crate::support::crops::sown_crop;
use crate::support::day;
use crate::support::gardens::{bed, tiny_garden};
use crate::support::plans::{
    bare_plan, from_to, place, planting, promise, sessions, tiny_bean, tiny_tomato,
};

use super::refused;

/// Both pick rounds of the tiny bean, and its cure.
fn bean_from_picks() -> Vec<tureen::plan::Step> {
    tiny_bean().steps.split_off(2)
}

/// The tiny plan with another bean, ready in `ready` years, of `low` kilograms.
pub fn with_bean(garden: &Garden, bean: Planting, ready: u32, low: f64, whole: u32) -> Plan {
    let promises = vec![
        promise("bean", ready, low, low * 1.5),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![bean, tiny_tomato()], promises, whole)
}

fn places(violations: &[Violation]) -> Vec<PlaceFault> {
    let faults = violations.iter().filter(|v| v.rule == Rule::Space);
    faults
        .filter_map(|v| match v.fault {
            Fault::Place { why, .. } => Some(why),
            _ => None,
        })
        .collect()
}

pub fn patch_garden() -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients[0].source = Source::Patch(PatchAt(0));
    garden.patches = vec![Patch {
        id: "hedge".to_owned(),
        crop: "bean".to_owned(),
        pick_from: day("2027-05-10"),
        pick_to: day("2027-05-27"),
        low: Kilograms(0.6),
        expected: Kilograms(0.9),
        size: None,
        at: None,
    }];
    garden
}

/// Picked from the patch. Its minutes are those of setting up, since no plants are counted.
pub fn patch_bean() -> Planting {
    planting("bean", Method::Patch, 0, vec![], bean_from_picks())
}

#[test]
fn a_patch_is_picked_in_its_season_and_bears_every_year() {
    let garden = patch_garden();
    let plan = with_bean(&garden, patch_bean(), 4, 0.6, 3);
    let checked = check(&garden, plan).unwrap();
    assert_eq!(checked.replay().ingredients[0].ready, [Ok(()); 4]);
}

#[test]
fn a_patch_is_not_picked_out_of_season() {
    let outside = |edit: fn(&mut Patch)| {
        let mut garden = patch_garden();
        edit(&mut garden.patches[0]);
        let plan = with_bean(&garden, patch_bean(), 4, 0.6, 3);
        let violations = refused(&garden, plan);
        assert!(violations.iter().all(|v| v.rule == Rule::Readiness));
        let days = violations.iter().map(|v| match v.fault {
            Fault::Day {
                limit: DayLimit::PatchSeason,
                got,
                ..
            } => got,
            _ => panic!("{violations:#?}"),
        });
        days.collect::<Vec<_>>()
    };
    assert_eq!(
        outside(|p| p.pick_to = day("2027-05-26")),
        [day("2027-05-27")]
    );
    assert_eq!(
        outside(|p| p.pick_from = day("2027-05-12")),
        [day("2027-05-11")]
    );
}

#[test]
fn what_a_patch_bears_must_keep() {
    let mut garden = patch_garden();
    let first = day("2027-05-11");
    let picking = &mut garden.ingredients[0].crop.picking;
    let cure = i64::from(picking.cure_days);
    let days = (garden.feast.day - first).num_days() - cure;
    picking.storage_days = u32::try_from(days).unwrap();
    check(&garden, with_bean(&garden, patch_bean(), 4, 0.6, 3)).unwrap();
    garden.ingredients[0].crop.picking.storage_days -= 1;
    let violations = refused(&garden, with_bean(&garden, patch_bean(), 4, 0.6, 3));
    let keeps = violations.iter().map(|v| match v.fault {
        Fault::Day {
            limit: DayLimit::Keeps,
            got,
            ..
        } => got,
        _ => panic!("{violations:#?}"),
    });
    assert_eq!(keeps.collect::<Vec<_>>(), [first]);
}

#[test]
fn a_patch_takes_no_bed() {
    let garden = patch_garden();
    let mut bean = patch_bean();
    bean.places.push(place("B", 1, 4));
    let violations = refused(&garden, with_bean(&garden, bean, 4, 0.6, 3));
    assert_eq!(places(&violations), [PlaceFault::NotWhereItGrows]);
}

/// Beans that were sown in bed B on 22 February, before the year begins. Bed B carried beans
/// last year; the plan did not choose that.
fn growing_garden() -> Garden {
    let mut garden = tiny_garden();
    let bed = garden.bed_positions().nth(1).unwrap();
    garden.ingredients[0].source = Source::Begun(BegunAt(0));
    garden.beds[1].grew = vec![(2026, vec!["bean".to_owned()])];
    garden.begun = vec![Begun {
        spot: Spot::Bed {
            bed,
            strips: Strips::from_start(4),
        },
        reached: Reached::Sown,
        since: day("2027-02-22"),
    }];
    garden
}

fn growing_bean() -> Planting {
    planting(
        "bean",
        Method::Growing,
        48,
        vec![place("B", 1, 4)],
        bean_from_picks(),
    )
}

#[test]
fn what_stands_already_is_grown_from_the_day_it_was_sown() {
    // Ripe on 23 April at 15 C: past after 20 days, on 14 May, so it is picked on 11 and 13
    // May. At 19 C it is past before that. At 13.5 C it is ripe on 4 May: sown 71 days before.
    let garden = growing_garden();
    let plan = with_bean(&garden, growing_bean(), 2, 0.96, 2);
    let checked = check(&garden, plan).unwrap();
    let ready = &checked.replay().ingredients[0].ready;
    let (past, late) = (Err(Unready::Past), Err(Unready::NotRipe));
    assert_eq!(*ready, [Ok(()), past, late, Ok(())]);
    // It takes its strips from the first day: the week of 22 February.
    assert_eq!(checked.replay().strips_by_week[1][0], 4);
}

#[test]
fn what_was_set_out_as_plants_is_grown_as_plants() {
    // Set out on 22 February, ripe 80 days later at 15 C: on 13 May, for the class that
    // picks on that day; the other waits for 25 May. At 19 C ripe 58 days later, on 21 April,
    // and past on 12 May, a day too early for 1b. At 13.5 C ripe 95 days later, on 28 May.
    let mut garden = growing_garden();
    garden.begun[0].reached = Reached::PlantedOut;
    garden.ingredients[0].crop.ripening.days_from_planting = Some(80.0);
    let plan = with_bean(&garden, growing_bean(), 1, 0.96, 1);
    let checked = check(&garden, plan).unwrap();
    let ready = &checked.replay().ingredients[0].ready;
    let (past, late) = (Err(Unready::Past), Err(Unready::NotRipe));
    assert_eq!(*ready, [Ok(()), past, late, late]);
}

#[test]
fn what_stands_already_stays_where_it_stands() {
    let garden = growing_garden();
    for places_given in [
        vec![place("A", 5, 4)],
        vec![place("B", 1, 3)],
        vec![place("B", 2, 4)],
    ] {
        let mut bean = growing_bean();
        bean.places = places_given;
        let violations = refused(&garden, with_bean(&garden, bean, 2, 0.96, 2));
        assert!(places(&violations).contains(&PlaceFault::NotWhereItGrows));
    }
}

#[test]
fn bought_plants_count_from_planting_out() {
    // Planted on 13 and 15 April, ripe 40 days later at 15 C: on 23 and 25 May.
    let mut garden = tiny_garden();
    let ingredient = &mut garden.ingredients[0];
    ingredient.methods = vec![Method::Bought];
    ingredient.crop.ripening.days_from_planting = Some(40.0);
    let visits = [("1a", "2027-04-13"), ("1b", "2027-04-15")];
    let mut steps = bean_from_picks();
    steps.insert(0, sessions(StepKind::PlantOut, &visits));
    let bean = planting("bean", Method::Bought, 48, vec![place("B", 1, 4)], steps);
    let checked = check(&garden, with_bean(&garden, bean, 2, 0.96, 2)).unwrap();
    assert_eq!(checked.plan().plantings[0].seeds, 48);
    let late = Err(Unready::NotRipe);
    let ready = &checked.replay().ingredients[0].ready;
    assert_eq!(*ready, [Ok(()), Ok(()), late, late]);
}

#[test]
fn pieces_are_sown_and_never_thinned() {
    let mut garden = tiny_garden();
    garden.ingredients[0].methods = vec![Method::Pieces];
    let mut bean = tiny_bean();
    bean.method = Method::Pieces;
    let violations = refused(&garden, with_bean(&garden, bean.clone(), 2, 0.96, 2));
    assert!(
        matches!(violations[0].fault, Fault::Steps { .. }),
        "{violations:#?}"
    );
    bean.steps.remove(1);
    let checked = check(&garden, with_bean(&garden, bean, 2, 0.96, 2)).unwrap();
    assert_eq!(checked.plan().plantings[0].seeds, 48);
}

/// Two sowings of two strips each: the first as in the tiny plan, the second two weeks later.
/// 24 plants give 0.48 kg in a poor year, which alone is less than half of the target.
pub fn split_plan(garden: &Garden, ready: u32) -> Plan {
    let mut first = tiny_bean();
    first.plants = 24;
    first.places = vec![place("B", 1, 2)];
    first.steps.remove(1);
    let mut second = first.clone();
    second.places = vec![place("B", 3, 2)];
    second.steps[0] = sessions(StepKind::Sow, &[("1a", "2027-03-30"), ("1b", "2027-04-01")]);
    let promises = vec![
        promise("bean", ready, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    bare_plan(garden, vec![first, second, tiny_tomato()], promises, ready)
}

#[test]
fn split_sowings_add_up_in_the_years_in_which_they_are_ready() {
    // The second sowing is ripe on 29 and 31 May at 15 C, after the last pick.
    let mut garden = tiny_garden();
    garden.ingredients[0].max_sowings = 2;
    let late = Err(Unready::NotRipe);
    let checked = check(&garden, split_plan(&garden, 1)).unwrap();
    let ready = &checked.replay().ingredients[0].ready;
    assert_eq!(*ready, [late, Ok(()), late, late]);

    // If a little less counts as in the pot, the first sowing alone is enough.
    garden.ingredients[0].least_share.0 = 0.48;
    let checked = check(&garden, split_plan(&garden, 2)).unwrap();
    let ready = &checked.replay().ingredients[0].ready;
    assert_eq!(*ready, [Ok(()), Ok(()), late, late]);
}

#[test]
fn the_sowing_that_came_nearest_gives_the_reason() {
    // At 19 C both sowings stand ripe too long if they hold for one day; at 15 C the first
    // is past, the second late: past is nearer. Where they hold for 20 days it is a plan.
    let mut garden = tiny_garden();
    garden.ingredients[0].max_sowings = 2;
    let checked = check(&garden, split_plan(&garden, 1)).unwrap();
    garden.ingredients[0].crop.picking.holds_in_ground_days = 1;
    let ready = &checked.grown_in(&garden).ingredients[0].ready;
    let (past, late) = (Err(Unready::Past), Err(Unready::NotRipe));
    assert_eq!(*ready, [past, past, late, late]);
}

#[test]
fn the_beds_of_one_planting_are_of_one_kind() {
    let mut garden = tiny_garden();
    garden.beds.push(bed("C", 4, 0));
    let mut bean = tiny_bean();
    bean.places = vec![place("B", 1, 2), place("C", 1, 2)];
    let plan = with_bean(&garden, bean, 2, 0.96, 2);
    assert!(check(&garden, plan.clone()).is_ok());
    garden.beds[2].soil_bonus.0 = -1.0;
    assert_eq!(
        places(&refused(&garden, plan.clone())),
        [PlaceFault::Differs]
    );
    garden.beds[2].soil_bonus.0 = -2.0;
    garden.beds[2].width.0 = 1.0;
    assert_eq!(places(&refused(&garden, plan)), [PlaceFault::Differs]);
}

#[test]
fn a_bed_is_cleared_for_a_week_before_the_next_planting() {
    // Radish-like: sown in bed B on 16 and 18 March, ripe after 20 days at 15 C, picked on
    // 13 and 15 April: the strips are free again from 23 April.
    let mut garden = tiny_garden();
    garden.ingredients[0].max_sowings = 2;
    garden.ingredients[0].crop = sown_crop("bean", 20.0);
    garden.ingredients[0].crop.picking.storage_days = 70;
    // Its family may come back at once.
    garden.ingredients[0].crop.rotation.years_hard = 0;
    let sowing = |sow: [(&str, &str); 2], pick: [(&str, &str); 2]| {
        let steps = vec![
            sessions(StepKind::Sow, &sow),
            sessions(StepKind::Pick, &pick),
        ];
        planting("bean", Method::Direct, 48, vec![place("B", 1, 4)], steps)
    };
    let first = sowing(
        [("1a", "2027-03-16"), ("1b", "2027-03-18")],
        [("1a", "2027-04-13"), ("1b", "2027-04-15")],
    );
    let second = sowing(
        [("1a", "2027-04-27"), ("1b", "2027-04-29")],
        [("1a", "2027-05-25"), ("1b", "2027-05-27")],
    );
    let plan = |second: &Planting| {
        let promises = vec![
            promise("bean", 3, 1.92, 2.88),
            promise("tomato", 3, 1.0, 2.0),
        ];
        bare_plan(
            &garden,
            vec![first.clone(), second.clone(), tiny_tomato()],
            promises,
            3,
        )
    };
    let checked = check(&garden, plan(&second)).unwrap();
    assert_eq!(checked.replay().strips_by_week[1][7], 4);
    // On days on which 1a does not even meet: on 22 April the bed is not cleared, on the
    // next day it is.
    let clash = |sown: &str| {
        let mut early = second.clone();
        early.steps[0] = sessions(StepKind::Sow, &[("1a", sown), ("1b", "2027-04-29")]);
        let violations = refused(&garden, plan(&early));
        violations.into_iter().find_map(|v| match v.fault {
            Fault::StripTakenTwice { day, strip, .. } => Some((day, strip)),
            _ => None,
        })
    };
    assert_eq!(clash("2027-04-23"), None);
    assert_eq!(clash("2027-04-22"), Some((day("2027-04-22"), 1)));
}

#[test]
fn a_crop_that_needs_no_cure_has_none() {
    let mut garden = tiny_garden();
    garden.ingredients[0].crop.picking.cure_days = 0;
    // Picked on 11 May at 19 C, it must keep until 11 June without the days of the cure.
    garden.ingredients[0].crop.picking.storage_days = 31;
    let mut bean = tiny_bean();
    bean.steps.pop();
    assert!(check(&garden, with_bean(&garden, bean.clone(), 2, 0.96, 2)).is_ok());
    bean.steps
        .push(from_to(StepKind::Cure, "2027-05-28", "2027-05-30"));
    assert!(matches!(
        refused(&garden, with_bean(&garden, bean, 2, 0.96, 2))[0].fault,
        Fault::Steps { .. }
    ));
}
