//! Whole screens of the tiny garden, compared letter by letter with the kept ones.

use tureen::checker::check;
use tureen::explain::least_space;
use tureen::garden::GradeAt;
use tureen::model::Options;
use tureen::report;

use super::{plain, tiny};
use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

/// Compares with `report/snapshots/NAME.snap`.
pub fn compare(name: &str, text: &str) {
    let mut settings = insta::Settings::clone_current();
    settings.set_prepend_module_to_snapshot(false);
    settings.set_omit_expression(true);
    settings.bind(|| insta::assert_snapshot!(name, text));
}

#[test]
fn the_whole_plan() {
    let (garden, checked) = tiny();
    compare("plan", &report::plan(&garden, &checked).text(plain(100)));
}

#[test]
fn one_grade() {
    let (garden, checked) = tiny();
    let text = report::grade(&garden, &checked, GradeAt(1)).text(plain(100));
    compare("grade", &text);
}

#[test]
fn the_space() {
    let (garden, checked) = tiny();
    let least = least_space(&garden, &checked, &Options::default());
    let text = report::principal(&garden, &checked, &least).text(plain(100));
    compare("space", &text);
}

#[test]
fn what_was_understood() {
    compare(
        "understood",
        &report::understood(&tiny_garden()).text(plain(100)),
    );
}

#[test]
fn a_sound_plan() {
    let (garden, checked) = tiny();
    compare("sound", &report::sound(&garden, &checked).text(plain(100)));
}

#[test]
fn a_broken_plan() {
    let garden = tiny_garden();
    let mut plan = tiny_plan(&garden);
    plan.plantings[0].places[0].bed = "A".to_owned();
    plan.plantings[1].seeds = 1;
    plan.promise.whole_dish_years = 4;
    let violations = check(&garden, plan).unwrap_err();
    compare(
        "broken",
        &report::broken(&garden, &violations).text(plain(100)),
    );
}
