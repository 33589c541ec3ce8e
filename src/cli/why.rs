//! `tureen why`: what stands in the way of a plan, and what would give one.

use std::path::PathBuf;
use std::time::Duration;

use crate::explain::Workbench;
use crate::model::Options;
use crate::pipeline::{self, NoPlan};
use crate::project;
use crate::report::{self, Look};

use super::answer::{Answer, Exit, Trouble};
use super::load::{catalogue, load};
use super::terminal::with_progress;

/// Seconds for each of the many changes that are tried: most are settled in far less, and one
/// that is not counts as no help.
const EACH: u64 = 2;

/// The arguments of `why`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it stays as it is.
    file: PathBuf,
}

pub(super) fn run(arguments: &Arguments, look: Look) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let catalogue = catalogue()?;
    let options = Options::default();
    let bench = Workbench {
        load: &|changes| project::load_changed(&arguments.file, changes, &catalogue),
        options: Options {
            time_limit: Duration::from_secs(EACH),
            ..options
        },
    };
    let message = "Looking for what stands in the way ...".to_owned();
    with_progress(message, || match pipeline::plan(&garden, &options) {
        Err(NoPlan::Impossible(found)) => {
            let diagnosis = bench.diagnose(&garden, &catalogue);
            let text = report::why_no_plan(&garden, &found, &diagnosis, look);
            Ok(Answer {
                exit: Exit::NoPlan,
                text,
            })
        }
        Err(why) => super::plan::no_plan(options.time_limit.as_secs(), &garden, why, look),
        Ok(checked) => Ok(Answer::done(report::plan_exists(&garden, &checked, look))),
    })
}
