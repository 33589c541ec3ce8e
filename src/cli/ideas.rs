//! `tureen ideas`: which of our dishes could be cooked on a day, in this garden and by these grades.

use std::path::PathBuf;

use crate::calendar::Date;
use crate::catalogue::dishes;
use crate::explain::Workbench;
use crate::model::Options;
use crate::project;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::load::{catalogue, load, wrong_project};
use super::terminal::with_steps;
use super::time_limit::TimeLimit;

/// The arguments of `ideas`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it stays as it is.
    file: PathBuf,
    /// The day on which it is eaten [default: the feast of the file].
    #[arg(long, value_name = "DATE", value_parser = day)]
    day: Option<Date>,
    #[command(flatten)]
    time: TimeLimit<60>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let feast = garden.feast.day;
    let day = arguments.day.unwrap_or(feast);
    if !garden.school_year.school_is_in(day) {
        let remedy = "Give a school day of the calendar in the project file.";
        return Err(Trouble::new(
            Exit::Usage,
            format_args!("There is no school on {day}."),
            remedy,
        ));
    }
    let catalogue = catalogue()?;
    let dishes = dishes().map_err(|error| Trouble::internal(&error))?;
    let workbench = Workbench {
        load: &|changes| project::load_changed(&arguments.file, changes, &catalogue),
        options: Options::until(deadline),
    };
    let later = (day - feast).num_days();
    let ideas = with_steps("Planning other dishes", dishes.len() + 1, |done| {
        workbench.other_dishes(&dishes, later, done)
    })
    .map_err(|problems| wrong_project(&problems))?;
    Ok(Answer::page(&report::ideas(&garden, &ideas)))
}
