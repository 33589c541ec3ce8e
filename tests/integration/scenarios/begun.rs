//! The two beds, planned again when the lettuce is up: what README.md works out by hand for its sowing holds
//! for the seedlings, but that nothing is sown.

use std::time::Duration;

use tureen::catalogue::Catalogue;
use tureen::checker::CheckedPlan;
use tureen::deadline::Deadline;
use tureen::garden::{Garden, GradeAt};
use tureen::model::Options;
use tureen::page::Look;
use tureen::pipeline::plan;
use tureen::plan::{Planting, StepKind};
use tureen::{project, report};

use super::text;

/// The two beds from 19 April on, with so many lettuce seedlings, sown on 13 April.
fn planned(count: u32) -> (Garden, CheckedPlan) {
    let file = text("two-beds", "garden.toml");
    let start = "start = 2027-04-12";
    let sown = "each_child_sows = 2\nmethod = \"indoor\"\n";
    assert!(file.contains(start) && file.contains(sown));
    let file = file.replace(start, "start = 2027-04-19").replace(sown, "");
    let seedlings = format!(
        "\n[[seedlings]]\ncrop = \"lettuce (leaf)\"\ncount = {count}\nsown = 2027-04-13\nfor = \"lettuce\"\n"
    );
    let weather = text("two-beds", "weather.csv");
    let catalogue = Catalogue::load().unwrap();
    let garden = project::load_text(
        "garden.toml",
        &(file + &seedlings),
        Some(&weather),
        &catalogue,
    )
    .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)));
    let options = Options::until(Deadline::after(Duration::from_secs(30)));
    let checked = plan(&garden, &options).unwrap();
    (garden, checked)
}

fn lettuce(checked: &CheckedPlan) -> &Planting {
    let mut plantings = checked.plan().plantings.iter();
    plantings.find(|p| p.ingredient == "lettuce").unwrap()
}

fn first_days(planting: &Planting) -> Vec<(StepKind, String)> {
    let steps = planting.steps.iter();
    steps
        .map(|step| (step.kind, step.when.first().unwrap().to_string()))
        .collect()
}

#[test]
fn seedlings_go_on_as_the_sowing_was_planned() {
    let (_, checked) = planned(40);
    let lettuce = lettuce(&checked);
    let days = [
        (StepKind::Harden, "2027-05-18"),
        (StepKind::PlantOut, "2027-05-25"),
        (StepKind::Pick, "2027-06-22"),
    ];
    let days = days.map(|(kind, day)| (kind, day.to_owned()));
    assert_eq!(first_days(lettuce), days);
    assert_eq!((lettuce.plants, lettuce.seeds), (36, 0));
    assert_eq!(lettuce.places.len(), 1);
    assert_eq!(
        (lettuce.places[0].bed.as_str(), lettuce.places[0].strips),
        ("B", 4)
    );
    // A flat of 72 cells holds them from the first day of the plan to the week of planting out.
    let flats = &checked.replay().flats_by_week;
    assert_eq!(flats[..7], [1, 1, 1, 1, 1, 1, 0]);
    assert_eq!(checked.replay().whole_dish_years(), 4);
}

#[test]
fn no_more_are_planted_than_there_are() {
    // A block is 18: of 35 seedlings one fits.
    let (_, checked) = planned(35);
    assert_eq!(lettuce(&checked).plants, 18);
}

/// What people read of it: the grade's own page, and what is ordered.
#[test]
fn pages_tell_of_seedlings() {
    let (garden, checked) = planned(40);
    let look = Look {
        width: 100,
        color: false,
    };
    let grade = report::grade(&garden, &checked, GradeAt(0)).text(look);
    let understood = report::understood(&garden).text(look);
    let plan = report::plan(&garden, &checked).text(look);
    assert!(
        understood.contains("40 seedlings on the shelf"),
        "{understood}"
    );
    assert!(!plan.contains("lettuce seeds"), "{plan}");
    let mut settings = insta::Settings::clone_current();
    settings.set_snapshot_path("../snapshots");
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!("begun-seedlings", grade + &plan));
}
