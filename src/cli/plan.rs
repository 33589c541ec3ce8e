//! `tureen plan`: finds the best plan, prints it, and saves it if asked.

use std::path::PathBuf;
use std::time::Duration;

use crate::calendar::Date;
use crate::checker::CheckedPlan;
use crate::deadline::Deadline;
use crate::explain;
use crate::facts::no_plan::Hindrance;
use crate::garden::Garden;
use crate::model::{CONCESSION_YEARS, Options, USUAL_TIME};
use crate::page::Page;
use crate::pipeline::{self, NoPlan};
use crate::plan::saved;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::load::{PLAN_FILE, load};
use super::save::{Output, ProgramsOutput};
use super::season::UnderWay;
use super::terminal::with_progress;
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
    /// Prints all that is known of the plan, not only what fits on one screen.
    #[arg(long)]
    all: bool,
    /// Also replaces files in these folders that this program did not write.
    #[arg(long)]
    replace: bool,
    /// The day as of which the rest of the season is planned, where a saved plan stands beside the project file
    /// [default: today, where a diary stands there too]. With a day before the first step all is planned afresh.
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
    #[command(flatten)]
    time: TimeLimit<{ USUAL_TIME.as_secs() }>,
    /// Years that each aim about years may give back, where that buys larger amounts or fewer
    /// steps that one cancelled session would lose.
    #[arg(long, value_name = "YEARS", default_value_t = CONCESSION_YEARS)]
    give_back: u32,
}

impl Arguments {
    /// The plan of a file, printed on one screen.
    pub fn of(file: PathBuf) -> Self {
        Self {
            file,
            out: None,
            write_program: None,
            all: false,
            replace: false,
            on: None,
            time: TimeLimit::default(),
            give_back: CONCESSION_YEARS,
        }
    }
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let deadline = arguments.time.start();
    let base = load(&arguments.file)?;
    let under_way = UnderWay::of(&arguments.file, &base, arguments.on)?;
    let garden = under_way.garden(&base);
    let replace = arguments.replace;
    let out = arguments.out.as_deref();
    let out = out.map(|folder| Output::in_folder(folder, PLAN_FILE, saved::author, replace));
    let out = out.transpose()?;
    let programs_out = arguments.write_program.as_deref();
    let programs_out = programs_out.map(|folder| ProgramsOutput::tried(folder, replace));
    let programs_out = programs_out.transpose()?;
    let options = Options {
        deadline,
        concession_years: arguments.give_back,
    };
    let seconds = deadline.limit().as_secs();
    let message = format!("Looking for the best plan, for up to {seconds} s ...");
    let search = pipeline::options_of_search(garden, &options);
    let (plan, programs, ran_out) = with_progress(&message, || {
        let (plan, programs) = match programs_out {
            None => (pipeline::decide(garden, &search), Vec::new()),
            Some(_) => pipeline::decide_with_programs(garden, &search),
        };
        let ran_out = search.deadline.is_over().then(|| deadline.limit());
        let threads = pipeline::side_by_side();
        let counted = |checked| pipeline::counted(garden, &options, checked, threads);
        (plan.map(counted), programs, ran_out)
    });
    let written = programs_out.map(|out| out.save(garden, &programs));
    let answer = match plan {
        Ok(checked) => {
            let read = read(arguments.all, garden, &checked, &options, ran_out);
            let page = under_way.page(&checked, read);
            planned(arguments, garden, &checked, &page, out)
        }
        Err(why) => under_way.first(no_plan(&options.deadline, garden, why)?),
    };
    let answer = under_way.beside(answer);
    Ok(match written {
        Some(written) => answer.and(written),
        None => answer,
    })
}

fn planned(
    arguments: &Arguments,
    garden: &Garden,
    checked: &CheckedPlan,
    page: &Page,
    out: Option<Output>,
) -> Answer {
    let answer = Answer::page(page);
    let Some(out) = out else {
        return answer;
    };
    let told = report::saved(&arguments.file, out.path());
    let saved = out.save(&saved::write(garden, checked.plan()));
    answer.and(saved.map(|beside| told + &beside))
}

/// What is read of a plan: one screen of it, or all, with what was given back and what that bought.
/// `ran_out` is the time allowed, if it ended the search.
pub(super) fn read(
    all: bool,
    garden: &Garden,
    checked: &CheckedPlan,
    options: &Options,
    ran_out: Option<Duration>,
) -> Page {
    let answer = options.deadline.for_the_answer();
    let slack = explain::slack_within(garden, checked, &answer);
    if !all {
        return report::plan_in_short(garden, checked, &slack, ran_out);
    }
    let mut page = report::plan_with(garden, checked, &slack, ran_out);
    let message = "Planning with nothing to give back ...";
    let back = with_progress(message, || explain::given_back(garden, checked, options));
    if let Some(back) = back {
        page.append(report::given_back(checked, &back));
    }
    page.append(report::at_the_end(garden, checked));
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
            let page = report::no_plan(garden, &Hindrance::of(garden, &found));
            Ok(Answer::page(&page).ending(Exit::NoPlan))
        }
        NoPlan::OutOfTime => Err(Trouble::page(
            Exit::OutOfTime,
            &report::out_of_time(ran_out(deadline)),
        )),
        NoPlan::TooMany => Err(Trouble::page(Exit::OutOfTime, &report::too_many(garden))),
        NoPlan::Failed(words) => Err(Trouble::new(
            Exit::Unexpected,
            format_args!("The search for a plan failed: {words}."),
            "This is a fault of the program. Please report it with the project file.",
        )),
        NoPlan::Refused(violations) => {
            let page = report::broken_by_program(garden, &violations);
            Err(Trouble::page(Exit::Unexpected, &page))
        }
    }
}
