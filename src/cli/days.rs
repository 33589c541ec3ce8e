//! `tureen days`: how the dish would fare on other days.

use std::path::PathBuf;

use crate::calendar::{Date, plus_days};
use crate::explain::{Workbench, weeks_from_feast};
use crate::garden::Garden;
use crate::model::Options;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::load::{catalogue, load, wrong_project};
use super::season::UnderWay;
use super::terminal::with_steps;
use super::time_limit::TimeLimit;

/// Days on either side of the feast, where the span is not given.
const USUAL_SPAN: i64 = 6 * 7;

/// The arguments of `days`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it stays as it is.
    file: PathBuf,
    /// The first day to look at [default: six weeks before the feast].
    #[arg(long, value_name = "DATE", value_parser = day)]
    from: Option<Date>,
    /// The last day to look at [default: six weeks after the feast].
    #[arg(long, value_name = "DATE", value_parser = day)]
    to: Option<Date>,
    /// The day as of which the rest of the season is planned, as with `plan` [default: today].
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
    let feast = garden.feast.day;
    within_calendar(garden, arguments)?;
    let from = arguments.from.unwrap_or(plus_days(feast, -USUAL_SPAN));
    let to = arguments.to.unwrap_or(plus_days(feast, USUAL_SPAN));
    let weeks = weeks_from_feast(garden, from, to);
    if weeks.is_empty() {
        return Err(Trouble::new(
            Exit::Usage,
            format_args!("There is no {} from {from} to {to}.", feast.format("%A")),
            "The day of the week stays that of the feast; give a longer span.",
        ));
    }
    let catalogue = catalogue()?;
    let workbench = Workbench {
        load: &|changes| under_way.load(&arguments.file, changes, &catalogue),
        options: Options::until(deadline),
    };
    let days = with_steps("Planning for other days", weeks.len(), |done| {
        workbench.other_days(garden, &weeks, done)
    })
    .map_err(|problems| wrong_project(&problems))?;
    let page = Answer::page(&report::days(garden, &days));
    Ok(under_way.answered(page))
}

/// Days that are asked for must lie in the calendar of the project, or in the usual span: of others
/// nothing is known.
fn within_calendar(garden: &Garden, arguments: &Arguments) -> Result<(), Trouble> {
    let feast = garden.feast.day;
    let (first, last) = garden.calendar_span();
    let first = first.min(plus_days(feast, -USUAL_SPAN));
    let last = last.max(plus_days(feast, USUAL_SPAN));
    let given = [("--from", arguments.from), ("--to", arguments.to)];
    let outside: Vec<String> = given
        .into_iter()
        .filter_map(|(name, day)| Some((name, day?)))
        .filter(|(_, day)| *day < first || *day > last)
        .map(|(name, day)| format!("{name} {day}"))
        .collect();
    if outside.is_empty() {
        return Ok(());
    }
    Err(Trouble::new(
        Exit::Usage,
        format_args!(
            "{} is not within the calendar of the project file.",
            outside.join(" and ")
        ),
        &format!("Give days from {first} to {last}."),
    ))
}
