//! `tureen show`: prints a saved plan, whole, for one grade, for the principal, for those who
//! water, or what can wait.

use std::path::PathBuf;

use crate::checker::CheckedPlan;
use crate::deadline::Deadline;
use crate::explain::{self, LeastSpace};
use crate::garden::{Garden, GradeAt};
use crate::model::Options;
use crate::page::Page;
use crate::report;
use crate::words;

use super::answer::{Answer, Exit, Trouble};
use super::argument::one_line;
use super::load::{catalogue, load, plan_path, saved_plan};
use super::plan::{ran_out, read};
use super::terminal::with_progress;
use super::time_limit::TimeLimit;

/// The arguments of `show`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file for which the plan was made.
    file: PathBuf,
    /// The saved plan, or the folder it is in [default: plan.json beside the project file].
    #[arg(long, value_name = "PATH")]
    plan: Option<PathBuf>,
    /// Only one grade's own page; the grade's id or name.
    #[arg(long, value_name = "GRADE", conflicts_with = "space", value_parser = one_line)]
    grade: Option<String>,
    /// Only beds, shelf, lesson time and people, for the principal.
    #[arg(long)]
    space: bool,
    /// Only the watering list: litres a bed and week, with room for names in the breaks.
    #[arg(long, conflicts_with_all = ["grade", "space"])]
    water: bool,
    /// Only what can wait: how far each step may be moved, what is lost without it, and what to
    /// do when it fails.
    #[arg(long, conflicts_with_all = ["grade", "space", "water"])]
    slack: bool,
    /// All that is known of the plan, not only what fits on one screen.
    #[arg(long, conflicts_with_all = ["grade", "space", "water", "slack"])]
    all: bool,
    #[command(flatten)]
    time: TimeLimit<LOOKING>,
}

/// Seconds for what is worked out about a saved plan: large gardens take some for each question.
pub(super) const LOOKING: u64 = 30;

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let garden = load(&arguments.file)?;
    let grade = arguments
        .grade
        .as_deref()
        .map(|name| find_grade(&garden, name))
        .transpose()?;
    let (garden, checked) = saved_plan(
        garden,
        &plan_path(&arguments.file, arguments.plan.as_deref()),
    )?;
    let page = match grade {
        Some(grade) => report::grade(&garden, &checked, grade),
        None if arguments.space => principal(&garden, &checked, deadline),
        None if arguments.slack => slack(&garden, &checked, &deadline)?,
        None if arguments.water => report::watering(&garden, &checked),
        None => {
            let options = Options::until(deadline);
            let ran_out = ran_out(&deadline);
            read(arguments.all, &garden, &checked, &options, ran_out)
        }
    };
    Ok(Answer::page(&report::opened(&garden, &checked, page)))
}

/// The slack of every step, and the ways out of every ingredient.
fn slack(garden: &Garden, checked: &CheckedPlan, deadline: &Deadline) -> Result<Page, Trouble> {
    let catalogue = catalogue()?;
    let message = "Moving every step ...";
    let (slack, ladders) = with_progress(message, || {
        let slack = explain::slack_within(garden, checked, &deadline.shared_by(2));
        let ladders = explain::rescue_ladders(garden, checked, &catalogue, deadline);
        (slack, ladders)
    });
    let ran_out = ran_out(deadline);
    Ok(report::slack(garden, checked, &slack, &ladders, ran_out))
}

/// How little space would do.
pub(super) fn least_space(
    garden: &Garden,
    checked: &CheckedPlan,
    deadline: Deadline,
) -> LeastSpace {
    let options = Options {
        deadline,
        concession_years: 0,
    };
    let message = "Looking for how little space would do ...";
    with_progress(message, || explain::least_space(garden, checked, &options))
}

/// The principal's page, for which shelf and beds are planned with less.
fn principal(garden: &Garden, checked: &CheckedPlan, deadline: Deadline) -> Page {
    report::principal(garden, checked, &least_space(garden, checked, deadline))
}

fn find_grade(garden: &Garden, name: &str) -> Result<GradeAt, Trouble> {
    garden.grade_called(name).ok_or_else(|| {
        let ids: Vec<&str> = garden.grades.iter().map(|g| g.id.as_str()).collect();
        Trouble::new(
            Exit::Usage,
            format_args!("The project file has no grade \"{name}\"."),
            &format!("Its grades are {}.", words::list(&ids)),
        )
    })
}
