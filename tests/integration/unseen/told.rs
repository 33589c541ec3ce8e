//! What is told of it: the same number on every screen, page and file, and less where there are few years.

use std::fmt::Write;
use std::time::Duration;

use chrono::Datelike;
use tureen::calendar::days_between;
use tureen::checker::check_saved;
use tureen::deadline::Deadline;
use tureen::explain::{OtherDay, Trial};
use tureen::facts::Facts;
use tureen::facts::verdict::CountedOn;
use tureen::garden::Garden;
use tureen::model::Options;
use tureen::pipeline::{self, plan};
use tureen::plan::saved::Since;
use tureen::report;

use super::on_mixed;
use crate::cli::Folder;
use crate::cli::trials::two_beds;
use crate::report::plain;
use crate::support::day;

/// Mean temperatures of twelve years; in those of 12 C nothing is ripe in time.
const MEANS: [f64; 12] = [
    15.0, 12.0, 13.0, 13.0, 18.0, 12.0, 14.5, 16.0, 15.0, 15.0, 14.0, 12.0,
];

/// The smallest scenario on a record of twelve years, each with the same weather on all its days.
fn on_twelve_years(name: &str) -> Folder {
    let folder = two_beds(name, str::to_owned);
    let mut table = "date,tmin_c,tmax_c,rain_mm\n".to_owned();
    for date in days_between(day("2011-01-01"), day("2022-12-31")) {
        let mean = MEANS[(date.year() - 2011) as usize];
        writeln!(table, "{date},{:.1},{:.1},0.0", mean - 5.0, mean + 5.0).unwrap();
    }
    std::fs::write(folder.path("weather.csv"), table).unwrap();
    folder
}

fn json(text: &str) -> serde_json::Value {
    serde_json::from_str(text).unwrap()
}

/// A text on one line, without marks of a page.
fn on_one_line(text: &str) -> String {
    let text = text.replace("&nbsp;", " ").replace('\u{a0}', " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_screen_page_and_file_tells_the_same_number() {
    let folder = on_twelve_years("unseen-told");
    let short = folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let saved = json(&folder.read("plan.json"));
    let unseen = &saved["plan"]["unseen"];
    let (dish, own) = (
        unseen["whole-dish-years"].as_u64().unwrap(),
        saved["plan"]["promise"]["whole-dish-years"]
            .as_u64()
            .unwrap(),
    );
    assert!(dish < own, "{dish} of {own} would tell nothing apart");

    let sentence = format!(
        "The whole dish is ready in {dish} of 12 past years that plans made the same way had not seen, so \
         expect it in "
    );
    let behind = format!("In the 12 past years that it was made for: {own}; proved best");
    let mut said = vec![("plan".to_owned(), short)];
    for arguments in [
        &["plan", "garden.toml", "--all"][..],
        &["show", "garden.toml"],
        &["show", "garden.toml", "--all"],
        &["show", "garden.toml", "--space"],
        &["verify", "garden.toml", "plan.json"],
        &["why", "garden.toml"],
    ] {
        said.push((arguments.join(" "), folder.answer(arguments)));
    }
    for page in ["index.html", "principal.html", "kitchen.html"] {
        said.push((page.to_owned(), folder.read(&format!("out/{page}"))));
    }
    for (what, text) in &said {
        let text = on_one_line(text);
        for part in [&sentence, &behind] {
            assert!(text.contains(part), "{what}: {part} is missing in\n{text}");
        }
        assert_eq!(
            text.matches("The whole dish is ready in").count(),
            text.matches(&sentence).count()
        );
    }
    let days = folder.answer(&["days", "garden.toml"]);
    let row = days.lines().find(|line| line.contains("25 Jun*")).unwrap();
    assert!(row.contains(&format!(" {dish} of 12 ")), "{days}");
    assert!(
        on_one_line(&days).contains("past years, each with a plan that was not made for it,"),
        "{days}"
    );
    let tried = folder.answer(&["try", "garden.toml", "--set", "shelf.flats=2"]);
    let told = on_one_line(&tried);
    assert!(
        told.contains(&format!("hole dish ready {dish} of 12")),
        "{tried}"
    );
}

#[test]
fn the_data_tell_it_of_the_dish_and_of_each_ingredient() {
    let folder = on_twelve_years("unseen-data");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let unseen = &json(&folder.read("plan.json"))["plan"]["unseen"];
    let data = json(&folder.read("out/plan-data.json"));
    let verdict = &data["verdict"];
    assert_eq!(verdict["unseen_years"], 12);
    assert_eq!(
        verdict["whole_dish_ready_unseen_years"],
        unseen["whole-dish-years"]
    );
    assert_eq!(verdict["weather_years"], 12);
    assert!(verdict["expect_at_most_years"].is_u64());
    let said = unseen["ingredients"].as_array().unwrap();
    let told = data["ingredients"].as_array().unwrap();
    assert_eq!((said.len(), told.len()), (2, 2));
    for (said, told) in said.iter().zip(told) {
        assert_eq!(said["ingredient"], told["name"]);
        assert_eq!(said["ready-years"], told["ready_unseen_years"]);
        let grade = told["grades"][0].as_str().unwrap();
        let page = folder.answer(&["show", "garden.toml", "--grade", grade]);
        let part = format!("ready in {} of 12 past years", said["ready-years"]);
        assert!(on_one_line(&page).contains(&part), "{part}: {page}");
    }
}

/// The whole screen of a plan of the tiny garden, on one line.
fn screen(garden: &Garden, checked: &tureen::checker::CheckedPlan) -> String {
    on_one_line(&report::plan(garden, checked).text(plain(160)))
}

#[test]
fn what_is_said_hangs_on_the_number_of_years() {
    let (nothing, guess) = ("too few to say more", "this is little more than a guess");
    for (years, says_nothing, guesses) in [
        (3, true, false),
        (4, true, false),
        (5, false, true),
        (9, false, true),
        (10, false, false),
        (12, false, false),
    ] {
        let garden = on_mixed(years);
        let checked = plan(&garden, &Options::default()).unwrap();
        let text = screen(&garden, &checked);
        assert_eq!(text.contains(nothing), says_nothing, "{years}: {text}");
        assert_eq!(
            text.contains("says next to nothing"),
            says_nothing,
            "{years}: {text}"
        );
        assert_eq!(
            text.contains("so expect it in"),
            !says_nothing,
            "{years}: {text}"
        );
        assert_eq!(
            text.contains("prediction interval"),
            !says_nothing,
            "{years}: {text}"
        );
        assert_eq!(text.contains(guess), guesses, "{years}: {text}");
        assert!(!text.contains("of 100"), "{years}: {text}");
        let facts = Facts::new(&garden, &checked);
        assert_eq!(facts.verdict().expected.is_none(), says_nothing);
    }
}

/// Where several plans are compared and the time did not last to count them, that is said.
#[test]
fn days_and_trials_say_which_years_they_tell_of() {
    let garden = on_mixed(12);
    let decided = pipeline::decide(&garden, &Options::default()).unwrap();
    let counted = pipeline::counted(&garden, &Options::default(), decided.clone(), 2);
    for (checked, in_time) in [(decided, false), (counted, true)] {
        let trial = Trial {
            changes: Vec::new(),
            garden: garden.clone(),
            outcome: Ok(checked),
        };
        let day = OtherDay {
            day: garden.feast.day,
            trial: Some(trial.clone()),
        };
        for page in [report::compare(&[trial]), report::days(&garden, &[day])] {
            let text = on_one_line(&page.text(plain(160)));
            let others = "past years, each with a plan that was not made for it,";
            assert_eq!(text.contains(others), in_time, "{text}");
            assert_eq!(
                text.contains("there was no time to count others"),
                !in_time,
                "{text}"
            );
        }
    }
}

/// Own years lead where nothing else is known, are named, and it is said why.
#[test]
fn where_only_its_own_years_are_known_they_are_called_so() {
    let garden = on_mixed(12);
    let own = "past years that it was made for, so expect it in";
    let decided = pipeline::decide(&garden, &Options::default()).unwrap();
    let late = Options::until(Deadline::after(Duration::ZERO));
    let late = pipeline::counted(&garden, &late, decided.clone(), 1);
    let edited = check_saved(&garden, decided.plan().clone(), Since::Edited).unwrap();
    let untold = check_saved(&garden, decided.plan().clone(), Since::Nothing).unwrap();
    for (checked, why) in [
        (late, "There was no time to count it on others"),
        (edited, "it is not as it was made for these years"),
        (
            untold,
            "This plan was not counted on others when it was made",
        ),
    ] {
        let text = screen(&garden, &checked);
        assert!(text.contains(own) && text.contains(why), "{why}: {text}");
        assert_eq!(Facts::new(&garden, &checked).promised().on, CountedOn::Own);
    }
}
