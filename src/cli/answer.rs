//! What a command gives back: an answer for the output, or a trouble for the error output,
//! each with the exit code.

use std::path::Path;
use std::process::ExitCode;

use crate::pipeline::Unreadable;
use crate::report::folder::FolderError;
use crate::report::page::Page;

use super::terminal::out_look;

/// How the program ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Done.
    Done = 0,
    /// Something that should not happen.
    Unexpected = 1,
    /// Wrong arguments.
    Usage = 2,
    /// The project file or the saved plan has errors.
    ProjectErrors = 3,
    /// No plan can keep the rules.
    NoPlan = 4,
    /// No plan was found in the time allowed.
    OutOfTime = 5,
    /// A plan breaks rules.
    BrokenRules = 6,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit as u8)
    }
}

/// An answer; it goes to the output.
pub(super) struct Answer {
    pub exit: Exit,
    pub text: String,
}

impl Answer {
    /// An answer to what was asked.
    pub fn done(text: String) -> Self {
        Self {
            exit: Exit::Done,
            text,
        }
    }

    /// A page that answers what was asked.
    pub fn page(page: &Page) -> Self {
        Self::done(page.text(out_look()))
    }

    /// The same answer with another exit code.
    pub fn ending(self, exit: Exit) -> Self {
        Self { exit, ..self }
    }
}

/// What kept the program from answering; it goes to the error output.
pub(super) struct Trouble {
    pub exit: Exit,
    pub text: String,
}

impl Trouble {
    /// One sentence, and what to do about it.
    pub fn new(exit: Exit, what: impl std::fmt::Display, remedy: &str) -> Self {
        Self {
            exit,
            text: format!("{what}\n{remedy}\n"),
        }
    }

    /// What should not happen.
    pub fn internal(error: &dyn std::error::Error) -> Self {
        Self::new(
            Exit::Unexpected,
            format_args!("Something went wrong: {error}."),
            "This is a fault of the program. Please report it with the project file.",
        )
    }

    /// A folder of handouts that cannot be written.
    pub fn folder(error: &FolderError) -> Self {
        let exit = match error {
            FolderError::BadName(_) | FolderError::Failed(..) => Exit::Unexpected,
            _ => Exit::Usage,
        };
        Self::new(exit, error, error.remedy())
    }

    /// A file that cannot be written.
    pub fn writing(path: &Path, error: &std::io::Error) -> Self {
        Self::new(
            Exit::Unexpected,
            format_args!("Cannot write {}: {error}.", path.display()),
            "Give a place where you may write and that has room.",
        )
    }

    /// A saved plan that cannot be read.
    pub fn saved_plan(path: &Path, why: &Unreadable) -> Self {
        let path = path.display();
        match why {
            Unreadable::File(error) => Self::new(
                Exit::ProjectErrors,
                format_args!("Cannot read the saved plan {path}: {error}."),
                "Make one with `tureen plan FILE --out FOLDER`, and name it or its folder.",
            ),
            Unreadable::Content(error) => Self::new(
                Exit::ProjectErrors,
                format_args!("The saved plan {path} cannot be used: {error}."),
                error.remedy(),
            ),
        }
    }
}
