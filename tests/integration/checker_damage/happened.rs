//! What has begun: plans that bend it, or begin something on days gone by, are refused by that rule and no other.

use tureen::checker::check;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline::unfold;
use tureen::plan::{Plan, Rule, StepKind};
use tureen::project::diary::{Diary, Entry, Happened};

use crate::support::day;
use crate::support::gardens::tiny_garden;

use super::refused;
use super::table::visits;

/// The tiny garden on Monday 19 April: the bean is sown and thinned, the tomato is sown and potted up, and is planted
/// out on this very day.
fn under_way(what: Happened) -> (Garden, Plan) {
    let garden = tiny_garden();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("the tiny garden has a plan");
    };
    let entry = Entry {
        on: day("2027-04-12"),
        by: None,
        what,
    };
    let diary = Diary {
        entries: vec![(1, entry)],
        sections: 1,
    };
    let unfolded = unfold(&garden, (&plan, None), &diary, day("2027-04-19"));
    let garden = unfolded.unwrap().unwrap().garden;
    let Outcome::Planned(again) = solve(&garden, &Options::default()) else {
        panic!("what has begun goes on");
    };
    assert_eq!(again.plantings, plan.plantings, "nothing has happened");
    (garden, again)
}

fn nothing() -> (Garden, Plan) {
    under_way(Happened::Words("Nothing".to_owned()))
}

/// The rules that a plan breaks; what it says of years and aims apart, which is not as it was saved then.
fn broken(garden: &Garden, plan: Plan) -> Vec<Rule> {
    let mut rules: Vec<Rule> = refused(garden, plan).into_iter().map(|v| v.rule).collect();
    rules.dedup();
    rules
}

#[test]
fn a_plan_that_goes_on_passes_and_its_bent_past_does_not() {
    let (garden, plan) = nothing();
    check(&garden, plan.clone()).unwrap();
    let mut without_claims = plan.clone();
    without_claims.aims.clear();
    for (which, planting) in plan.plantings.iter().enumerate() {
        for (at, step) in planting.steps.iter().enumerate() {
            let first = step.when.first().unwrap();
            if step.kind.is_span() || first >= day("2027-04-19") {
                continue;
            }
            let mut bent = without_claims.clone();
            let step = &mut bent.plantings[which].steps[at];
            for visit in visits(step).iter_mut() {
                visit.date = visit.date.succ_opt().unwrap();
            }
            let rules = broken(&garden, bent);
            assert!(rules.contains(&Rule::Happened), "{planting:?} {rules:?}");
        }
    }
}

#[test]
fn other_strips_under_what_stands_are_found() {
    let (garden, plan) = nothing();
    let mut bent = plan.clone();
    let bean = bent
        .plantings
        .iter_mut()
        .find(|p| p.ingredient == "bean")
        .unwrap();
    let place = bean.places[0].clone();
    bean.places[0].bed = if place.bed == "A" { "B" } else { "A" }.to_owned();
    bean.places[0].first_strip = 1;
    assert!(broken(&garden, bent).contains(&Rule::Happened));
}

#[test]
fn a_planting_that_was_begun_may_not_be_left_out_or_doubled() {
    let (garden, plan) = nothing();
    let mut left_out = plan.clone();
    left_out.plantings.remove(0);
    assert!(broken(&garden, left_out).contains(&Rule::Happened));
    let mut doubled = plan.clone();
    doubled.plantings.insert(0, plan.plantings[0].clone());
    assert!(broken(&garden, doubled).contains(&Rule::Happened));
}

#[test]
fn nothing_new_begins_on_days_gone_by() {
    let (garden, plan) = nothing();
    let mut garden = garden;
    // As if the bean had never been printed: then its days gone by were made up.
    let bean = garden.ingredient_named("bean").unwrap();
    garden.season = garden.season.map(|season| season.without(bean));
    assert_eq!(
        broken(
            &garden,
            Plan {
                aims: Vec::new(),
                ..plan
            }
        ),
        [Rule::Happened]
    );
}

#[test]
fn what_is_lost_leaves_its_strips_after_a_week_and_brings_nothing() {
    let garden = tiny_garden();
    let Outcome::Planned(plan) = solve(&garden, &Options::default()) else {
        panic!("the tiny garden has a plan");
    };
    let bean = plan
        .plantings
        .iter()
        .find(|p| p.ingredient == "bean")
        .unwrap();
    let lost = Happened::Lost {
        ingredient: "bean".to_owned(),
        share: 1.0,
        cause: "frost".to_owned(),
    };
    let sown = bean
        .steps_of(StepKind::Sow)
        .next()
        .unwrap()
        .when
        .last()
        .unwrap();
    let entry = Entry {
        on: sown,
        by: None,
        what: lost,
    };
    let diary = Diary {
        entries: vec![(1, entry)],
        sections: 1,
    };
    let on = sown.succ_opt().unwrap();
    let unfolded = unfold(&garden, (&plan, None), &diary, on).unwrap().unwrap();
    let garden = &unfolded.garden;
    let place = &bean.places[0];
    let bed = garden.bed_with_id(&place.bed).unwrap();
    let free = tureen::calendar::plus_days(sown, 7);
    assert_eq!(garden.free_from(bed, place.run()), Some(free));
    // The old planting is not taken for one of the new plan any more.
    let rules = broken(
        garden,
        Plan {
            aims: Vec::new(),
            ..plan
        },
    );
    assert!(rules.contains(&Rule::Happened), "{rules:?}");
}
