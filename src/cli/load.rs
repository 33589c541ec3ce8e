//! Loading the built-in crops, and a project file with them.

use std::path::Path;

use crate::catalogue::Catalogue;
use crate::diagnostic::Problems;
use crate::garden::Garden;
use crate::project;

use super::answer::{Exit, Trouble};
use super::terminal::err_look;

/// The garden of a project file, or everything that is wrong with the file.
pub(super) fn load(path: &Path) -> Result<Garden, Trouble> {
    project::load(path, &catalogue()?).map_err(|problems| wrong_project(&problems))
}

/// The built-in crops.
pub(super) fn catalogue() -> Result<Catalogue, Trouble> {
    Catalogue::load().map_err(|error| {
        Trouble::new(
            Exit::Unexpected,
            format_args!("The built-in crops cannot be read: {error}"),
            "This is a fault of the program. Please report it.",
        )
    })
}

/// Everything that is wrong with a project.
pub(super) fn wrong_project(problems: &Problems) -> Trouble {
    let look = err_look();
    Trouble {
        exit: Exit::ProjectErrors,
        text: problems.render(look.color, look.width),
    }
}
