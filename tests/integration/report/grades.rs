//! Which grade grows what: where the file leaves it open, where the program chose, and where a
//! grade is young for it.

use tureen::checker::check;
use tureen::garden::{Ages, Garden, GradeAt};
use tureen::report;

use super::plain;
use crate::support::gardens::tiny_garden;
use crate::support::plans::{bare_plan, promise, tiny_bean, tiny_tomato};

/// The tiny garden in which either grade may grow the tomato.
fn open_garden() -> Garden {
    let mut garden = tiny_garden();
    garden.ingredients[1].teams = vec![GradeAt(0).into(), GradeAt(1).into()];
    garden
}

fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn a_valid_file_says_who_may_grow_what() {
    let mut garden = open_garden();
    let text = report::understood(&garden).text(plain(100));
    let line = |text: &str, name: &str| {
        let line = text.lines().find(|l| l.trim_start().starts_with(name));
        words(line.unwrap_or_default())
    };
    assert!(
        line(&text, "bean").starts_with("bean Grade 1 20 g"),
        "{text}"
    );
    assert!(
        line(&text, "tomato").starts_with("tomato any grade 40 g"),
        "{text}"
    );
    let third = garden.grades[0].clone();
    garden.grades.push(third);
    let text = report::understood(&garden).text(plain(100));
    assert!(
        line(&text, "tomato").starts_with("tomato Grade 1 or Grade 2 40 g"),
        "{text}"
    );
}

#[test]
fn a_plan_names_the_chosen_grades_and_says_once_that_they_are() {
    let garden = open_garden();
    let mut tomato = tiny_tomato();
    tomato.grades = vec!["2".to_owned()];
    let promises = vec![
        promise("bean", 2, 0.96, 1.44),
        promise("tomato", 3, 1.0, 2.0),
    ];
    let plan = bare_plan(&garden, vec![tiny_bean(), tomato], promises, 2);
    let checked = check(&garden, plan).unwrap();
    let text = words(&report::plan(&garden, &checked).text(plain(100)));
    let chosen = "The program chose the grade for tomato: the file leaves it open.";
    assert_eq!(text.matches(chosen).count(), 1, "{text}");
    assert!(text.contains("Grade 2 tomato"), "{text}");
    let ours = report::grade(&garden, &checked, GradeAt(1)).text(plain(100));
    assert!(ours.contains("we grow tomato"), "{ours}");
}

#[test]
fn a_grade_that_is_young_for_its_ingredient_is_told_of() {
    let mut garden = tiny_garden();
    garden.ingredients[0].crop.ages = Ages {
        sowing: Some(7),
        harvest: None,
    };
    let young = "Grade 1 is young for bean: by common practice children are 7 and older for it.";
    let said =
        |garden: &Garden| words(&report::understood(garden).text(plain(100))).contains(young);
    assert!(!said(&garden), "no age is given");
    garden.grades[0].age = Some(7);
    assert!(!said(&garden));
    garden.grades[0].age = Some(6);
    assert!(said(&garden));
}
