//! The checker: a valid plan passes, and every damage to it is found and named.

mod bearable;
pub mod bearing;
mod changed;
mod edges;
mod family;
mod grades;
mod ground;
mod hands;
mod happened;
mod leaves;
pub mod methods;
mod missed;
mod numbers;
mod sampled;
mod saved;
mod seal;
mod seedlings;
mod steps;
mod table;
mod together;
mod window;

use tureen::checker::{CheckedPlan, Violation, check};
use tureen::garden::{Garden, Method};
use tureen::growth::Unready;
use tureen::plan::{Plan, Rule, StepKind};
use tureen::words::rule_words::rule_sentence;

use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

/// The valid plan, checked.
fn checked() -> CheckedPlan {
    let garden = tiny_garden();
    let plan = tiny_plan(&garden);
    check(&garden, plan).unwrap()
}

/// What the checker says of a plan that it should refuse.
fn refused(garden: &Garden, plan: Plan) -> Vec<Violation> {
    check(garden, plan).expect_err("a damaged plan passed")
}

#[test]
fn the_valid_plan_passes() {
    let garden = tiny_garden();
    let plan = tiny_plan(&garden);
    let checked = check(&garden, plan.clone()).unwrap();
    assert_eq!(*checked.plan(), plan);
}

#[test]
fn the_replay_tells_which_years_are_ready_and_why_not() {
    let checked = checked();
    let replay = checked.replay();
    assert_eq!(replay.years, [2001, 2002, 2003, 2004]);
    let late = Err(Unready::NotRipe);
    assert_eq!(replay.ingredients[0].ready, [Ok(()), Ok(()), late, late]);
    assert_eq!(replay.ingredients[1].ready, [Ok(()), Ok(()), late, Ok(())]);
    assert_eq!(replay.dish_ready, [true, true, false, false]);
    assert_eq!(replay.dish_ready_on_rain_date, None);
}

#[test]
fn the_replay_tells_how_much_there_is() {
    let checked = checked();
    let [bean, tomato] = checked.replay().ingredients.as_slice() else {
        panic!("two ingredients")
    };
    assert!((bean.low.0 - 0.96).abs() < 1e-9 && (bean.expected_share.0 - 1.44).abs() < 1e-9);
    assert!((tomato.low_share.0 - 0.5).abs() < 1e-9 && (tomato.expected.0 - 2.0).abs() < 1e-9);
}

#[test]
fn the_replay_tells_how_full_shelf_and_beds_are() {
    let checked = checked();
    let replay = checked.replay();
    // Weeks from Monday 1 March. Three flats are sown on 8 March, up on the mat after five
    // days, potted up into two on 29 March and planted out on 19 April.
    assert_eq!(
        replay.flats_by_week,
        [0, 3, 3, 3, 3, 2, 2, 2, 0, 0, 0, 0, 0, 0, 0]
    );
    assert_eq!(
        replay.warm_flats_by_week,
        [0, 3, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]
    );
    // Bed A: from 19 April to the feast. Bed B: from 16 March to 3 June.
    assert_eq!(
        replay.strips_by_week[0],
        [0, 0, 0, 0, 0, 0, 0, 4, 4, 4, 4, 4, 4, 4, 4]
    );
    assert_eq!(
        replay.strips_by_week[1],
        [0, 0, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 0]
    );
}

#[test]
fn the_replay_tells_of_gaps_and_missed_wishes() {
    let checked = checked();
    let [gap] = checked.replay().unattended.as_slice() else {
        panic!("one gap")
    };
    assert_eq!(
        (gap.gap.from, gap.gap.to),
        (day("2027-04-03"), day("2027-04-11"))
    );
    assert_eq!(gap.needs, [("tomato".to_owned(), StepKind::PotUp)]);
    let [miss] = checked.replay().rotation_wishes_missed.as_slice() else {
        panic!("one missed wish")
    };
    assert_eq!((miss.bed.as_str(), miss.grew_in), ("A", 2023));
}

#[test]
fn the_rain_date_is_reported_for_itself() {
    // Two weeks later the beans still keep; the tomatoes picked on 31 May do not.
    let mut garden = tiny_garden();
    garden.feast.rain_date = Some(day("2027-06-25"));
    let plan = tiny_plan(&garden);
    let checked = check(&garden, plan).unwrap();
    let replay = checked.replay();
    let spoilt = Err(Unready::DoesNotKeep);
    let rain = replay.ingredients[1].ready_on_rain_date.clone().unwrap();
    assert_eq!(rain[0], spoilt);
    assert_eq!(replay.dish_ready, [true, true, false, false]);
    assert_eq!(replay.dish_ready_on_rain_date, Some(vec![false; 4]));
}

#[test]
fn what_keeps_bearing_is_picked_again_for_the_rain_date() {
    // Of the class's Mondays after the delivery of 9 June the last that leaves two days before 25 June
    // is the 21st. What is picked once and for all was picked on 31 May, and six days later it is gone.
    let mut garden = tiny_garden();
    garden.feast.rain_date = Some(day("2027-06-25"));
    for (keeps_bearing, on_rain_date) in [(true, Ok(())), (false, Err(Unready::DoesNotKeep))] {
        let picking = &mut garden.ingredients[1].crop.picking;
        picking.keeps_bearing = keeps_bearing;
        picking.holds_in_ground_days = 60;
        let checked = check(&garden, tiny_plan(&garden)).unwrap();
        let tomato = &checked.replay().ingredients[1];
        assert_eq!(tomato.ready[0], Ok(()));
        assert_eq!(tomato.ready_on_rain_date.clone().unwrap()[0], on_rain_date);
    }
}

#[test]
fn all_faults_are_told_at_once() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[0].seeds -= 1;
    plan.plantings[1].method = Method::Direct;
    plan.plantings[1].places[0].bed = "Z".to_owned();
    let rules: Vec<_> = refused(&garden, plan).iter().map(|v| v.rule).collect();
    assert!(rules.is_sorted() && rules.len() >= 3, "{rules:?}");
}

#[test]
fn a_seedbed_needs_care_until_it_is_up_in_the_median_year() {
    // Sown on 16 and 18 March. The last seed is up on 23 March at 15 and 19 C, on 24 March
    // at 13.5 C and on 27 March at 11 C: of four years the third counts.
    let mut garden = tiny_garden();
    let plan = tiny_plan(&garden);
    let first_gap = |garden: &Garden| {
        let checked = check(garden, plan.clone()).unwrap();
        checked.replay().unattended[0].clone()
    };
    garden.school_year.days_off = vec![day("2027-03-25"), day("2027-03-26")];
    let gap = first_gap(&garden);
    assert_eq!(gap.gap.from, day("2027-03-25"));
    assert_eq!(gap.needs, [("tomato".to_owned(), StepKind::Sow)]);

    garden.school_year.days_off.insert(0, day("2027-03-24"));
    let needs = first_gap(&garden).needs;
    let bean = ("bean".to_owned(), StepKind::Sow);
    assert_eq!(needs, [bean, ("tomato".to_owned(), StepKind::Sow)]);
}

#[test]
fn each_rule_has_a_file_that_opens_with_its_sentence() {
    for rule in Rule::ALL {
        let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/src/checker/rules");
        let text = std::fs::read_to_string(format!("{folder}/{}.rs", rule.name())).unwrap();
        assert!(
            text.starts_with(&format!("//! {}\n", rule_sentence(rule))),
            "{rule:?}"
        );
    }
}
