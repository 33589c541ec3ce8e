//! A saved plan whose project has changed since: what follows from the project is derived anew, every
//! rule is checked with that, and nothing is claimed of the aims any more.

use tureen::checker::{
    Changed, CheckedPlan, Difference, Fault, Named, Quantity, Refused, Standing, Subject, check,
    check_saved,
};
use tureen::garden::Garden;
use tureen::page::Look;
use tureen::plan::Plan;
use tureen::plan::saved::{self, Since};
use tureen::report;
use tureen::units::Minutes;

use crate::support::gardens::{bed, tiny_garden};
use crate::support::plans::tiny_plan;
use crate::support::weather::{daily, steady_years};

/// The tiny plan as it was saved, read again for a garden.
fn read_for(garden: &Garden) -> Result<CheckedPlan, Box<Refused>> {
    let before = tiny_garden();
    let text = saved::write(&before, &tiny_plan(&before));
    let (plan, since) = saved::read(&text).unwrap().for_garden(garden).unwrap();
    check_saved(garden, plan, since)
}

fn changed(standing: &Standing) -> &Changed {
    match standing {
        Standing::Changed(changed) => changed,
        other => panic!("{other:?}"),
    }
}

fn told(page: &tureen::page::Page) -> String {
    page.text(Look {
        width: 400,
        color: false,
    })
}

#[test]
fn a_plan_is_as_it_was_saved_while_nothing_changes() {
    let garden = tiny_garden();
    let checked = read_for(&garden).unwrap();
    assert_eq!(*checked.standing(), Standing::Saved);
    assert_eq!(*checked.plan(), tiny_plan(&garden));
    let text = told(&report::sound(&garden, &checked));
    assert!(text.contains("proved best when it was planned"), "{text}");
}

#[test]
fn one_child_more_makes_other_minutes_and_the_plan_still_stands() {
    let mut garden = tiny_garden();
    garden.grades[0].classes[0].children += 1;
    let checked = read_for(&garden).unwrap();
    // All figures are those of a plan that is made by hand for the new classes.
    let expected = tiny_plan(&garden);
    assert_eq!(checked.plan().plantings, expected.plantings);
    assert_eq!(checked.plan().promise, expected.promise);
    assert_eq!(checked.plan().aims, []);
    let before = tiny_plan(&tiny_garden());
    let steps = |plan: &Plan| plan.plantings[0].steps.clone();
    let moved = steps(&before).into_iter().zip(steps(&expected));
    let moved: Vec<(Minutes, Minutes)> = moved
        .map(|(was, is)| (was.minutes, is.minutes))
        .filter(|(was, is)| was != is)
        .collect();
    assert!(!moved.is_empty());
    let changed = changed(checked.standing());
    assert_eq!(changed.since, Since::ProjectChanged);
    let minutes = |d: &&Difference| d.what == Quantity::Minutes;
    let found = changed.differences.iter().filter(minutes);
    let mut found: Vec<_> = found.map(|d| (Minutes(d.was), Minutes(d.is))).collect();
    found.sort_by(|a, b| a.partial_cmp(b).unwrap());
    let mut moved = moved;
    moved.sort_by(|a, b| a.partial_cmp(b).unwrap());
    assert_eq!(found, moved);
    let text = told(&report::sound(&garden, &checked));
    let head =
        "The project has changed since this plan was made: plan again, or see what still holds.";
    assert!(text.contains(head) && text.contains(" -> "), "{text}");
    assert!(!text.contains("proved"), "{text}");
}

#[test]
fn lost_years_and_kilograms_come_first() {
    // No year of 19 C any more, and beans of half the weight.
    let mut garden = tiny_garden();
    garden.weather = steady_years(&[
        daily(10.0, 20.0),
        daily(10.0, 20.0),
        daily(6.0, 16.0),
        daily(6.0, 16.0),
        daily(8.5, 18.5),
    ]);
    let yields = &mut garden.ingredients[0].crop.yields;
    yields.expected = yields.expected * 0.9;
    garden.grades[0].classes[0].children += 1;
    let checked = read_for(&garden).unwrap();
    let all = &changed(checked.standing()).differences;
    let kinds: Vec<Quantity> = all.iter().map(|d| d.what).collect();
    let rank = |of| kinds.iter().position(|kind| *kind == of).unwrap();
    assert!(rank(Quantity::WeatherYears) < rank(Quantity::ExpectedKilograms));
    assert!(rank(Quantity::ExpectedKilograms) < rank(Quantity::Minutes));
    let weather = &all[rank(Quantity::WeatherYears)];
    assert_eq!(
        (&weather.of, weather.was, weather.is),
        (&Subject::Dish, 4.0, 5.0)
    );
}

#[test]
fn what_no_figure_shows_still_ends_the_claims() {
    // With one more bed there may be a better plan.
    let mut garden = tiny_garden();
    garden.beds.push(bed("C", 8, 0));
    let checked = read_for(&garden).unwrap();
    assert_eq!(changed(checked.standing()).differences, []);
    assert_eq!(checked.plan().aims, []);
    let text = told(&report::sound(&garden, &checked));
    assert!(text.contains("All its figures still hold"), "{text}");
    assert!(!text.contains("proved"), "{text}");
}

#[test]
fn rules_are_checked_with_the_new_figures_alone() {
    // The bean's sowing takes 10.15 minutes.
    let mut garden = tiny_garden();
    garden.grades[0].classes[0].children += 1;
    garden.grades[0].classes[0].slots[0].minutes = Minutes(10.1);
    let refused = read_for(&garden).unwrap_err();
    assert!(!changed(&refused.standing).differences.is_empty());
    let overfull =
        |fault: &Fault| matches!(fault, Fault::SessionOverfull { class, .. } if class == "1a");
    assert!(!refused.violations.is_empty());
    assert!(
        refused.violations.iter().all(|v| overfull(&v.fault)),
        "{refused:#?}"
    );
    let text = told(&report::refused(&garden, &refused));
    assert!(
        text.starts_with("The project has changed since this plan was made"),
        "{text}"
    );
    assert!(text.contains("The plan breaks the rules in"), "{text}");
}

#[test]
fn names_that_are_gone_are_told_and_nothing_else() {
    let mut garden = tiny_garden();
    garden.grades[0].classes[0].name = "1c".to_owned();
    garden.beds[1].id = "BB".to_owned();
    let refused = read_for(&garden).unwrap_err();
    let gone: Vec<_> = refused.violations.iter().map(|v| v.fault.clone()).collect();
    let unknown = |kind, name: &str| Fault::Unknown {
        kind,
        name: name.to_owned(),
    };
    assert_eq!(
        gone,
        [unknown(Named::Bed, "B"), unknown(Named::Class, "1a")]
    );
    let text = told(&report::refused(&garden, &refused));
    assert!(
        text.contains("bed \"B\"") && text.contains("class \"1a\""),
        "{text}"
    );
}

#[test]
fn figures_of_another_program_are_derived_anew_too() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[0].seeds += 1;
    let checked = check_saved(&garden, plan.clone(), Since::Nothing).unwrap();
    let changed = changed(checked.standing());
    assert_eq!(changed.since, Since::Nothing);
    assert_eq!(changed.differences.len(), 1);
    assert_eq!(checked.plan().plantings, tiny_plan(&garden).plantings);
    // An edited file is taken at its word, and refused with what to write instead.
    let refused = check_saved(&garden, plan, Since::Edited).unwrap_err();
    assert_eq!(refused.standing, Standing::Edited);
    let text = told(&report::refused(&garden, &refused));
    assert!(
        text.contains("in seeds (pieces, bought plants) the plan says"),
        "{text}"
    );
    assert!(text.contains("write the right one into the file"), "{text}");
}

#[test]
fn what_is_derived_anew_keeps_the_rules_as_a_new_plan_does() {
    // Of many changes to the project each plan that still stands passes as if it were new.
    let changes: [fn(&mut Garden); 8] = [
        |g| g.grades[0].classes[1].children += 5,
        |g| g.grades[1].classes[0].children -= 3,
        |g| g.feast.portions -= 10,
        |g| g.ingredients[0].crop.yields.usable.0 = 0.9,
        |g| g.ingredients[0].each_child_sows = 2,
        |g| g.ingredients[0].crop.germinates.0 = 0.5,
        |g| g.ingredients[1].crop.ripening.days_from_planting = Some(35.0),
        |g| g.beds[0].grew.clear(),
    ];
    for (k, change) in changes.iter().enumerate() {
        let mut garden = tiny_garden();
        change(&mut garden);
        let checked = read_for(&garden).unwrap_or_else(|refused| panic!("{k}: {refused:#?}"));
        let again = check(&garden, checked.plan().clone()).unwrap();
        assert_eq!(again.replay(), checked.replay(), "{k}");
        changed(checked.standing());
    }
}
