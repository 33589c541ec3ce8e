//! Beds turned over, as README.md of the scenario works them out by hand: from when on the strips are free, what
//! may follow on them, and who clears them.

use tureen::calendar::Date;
use tureen::candidates::{Candidates, DropReason};
use tureen::checker::{CheckedPlan, check};
use tureen::facts::no_plan::Hindrance;
use tureen::garden::{Garden, IngredientAt, Rotation};
use tureen::growth::{CropSeason, Light};
use tureen::model::{Outcome, Why};
use tureen::page::Look;
use tureen::plan::{Plan, StepKind};
use tureen::report;

use super::{load, outcome};
use crate::support::day;

const GARLIC: IngredientAt = IngredientAt(0);
const CARROT: IngredientAt = IngredientAt(1);
const POTATO: IngredientAt = IngredientAt(2);

fn garden() -> Garden {
    load("turned-over", "garden.toml")
}

fn planned(garden: &Garden, concession_years: u32) -> Plan {
    match outcome(garden, 60, concession_years) {
        Outcome::Planned(plan) => plan,
        other => panic!("{other:?}"),
    }
}

/// First day of a step, bed, first strip and strips of the planting of an ingredient.
fn seen(plan: &Plan, ingredient: &str, kind: StepKind) -> (Date, Date, String, u32) {
    let planting = plan.plantings.iter().find(|p| p.ingredient == ingredient);
    let planting = planting.unwrap();
    let steps = || planting.steps_of(kind);
    let first = steps().filter_map(|step| step.when.first()).min().unwrap();
    let last = steps().filter_map(|step| step.when.last()).max().unwrap();
    let [place] = planting.places.as_slice() else {
        panic!("{:?}", planting.places)
    };
    (first, last, place.bed.clone(), place.strips)
}

#[test]
fn garlic_is_ripe_on_4_june_and_in_the_late_year_on_12_june() {
    let garden = garden();
    let horizon = garden.horizon();
    let begun = horizon.day_number(day("2026-10-12")).unwrap();
    let light = Light::of(garden.latitude, horizon);
    let climate = garden.beds[0].microclimate();
    let years = garden.weather.years(horizon);
    let ripe = years.iter().map(|year| {
        let season = CropSeason::new(&garden[GARLIC].crop, climate, year, &light);
        let fate = season.begun(begun, false);
        assert_eq!(fate.up.map(|up| horizon.date(up)), Some(day("2026-10-26")));
        horizon.date(fate.ripe.unwrap())
    });
    let ripe: Vec<Date> = ripe.collect();
    // The year named by its autumn, 2023, holds the 29th of February.
    let [plain, leap, late] = ["2027-06-04", "2027-06-05", "2027-06-12"].map(day);
    assert_eq!(ripe, [plain, plain, leap, late, plain]);
}

#[test]
fn strips_are_free_when_garlic_and_rye_are_cleared() {
    let garden = garden();
    let found = Candidates::enumerate(&garden);
    let free: Vec<(usize, Option<Date>)> = found
        .plots
        .iter()
        .map(|plot| (plot.bed.0, plot.free_from))
        .collect();
    let (south, north) = (day("2027-06-16"), day("2027-05-03"));
    assert_eq!(free, [(0, Some(south)), (1, Some(north))]);
    let horizon = garden.horizon();
    let garlic = found.all.iter().filter(|c| c.ingredient == GARLIC);
    let mut cleared: Vec<(Date, u32)> = garlic
        .map(|c| (horizon.date(c.bed_days.1), c.ready.len()))
        .collect();
    cleared.sort_unstable();
    assert_eq!(
        cleared[..2],
        [(day("2027-06-15"), 4), (day("2027-06-22"), 5)]
    );
}

#[test]
fn potatoes_follow_garlic_and_carrots_follow_rye() {
    let garden = garden();
    for (given_back, pick, plant) in [
        (1, "2027-06-08", "2027-06-17"),
        (0, "2027-06-15", "2027-06-24"),
    ] {
        let plan = planned(&garden, given_back);
        let garlic = seen(&plan, "garlic", StepKind::Pick);
        assert_eq!(
            (garlic.1, garlic.2.as_str(), garlic.3),
            (day(pick), "South", 4)
        );
        let potato = seen(&plan, "potato", StepKind::Sow);
        assert_eq!(
            (potato.0, potato.2.as_str(), potato.3),
            (day(plant), "South", 3)
        );
        let carrot = seen(&plan, "carrot", StepKind::Sow);
        assert_eq!(
            (carrot.0, carrot.2.as_str(), carrot.3),
            (day("2027-05-05"), "North", 3)
        );
        let years = plan.promise.whole_dish_years;
        assert_eq!(years, 5 - given_back);
        assert!(check(&garden, plan).is_ok());
    }
}

/// Potatoes of the onion family, if there were any, could not follow garlic; nor could carrots that are a grass
/// follow rye.
#[test]
fn a_family_does_not_follow_what_stood_there() {
    for (at, family) in [(POTATO, "onion"), (CARROT, "grass")] {
        let mut garden = garden();
        garden.ingredients[at.0].crop.rotation = Rotation {
            family: family.to_owned(),
            years_hard: 3,
            years_wished: 4,
        };
        let Outcome::Impossible(found) = outcome(&garden, 60, 0) else {
            panic!("{family}")
        };
        assert!(
            found.proved && found.possible_together.len() == 2,
            "{found:?}"
        );
    }
}

/// Where the rye stays too long, the message says that something still stands there, and nothing of the sun.
#[test]
fn what_still_stands_is_told_as_what_is_in_the_way() {
    let mut garden = garden();
    for former in &mut garden.former {
        former.cleared = day("2027-09-01");
    }
    garden.begun[0].since = day("2027-02-22");
    let Outcome::Impossible(found) = outcome(&garden, 60, 0) else {
        panic!("carrots have no bed")
    };
    let carrot = found.left_out.iter().find(|out| out.ingredient == CARROT);
    let Why::NoWay { reasons } = &carrot.unwrap().why else {
        panic!("{found:?}")
    };
    assert!(
        reasons
            .iter()
            .any(|(reason, _)| *reason == DropReason::NotFreeYet),
        "{reasons:?}"
    );
    let page = report::no_plan(&garden, &Hindrance::of(&garden, &found)).text(Look {
        width: 100,
        color: false,
    });
    assert!(
        page.contains("what stood there before still takes every bed that suits it"),
        "{page}"
    );
    assert!(!page.contains("no bed suits it"), "{page}");
}

#[test]
fn the_pages_tell_who_clears_the_strips_and_what_comes() {
    let garden = garden();
    let checked: CheckedPlan = check(&garden, planned(&garden, 1)).unwrap();
    let look = Look {
        width: 1000,
        color: false,
    };
    let page = report::plan(&garden, &checked).text(look);
    for told in [
        "Bed South (strips 1 to 3): garlic leaves with its last pick, Tue 8 Jun. Clear the strips, add compost and \
         rake by Tue 15 Jun: 1a has a lesson free for it on Tue 15 Jun, else staff do it. Then comes potato, Thu 17 Jun.",
        "Bed North (strips 1 to 3): staff clear the rye on Mon 12 Apr; the ground rests and is raked by Fri 30 Apr. \
         Then comes carrot, Wed 5 May.",
    ] {
        assert!(page.contains(told), "{page}");
    }
    let understood = report::understood(&garden).text(look);
    let told = "All of bed North carries rye until it is cleared on Mon 12 Apr, and is free from Mon 3 May.";
    assert!(understood.contains(told), "{understood}");
}
