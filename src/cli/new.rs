//! `tureen new`: begins a project. On a terminal it asks for what a school knows, with a default for
//! everything; elsewhere it writes a file to fill in.

mod dish;
mod garden;
mod question;
mod questions;
mod school;

use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use crate::calendar::Date;
use crate::catalogue::{Catalogue, dishes};
use crate::harmless;
use crate::project;
use crate::project::draft::Draft;

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::clock::today;
use super::load::{catalogue, wrong_project};
use super::plan;
use super::save::Output;
use super::talk::Talk;
use super::terminal::Screen;

/// The name of the project file in its folder.
const PROJECT_FILE: &str = "garden.toml";

/// The arguments of `new`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The folder of the project, which is made if it is not there; garden.toml is written into it.
    #[arg(value_name = "FOLDER")]
    folder: PathBuf,
    /// The first day on which anything may be planned [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    from: Option<Date>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let out = Output::begun(&arguments.folder, PROJECT_FILE)?;
    let catalogue = catalogue()?;
    let mut dishes = dishes().map_err(|error| Trouble::internal(&error))?;
    let today = arguments.from.unwrap_or_else(today);
    let Some(first) = dishes.first().cloned() else {
        return Ok(Answer::done(""));
    };
    let path = arguments.folder.join(PROJECT_FILE);
    let mut draft = Draft::new(today, first);
    if !(std::io::stdin().is_terminal() && std::io::stdout().is_terminal()) {
        let beside = out.save(&draft.text())?;
        return Ok(Answer::done(&(written(&path, &draft) + &beside)));
    }
    let mut talk = Talk::begin();
    dishes.sort_by_key(|dish| dish.months);
    questions::ask_all(&mut talk, &mut draft, &catalogue, &dishes)?;
    let text = draft.text();
    talk.say(&out.save(&text)?)?;
    talk.say(&format!("\n{}", written(&path, &draft)))?;
    sound(&path, &catalogue)?;
    match talk.yes("Look for a first plan now?")? {
        true => plan::run(&plan::Arguments::of(path)),
        false => Ok(Answer::done("")),
    }
}

/// That the file passes all checks. The answers were kept all the same.
fn sound(path: &Path, catalogue: &Catalogue) -> Result<(), Trouble> {
    match project::load(path, catalogue) {
        Ok(_) => Ok(()),
        Err(problems) => {
            let mut trouble = wrong_project(&problems);
            trouble.text.append(&Screen::lines(
                "Your answers are in the file. Correct these lines there, then go on with `tureen check`.\n",
            ));
            Err(Trouble {
                exit: Exit::ProjectErrors,
                ..trouble
            })
        }
    }
}

/// What was written, and how it goes on.
fn written(path: &Path, draft: &Draft) -> String {
    let path = harmless::path(path);
    let mut told = format!("Wrote {path}.\n");
    if draft.is_of_no_place() {
        told += "Its weather is that of no real place: put your town's monthly means into it, or the record of a\n\
                 weather station near you (tureen record).\n";
    }
    told + &format!(
        "What the program makes of it: tureen check {path}\nA plan of it: tureen plan {path}\n"
    )
}
