//! What is to be decided, by when, and what must be said with it.

use tureen::checker::check;
use tureen::garden::{Fallback, Garden};
use tureen::plan::Aim;
use tureen::report;

use super::plain;
use crate::support::day;
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

fn screen(garden: &Garden) -> String {
    let checked = check(garden, tiny_plan(garden)).unwrap();
    report::plan(garden, &checked).text(plain(160))
}

#[track_caller]
fn expect(text: &str, part: &str) {
    assert!(text.contains(part), "\"{part}\" is missing in\n{text}");
}

#[test]
fn seed_is_ordered_two_weeks_before_it_is_sown() {
    // The tomato is first sown on Monday 8 March, the bean on Tuesday 16 March.
    let garden = tiny_garden();
    let seeds = tiny_plan(&garden)
        .plantings
        .iter()
        .map(|p| p.seeds)
        .collect::<Vec<_>>();
    let text = screen(&garden);
    expect(
        &text,
        &format!("by Mon 22 Feb  Order {} tomato seeds.", seeds[1]),
    );
    expect(
        &text,
        &format!("by Tue 2 Mar   Order {} bean seeds.", seeds[0]),
    );
}

#[test]
fn the_nurse_is_asked_before_anything_is_ordered() {
    let mut garden = tiny_garden();
    garden.ingredients[0].crop.caution.allergen = Some("celery".to_owned());
    let text = screen(&garden);
    let nurse = text.find("Ask the school nurse about celery (bean)");
    let order = text.find("Order ");
    assert!(nurse.is_some() && nurse < order, "{text}");
}

#[test]
fn a_bought_substitute_has_its_day_and_cost() {
    let mut garden = tiny_garden();
    garden.ingredients[1].fallback = Some(Fallback {
        buy_by: day("2027-06-07"),
        cost: Some(9.0),
    });
    expect(
        &screen(&garden),
        "by Mon 7 Jun   Look at the tomato: if it has failed, buy it, for about 9.00.",
    );
}

#[test]
fn a_plan_with_an_open_bound_says_so() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    for aim in plan.aims.iter_mut().filter(|a| a.aim == Aim::WholeDish) {
        aim.bound = 3.0;
    }
    let checked = check(&garden, plan).unwrap();
    let text = report::plan(&garden, &checked).text(plain(160));
    expect(
        &text,
        "; the best plan found; at most 3 years are possible.",
    );
    assert!(!text.contains("proved best."), "{text}");
}

#[test]
fn a_plan_without_aims_claims_nothing() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.aims.clear();
    let checked = check(&garden, plan).unwrap();
    let text = report::plan(&garden, &checked).text(plain(160));
    expect(
        &text,
        "The whole dish is ready in 2 of 4 past years, so expect it in 0 to 4 of 4 more.",
    );
    assert!(!text.contains("best"), "{text}");
}
