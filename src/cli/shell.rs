//! `tureen completions` and `tureen manual`: what a shell and a reader of manual pages want to know of the
//! command line, made from its own definition.

use clap::Command;
use clap_complete::Shell;
use clap_mangen::Man;

use super::answer::{Answer, Exit, Trouble};
use super::argument::one_line;

/// The arguments of `completions`.
#[derive(clap::Args)]
pub(super) struct CompletionsArguments {
    /// The shell that completes commands and options.
    #[arg(value_enum)]
    shell: Shell,
}

/// The arguments of `manual`.
#[derive(clap::Args)]
pub(super) struct ManualArguments {
    /// One command, such as plan; else the program as a whole.
    #[arg(value_parser = one_line)]
    command: Option<String>,
}

/// A script for a shell.
pub(super) fn completions(
    arguments: &CompletionsArguments,
    mut all: Command,
) -> Result<Answer, Trouble> {
    let mut script: Vec<u8> = Vec::new();
    let name = all.get_name().to_owned();
    clap_complete::generate(arguments.shell, &mut all, name, &mut script);
    text(&script)
}

/// A manual page.
pub(super) fn manual(arguments: &ManualArguments, mut all: Command) -> Result<Answer, Trouble> {
    // Gives each command its full name, `tureen-plan`.
    all.build();
    let page = match &arguments.command {
        None => all,
        Some(wanted) => part(&all, wanted)?,
    };
    let mut roff: Vec<u8> = Vec::new();
    Man::new(page)
        .render(&mut roff)
        .map_err(|error| Trouble::internal(&error))?;
    text(&roff)
}

/// One command.
fn part(all: &Command, wanted: &str) -> Result<Command, Trouble> {
    let known = || all.get_subcommands().map(|c| c.get_name().to_owned());
    let found = all.get_subcommands().find(|c| c.get_name() == wanted);
    let Some(found) = found else {
        return Err(Trouble::new(
            Exit::Usage,
            format_args!("The program has no command \"{wanted}\"."),
            &format!("It has {}.", known().collect::<Vec<_>>().join(", ")),
        ));
    };
    Ok(found.clone().version(env!("CARGO_PKG_VERSION")))
}

fn text(bytes: &[u8]) -> Result<Answer, Trouble> {
    let text = str::from_utf8(bytes).map_err(|error| Trouble::internal(&error))?;
    Ok(Answer::done(text))
}
