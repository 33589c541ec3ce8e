//! A talk on a terminal: something is said, a line is typed. What is typed comes back harmless.

use std::io::{BufRead, Stdin};

use crate::harmless;

use super::answer::{Exit, Trouble};
use super::terminal::{self, Screen};

/// What a person typed.
pub(super) enum Typed {
    /// Nothing but Enter.
    Nothing,
    /// The sign to go back to the question before.
    Back,
    /// A line.
    Line(String),
    /// The input has ended: there are no more answers.
    End,
}

/// How a person goes back.
pub(super) const BACK: &str = "<";

/// The terminal.
pub(super) struct Talk {
    input: Stdin,
    ended: bool,
}

impl Talk {
    pub fn begin() -> Self {
        Self {
            input: std::io::stdin(),
            ended: false,
        }
    }

    /// Says something.
    pub fn say(&self, text: &str) -> Result<(), Trouble> {
        terminal::say(&Screen::lines(text)).map_err(|error| unheard(&error))
    }

    /// Waits for a line.
    pub fn line(&mut self) -> Result<Typed, Trouble> {
        let mut line = String::new();
        let read = match self.ended {
            true => 0,
            false => self
                .input
                .lock()
                .read_line(&mut line)
                .map_err(|error| unheard(&error))?,
        };
        Ok(match line.trim() {
            _ if read == 0 => {
                self.ended = true;
                Typed::End
            }
            "" => Typed::Nothing,
            BACK => Typed::Back,
            line => Typed::Line(harmless::plain(line)),
        })
    }

    /// A question that is answered by yes, unless by no.
    pub fn yes(&mut self, question: &str) -> Result<bool, Trouble> {
        self.say(&format!("\n{question} [yes] "))?;
        Ok(match self.line()? {
            Typed::Line(line) => line.to_lowercase().starts_with('y'),
            Typed::Nothing => true,
            Typed::Back | Typed::End => false,
        })
    }
}

/// A terminal that cannot be read or written.
fn unheard(error: &std::io::Error) -> Trouble {
    let what = format_args!("Cannot talk on this terminal: {error}.");
    Trouble::new(
        Exit::Unexpected,
        what,
        "Write the project file by hand; README.md has one to copy.",
    )
}
