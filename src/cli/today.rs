//! `tureen today`: what is due this week, what is late, what to decide and to water, by the saved plan and the
//! diary.

use std::path::PathBuf;

use crate::calendar::Date;
use crate::explain;
use crate::report;

use super::answer::{Answer, Trouble};
use super::clock;
use super::load::{diary, load, plan_path, saved_plan};
use super::time_limit::TimeLimit;

/// The arguments of `today`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; its diary stands beside it.
    file: PathBuf,
    /// The saved plan, or its folder [default: plan.json beside the project file].
    #[arg(long, value_name = "PATH")]
    plan: Option<PathBuf>,
    /// The day [default: today].
    #[arg(long, value_name = "DATE")]
    on: Option<Date>,
    #[command(flatten)]
    time: TimeLimit<10>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let on = arguments.on.unwrap_or_else(clock::today);
    let checked = saved_plan(
        &garden,
        &plan_path(&arguments.file, arguments.plan.as_deref()),
    )?;
    let (diary, wrong) = diary(&arguments.file, &garden, on)?;
    let slack = explain::slack_within(&garden, &checked, &deadline);
    let page = report::today(&garden, &checked, &slack, (&diary, on));
    Ok(Answer::page(&report::opened(&garden, &checked, page)).beside(wrong))
}
