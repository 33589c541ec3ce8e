//! Repairs of projects without a plan: of each kind the cheapest is the first that trying
//! everything finds to help, and every repair that is told gives a plan when the file is
//! changed by hand.

use std::path::Path;
use std::time::Duration;

use chrono::Datelike;
use tureen::calendar::Date;
use tureen::candidates::Candidates;
use tureen::catalogue::Catalogue;
use tureen::deadline::Deadline;
use tureen::explain::{Diagnosis, Kind, Workbench};
use tureen::garden::{Garden, Grade, Ingredient, Kept};
use tureen::model::Options;
use tureen::pipeline::{self, NoPlan};
use tureen::project::{self, Change};

use super::files_by_hand;
use crate::brute_force::options;
use crate::brute_force::search::{Search, TooLarge};
use crate::brute_force::takes::School;
use crate::cli::{Folder, text};
use crate::support::files;

/// More ways than this of planting one ingredient, and more nodes, are not tried.
const MOST_WAYS: usize = 500;
const MOST_NODES: u64 = 4_000;
/// Projects without a plan that are looked at.
const PROJECTS: u32 = 12;

/// Enough for all that is tried of a project.
const AMPLE: Duration = Duration::from_secs(600);

fn ample() -> Options {
    Options::until(Deadline::after(AMPLE))
}

/// True if trying everything puts all ingredients into the pot.
fn fits(garden: &Garden) -> Result<bool, TooLarge> {
    let candidates = Candidates::enumerate(garden);
    let school = School::new(garden, &candidates);
    let ways = options::of_each(&school, MOST_WAYS).ok_or(TooLarge)?;
    Search::new(&school, &ways, |_| true, MOST_NODES).any()
}

/// A rung: what it is, as the test words it, and its changes.
type Rung = (String, Vec<Change>);

fn one(name: String, key: &str, value: impl std::fmt::Display) -> Rung {
    (name, vec![Change::Set(format!("{key}={value}"))])
}

/// All rungs of every kind but other crops, covers and beds, from the cheapest, a list for
/// each ladder.
fn ladders(garden: &Garden) -> Vec<Vec<Rung>> {
    let mut ladders = around(garden);
    for grade in garden.grade_positions() {
        if garden.ingredients.iter().any(|i| i.may_be_grown_by(grade)) {
            ladders.extend(of_grade(&garden[grade]));
        }
    }
    for ingredient in &garden.ingredients {
        ladders.push(fewer_grams(ingredient));
        ladders.push(another_grade(garden, ingredient));
        ladders.push(put_by(ingredient));
        if garden.ingredients.len() > 1 {
            let name = &ingredient.name;
            let (name_of_it, mut changes) = one(
                format!("{name} bought"),
                &format!("dish.ingredient.\"{name}\""),
                "",
            );
            // The school's own figures may stand only while the crop is grown.
            changes.push(Change::Set(format!("crop.\"{name}\"=")));
            ladders.push(vec![(name_of_it, changes)]);
        }
    }
    ladders
}

/// Flats, the break, the feast's day, the kitchen's day.
fn around(garden: &Garden) -> Vec<Vec<Rung>> {
    let care = "calendar.breaks.\"Short break\".care";
    let flats = |n: u32| one(format!("{n} flats"), "shelf.flats", garden.shelf.flats + n);
    let days = |days: i64| (format!("{days} days"), vec![Change::OtherDay(days)]);
    let delivery = garden.feast.deliver_by.iter_days().skip(1);
    let delivery = delivery.take_while(|day| *day <= garden.feast.day);
    let all_on = |day: Date| {
        let minutes = garden
            .grades
            .iter()
            .map(|grade| grade.classes[0].slots[0].minutes.0);
        let day_and_minutes = format!(
            "[{{ day = {day}, minutes = {} }}]",
            minutes.reduce(f64::max).unwrap()
        );
        one(
            format!("all on {day}"),
            "calendar.harvest_days",
            day_and_minutes,
        )
    };
    let back = std::iter::successors(Some(garden.feast.deliver_by), Date::pred_opt);
    let weekdays = back.filter(|day| day.weekday().num_days_from_monday() < 5);
    vec![
        weekdays.take(5).map(all_on).collect(),
        (1..=12).map(flats).collect(),
        vec![
            one("staff".into(), care, "staff"),
            one("families".into(), care, "families"),
        ],
        (1..=6).flat_map(|n| [7 * n, -7 * n]).map(days).collect(),
        delivery
            .map(|day| one(format!("by {day}"), "project.deliver_by", day))
            .collect(),
    ]
}

/// Longer sessions, and one every week.
fn of_grade(grade: &Grade) -> Vec<Vec<Rung>> {
    let slot = grade.classes[0].slots[0];
    let way = format!("grade.{0}.classes.{0}a", grade.id);
    let longer = |more: u32| {
        let minutes = slot.minutes.0 + f64::from(more);
        let name = format!("{more} min {way}");
        one(name, &format!("{way}.minutes"), minutes)
    };
    let weekly = one(format!("weekly {way}"), &format!("{way}.every"), 1);
    let mut ladders = vec![[5, 10, 15, 20, 25, 30].map(longer).to_vec()];
    if slot.every_weeks == 2 {
        ladders.push(vec![weekly]);
    }
    ladders
}

/// Every other grade, first those that grow nothing. The tests' grades have no ages.
fn another_grade(garden: &Garden, ingredient: &Ingredient) -> Vec<Rung> {
    let name = &ingredient.name;
    let grows = |id: &str| {
        let mut others = garden.ingredients.iter().flat_map(|i| &i.teams);
        others.any(|team| garden.ids_of(*team).iter().any(|own| own == id))
    };
    let own = garden.ids_of(ingredient.teams[0]).concat();
    let mut others: Vec<&Grade> = garden.grades.iter().filter(|g| g.id != own).collect();
    others.sort_by_key(|grade| grows(&grade.id));
    let rung = |grade: &&Grade| {
        let key = format!("dish.ingredient.\"{name}\".grade");
        let id = format!("\"{}\"", grade.id);
        one(format!("{name} by {}", grade.name), &key, id)
    };
    others.iter().map(rung).collect()
}

/// Frozen, then dried, where that keeps it longer than fresh.
fn put_by(ingredient: &Ingredient) -> Vec<Rung> {
    let name = &ingredient.name;
    let (fresh, kitchen) = (
        ingredient.crop.picking.storage_days,
        &ingredient.crop.kitchen,
    );
    let key = format!("dish.ingredient.\"{name}\".kept");
    let frozen = kitchen.freezing.is_some() && fresh < 240;
    let dried = kitchen.dried_days.is_some() && fresh < 365;
    let rung = |way: Kept, word| one(format!("{name} {way:?}"), &key, word);
    let ways = [
        (frozen, rung(Kept::Frozen, "frozen")),
        (dried, rung(Kept::Dried, "dried")),
    ];
    ways.into_iter()
        .filter_map(|(fits, rung)| fits.then_some(rung))
        .collect()
}

fn fewer_grams(ingredient: &Ingredient) -> Vec<Rung> {
    let name = &ingredient.name;
    let way = format!("dish.ingredient.\"{name}\".grams_per_portion");
    let grams = |twentieths: u32| {
        let part = ingredient.grams_per_portion * f64::from(twentieths) / 20.0;
        (part * 10.0).floor() / 10.0
    };
    let rung = |grams: f64| one(format!("{name} {grams} g"), &way, grams);
    (1..20).rev().map(grams).map(rung).collect()
}

/// A repair as the test words it.
fn worded(kind: &Kind) -> Option<String> {
    Some(match kind {
        Kind::MoreFlats { more } => format!("{more} flats"),
        Kind::SomeoneThere { who, .. } => format!("{who:?}").to_lowercase(),
        Kind::AnotherDay { later } => format!("{later} days"),
        Kind::LaterDelivery { to, .. } => format!("by {to}"),
        Kind::HarvestDay { day, .. } => format!("all on {day}"),
        Kind::LongerSessions { grade, minutes } => {
            format!("{minutes} min grade.{grade}.classes.{grade}a")
        }
        Kind::EveryWeek { grade, .. } => format!("weekly grade.{grade}.classes.{grade}a"),
        Kind::FewerGrams { ingredient, to, .. } => format!("{ingredient} {to} g"),
        Kind::AnotherGrade { ingredient, grade } => format!("{ingredient} by {grade}"),
        Kind::Bought { ingredient } => format!("{ingredient} bought"),
        Kind::PutBy { ingredient, kept } => format!("{ingredient} {kept:?}"),
        Kind::BedForAll { bed } => format!("bed {bed} for all"),
        Kind::Cover { .. }
        | Kind::Trellis { .. }
        | Kind::MoreBeds { .. }
        | Kind::AnotherCrop { .. } => return None,
    })
}

/// The first rung of each ladder that helps.
fn cheapest(garden: &Garden, path: &Path, catalogue: &Catalogue) -> Result<Vec<String>, TooLarge> {
    let mut found = Vec::new();
    for ladder in ladders(garden) {
        for (name, changes) in ladder {
            let changed = project::load_changed(path, &changes, catalogue);
            let helps = changed.map_or(Ok(false), |garden| fits(&garden))?;
            if helps {
                found.push(name);
                break;
            }
        }
    }
    found.sort();
    Ok(found)
}

/// Every repair gives a plan when it is made in the file; how many there were.
fn all_give_a_plan(folder: &Folder, diagnosis: &Diagnosis) -> usize {
    let as_it_is = folder.read("garden.toml");
    let repairs = || diagnosis.repairs.iter().chain(&diagnosis.together);
    for repair in repairs() {
        let file = files_by_hand::changed(&as_it_is, &repair.trial.changes);
        std::fs::write(folder.path("changed.toml"), &file).unwrap();
        let output = folder.run(&["plan", "changed.toml"]);
        let told = || format!("{:?}\n{}", repair.kinds, text(&output.stdout));
        assert_eq!(output.status.code(), Some(0), "{}", told());
    }
    repairs().count()
}

/// The diagnosis of a project file, if it has no plan.
fn diagnosis(path: &Path, catalogue: &Catalogue) -> Option<(Garden, Diagnosis)> {
    let garden = project::load(path, catalogue).unwrap();
    let Err(NoPlan::Impossible(_)) = pipeline::plan(&garden, &ample()) else {
        return None;
    };
    let bench = Workbench {
        load: &|changes| project::load_changed(path, changes, catalogue),
        options: ample(),
    };
    let diagnosis = bench.diagnose(&garden, catalogue);
    Some((garden, diagnosis))
}

/// What is told to be enough by itself.
fn told(diagnosis: &Diagnosis) -> impl Iterator<Item = &Kind> {
    diagnosis.repairs.iter().flat_map(|r| &r.kinds)
}

/// The diagnosis of a project, held to trying every rung; `None` if it has a plan, or if there is
/// too much to try.
fn held(path: &Path, catalogue: &Catalogue, seed: u64) -> Option<Diagnosis> {
    let (garden, diagnosis) = diagnosis(path, catalogue)?;
    let cheapest = cheapest(&garden, path, catalogue).ok()?;
    let mut told: Vec<String> = told(&diagnosis).filter_map(worded).collect();
    told.sort();
    assert_eq!(told, cheapest, "seed {seed}");
    Some(diagnosis)
}

#[test]
fn the_cheapest_of_each_kind_is_told_and_gives_a_plan() {
    let catalogue = Catalogue::load().unwrap();
    let (mut projects, mut compared, mut given, mut together) = (0, 0, 0, 0);
    let mut kinds = std::collections::BTreeSet::new();
    for seed in 0.. {
        if projects == PROJECTS {
            break;
        }
        let folder = Folder::with("repairs", |_| files::project(seed));
        std::fs::write(folder.path("weather.csv"), files::weather()).unwrap();
        let path = folder.path("garden.toml");
        let Some(diagnosis) = held(&path, &catalogue, seed) else {
            continue;
        };
        projects += 1;
        compared += told(&diagnosis).filter_map(worded).count();
        kinds.extend(told(&diagnosis).map(Kind::weight));
        given += all_give_a_plan(&folder, &diagnosis);
        together += usize::from(diagnosis.together.is_some());
    }
    println!(
        "{projects} projects, {compared} cheapest repairs of kinds {kinds:?}, {given} plans made, \
         {together} repairs of several changes"
    );
    assert!(compared >= 8 && given >= 20 && kinds.len() >= 5);
}

/// A sound project in which one thing is then made too tight: lessons, flats or grams.
fn tightened(seed: u64, which: usize) -> String {
    let tight = [
        (" minutes = ", "10 }]"),
        ("\nflats = ", "0"),
        ("\ngrams_per_portion = ", "90"),
    ];
    let (key, value) = tight[which];
    let text = files::project(seed);
    let line = |line: &str| match format!("\n{line}").split_once(key) {
        Some((before, _)) => format!("{before}{key}{value}"),
        None => format!("\n{line}"),
    };
    text.lines()
        .map(line)
        .collect::<String>()
        .trim_start()
        .to_owned()
        + "\n"
}

/// Where just one thing is too tight, the repair of that kind is among those told, too.
#[test]
fn what_is_too_tight_is_what_is_loosened() {
    let catalogue = Catalogue::load().unwrap();
    let mut kinds = std::collections::BTreeSet::new();
    for which in 0..3 {
        let mut projects = 0;
        for seed in 0..200 {
            if projects == 3 {
                break;
            }
            let folder = Folder::with("tight", |_| files::project(seed));
            std::fs::write(folder.path("weather.csv"), files::weather()).unwrap();
            let path = folder.path("garden.toml");
            let sound = project::load(&path, &catalogue).unwrap();
            if pipeline::plan(&sound, &ample()).is_err() {
                continue;
            }
            std::fs::write(&path, tightened(seed, which)).unwrap();
            let Some(diagnosis) = held(&path, &catalogue, seed) else {
                continue;
            };
            kinds.extend(told(&diagnosis).map(Kind::weight));
            all_give_a_plan(&folder, &diagnosis);
            projects += 1;
        }
        println!("tight {which}: {projects} projects, kinds so far {kinds:?}");
        assert!(projects > 0, "nothing was tight by {which}");
    }
    let [grams, minutes, flats] = [0, 5, 8];
    assert!(
        [grams, minutes, flats]
            .iter()
            .all(|kind| kinds.contains(kind)),
        "{kinds:?}"
    );
}

/// A sound project whose crops climb: without a word of a trellis supports are put up; where none can stand, a trellis
/// is told.
#[test]
fn a_trellis_is_told_where_none_can_stand_and_assumed_where_nothing_is_said() {
    let catalogue = Catalogue::load().unwrap();
    let folder = Folder::with("trellis", |_| files::project(0));
    std::fs::write(folder.path("weather.csv"), files::weather()).unwrap();
    let path = folder.path("garden.toml");
    let plans = |text: &str| {
        std::fs::write(&path, text).unwrap();
        let garden = project::load(&path, &catalogue).unwrap();
        pipeline::plan(&garden, &ample()).is_ok()
    };
    let sound = (0..200)
        .map(files::project)
        .find(|text| plans(text))
        .unwrap();
    let climbing = sound.replace("reference_c", "trellis = true\nreference_c");
    let climbing = climbing.replace("days_to_maturity", "trellis = true\ndays_to_maturity");
    assert!(plans(&climbing), "{climbing}");
    let none = climbing.replace("width_m = 1.2", "width_m = 1.2\ntrellis_m = 0");
    assert!(!plans(&none), "{none}");
    let (_, diagnosis) = diagnosis(&path, &catalogue).unwrap();
    let is_trellis = |kind: &&Kind| matches!(kind, Kind::Trellis { .. });
    assert_eq!(told(&diagnosis).filter(is_trellis).count(), 1);
    all_give_a_plan(&folder, &diagnosis);
}

/// The scenario without a plan: no single change is enough, but several are.
#[test]
fn what_is_told_of_the_cooks_soup_gives_a_plan() {
    let scenarios = concat!(env!("CARGO_MANIFEST_DIR"), "/scenarios/");
    let read = |file: &str| std::fs::read_to_string(format!("{scenarios}{file}")).unwrap();
    let soup = read("soup-day-as-a-cook-would/garden.toml");
    let folder = Folder::with("cooks-soup", |_| soup.replace("../soup-day/", ""));
    std::fs::write(folder.path("weather.csv"), read("soup-day/weather.csv")).unwrap();
    let catalogue = Catalogue::load().unwrap();
    let (_, diagnosis) = diagnosis(&folder.path("garden.toml"), &catalogue).unwrap();
    assert!(diagnosis.repairs.is_empty() && diagnosis.together.is_some());
    assert_eq!(all_give_a_plan(&folder, &diagnosis), 1);
}
