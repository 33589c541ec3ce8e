//! What the program says follows from figures, never from its own words: names that hold those words
//! change nothing but the names.

use tureen::checker::{CheckedPlan, check};
use tureen::explain::slack;
use tureen::facts::Facts;
use tureen::garden::Garden;
use tureen::report::entries::entries;
use tureen::report::handouts::all;
use tureen::words::sentence;
use tureen::words::step_names::step_names;
use tureen::words::view::View;

use super::{plain, tiny};
use crate::support::plans::tiny_plan;

/// Names that say what legends, titles and short forms look like, in the order of the real ones.
const NAMES: [(&str, &str); 2] = [
    ("bean", "again: no slack, no room. Order missed ?"),
    (
        "tomato",
        "thin later, not none: nothing is lost, as soon as you can",
    ),
];

/// The tiny garden with its plan, its ingredients called otherwise.
fn renamed() -> (Garden, CheckedPlan) {
    let (mut garden, _) = tiny();
    let mut plan = tiny_plan(&garden);
    let called = |name: &mut String| {
        let new = NAMES.iter().find(|(old, _)| old == name).unwrap();
        *name = new.1.to_owned();
    };
    garden
        .ingredients
        .iter_mut()
        .for_each(|i| called(&mut i.name));
    plan.plantings
        .iter_mut()
        .for_each(|p| called(&mut p.ingredient));
    let promises = plan.promise.ingredients.iter_mut();
    promises.for_each(|p| called(&mut p.ingredient));
    let checked = check(&garden, plan).unwrap();
    (garden, checked)
}

/// Every page and every entry of the calendars, a line each, without what the layout adds.
fn texts((garden, checked): &(Garden, CheckedPlan)) -> Vec<String> {
    let slack = slack(garden, checked);
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let pages = all(&view, &slack, None).into_iter();
    let mut texts: Vec<String> = pages
        .map(|handout| format!("{}\n{}", handout.title, handout.page.text(plain(4000))))
        .collect();
    let entries = entries(&view, &slack).into_iter();
    texts.extend(entries.map(|entry| format!("{}\n{}", entry.title, entry.lines.join("\n"))));
    let one_line = |text: &String| text.split_whitespace().collect::<Vec<_>>().join(" ");
    texts.iter().map(one_line).collect()
}

#[test]
fn names_that_hold_the_programs_own_words_change_nothing_but_the_names() {
    let called_back = |text: String| {
        NAMES.iter().fold(text, |text, (old, new)| {
            text.replace(new, old)
                .replace(&sentence(new), &sentence(old))
        })
    };
    let (mut planned, other) = (texts(&tiny()), texts(&renamed()));
    let mut other: Vec<String> = other.into_iter().map(called_back).collect();
    assert!(planned.len() >= 30, "{}", planned.len());
    // Entries of one day stand in the order of their keys, which hold the names.
    planned.sort();
    other.sort();
    for (planned, other) in planned.iter().zip(&other) {
        assert_eq!(planned, other);
    }
}

/// Hardening off goes with planting out, also where there are several days to pick.
#[test]
fn a_step_is_found_under_its_other_words_however_often_is_picked() {
    let (garden, checked) = tiny();
    let facts = Facts::new(&garden, &checked);
    let several = |ingredient: &str| {
        let mut plantings = facts.plantings_named(ingredient);
        plantings.next().unwrap().picks().count() > 1
    };
    let mut seen = 0;
    for step in step_names(&facts) {
        let names = &step.names;
        let also = |word: &str| names.contains(&format!("{} {word}", step.ingredient));
        if also("plant out") {
            assert!(also("plant") && also("harden off"), "{names:?}");
            seen += usize::from(several(&step.ingredient));
        }
    }
    assert!(seen > 0);
}
