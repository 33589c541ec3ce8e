//! The terminal: its size, whether it shows colour, what may be printed, by which pager, and the
//! progress line.

use std::ffi::OsString;
use std::io::{ErrorKind, IsTerminal, Write};
use std::process::{Command, Stdio};
use std::time::Duration;

use anstream::{AutoStream, ColorChoice};
use indicatif::{ProgressBar, ProgressStyle};

use crate::diagnostic::Problems;
use crate::harmless;
use crate::page::Look;
use crate::page::Page;

/// Columns where neither COLUMNS nor a terminal tells.
const USUAL_WIDTH: usize = 100;
/// Longer lines are hard to read.
const MOST_WIDTH: usize = 160;

/// Text that may be printed, and the only one that can be: all that people gave in files,
/// arguments and names of files was made harmless before any colour was added, so what moves or
/// colours the terminal is ours.
#[derive(Default)]
pub struct Screen(String);

impl Screen {
    /// Lines without colour.
    pub fn lines(text: &str) -> Self {
        Self(harmless::lines(text))
    }

    /// A page for the output.
    pub fn page(page: &Page) -> Self {
        Self(page.text(out_look()))
    }

    /// A page for the error output.
    pub fn page_of_trouble(page: &Page) -> Self {
        Self(page.text(err_look()))
    }

    /// Everything that is wrong with a project, for the error output.
    pub fn problems(problems: &Problems) -> Self {
        let look = err_look();
        Self(problems.render(look.color, look.width))
    }

    /// What is said about the arguments, help included. It quotes them amid colours, so there are
    /// colours only where no argument holds what they could be mistaken for; and on one line.
    pub fn about_arguments(said: &clap::Error, given: impl Iterator<Item = OsString>) -> Self {
        let given: Vec<String> = given.map(|a| a.to_string_lossy().into_owned()).collect();
        let is_harmless = |text: &String| !text.contains('\n') && harmless::lines(text) == *text;
        if given.iter().all(is_harmless) {
            return Self(said.render().ansi().to_string());
        }
        // The whole argument, or what `--option=` is followed by.
        let quoted = given.iter().flat_map(|text| {
            let value = text.split_once('=').map(|(_, value)| value);
            std::iter::once(text.as_str()).chain(value)
        });
        let broken = quoted.filter(|text| text.contains('\n'));
        let said = broken.fold(said.render().to_string(), |said, text| {
            said.replace(text, &harmless::plain(text))
        });
        Self::lines(&said)
    }

    /// Goes on with more.
    pub fn append(&mut self, more: &Self) {
        self.0.push_str(&more.0);
    }
}

/// How pages on the output look.
fn out_look() -> Look {
    Look {
        width: width(),
        color: AutoStream::choice(&std::io::stdout()) != ColorChoice::Never,
    }
}

/// How pages on the error output look.
fn err_look() -> Look {
    Look {
        width: width(),
        color: AutoStream::choice(&std::io::stderr()) != ColorChoice::Never,
    }
}

/// COLUMNS if set, else the terminal's width, else the usual width.
fn width() -> usize {
    std::env::var("COLUMNS")
        .ok()
        .and_then(|columns| columns.trim().parse().ok())
        .or_else(|| terminal_size::terminal_size().map(|(w, _)| usize::from(w.0)))
        .unwrap_or(USUAL_WIDTH)
        .min(MOST_WIDTH)
}

/// What shows longer answers page by page where PAGER names nothing, and how it is asked to: it keeps
/// our colours, stays on the screen and ends by itself where one page is enough.
const USUAL_PAGER: [&str; 2] = ["less", "-FRX"];

/// Prints an answer, through a pager where it is longer than the terminal. A reader who closes the
/// pipe early has read enough.
pub fn print(text: &Screen) -> std::io::Result<()> {
    if is_longer_than_the_terminal(text) && paged(text) {
        return Ok(());
    }
    let mut out = anstream::stdout().lock();
    match out.write_all(text.0.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

/// Says something in a talk, at once and without a pager.
pub fn say(text: &Screen) -> std::io::Result<()> {
    let mut out = anstream::stdout().lock();
    out.write_all(text.0.as_bytes())?;
    out.flush()
}

/// True if an answer goes to a terminal that has not as many lines; the last one is the prompt's.
fn is_longer_than_the_terminal(text: &Screen) -> bool {
    let height = terminal_size::terminal_size_of(std::io::stdout());
    height.is_some_and(|(_, height)| text.0.lines().count() >= usize::from(height.0))
}

/// Shows an answer by the pager that PAGER names, or by the usual one; false if there is none, or
/// none is wanted (PAGER is empty).
fn paged(text: &Screen) -> bool {
    let named = std::env::var("PAGER");
    let words: Vec<&str> = match &named {
        Ok(named) => named.split_whitespace().collect(),
        Err(_) => USUAL_PAGER.to_vec(),
    };
    let Some((program, arguments)) = words.split_first() else {
        return false;
    };
    let mut command = Command::new(program);
    command.args(arguments).stdin(Stdio::piped());
    let Ok(mut pager) = command.spawn() else {
        return false;
    };
    if let Some(mut pipe) = pager.stdin.take() {
        // Whoever leaves the pager early has read enough.
        let _ = pipe.write_all(text.0.as_bytes());
    }
    pager.wait().is_ok()
}

/// Prints a trouble. If that fails too, the exit code still tells.
pub fn complain(text: &Screen) {
    let _ = anstream::stderr().write_all(text.0.as_bytes());
}

/// Runs long work with a progress line on the error output, if that is a terminal.
pub fn with_progress<T>(message: &str, work: impl FnOnce() -> T) -> T {
    if !std::io::stderr().is_terminal() {
        return work();
    }
    let line = ProgressBar::new_spinner().with_message(harmless::plain(message));
    line.enable_steady_tick(Duration::from_millis(120));
    let result = work();
    line.finish_and_clear();
    result
}

/// Runs long work of several like steps with a progress bar on the error output, if that is
/// a terminal; the work calls what it is given after each step.
pub fn with_steps<T>(message: &str, steps: usize, work: impl FnOnce(&(dyn Fn() + Sync)) -> T) -> T {
    if !std::io::stderr().is_terminal() {
        return work(&|| {});
    }
    let bar = ProgressBar::new(steps as u64).with_message(harmless::plain(message));
    // A bar with its count still tells, should the form be refused.
    if let Ok(style) = ProgressStyle::with_template("{msg}: {pos} of {len} {bar:30}") {
        bar.set_style(style);
    }
    let result = work(&|| bar.inc(1));
    bar.finish_and_clear();
    result
}
