//! The terminal: its width, whether it shows colour, printing, and the progress line.

use std::io::{ErrorKind, IsTerminal, Write};
use std::time::Duration;

use anstream::{AutoStream, ColorChoice};
use indicatif::{ProgressBar, ProgressStyle};

use crate::report::Look;

/// Columns where neither COLUMNS nor a terminal tells.
const USUAL_WIDTH: usize = 100;
/// Longer lines are hard to read.
const MOST_WIDTH: usize = 160;

/// How pages on the output look.
pub fn out_look() -> Look {
    Look {
        width: width(),
        color: AutoStream::choice(&std::io::stdout()) != ColorChoice::Never,
    }
}

/// How pages on the error output look.
pub fn err_look() -> Look {
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

/// Prints an answer. A reader who closes the pipe early has read enough.
pub fn print(text: &str) -> std::io::Result<()> {
    let mut out = anstream::stdout().lock();
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        other => other,
    }
}

/// Prints a trouble. If that fails too, the exit code still tells.
pub fn complain(text: &str) {
    let _ = anstream::stderr().write_all(text.as_bytes());
}

/// Runs long work with a progress line on the error output, if that is a terminal.
pub fn with_progress<T>(message: String, work: impl FnOnce() -> T) -> T {
    if !std::io::stderr().is_terminal() {
        return work();
    }
    let line = ProgressBar::new_spinner().with_message(message);
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
    let bar = ProgressBar::new(steps as u64).with_message(message.to_owned());
    // A bar with its count still tells, should the form be refused.
    if let Ok(style) = ProgressStyle::with_template("{msg}: {pos} of {len} {bar:30}") {
        bar.set_style(style);
    }
    let result = work(&|| bar.inc(1));
    bar.finish_and_clear();
    result
}
