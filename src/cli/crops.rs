//! `tureen crops`: the crops that the program knows, or all about one of them.

use std::path::PathBuf;

use crate::catalogue::Catalogue;
use crate::garden::Garden;
use crate::project::near;
use crate::report;

use super::answer::{Answer, Exit, Trouble};
use super::argument::one_line;
use super::load::{catalogue, load};

/// The arguments of `crops`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// One crop, by any of its names; else all crops are listed.
    #[arg(value_parser = one_line)]
    name: Option<String>,
    /// Also tells what it means for this project's place: when to sow it, when it gets ripe.
    #[arg(long = "for", value_name = "FILE", requires = "name")]
    project: Option<PathBuf>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let catalogue = catalogue()?;
    let Some(name) = &arguments.name else {
        return Ok(Answer::page(&report::crops(&catalogue)));
    };
    // A name that nobody knows is told before the project is read, if no project can add it.
    if arguments.project.is_none() && catalogue.entry(name).is_none() {
        return Err(unknown(name, &catalogue, None));
    }
    let garden = arguments.project.as_deref().map(load).transpose()?;
    let garden = garden.as_ref();
    if let Some(entry) = catalogue.entry(name) {
        return Ok(Answer::page(&report::crop(&catalogue, entry, garden)));
    }
    let added = garden.and_then(|garden| {
        let crop = garden.crop_named(name)?;
        let entry = catalogue.entry(crop.like.as_deref()?)?;
        Some(report::added_crop(&catalogue, entry, crop, garden))
    });
    let page = added.ok_or_else(|| unknown(name, &catalogue, garden))?;
    Ok(Answer::page(&page))
}

/// A name that stands for no crop, neither of the program nor of the project.
fn unknown(name: &str, catalogue: &Catalogue, garden: Option<&Garden>) -> Trouble {
    let added = garden.into_iter().flat_map(|garden| &garden.ingredients);
    let added = added.map(|ingredient| ingredient.crop.name.as_str());
    let remedy = match near(name, catalogue.all_names().chain(added)) {
        Some(other) => format!("Did you mean \"{other}\"?"),
        None if garden.is_some() => {
            "`tureen crops` lists all crops; a section [crop.NAME] with `like` adds one.".to_owned()
        }
        None => "`tureen crops` lists all crops; for one that your file adds, say `--for FILE`."
            .to_owned(),
    };
    Trouble::new(
        Exit::Usage,
        format_args!("The program knows no crop \"{name}\"."),
        &remedy,
    )
}
