//! Steps 3 to 5 of the solution by hand: what may be planted, how much, and the plan.

use tureen::calendar::Date;
use tureen::candidates::Candidates;
use tureen::checker::{self, DaysOut};
use tureen::garden::{Garden, IngredientAt, Method};
use tureen::growth::Unready;
use tureen::model::{Options, Outcome, solve};
use tureen::plan::{Aim, Place, Plan, Planting, StepKind};

use super::{LETTUCE, RADISH, day, garden};

fn solved(garden: &Garden) -> Plan {
    match solve(garden, &Options::default()) {
        Outcome::Planned(plan) => plan,
        other => panic!("{other:?}"),
    }
}

/// Kind, first day, last day, minutes to a hundredth.
type Seen = (StepKind, Date, Date, i64);

fn steps(planting: &Planting) -> Vec<Seen> {
    let seen = |step: &tureen::plan::Step| {
        let (first, last) = (step.when.first().unwrap(), step.when.last().unwrap());
        (
            step.kind,
            first,
            last,
            (step.minutes.0 * 100.0).round() as i64,
        )
    };
    planting.steps.iter().map(seen).collect()
}

/// Bed (by its cover), start of the seed, start in the bed, ready years, fragile steps.
type Way = (bool, Date, Date, u32, u32);

fn ways(garden: &Garden, at: IngredientAt) -> Vec<Way> {
    let candidates = Candidates::enumerate(garden);
    let mut ways: Vec<Way> = candidates
        .all
        .iter()
        .filter(|c| c.ingredient == at)
        .map(|c| {
            let plot = c.plots.iter().next().unwrap();
            let covered = garden[candidates[plot].bed].cover.is_some();
            let sown = c.steps.sow.as_ref().unwrap().first();
            let start = c.steps.plant_out.as_ref().map_or(sown, |r| r.first());
            (covered, sown, start, c.ready.len(), c.fragile)
        })
        .collect();
    ways.sort_unstable();
    ways
}

#[test]
fn four_ways_for_lettuce_and_two_for_radish() {
    let garden = garden();
    assert_eq!(
        ways(&garden, LETTUCE),
        [
            (false, day(4, 13), day(5, 25), 3, 2),
            (false, day(4, 27), day(5, 25), 3, 3),
            (true, day(4, 13), day(5, 25), 4, 2),
            (true, day(4, 27), day(5, 25), 4, 3),
        ]
    );
    assert_eq!(
        ways(&garden, RADISH),
        [
            (false, day(5, 13), day(5, 13), 1, 1),
            (false, day(5, 27), day(5, 27), 4, 2),
        ]
    );
}

#[test]
fn lettuce_goes_under_the_fleece() {
    let plan = solved(&garden());
    let [lettuce, radish] = plan.plantings.as_slice() else {
        panic!("{:?}", plan.plantings)
    };
    assert_eq!(lettuce.ingredient, "lettuce");
    assert_eq!(lettuce.method, Method::Indoor);
    assert_eq!(lettuce.places, [place("B", 1, 4)]);
    assert_eq!((lettuce.plants, lettuce.seeds), (36, 60));
    assert_eq!((lettuce.flats_sown, lettuce.flats_kept), (1, 1));
    assert!(!lettuce.on_mat);
    assert_eq!(
        steps(lettuce),
        [
            (StepKind::Sow, day(4, 13), day(4, 13), 1118),
            (StepKind::Harden, day(5, 18), day(5, 24), 0),
            (StepKind::PlantOut, day(5, 25), day(5, 25), 1300),
            (StepKind::Pick, day(6, 22), day(6, 22), 1100),
        ]
    );
    assert_eq!(radish.ingredient, "radish");
    assert_eq!(radish.method, Method::Direct);
    assert_eq!(radish.places.len(), 1);
    assert_eq!(
        (radish.places[0].bed.as_str(), radish.places[0].strips),
        ("A", 2)
    );
    assert_eq!((radish.plants, radish.seeds), (90, 153));
    assert_eq!(
        steps(radish),
        [
            (StepKind::Sow, day(5, 27), day(5, 27), 1078),
            (StepKind::Thin, day(6, 10), day(6, 10), 1100),
            (StepKind::Pick, day(6, 24), day(6, 24), 1250),
        ]
    );
}

fn place(bed: &str, first_strip: u32, strips: u32) -> Place {
    Place {
        bed: bed.into(),
        first_strip,
        strips,
    }
}

#[test]
fn the_plan_promises_four_years_of_five() {
    let plan = solved(&garden());
    let promise = &plan.promise;
    assert_eq!((promise.whole_dish_years, promise.weather_years), (4, 5));
    let [lettuce, radish] = promise.ingredients.as_slice() else {
        panic!("{promise:?}")
    };
    assert_eq!((lettuce.ready_years, radish.ready_years), (4, 4));
    let near = |got: f64, wanted: f64| (got - wanted).abs() < 1e-9;
    assert!(near(lettuce.low.0, 1.53), "{lettuce:?}");
    assert!(near(lettuce.expected.0, 2.295), "{lettuce:?}");
    assert!(near(radish.low.0, 1.53), "{radish:?}");
    assert!(near(radish.expected.0, 2.754), "{radish:?}");
}

#[test]
fn every_aim_has_the_value_that_was_found_by_hand() {
    let plan = solved(&garden());
    let by_hand = [
        (Aim::InThePot, 2.0),
        (Aim::WorstIngredient, 4.0),
        (Aim::AllIngredients, 8.0),
        (Aim::WholeDish, 4.0),
        (Aim::LeastGrownShare, 1.53 / 2.4),
        (Aim::ExpectedAmounts, 2.295 / 2.4 + 1.0),
        (Aim::Slack, 4.0),
        (Aim::Children, 0.0),
        (Aim::UnattendedDays, 7.0),
        (Aim::Evenness, 0.0),
        (Aim::Tidiness, 4.0),
    ];
    assert_eq!(plan.aims.len(), by_hand.len());
    for (result, (aim, value)) in plan.aims.iter().zip(by_hand) {
        assert_eq!(result.aim, aim);
        assert!(result.proved(), "{result:?}");
        assert!(
            (result.value - value).abs() < 1e-6,
            "{result:?}, by hand {value}"
        );
    }
}

#[test]
fn the_checker_agrees() {
    let garden = garden();
    let plan = solved(&garden);
    assert_eq!(checker::check(&garden, plan.clone()).unwrap().plan(), &plan);
}

/// A tenth fewer days: lettuce needs 247.7 degree-days, 24 plain days, radish 6 and 20 days; both
/// are ripe in time where they were, and in the cold year neither. A tenth more: lettuce needs
/// 302.7, 29 days, so it is ripe on 23 June, a day after its pick; radish, after 6 and 25 days,
/// on 27 June.
#[test]
fn packet_days_a_tenth_out() {
    let garden = garden();
    let checked = checker::check(&garden, solved(&garden)).unwrap();
    let out = &checked.replay().packet_days;
    let ready = |out: &DaysOut| [LETTUCE, RADISH].map(|at| out.ready_years(at.0));
    assert_eq!((ready(&out.fewer), out.fewer.dish_if_all), ([4, 4], 4));
    assert_eq!((ready(&out.more), out.more.dish_if_all), ([0, 0], 0));
    assert_eq!(out.more.ready, [[Err(Unready::NotRipe); 5]; 2]);
}

/// Without the fleece the frost year is lost: three years of five.
#[test]
fn fleece_is_worth_a_year() {
    let mut garden = garden();
    for bed in &mut garden.beds {
        bed.cover = None;
    }
    let plan = solved(&garden);
    assert_eq!(plan.promise.whole_dish_years, 3);
    assert_eq!(plan.promise.ingredients[0].ready_years, 3);
}
