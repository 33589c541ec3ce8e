//! The command line: what can be asked, and how the answer reaches the reader.

mod answer;
mod argument;
mod carry_over;
mod check;
mod climate;
mod clock;
mod crops;
mod days;
mod handouts;
mod ideas;
mod keys;
mod load;
mod new;
mod note;
mod plan;
mod record;
mod save;
mod season;
mod shell;
mod show;
mod stations;
mod talk;
mod terminal;
mod time_limit;
mod today;
mod try_changes;
mod verify;
mod weather;
mod why;

use std::process::ExitCode;

use clap::{CommandFactory, Parser, Subcommand};

pub use answer::Exit;
use answer::{Answer, Trouble};
use terminal::Screen;

/// Plans one dish that a whole school grows and eats on one day.
#[derive(Parser)]
#[command(version, arg_required_else_help = true, after_help = EXIT_CODES)]
struct Arguments {
    #[command(subcommand)]
    command: Command,
}

/// What can be asked.
#[derive(Subcommand)]
enum Command {
    /// Begins a project: asks for what a school knows, and writes its file.
    New(new::Arguments),
    /// Is the project file valid, and what does the program make of it?
    Check(check::Arguments),
    /// Finds the best plan and prints it.
    Plan(plan::Arguments),
    /// Prints a saved plan: all of it, one grade's page, the space it takes, a watering list, or
    /// what can wait.
    Show(show::Arguments),
    /// Writes a folder to print, send and import: a page for each reader, calendars, tables.
    Handouts(handouts::Arguments),
    /// What is due this week, what is late, what to decide and to water?
    Today(today::Arguments),
    /// Writes down what happened in the garden.
    Note(note::Arguments),
    /// Does a saved plan, perhaps edited by hand, keep every rule?
    Verify(verify::Arguments),
    /// What stands in the way of a plan, and which changes would be enough?
    Why(why::Arguments),
    /// How would the dish fare on other days?
    Days(days::Arguments),
    /// Which dishes could be cooked on a day in this garden, and who would grow what?
    Ideas(ideas::Arguments),
    /// What would changes to the project file bring? Shows the plan as it is and with them.
    Try(try_changes::Arguments),
    /// Writes the project of the next year: days a year on, histories of beds, children moved up.
    CarryOver(carry_over::Arguments),
    /// Writes the weather years that are generated from the project file's monthly means.
    Weather(weather::Arguments),
    /// Lists the weather stations nearest to a place whose monthly means are known.
    Stations(stations::Arguments),
    /// Makes the weather table of a project from the files of a weather station.
    Record(record::Arguments),
    /// Lists the crops that the program knows, or tells all it knows of one.
    Crops(crops::Arguments),
    /// Lists every key that a project file may hold, or those of one table.
    Keys(keys::Arguments),
    /// Tells the frosts, warmth, rain and light of the project's place, and what they suit.
    Climate(climate::Arguments),
    /// Prints a script with which a shell completes commands and options.
    Completions(shell::CompletionsArguments),
    /// Prints a manual page, of the program or of one command.
    Manual(shell::ManualArguments),
}

const EXIT_CODES: &str = "\
Exit codes:
  0  done
  1  something unexpected went wrong
  2  the arguments are wrong
  3  the project file or the saved plan has errors
  4  no plan can keep the rules (the reasons are printed)
  5  no plan was found in the time allowed, or there is too much to choose from
  6  a plan breaks rules (all of them are printed)

Colour is used only on a terminal, and not if NO_COLOR is set.";

/// Runs the program with the arguments of the process.
#[must_use]
pub fn run() -> ExitCode {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) => arguments,
        Err(said) => return about_arguments(&said).into(),
    };
    let told = answer(arguments.command).and_then(|Answer { exit, text, beside }| {
        print(&text)?;
        terminal::complain(&beside);
        Ok(exit)
    });
    told.unwrap_or_else(|Trouble { exit, text }| {
        terminal::complain(&text);
        exit
    })
    .into()
}

/// Help where it was asked for, or what is wrong with the arguments.
fn about_arguments(said: &clap::Error) -> Exit {
    let text = Screen::about_arguments(said, std::env::args_os());
    if said.use_stderr() {
        terminal::complain(&text);
        return Exit::Usage;
    }
    match print(&text) {
        Ok(()) => Exit::Done,
        Err(Trouble { exit, .. }) => exit,
    }
}

fn print(text: &Screen) -> Result<(), Trouble> {
    terminal::print(text).map_err(|error| {
        let what = format_args!("Cannot print the answer: {error}.");
        Trouble::new(Exit::Unexpected, what, "Print to a place that has room.")
    })
}

/// The command line as it is defined.
fn whole() -> clap::Command {
    Arguments::command().name("tureen")
}

fn answer(command: Command) -> Result<Answer, Trouble> {
    match command {
        Command::New(arguments) => new::run(&arguments),
        Command::Check(arguments) => check::run(&arguments),
        Command::Plan(arguments) => plan::run(&arguments),
        Command::Show(arguments) => show::run(&arguments),
        Command::Handouts(arguments) => handouts::run(&arguments),
        Command::Today(arguments) => today::run(&arguments),
        Command::Note(arguments) => note::run(&arguments),
        Command::Verify(arguments) => verify::run(&arguments),
        Command::Days(arguments) => days::run(&arguments),
        Command::Ideas(arguments) => ideas::run(&arguments),
        Command::Why(arguments) => why::run(&arguments),
        Command::Try(arguments) => try_changes::run(&arguments),
        Command::CarryOver(arguments) => carry_over::run(&arguments),
        Command::Weather(arguments) => weather::run(&arguments),
        Command::Stations(arguments) => stations::run(&arguments),
        Command::Record(arguments) => record::run(&arguments),
        Command::Crops(arguments) => crops::run(&arguments),
        Command::Keys(arguments) => keys::run(&arguments),
        Command::Climate(arguments) => climate::run(&arguments),
        Command::Completions(arguments) => shell::completions(&arguments, whole()),
        Command::Manual(arguments) => shell::manual(&arguments, whole()),
    }
}
