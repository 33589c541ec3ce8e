//! The bundled scenarios: each one loads, comes out as its README says, passes the checker,
//! and stands on weather that can be made again.

mod along_trellis;
mod begun;
mod figures;
mod grade_pages;
mod late_picks;
mod outcomes;
mod promise;
mod thinnings;
mod turned_over;
mod weather;
mod what_ifs;

use std::path::PathBuf;
use std::sync::LazyLock;
use std::time::Duration;

use tureen::catalogue::Catalogue;
use tureen::checker::CheckedPlan;
use tureen::deadline::Deadline;
use tureen::garden::{Garden, Source};
use tureen::growth::Unready;
use tureen::model::{Options, Outcome, solve};
use tureen::pipeline::plan;
use tureen::project;

/// All scenarios.
pub const ALL: [&str; 7] = [
    "autumn-down-under",
    "nine-grades",
    "soup-day",
    "soup-day-as-a-cook-would",
    "turned-over",
    "two-beds",
    "wrap-day",
];

/// The folder of a scenario.
pub fn folder(name: &str) -> PathBuf {
    [env!("CARGO_MANIFEST_DIR"), "scenarios", name]
        .iter()
        .collect()
}

/// A file of a scenario.
pub fn text(name: &str, file: &str) -> String {
    std::fs::read_to_string(folder(name).join(file)).unwrap()
}

/// A project file of a scenario; all that is wrong with it fails the test.
pub fn load(name: &str, file: &str) -> Garden {
    let catalogue = Catalogue::load().unwrap();
    project::load(&folder(name).join(file), &catalogue)
        .unwrap_or_else(|problems| panic!("{}", problems.render(false, 100)))
}

/// What the search comes to in so many seconds, where each aim may give back so many years.
pub fn outcome(garden: &Garden, seconds: u64, concession_years: u32) -> Outcome {
    let options = Options {
        concession_years,
        ..Options::until(Deadline::after(Duration::from_secs(seconds)))
    };
    solve(garden, &options)
}

/// Every scenario that has a plan, with the best one that is found in half a minute.
pub fn planned() -> &'static [(&'static str, Garden, CheckedPlan)] {
    static PLANNED: LazyLock<Vec<(&str, Garden, CheckedPlan)>> = LazyLock::new(|| {
        let all = ALL
            .into_iter()
            .map(|name| (name, load(name, "garden.toml")));
        all.filter_map(|(name, garden)| {
            let options = Options::until(Deadline::after(Duration::from_secs(30)));
            let checked = plan(&garden, &options).ok()?;
            Some((name, garden, checked))
        })
        .collect()
    });
    &PLANNED
}

/// What has begun is a fact: in no weather year was the ground too cold for it on its day.
#[test]
fn what_has_begun_was_begun_in_every_year() {
    let mut begun = 0;
    for (name, garden, checked) in planned() {
        let seen = garden.ingredients.iter().zip(&checked.replay().ingredients);
        for (ingredient, seen) in seen.filter(|(i, _)| matches!(i.source, Source::Begun(_))) {
            begun += 1;
            let not_begun = |ready: &Result<(), Unready>| {
                matches!(ready, Err(Unready::NotSown | Unready::NotPlanted))
            };
            assert!(
                !seen.ready.iter().any(not_begun),
                "{name}: {}",
                ingredient.name
            );
        }
    }
    assert!(begun > 0);
}

#[test]
fn no_scenario_is_forgotten() {
    let mut found: Vec<String> = std::fs::read_dir(folder(""))
        .unwrap()
        .map(|entry| entry.unwrap())
        .filter(|entry| entry.file_type().unwrap().is_dir())
        .map(|entry| entry.file_name().into_string().unwrap())
        .collect();
    found.sort();
    assert_eq!(found, ALL);
}
