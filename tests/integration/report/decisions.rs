//! What is to be decided, by when, and what must be said with it.

use tureen::checker::check;
use tureen::facts::Facts;
use tureen::facts::decisions::Topic;
use tureen::facts::entries::About;
use tureen::garden::{Care, Fallback, Garden};
use tureen::plan::Aim;
use tureen::report;
use tureen::report::entries::entries;
use tureen::words::view::View;

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

/// The tiny garden with its break on other days, in which somebody cares.
fn break_of(care: Care, from: &str, to: &str) -> String {
    let mut garden = tiny_garden();
    let pause = &mut garden.school_year.breaks[0];
    (pause.care, pause.from, pause.to) = (care, day(from), day(to));
    screen(&garden)
}

/// The break is asked about two weeks ahead: on Monday 22 March.
#[test]
fn whoever_cares_in_a_break_signs_the_watering_list() {
    let asked = |who: &str| {
        format!(
            "by Mon 22 Mar  Fill the watering list of {who} for Spring break (Mon 5 Apr to Fri 9 Apr)."
        )
    };
    let text = |care| break_of(care, "2027-04-05", "2027-04-09");
    expect(&text(Care::Staff), &asked("staff"));
    expect(&text(Care::Families), &asked("families"));
    assert!(!text(Care::Nobody).contains("watering list of"));
}

/// The first seed is sown on 8 March, the last harvest picked on 7 June.
#[test]
fn nobody_is_asked_for_a_break_in_which_nothing_stands() {
    for (from, to) in [("2027-03-01", "2027-03-05"), ("2027-06-08", "2027-06-18")] {
        let text = break_of(Care::Staff, from, to);
        assert!(!text.contains("watering list of"), "{text}");
    }
    // A bean pick falls on 25 and 27 May, a tomato pick on 31 May: between them something stands.
    let text = break_of(Care::Staff, "2027-05-28", "2027-05-28");
    expect(
        &text,
        "Fill the watering list of staff for Spring break (Fri 28 May).",
    );
}

/// Two weeks before Saturday 3 April is a Saturday; two before Monday 8 March is a Monday, which
/// is a day off here; the Friday before the first term is at work.
#[test]
fn deadlines_fall_on_days_of_school() {
    let mut garden = tiny_garden();
    garden.ingredients[1].fallback = Some(Fallback {
        buy_by: day("2027-06-06"),
        cost: None,
    });
    let text = screen(&garden);
    expect(
        &text,
        "by Fri 19 Mar  Name someone who waters: Sat 3 Apr to Sun 11 Apr",
    );
    expect(&text, "by Fri 4 Jun   Look at the tomato");
    garden.school_year.days_off = vec![day("2027-03-19"), day("2027-06-04")];
    let text = screen(&garden);
    expect(
        &text,
        "by Thu 18 Mar  Name someone who waters: Sat 3 Apr to Sun 11 Apr",
    );
    expect(&text, "by Thu 3 Jun   Look at the tomato");
    let year = &garden.school_year;
    let until = |from: &str| year.school_day_until(day(from));
    assert_eq!(until("2027-03-01"), day("2027-03-01"));
    assert_eq!(until("2027-02-28"), day("2027-02-26"));
    assert_eq!(until("2027-02-24"), day("2027-02-24"));
    assert_eq!(until("2027-04-09"), day("2027-04-02"));
    assert_eq!(until("2027-08-01"), day("2027-06-18"));
}

#[test]
fn a_plan_with_an_open_bound_says_so() {
    let garden = tiny_garden();
    let with_open = |open: &[Aim]| {
        let mut plan = tiny_plan(&garden);
        for aim in plan.aims.iter_mut().filter(|a| open.contains(&a.aim)) {
            aim.bound = 3.0;
        }
        let checked = check(&garden, plan).unwrap();
        report::plan(&garden, &checked).text(plain(160))
    };
    let text = with_open(&[Aim::WorstIngredient, Aim::WholeDish]);
    expect(
        &text,
        "; the best plan found, not proved best; at most 3 years are possible.",
    );
    assert!(!text.contains("; proved best."), "{text}");
    // The worst ingredient is proved to be ready in two years at most, and so is the dish.
    expect(&with_open(&[Aim::WholeDish]), "; proved best.");
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
        "The whole dish is ready in 2 of 4 past years: too few to say more.",
    );
    assert!(!text.contains("best"), "{text}");
}

/// A short form that was cut out of the long one lost what came after a colon in a name.
#[test]
fn the_title_of_a_decision_holds_the_whole_name_whatever_is_in_it() {
    let mut garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    let called = |name: &str| format!("{name}: the long one. Early");
    for ingredient in &mut garden.ingredients {
        ingredient.name = called(&ingredient.name);
    }
    for planting in &mut plan.plantings {
        planting.ingredient = called(&planting.ingredient);
    }
    for promise in &mut plan.promise.ingredients {
        promise.ingredient = called(&promise.ingredient);
    }
    let pause = &mut garden.school_year.breaks[0];
    (pause.care, pause.name) = (Care::Staff, called("Spring"));
    let checked = check(&garden, plan).unwrap();
    let facts = Facts::new(&garden, &checked);
    let mut named = 0;
    for entry in entries(&View::of(&facts), &[]) {
        let About::Decision(decision) = entry.entry.about else {
            continue;
        };
        let name = match &decision.topic {
            Topic::Order(order) => &order.ingredient.name,
            Topic::Break(pause) => &pause.name,
            Topic::Buy { ingredient, .. } => &ingredient.name,
            Topic::Nurse | Topic::Kitchen | Topic::Gap(_) => continue,
        };
        assert!(entry.title.contains(name.as_str()), "{}", entry.title);
        assert!(decision.topic.key().ends_with(name.as_str()));
        named += 1;
    }
    assert_eq!(named, 3);
}
