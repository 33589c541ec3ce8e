//! `tureen weather`: writes the weather years that are generated from monthly means.

use std::path::PathBuf;

use chrono::Datelike;

use crate::report;
use crate::weather::generator::generate;
use crate::words::Words;

use super::answer::{Answer, Exit, Trouble};
use super::load::load;
use super::save::Output;

/// The arguments of `weather`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file; it gives monthly means.
    file: PathBuf,
    /// The table to write: date, lowest and highest temperature, rain.
    #[arg(long, value_name = "CSV")]
    out: PathBuf,
    /// Also replaces a file that this program did not write.
    #[arg(long)]
    replace: bool,
    /// How many years [default: as many as the plan uses].
    #[arg(long, value_parser = clap::value_parser!(u32).range(1..=1000))]
    years: Option<u32>,
    /// Another number gives other years [default: the project file's].
    #[arg(long)]
    seed: Option<u64>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let Some(origin) = garden.weather.origin() else {
        return Err(Trouble::new(
            Exit::ProjectErrors,
            "The project file reads its weather from a file, so there is nothing to generate.",
            "Give monthly means in [place] instead: monthly = { tmin_c = [...], ... }",
        ));
    };
    let out = Output::tried(&arguments.out, report::weather_author, arguments.replace)?;
    let first_year = garden.weather.first().year();
    let whole_years = u32::try_from(garden.weather.days().len() / 365).unwrap_or(u32::MAX);
    let record = generate(
        &origin.means,
        first_year,
        arguments.years.unwrap_or(whole_years),
        arguments.seed.unwrap_or(origin.seed),
    );
    let table = report::weather_table(&record, &arguments.file);
    let told = report::weather_written(&record, &arguments.out, Words::of(&garden));
    let beside = out.save(&table)?;
    Ok(Answer::done(&(told + &beside)))
}
