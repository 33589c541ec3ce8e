//! What a command gives back: an answer for the output, or a trouble for the error output,
//! each with the exit code.

use std::path::Path;
use std::process::ExitCode;

use crate::disk::Refused;
use crate::harmless;
use crate::page::Page;
use crate::pipeline::Unreadable;
use crate::report::folder::FolderError;

use super::terminal::Screen;

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
    pub text: Screen,
    /// What went wrong beside it; it goes to the error output.
    pub beside: Screen,
}

impl Answer {
    fn of(text: Screen) -> Self {
        Self {
            exit: Exit::Done,
            text,
            beside: Screen::default(),
        }
    }

    /// An answer to what was asked.
    pub fn done(text: &str) -> Self {
        Self::of(Screen::lines(text))
    }

    /// A page that answers what was asked.
    pub fn page(page: &Page) -> Self {
        Self::of(Screen::page(page))
    }

    /// The same answer, with what is wrong with a file that it did not need.
    pub fn beside(mut self, wrong: Screen) -> Self {
        self.beside.append(&wrong);
        self
    }

    /// The same answer after a page that is read first.
    pub fn after(self, first: &Page) -> Self {
        let mut text = Screen::page(first);
        text.append(&self.text);
        Self { text, ..self }
    }

    /// The same answer with another exit code.
    pub fn ending(self, exit: Exit) -> Self {
        Self { exit, ..self }
    }

    /// The same answer, with what came of something that was to be done with it. If that failed,
    /// the answer is given all the same, and the exit code tells.
    pub fn and(mut self, done: Result<String, Trouble>) -> Self {
        match done {
            Ok(told) => self.text.append(&Screen::lines(&told)),
            Err(Trouble { exit, text }) => {
                self.exit = exit;
                self.beside.append(&text);
            }
        }
        self
    }
}

/// What kept the program from answering; it goes to the error output.
pub(super) struct Trouble {
    pub exit: Exit,
    pub text: Screen,
}

impl Trouble {
    /// One sentence, and what to do about it.
    pub fn new(exit: Exit, what: impl std::fmt::Display, remedy: &str) -> Self {
        Self {
            exit,
            text: Screen::lines(&format!("{what}\n{remedy}\n")),
        }
    }

    /// A page that tells it all.
    pub fn page(exit: Exit, page: &Page) -> Self {
        Self {
            exit,
            text: Screen::page_of_trouble(page),
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

    /// A place, named by an argument, at which nothing can be written; it was tried before the work.
    pub fn place(refused: &Refused) -> Self {
        Self::new(Exit::Usage, refused, refused.remedy())
    }

    /// A file that is not written after all.
    pub fn writing(refused: &Refused) -> Self {
        let exit = match refused {
            Refused::NotOurs(_) => Exit::Usage,
            Refused::IsAFolder(_) | Refused::Failed(_) => Exit::Unexpected,
        };
        Self::new(exit, refused, refused.remedy())
    }

    /// A saved plan from which a season cannot go on.
    pub fn no_season(path: &Path, why: &Unreadable) -> Self {
        let Unreadable::Content(error) = why else {
            return Self::saved_plan(path, why);
        };
        let remedy = error.remedy();
        Self::new(
            Exit::ProjectErrors,
            format_args!(
                "The season cannot go on from the saved plan {}: {error}.",
                harmless::path(path)
            ),
            &format!("{remedy} To plan the whole season afresh, move the saved plan away."),
        )
    }

    /// A saved plan that cannot be read.
    pub fn saved_plan(path: &Path, why: &Unreadable) -> Self {
        let path = harmless::path(path);
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
