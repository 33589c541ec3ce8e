//! Who grows what where only one way works, reasoned by hand: a grade whose class begins in
//! May can grow radish in time, but not beans.

use chrono::Weekday;
use tureen::candidates::Candidates;
use tureen::checker::check;
use tureen::facts::no_plan::Hindrance;
use tureen::garden::{Garden, GradeAt};
use tureen::model::{Options, Outcome, Pressure, solve, widen};
use tureen::page::Look;
use tureen::plan::{Aim, AimResult};
use tureen::report;

use crate::support::crops::sown_crop;
use crate::support::day as date;
use crate::support::gardens::{class, grade, ingredient, tiny_garden};

/// The tiny garden with beans (60 days at 15 C) and radish (25 days). Class 1a meets from
/// March on, class 2a from 3 May: at 15 C its radish is ripe on 28 May; beans would be on
/// 2 July, and even at 19 C, where days count 4/3, on 17 June. The feast is on 11 June.
fn garden(bean: &[usize], radish: &[usize]) -> Garden {
    let mut garden = tiny_garden();
    let monday = |name, from| class(name, 10, Weekday::Mon, 1, date(from));
    garden.grades = vec![
        grade("1", vec![monday("1a", "2027-03-01")]),
        grade("2", vec![monday("2a", "2027-05-03")]),
    ];
    let crop = |name, days, grades: &[usize]| {
        let mut crop = ingredient(sown_crop(name, days), GradeAt(0), 10.0);
        crop.teams = grades.iter().map(|grade| GradeAt(*grade).into()).collect();
        crop
    };
    garden.ingredients = vec![crop("bean", 60.0, bean), crop("radish", 25.0, radish)];
    garden
}

/// The grades of bean and radish; nothing if there is no plan.
fn grown_by(garden: &Garden) -> Option<[String; 2]> {
    match solve(garden, &Options::default()) {
        Outcome::Planned(plan) => {
            assert!(plan.aims.iter().all(|aim| aim.proved()), "{:?}", plan.aims);
            let checked = check(garden, plan).expect("a plan that keeps the rules");
            let plantings = checked.plan().plantings.iter();
            let grades: Vec<String> = plantings.map(|p| p.grades.concat()).collect();
            Some(grades.try_into().expect("two plantings"))
        }
        Outcome::Impossible(_) => None,
        other => panic!("{other:?}"),
    }
}

#[test]
fn the_grade_that_begins_late_grows_what_is_quick() {
    let only_way = Some(["1".to_owned(), "2".to_owned()]);
    assert_eq!(grown_by(&garden(&[0, 1], &[0, 1])), only_way);
    assert_eq!(grown_by(&garden(&[0], &[0, 1])), only_way);
    assert_eq!(grown_by(&garden(&[0], &[1])), only_way);
    assert_eq!(grown_by(&garden(&[1], &[0])), None);
    assert_eq!(grown_by(&garden(&[1], &[0, 1])), None);
    // By the file's own word one grade may grow both, and the other nothing.
    let both = Some(["1".to_owned(), "1".to_owned()]);
    assert_eq!(grown_by(&garden(&[0], &[0])), both);
}

/// The grade that begins late must grow something, but beans are all there is.
#[test]
fn a_grade_for_which_nothing_works_is_named() {
    let mut garden = garden(&[0, 1], &[0, 1]);
    garden.ingredients[1] = garden.ingredients[0].clone();
    garden.ingredients[1].name = "more beans".to_owned();
    let Outcome::Impossible(why) = solve(&garden, &Options::default()) else {
        panic!("a plan")
    };
    let grades = Pressure::Grades {
        wanted: 2,
        can: 1,
        without: vec![GradeAt(1)],
    };
    assert_eq!(why.pressure, [grades]);
    assert_eq!(why.possible_together.len(), 1);
    let look = Look {
        width: 100,
        color: false,
    };
    let text = report::no_plan(&garden, &Hindrance::of(&garden, &why)).text(look);
    let line = "Grades: 2 must grow something, as many as can by the file, but something works for 1 \
                only; nothing works for Grade 2.";
    let text = text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(text.contains(line), "{text}");
}

/// Values and bounds, as results of the first aims in their order.
fn results(of: &[(f64, f64)]) -> Vec<AimResult> {
    let aims = Aim::ALL.into_iter().filter(|aim| !aim.is_about_dates());
    let aims = aims.zip(of);
    aims.map(|(aim, (value, bound))| AimResult {
        aim,
        value: *value,
        bound: *bound,
    })
    .collect()
}

/// The bounds of a plan with fixed grades, once they hold for all grades. Its own are as its
/// values, so without a change every aim would be called proved.
fn bounds(known: &[(f64, f64)], values: &[f64]) -> Vec<f64> {
    let garden = garden(&[0, 1], &[0, 1]);
    let all = Candidates::enumerate(&garden);
    let own: Vec<_> = values.iter().map(|value| (*value, *value)).collect();
    let mut aims = results(&own);
    widen(&garden, &all, &results(known), &mut aims);
    aims.iter().map(|aim| aim.bound).collect()
}

#[test]
fn a_bound_is_believed_only_as_long_as_the_plan_is_as_good_as_it_was_with_all_grades() {
    // In the pot, worst ingredient, all ingredients, whole dish, least share, amounts, slack.
    let values = [2.0, 2.0, 5.0, 2.0, 0.5, 1.0, 4.0];
    let known = [(2.0, 2.0), (2.0, 3.0), (5.0, 5.0), (2.0, 2.0)];
    // Whoever grows them, radish is ready in all four years, beans in three.
    let (beans, radish) = (3.0, 4.0);
    // Nobody proved anything of the aims that follow: all of every ingredient, and no step.
    let beyond = [1.0, 2.0, 0.0];
    let same = bounds(&known, &values);
    assert_eq!(same[..4], [2.0, 3.0, 5.0, 2.0]);
    assert_eq!(same[4..], beyond);
    // With other grades the worst ingredient could be ready more often. What was proved of the
    // aims after it was proved under that, and says nothing of this plan, even where it is as good.
    let mut better = known;
    better[1] = (3.0, 3.0);
    let worse = bounds(&better, &values);
    assert_eq!(worse[..4], [2.0, 3.0, beans + radish, beans]);
    assert_eq!(worse[4..], beyond);
    // A plan is itself a witness, whatever was thought possible.
    assert_eq!(bounds(&[(2.0, 2.0), (1.0, 1.0)], &values)[1], 2.0);
}

#[test]
fn beans_are_ready_in_three_of_four_years_and_radish_in_all() {
    let garden = garden(&[0, 1], &[0, 1]);
    let all = Candidates::enumerate(&garden);
    let most = |ingredient| {
        let own = all.all.iter().filter(|c| c.ingredient.0 == ingredient);
        own.map(|c| c.ready.len()).max()
    };
    assert_eq!([most(0), most(1)], [Some(3), Some(4)]);
}
