//! `tureen note`: writes down what happened in the garden, in the diary beside the project file.

use std::io::IsTerminal;
use std::path::{Path, PathBuf};

use crate::calendar::Date;
use crate::disk;
use crate::harmless;
use crate::project::diary::{DIARY_FILE, Diary, Entry, Happened, Names, OPENING, phrase};
use crate::report;
use crate::words::Words;
use crate::words::happened::{among_the_years, happened};

use super::answer::{Answer, Exit, Trouble};
use super::argument::day;
use super::clock::today;
use super::load::{diary, load};
use super::talk::{Talk, Typed};

/// The arguments of `note`.
#[derive(clap::Args)]
pub(super) struct Arguments {
    /// The project file.
    file: PathBuf,
    /// What happened, in plain words: sowed carrot 3a; picked kale 3.2 kg; up carrot 12 of 44; lost tomato
    /// 20 % slugs; missed 3a sowed carrot; no lesson 3a; closed to 2027-05-28 families; weather -1 to 14 rain 5; words ... Without them: all entries, and on a
    /// terminal a question for more.
    #[arg(value_name = "WORDS", allow_negative_numbers = true)]
    words: Vec<String>,
    /// The day on which it happened [default: today].
    #[arg(long, value_name = "DATE", value_parser = day)]
    on: Option<Date>,
    /// Who writes it.
    #[arg(long, value_name = "WHO")]
    by: Option<String>,
    /// Takes back the entry of this number, or the last one.
    #[arg(long, value_name = "NUMBER", num_args = 0..=1, conflicts_with = "words")]
    undo: Option<Option<usize>>,
}

pub(super) fn run(arguments: &Arguments) -> Result<Answer, Trouble> {
    let garden = load(&arguments.file)?;
    let (names, words) = (Names::of(&garden), Words::of(&garden));
    let path = arguments.file.with_file_name(DIARY_FILE);
    let on = arguments.on.unwrap_or_else(today);
    if on > today() {
        let what = format_args!("{on} has not come yet.");
        let remedy = "Write down what has happened, on its day.";
        return Err(Trouble::new(Exit::Usage, what, remedy));
    }
    let read = || diary(&arguments.file, &garden, today());
    let by = &arguments.by;
    let add = |what: Happened| {
        add(
            &path,
            &Entry {
                on,
                by: by.clone(),
                what,
            },
        )
    };
    let told = match &arguments.undo {
        Some(which) => {
            let which = entry_that_counts(&read()?.0, *which)?;
            add(Happened::TakenBack(which))?;
            format!("Entry {which} does not count any more.\n")
        }
        None if arguments.words.is_empty() => {
            if std::io::stdin().is_terminal() && std::io::stdout().is_terminal() {
                ask((&names, on), add)?;
            }
            let (diary, wrong) = read()?;
            return Ok(Answer::page(&report::diary(&diary, words)).beside(wrong));
        }
        None => {
            let what = phrase(&arguments.words.join(" "), &names, on);
            let what = what.map_err(|wrong| unclear(&wrong))?;
            let told = format!(
                "Written down for {}: {}.\n{}",
                words.day(on),
                happened(&what, words),
                among_the_years(&what, on, &garden, words)
            );
            add(what)?;
            told
        }
    };
    // Read again, so that what contradicts the new entry is told at once.
    Ok(Answer::done(&told).beside(read()?.1))
}

/// The entry of a number, or the last one, if it counts.
fn entry_that_counts(diary: &Diary, which: Option<usize>) -> Result<usize, Trouble> {
    let numbers = || diary.entries.iter().map(|(number, _)| *number);
    let which = which.or(numbers().next_back());
    let which = which.filter(|which| numbers().any(|number| number == *which));
    which.ok_or_else(|| no_such_entry(diary))
}

/// Asks for what happened until there is no more.
fn ask(
    (names, on): (&Names, Date),
    add: impl Fn(Happened) -> Result<(), Trouble>,
) -> Result<(), Trouble> {
    let mut talk = Talk::begin();
    talk.say("What happened? One thing on a line; Enter when that is all. Such as\n   sowed carrot 3a\n   picked kale 3.2 kg\n   weather -1 to 14 rain 5\n")?;
    loop {
        talk.say("> ")?;
        let Typed::Line(line) = talk.line()? else {
            return talk.say("\n");
        };
        match phrase(&line, names, on) {
            Ok(what) => {
                add(what)?;
                talk.say("   written down\n")?;
            }
            Err(wrong) => talk.say(&format!("   Not written down: {wrong}.\n"))?,
        }
    }
}

fn add(path: &Path, entry: &Entry) -> Result<(), Trouble> {
    disk::append(path, OPENING, &entry.text()).map_err(|failed| {
        Trouble::new(
            Exit::Unexpected,
            failed,
            "Nothing was written down. Write to a place that you may change.",
        )
    })
}

fn unclear(wrong: &str) -> Trouble {
    let what = format_args!("Nothing was written down: {}.", harmless::plain(wrong));
    Trouble::new(
        Exit::Usage,
        what,
        "With `words` before it anything can be written down.",
    )
}

fn no_such_entry(diary: &Diary) -> Trouble {
    let what = format_args!("There is no such entry: {} count.", diary.entries.len());
    Trouble::new(
        Exit::Usage,
        what,
        "`tureen note FILE` lists all with their numbers.",
    )
}
