//! Writes for `tests/reference/backtest.py` what became of plans in years that they were not
//! made for.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use tureen::catalogue::Catalogue;
use tureen::checker::check;
use tureen::garden::Garden;
use tureen::growth::Unready;
use tureen::pipeline::read_saved;
use tureen::project;

fn load(path: &Path) -> Garden {
    let catalogue = Catalogue::load().unwrap();
    project::load(path, &catalogue).unwrap_or_else(|found| panic!("{}", found.render(false, 100)))
}

/// One letter per weather year: `r` for ready, else why not.
fn letters(ready: &[Result<(), Unready>]) -> String {
    let letter = |ready: &Result<(), Unready>| match ready {
        Ok(()) => 'r',
        Err(Unready::NotSown) => 'S',
        Err(Unready::NotPlanted) => 'G',
        Err(Unready::NotUp) => 'U',
        Err(Unready::Rotted) => 'R',
        Err(Unready::NotRipe) => 'N',
        Err(Unready::Frost) => 'F',
        Err(Unready::Bolted) => 'B',
        Err(Unready::Heat) => 'H',
        Err(Unready::Past) => 'P',
        Err(Unready::DoesNotKeep) => 'K',
    };
    ready.iter().map(letter).collect()
}

fn whole(ready: &[bool]) -> String {
    ready.iter().map(|r| if *r { 'r' } else { '-' }).collect()
}

/// A row per ingredient and one for the whole dish: years seen, years not seen.
fn rows(folder: &Path) -> String {
    let seen = load(&folder.join("seen.toml"));
    let unseen = load(&folder.join("unseen.toml"));
    let plan = read_saved(seen.clone(), &folder.join("plan.json"))
        .unwrap()
        .plan;
    let checked = check(&seen, plan).unwrap();
    let (before, after) = (checked.grown_in(&seen), checked.grown_in(&unseen));
    assert_eq!(before.dish_ready, checked.replay().dish_ready);
    let mut text = String::new();
    for ((i, b), a) in (seen.ingredients.iter().zip(&before.ingredients)).zip(&after.ingredients) {
        let (b, a) = (letters(&b.ready), letters(&a.ready));
        writeln!(text, "{},{b},{a}", i.name).unwrap();
    }
    let (b, a) = (whole(&before.dish_ready), whole(&after.dish_ready));
    writeln!(text, "whole dish,{b},{a}").unwrap();
    text
}

/// Every folder in `TUREEN_EXPORT` holds `seen.toml`, its `plan.json`, and `unseen.toml`, which
/// differs only in its weather. `grown.csv` is written beside them.
#[test]
#[ignore = "writes files for tests/reference"]
fn plans_are_grown_in_years_they_have_not_seen() {
    let export = PathBuf::from(std::env::var_os("TUREEN_EXPORT").unwrap());
    let mut folders: Vec<PathBuf> = std::fs::read_dir(export)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    folders.sort();
    assert!(!folders.is_empty());
    for folder in folders {
        let header = "ingredient,seen,unseen\n".to_owned();
        std::fs::write(folder.join("grown.csv"), header + &rows(&folder)).unwrap();
    }
}
