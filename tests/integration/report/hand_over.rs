//! A grade that leaves hands its plantings to another, whose page then shows them.

use tureen::checker::{CheckedPlan, check};
use tureen::garden::{Garden, GradeAt, HandOver};
use tureen::plan::StepKind;
use tureen::report;
use tureen::units::Minutes;

use super::plain;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{sessions, tiny_plan};

/// The tiny garden, in which grade 2 leaves on 24 May and grade 1 picks its tomato in one
/// round after that. It is ripe then in the year of 19 C alone, and keeps until the feast if it
/// keeps for 30 days; these tests are about who does what.
pub fn handed_over() -> (Garden, CheckedPlan) {
    let mut garden = tiny_garden();
    garden.school_year.moves_up = Some(day("2027-05-24"));
    garden.grades[1].hand_over = HandOver::Leaves {
        adopter: GradeAt(0),
    };
    garden.ingredients[1].crop.picking.storage_days = 30;
    let mut plan = tiny_plan(&garden);
    let tomato = &mut plan.plantings[1];
    tomato.steps.truncate(4);
    let mut pick = sessions(
        StepKind::Pick,
        &[("1a", "2027-05-25"), ("1b", "2027-05-27")],
    );
    // Ten minutes around the work, and half a minute for each of 4 plants among 40 children.
    pick.minutes = Minutes(10.05);
    tomato.steps.push(pick);
    plan.aims.clear();
    plan.promise.ingredients[1].ready_years = 1;
    plan.promise.whole_dish_years = 1;
    let checked = check(&garden, plan).unwrap();
    (garden, checked)
}

#[test]
fn the_grade_that_takes_over_sees_only_what_comes_after() {
    let (garden, checked) = handed_over();
    let page = report::grade(&garden, &checked, GradeAt(0)).text(plain(100));
    assert!(
        page.contains("Taken over from Grade 2: tomato, bed A"),
        "{page}"
    );
    assert!(page.contains("Pick: tomato"), "{page}");
    assert!(!page.contains("Plant out: tomato"), "{page}");
}

#[test]
fn the_plan_says_who_takes_over_and_who_then_picks() {
    let (garden, checked) = handed_over();
    let page = report::plan(&garden, &checked).text(plain(160));
    assert!(
        page.contains("Grade 2: from Mon 24 May, when the grades move up, Grade 1 takes over."),
        "{page}"
    );
    assert!(
        page.contains("The children then in Grade 1: pick tomato, after moving up on Mon 24 May."),
        "{page}"
    );
}
