//! Loading the built-in crops, a project file with them, and the plan that was saved for it.

use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use crate::calendar::Date;
use crate::catalogue::Catalogue;
use crate::checker::{CheckedPlan, check_saved};
use crate::diagnostic::Problems;
use crate::disk;
use crate::garden::Garden;
use crate::harmless;
use crate::pipeline::read_saved;
use crate::project;
use crate::project::diary::{DIARY_FILE, Diary, LIMIT, Names, read};
use crate::report;

use super::answer::{Exit, Trouble};
use super::terminal::Screen;

/// The name of the saved plan in its folder.
pub(super) const PLAN_FILE: &str = "plan.json";

/// The garden of a project file, or everything that is wrong with the file.
pub(super) fn load(path: &Path) -> Result<Garden, Trouble> {
    project::load(path, &catalogue()?).map_err(|problems| wrong_project(&problems))
}

/// The built-in crops.
pub(super) fn catalogue() -> Result<Catalogue, Trouble> {
    Catalogue::load().map_err(|error| {
        Trouble::new(
            Exit::Unexpected,
            format_args!("The built-in crops cannot be read: {error}"),
            "This is a fault of the program. Please report it.",
        )
    })
}

/// Everything that is wrong with a project.
pub(super) fn wrong_project(problems: &Problems) -> Trouble {
    Trouble {
        exit: Exit::ProjectErrors,
        text: Screen::problems(problems),
    }
}

/// A saved plan as a person names it: the file, or the folder that it is in.
pub(super) fn plan_at(path: &Path) -> PathBuf {
    if path.is_dir() {
        path.join(PLAN_FILE)
    } else {
        path.to_owned()
    }
}

/// Where the saved plan of a project is: where a person says, else beside the project file.
pub(super) fn plan_path(project: &Path, given: Option<&Path>) -> PathBuf {
    match given {
        Some(path) => plan_at(path),
        None => project.with_file_name(PLAN_FILE),
    }
}

/// A saved plan, in the garden of its season. One that breaks rules is not shown.
pub(super) fn saved_plan(garden: Garden, path: &Path) -> Result<(Garden, CheckedPlan), Trouble> {
    let opened = read_saved(garden, path).map_err(|why| Trouble::saved_plan(path, &why))?;
    let garden = opened.garden;
    match check_saved(&garden, opened.plan, opened.since) {
        Ok(checked) => Ok((garden, checked)),
        Err(refused) => {
            let page = report::refused(&garden, &refused);
            Err(Trouble::page(Exit::BrokenRules, &page))
        }
    }
}

/// The diary of a project as it is on a day, and what is wrong with it, which spoils nothing else. None is an empty
/// one.
pub(super) fn diary(
    project: &Path,
    garden: &Garden,
    day: Date,
) -> Result<(Diary, Screen), Trouble> {
    let path = project.with_file_name(DIARY_FILE);
    let text = match disk::read_text(&path, LIMIT) {
        Ok(text) => text,
        Err(error) if error.kind() == ErrorKind::NotFound => String::new(),
        Err(error) => {
            let what = format_args!("Cannot read the diary {}: {error}.", harmless::path(&path));
            return Err(Trouble::new(
                Exit::ProjectErrors,
                what,
                "Put a diary there, or nothing.",
            ));
        }
    };
    let days = (garden.start(), day);
    let (diary, problems) = read(&harmless::path(&path), &text, &Names::of(garden), days);
    let wrong = match problems.is_empty() {
        true => Screen::default(),
        false => Screen::problems(&problems),
    };
    Ok((diary, wrong))
}
