//! The plan on one screen: never longer, whatever the garden; and nothing on it that the whole plan
//! says otherwise.

use tureen::checker::check;
use tureen::explain;
use tureen::garden::Garden;
use tureen::model::{Options, Outcome, solve};
use tureen::report::{plan, plan_in_short};

use super::plain;
use crate::random_gardens::make::{LARGER, TINY, garden};
use crate::scenarios::planned;

/// Texts as one line.
fn words(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Rounded, but never to all or to none where it is not so.
fn of_hundred(ready: usize, years: usize) -> usize {
    let share = (ready as f64 * 100.0 / years as f64 + 1e-9).round() as usize;
    match ready {
        0 => 0,
        ready if ready == years => 100,
        _ => share.clamp(1, 99),
    }
}

/// What a row of the table tells of ready years, before the kilograms at its end.
fn ready_of(line: &str) -> Option<&str> {
    let mut cells = line.split_whitespace().rev();
    let kilograms = cells.next()?;
    let is_figure = |c: char| c.is_ascii_digit() || c == '-' || c == '.';
    let ready = cells.next()?;
    let is_row = kilograms.chars().all(is_figure) && kilograms.contains('-');
    (is_row && ready.chars().all(|c| c.is_ascii_digit())).then_some(ready)
}

/// Lines of a terminal that are asked for, and its columns.
const SCREEN: (usize, u16) = (40, 80);

#[test]
fn the_scenarios_fit_on_a_screen_with_every_ingredient() {
    for (name, garden, checked) in planned() {
        let slack = explain::slack(garden, checked);
        let short = plan_in_short(garden, checked, &slack, None).text(plain(SCREEN.1.into()));
        assert!(short.lines().count() <= SCREEN.0, "{name}\n{short}");
        let widest = short.lines().map(|line| line.chars().count()).max();
        assert!(widest <= Some(SCREEN.1.into()), "{name}\n{short}");

        // One rule gives one answer: the verdict and each row's figures stand in the whole plan.
        let whole = words(&plan(garden, checked).text(plain(400)));
        let (_, verdict) = short.split_once("\n\n").unwrap();
        let (verdict, _) = verdict.split_once("\n\n").unwrap();
        let (sentence, _) = words(verdict).split_once(" On the rain date").map_or_else(
            || (words(verdict), String::new()),
            |(a, b)| (a.to_owned(), b.to_owned()),
        );
        assert!(whole.contains(&sentence), "{name}: {sentence}\n{whole}");
        let replay = checked.replay();
        for (at, ingredient) in garden.ingredients.iter().enumerate() {
            // Of fresh years in hundreds, of a record as they are; else of its own.
            let ready = match checked.unseen() {
                Some(unseen) if unseen.fresh => {
                    of_hundred(unseen.ingredients[at], unseen.years).to_string()
                }
                Some(unseen) => unseen.ingredients[at].to_string(),
                None => replay.ingredients[at].ready_years().to_string(),
            };
            let first = ingredient.name.split(' ').next().unwrap();
            let row = short
                .lines()
                .find(|line| line.contains(first) && ready_of(line) == Some(&ready));
            assert!(row.is_some(), "{name}: {first} {ready}\n{short}");
        }
        for heading in ["WHO GROWS WHAT", "DECIDE NEXT", "READ ON"] {
            assert!(short.contains(heading), "{name}: {heading}\n{short}");
        }
    }
}

/// Weak points, lessons without a second chance and decisions of soup-day, as a reader looks for them.
#[test]
fn what_fails_most_often_comes_first_and_cut_lists_say_how_much_is_left() {
    let (_, garden, checked) = planned()
        .iter()
        .find(|(name, ..)| *name == "soup-day")
        .unwrap();
    let slack = explain::slack(garden, checked);
    let short = plan_in_short(garden, checked, &slack, None).text(plain(80));
    let (_, hangs_on) = short.split_once("WHAT IT HANGS ON\n").unwrap();
    let mut ready: Vec<(usize, &str)> = garden
        .ingredients
        .iter()
        .zip(&checked.replay().ingredients)
        .map(|(ingredient, seen)| (seen.ready_years(), ingredient.name.as_str()))
        .collect();
    ready.sort_by_key(|(ready, _)| *ready);
    let (fewest, weakest) = ready[0];
    let failed = checked.replay().years.len() - fewest;
    let first = format!("{weakest} fails in {failed} of");
    assert!(words(hangs_on).starts_with(&first), "{first}\n{short}");

    let (_, decide) = short.split_once("DECIDE NEXT\n").unwrap();
    let (decide, _) = decide.split_once("\n\n").unwrap();
    let shown = decide.lines().filter(|l| l.starts_with("  by ")).count();
    let rest = words(decide.split_once("And ").unwrap().1);
    let rest: usize = rest.split(' ').next().unwrap().parse().unwrap();
    // The nurse, one line of orders, two gaps, the summer, the kitchen, one day of buying.
    assert_eq!(shown + rest, 7, "{short}");
}

/// Years in which each is ready, as a check of the shortest form: one row, one line of each list.
#[test]
fn random_gardens_fit_too() {
    let mut planned = 0;
    for seed in 0..24 {
        let size = if seed % 3 == 0 { &LARGER } else { &TINY };
        planned += usize::from(fits(&garden(seed, size)));
    }
    assert!(planned >= 12, "{planned}");
}

/// Where not all rows fit, those that fail most often are shown, and the others are counted.
#[test]
fn rows_are_cut_where_nothing_else_can_be() {
    let mut planned = planned().iter();
    let (_, garden, checked) = planned.find(|(name, ..)| *name == "nine-grades").unwrap();
    let slack = explain::slack(garden, checked);
    let mut long = garden.clone();
    long.name =
        "A name that fills a whole line of a screen and no more than one such line ".repeat(5);
    let short = plan_in_short(&long, checked, &slack, None).text(plain(SCREEN.1.into()));
    assert!(short.lines().count() <= SCREEN.0, "{short}");
    let (_, table) = short.split_once("WHO GROWS WHAT\n").unwrap();
    let shown: Vec<&str> = table.lines().filter_map(ready_of).collect();
    let rows = shown.len();
    let all = garden.ingredients.len();
    assert!((1..all).contains(&rows), "{short}");
    let rest = format!("And {} more, none ready less often", all - rows);
    assert!(words(table).contains(&rest), "{rest}\n{short}");
    let mut ready = checked.unseen().unwrap().ingredients.clone();
    ready.sort_unstable();
    for fewest in &ready[..rows] {
        let figure = of_hundred(*fewest, 1_000).to_string();
        assert!(shown.contains(&figure.as_str()), "{figure}\n{short}");
    }
}

fn fits(garden: &Garden) -> bool {
    let Outcome::Planned(plan) = solve(garden, &Options::default()) else {
        return false;
    };
    let checked = check(garden, plan).unwrap();
    let slack = explain::slack(garden, &checked);
    let short = plan_in_short(garden, &checked, &slack, None).text(plain(SCREEN.1.into()));
    assert!(short.lines().count() <= SCREEN.0, "{short}");
    true
}
