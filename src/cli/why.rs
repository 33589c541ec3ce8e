//! `tureen why`: what stands in the way of a plan, and what would give one; or why a step of a
//! plan is when it is.

use std::path::PathBuf;

use crate::calendar::Date;
use crate::explain::{self, Workbench};
use crate::facts::Facts;
use crate::facts::no_plan::Hindrance;
use crate::model::{Options, USUAL_TIME};
use crate::page::Page;
use crate::pipeline::{self, NoPlan};
use crate::plan::StepAt;
use crate::project;
use crate::report;
use crate::words::step_names::{StepName, step_names};

use super::answer::{Answer, Exit, Trouble};
use super::argument::{day, one_line};
use super::load::{catalogue, load};
use super::season::UnderWay;
use super::terminal::with_progress;
use super::time_limit::TimeLimit;

/// The arguments of `why`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it stays as it is.
    file: PathBuf,
    /// A step of the plan, such as "carrot sow": why then, and what would another week cost?
    #[arg(value_name = "STEP", value_parser = one_line)]
    step: Vec<String>,
    /// The day as of which the rest of the season is looked at, as with `plan` [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
    #[command(flatten)]
    time: TimeLimit<60>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let base = load(&arguments.file)?;
    let under_way = UnderWay::of(&arguments.file, &base, arguments.on)?;
    let garden = under_way.garden(&base);
    let catalogue = catalogue()?;
    let options = Options::until(deadline);
    // More time is for what comes after the plan.
    let planning = Options::until(deadline.shared_by(2).at_most(USUAL_TIME));
    let bench = Workbench {
        load: &|changes| under_way.load(&arguments.file, changes, &catalogue),
        options,
    };
    let message = "Looking for what stands in the way ...";
    let answer = with_progress(message, || match pipeline::decide(garden, &planning) {
        Err(NoPlan::Impossible(found)) => {
            let diagnosis = bench.diagnose(garden, &catalogue);
            let hindrance = Hindrance::of(garden, &found);
            let page = report::why_no_plan(garden, &hindrance, &diagnosis);
            let mut whole = Page::new();
            if !arguments.step.is_empty() {
                let asked = arguments.step.join(" ");
                whole.append(report::step_without_plan(&asked));
            }
            whole.append(page);
            Ok(Answer::page(&whole).ending(Exit::NoPlan))
        }
        Err(why) => super::plan::no_plan(&planning.deadline, garden, why),
        Ok(checked) if !arguments.step.is_empty() => {
            let asked = arguments.step.join(" ");
            let at = find(&step_names(&Facts::new(garden, &checked)), &asked)?;
            let why = explain::why_step(garden, &checked, at, &options);
            match why {
                None if deadline.is_over() => {
                    super::plan::no_plan(&deadline, garden, NoPlan::OutOfTime)
                }
                why => {
                    let page = why.map(|why| report::why_step(garden, &checked, &why));
                    Ok(Answer::page(&page.unwrap_or_default()))
                }
            }
        }
        Ok(checked) => {
            let threads = pipeline::side_by_side();
            let counted = pipeline::counted(garden, &options, checked, threads);
            Ok(Answer::page(&report::plan_exists(garden, &counted)))
        }
    })?;
    Ok(under_way.answered(answer))
}

/// The step that is asked for.
fn find(steps: &[StepName], asked: &str) -> Result<StepAt, Trouble> {
    let asked = asked.split_whitespace().collect::<Vec<_>>().join(" ");
    let lower = asked.to_lowercase();
    let named = |step: &&StepName| step.names.contains(&lower);
    if let Some(step) = steps.iter().find(named) {
        return Ok(step.at);
    }
    // Names that say the same but for the number of a sowing or of a day.
    let plain = |name: &String| words(name).filter(|w| !is_number(w)).eq(words(&lower));
    let meant: Vec<&StepName> = steps.iter().filter(|s| s.names.iter().any(plain)).collect();
    if !meant.is_empty() {
        return Err(Trouble::new(
            Exit::Usage,
            format_args!("There are several steps \"{asked}\"."),
            &format!("Say which: {}.", list(&meant)),
        ));
    }
    let known = steps
        .iter()
        .filter_map(|s| s.names.first().map(String::as_str));
    // Where the ingredient is clear, only its steps are of use.
    let called = |step: &&StepName| {
        let plain = step.ingredient.split(" (").next().unwrap_or_default();
        lower.contains(&step.ingredient) || lower.contains(plain)
    };
    let longest = steps
        .iter()
        .filter(called)
        .map(|s| s.ingredient.len())
        .max();
    let own = |step: &&StepName| {
        longest.is_none() || called(step) && Some(step.ingredient.len()) == longest
    };
    let near = project::near(&lower, known)
        .map_or_else(String::new, |near| format!("Did you mean \"{near}\"? "));
    let all: Vec<&StepName> = steps.iter().filter(own).collect();
    Err(Trouble::new(
        Exit::Usage,
        format_args!("The plan has no step \"{asked}\"."),
        &format!("{near}Its steps are {}.", list(&all)),
    ))
}

fn words(name: &str) -> impl Iterator<Item = &str> {
    name.split_whitespace()
}

fn is_number(word: &str) -> bool {
    word.chars().all(|c| c.is_ascii_digit())
}

/// The shown names of some steps.
fn list(steps: &[&StepName]) -> String {
    let names: Vec<&str> = steps
        .iter()
        .filter_map(|s| s.names.first())
        .map(String::as_str)
        .collect();
    crate::words::list(&names)
}
