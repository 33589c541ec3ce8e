//! `tureen plan`: finds the best plan, prints it, and saves it if asked.

use std::path::{Path, PathBuf};
use std::time::Duration;

use crate::checker::CheckedPlan;
use crate::deadline::Deadline;
use crate::explain;
use crate::garden::Garden;
use crate::model::{AimProgram, CONCESSION_YEARS, Options, USUAL_TIME};
use crate::pipeline::{self, NoPlan};
use crate::plan::{Aim, saved};
use crate::report;
use crate::report::page::Page;

use super::answer::{Answer, Exit, Trouble};
use super::load::{PLAN_FILE, load};
use super::save::save;
use super::terminal::{err_look, with_progress};
use super::time_limit::TimeLimit;

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
    #[command(flatten)]
    time: TimeLimit<{ USUAL_TIME.as_secs() }>,
    /// Years that each aim about years may give back, where that buys larger amounts or fewer
    /// steps that one cancelled session would lose.
    #[arg(long, value_name = "YEARS", default_value_t = CONCESSION_YEARS)]
    give_back: u32,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let options = Options {
        deadline,
        concession_years: arguments.give_back,
    };
    let seconds = deadline.limit().as_secs();
    let message = format!("Looking for the best plan, for up to {seconds} s ...");
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
        Err(why) => no_plan(&options.deadline, garden, why),
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
    let ran_out = ran_out(&options.deadline);
    let answer = options.deadline.for_the_answer();
    let slack = explain::slack_within(garden, checked, &answer);
    let mut page = report::plan_with(garden, checked, &slack, ran_out);
    let message = "Planning with nothing to give back ...".to_owned();
    let back = with_progress(message, || explain::given_back(garden, checked, options));
    if let Some(back) = back {
        page.append(report::given_back(checked, &back));
    }
    page
}

/// The time allowed, if it ran out.
pub(super) fn ran_out(deadline: &Deadline) -> Option<Duration> {
    deadline.is_over().then(|| deadline.limit())
}

/// What is said where there is no plan.
pub(super) fn no_plan(
    deadline: &Deadline,
    garden: &Garden,
    why: NoPlan,
) -> Result<Answer, Trouble> {
    match why {
        NoPlan::Impossible(found) => {
            Ok(Answer::page(&report::no_plan(garden, &found)).ending(Exit::NoPlan))
        }
        NoPlan::OutOfTime => Err(Trouble {
            exit: Exit::OutOfTime,
            text: report::out_of_time(ran_out(deadline)).text(err_look()),
        }),
        NoPlan::TooMany => Err(Trouble {
            exit: Exit::OutOfTime,
            text: report::too_many(garden).text(err_look()),
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
