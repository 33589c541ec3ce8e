//! `tureen stations`: the weather stations nearest to a place whose monthly means are known, and the means of
//! one as lines of a project file.

use std::path::{Path, PathBuf};

use crate::disk::Author;
use crate::harmless;
use crate::project::draft;
use crate::report;
use crate::units::Latitude;
use crate::weather::normals::{Longitude, nearest};

use super::answer::{Answer, Exit, Trouble};
use super::save::Output;

/// So many are told.
const COUNT: usize = 3;

/// The arguments of `stations`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// Latitude and longitude in degrees, as a map shows them: 44.3 N 93.2 W. South and west are negative
    /// without letters.
    #[arg(value_name = "PLACE", required = true, num_args = 1..=4, allow_negative_numbers = true)]
    place: Vec<String>,
    /// Writes the means of one of them into a new file, as lines of a project file.
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// Which of them is written.
    #[arg(long, value_name = "NUMBER", default_value_t = 1, requires = "out",
          value_parser = clap::value_parser!(u8).range(1..=COUNT as i64))]
    take: u8,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let wrong = |what: &str| {
        Trouble::new(
            Exit::Usage,
            format_args!("This is no place: {what}."),
            "Write for instance: 44.3 N 93.2 W",
        )
    };
    let (latitude, longitude) = match draft::place(&arguments.place.join(" ")) {
        Ok((latitude, Some(longitude))) => (Latitude(latitude), Longitude(longitude)),
        Ok((_, None)) => return Err(wrong("the longitude is missing")),
        Err(what) => return Err(wrong(&what)),
    };
    let near = nearest(latitude, longitude, COUNT);
    let page = report::stations(&near);
    let (Some(out), Some(one)) = (&arguments.out, near.get(usize::from(arguments.take) - 1)) else {
        return Ok(Answer::page(&page));
    };
    let output = Output::tried(out, |_| Author::Other, false)?;
    let saved = output.save(&draft::place_of(latitude, one));
    Ok(Answer::page(&page).and(saved.map(|beside| written(one.1.name, out) + &beside)))
}

/// That the means were written.
fn written(name: &str, out: &Path) -> String {
    format!("Wrote the means of {name} to {}.\n", harmless::path(out))
}
