//! `tureen plan`: finds the best plan, prints it, and saves it if asked.

use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::checker::CheckedPlan;
use crate::explain;
use crate::garden::Garden;
use crate::model::{AimProgram, Options};
use crate::pipeline::{self, NoPlan};
use crate::plan::{Aim, saved};
use crate::report;
use crate::report::page::Page;

use super::answer::{Answer, Exit, Trouble};
use super::load::{PLAN_FILE, load};
use super::save::save;
use super::terminal::{err_look, with_progress};

/// The arguments of `plan`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file.
    file: PathBuf,
    /// Saves the plan as plan.json in this folder, which is made if it is not there.
    #[arg(long, value_name = "FOLDER")]
    out: Option<PathBuf>,
    /// Writes the arithmetic behind the plan into this folder, one file for each aim, for
    /// other programs that do such sums.
    #[arg(long, value_name = "FOLDER")]
    write_program: Option<PathBuf>,
    /// After this time the best plan so far is given.
    #[arg(long, value_name = "SECONDS", default_value_t = Options::default().time_limit.as_secs(),
          value_parser = clap::value_parser!(u64).range(0..=86_400))]
    time_limit: u64,
    /// Years that each aim about years may give back, where that buys larger amounts or fewer
    /// steps that one cancelled session would lose.
    #[arg(long, value_name = "YEARS", default_value_t = Options::default().concession_years)]
    give_back: u32,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let options = Options {
        time_limit: Duration::from_secs(arguments.time_limit),
        concession_years: arguments.give_back,
    };
    let message = format!(
        "Looking for the best plan, for up to {} s ...",
        arguments.time_limit
    );
    let Some(folder) = &arguments.write_program else {
        let plan = with_progress(message, || pipeline::plan(&garden, &options));
        return answer(arguments, &garden, plan, &options);
    };
    let (plan, programs) =
        with_progress(message, || pipeline::plan_with_programs(&garden, &options));
    write_programs(folder, &garden, &programs)?;
    let mut answer = answer(arguments, &garden, plan, &options)?;
    answer
        .text
        .push_str(&report::programs_written(folder, programs.len()));
    Ok(answer)
}

/// Writes a file for each program. What an earlier run wrote for other aims is removed, so
/// that all files in the folder are of one run.
fn write_programs(folder: &Path, garden: &Garden, programs: &[AimProgram]) -> Result<(), Trouble> {
    std::fs::create_dir_all(folder).map_err(|error| Trouble::writing(folder, &error))?;
    for aim in Aim::ALL {
        let path = folder.join(report::mps_file(aim));
        match programs.iter().find(|p| p.result.aim == aim) {
            Some(program) => save(&path, &report::mps(garden, program))?,
            None if path.is_file() => {
                std::fs::remove_file(&path).map_err(|error| Trouble::writing(&path, &error))?;
            }
            None => {}
        }
    }
    Ok(())
}

fn answer(
    arguments: &Arguments,
    garden: &Garden,
    plan: Result<CheckedPlan, NoPlan>,
    options: &Options,
) -> Result<Answer, Trouble> {
    match plan {
        Ok(checked) => planned(arguments, garden, &checked, options),
        Err(why) => no_plan(arguments.time_limit, garden, why),
    }
}

fn planned(
    arguments: &Arguments,
    garden: &Garden,
    checked: &CheckedPlan,
    options: &Options,
) -> Result<Answer, Trouble> {
    let mut answer = Answer::page(&whole_plan(garden, checked, options));
    if let Some(folder) = &arguments.out {
        std::fs::create_dir_all(folder).map_err(|error| Trouble::writing(folder, &error))?;
        let path = folder.join(PLAN_FILE);
        save(&path, &saved::write(garden, checked.plan()))?;
        answer.text.push_str(&report::saved(&arguments.file, &path));
    }
    Ok(answer)
}

/// The whole plan, with what was given back for it and what that bought.
pub(super) fn whole_plan(garden: &Garden, checked: &CheckedPlan, options: &Options) -> Page {
    let mut page = report::plan(garden, checked);
    let message = "Planning with nothing to give back ...".to_owned();
    let back = with_progress(message, || explain::given_back(garden, checked, options));
    if let Some(back) = back {
        page.append(report::given_back(checked, &back));
    }
    page
}

/// What is said where there is no plan.
pub(super) fn no_plan(seconds: u64, garden: &Garden, why: NoPlan) -> Result<Answer, Trouble> {
    match why {
        NoPlan::Impossible(found) => {
            Ok(Answer::page(&report::no_plan(garden, &found)).ending(Exit::NoPlan))
        }
        NoPlan::OutOfTime => Err(Trouble {
            exit: Exit::OutOfTime,
            text: report::out_of_time(seconds).text(err_look()),
        }),
        NoPlan::Failed(words) => Err(Trouble::new(
            Exit::Unexpected,
            format_args!("The search for a plan failed: {words}."),
            "This is a fault of the program. Please report it with the project file.",
        )),
        NoPlan::Refused(violations) => Err(Trouble::new(
            Exit::Unexpected,
            report::broken(garden, &violations).text(err_look()),
            "The program made this plan itself, so this is a fault of the program. Please report \
             it with the project file.",
        )),
    }
}
