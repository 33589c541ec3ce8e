//! Every command and option, read from the program's own help, so that a new one is tried
//! without a word here; and arguments for them.

use std::error::Error;
use std::ffi::OsString;
use std::path::Path;
use std::process::Command;

use crate::dice::Dice;
use crate::start::{CLIMATE, GARDEN, PLAN, Start};
use crate::values::{DATES, NUMBERS, TEXTS};

/// A command with its arguments.
pub struct Asked {
    name: String,
    /// What stands without an option, such as `<FILE>` or `[STEP]...`.
    positions: Vec<String>,
    /// Options with what they take, if anything.
    options: Vec<(String, Option<String>)>,
    must: Vec<String>,
}

/// The option that keeps a search short.
const LIMIT: &str = "--time-limit";

/// Commands, with or without an option, that plan, and how often a command is chosen.
const PLANS: [(&str, &str, f64); 7] = [
    ("plan", "", 0.15),
    ("show", "--space", 1.0),
    ("handouts", "--least-space", 1.0),
    ("why", "", 0.05),
    ("days", "", 0.02),
    ("ideas", "", 0.02),
    ("try", "", 0.05),
];

/// All commands, as `--help` tells them.
pub fn commands(program: &Path) -> Result<Vec<Asked>, Box<dyn Error>> {
    let help = |words: &[&str]| -> Result<String, Box<dyn Error>> {
        let output = Command::new(program)
            .args(words)
            .env("COLUMNS", "160")
            .output()?;
        Ok(String::from_utf8(output.stdout)?)
    };
    let all = help(&["--help"])?;
    let names = section(&all, "Commands:").filter_map(|line| line.split(' ').next());
    let names: Vec<&str> = names.filter(|name| *name != "help").collect();
    let mut found = Vec::new();
    for name in names {
        let text = help(&[name, "--help"])?;
        let usage = text
            .lines()
            .find(|line| line.starts_with("Usage:"))
            .unwrap_or_default();
        let first = |line: &str| line.split("  ").next().unwrap_or_default().to_owned();
        let option = |line: &str| {
            let first = first(line);
            let mut words = first.split(' ').skip_while(|word| !word.starts_with("--"));
            let name = words.next().unwrap_or_default().to_owned();
            (name, words.next().map(str::to_owned))
        };
        let options: Vec<_> = section(&text, "Options:").map(option).collect();
        let must = options.iter().map(|(name, _)| name.clone());
        found.push(Asked {
            name: name.to_owned(),
            positions: section(&text, "Arguments:").map(first).collect(),
            must: must.filter(|o| usage.contains(&format!("{o} <"))).collect(),
            options,
        });
    }
    Ok(found)
}

/// The entries of a section of a help page. Lines that go on are further in.
fn section<'a>(text: &'a str, title: &'a str) -> impl Iterator<Item = &'a str> {
    text.lines()
        .skip_while(move |line| *line != title)
        .skip(1)
        .take_while(|line| !line.is_empty())
        .filter(|line| line.len() - line.trim_start().len() <= 6)
        .map(str::trim_start)
}

/// A command line for a start.
pub fn arguments(commands: &[Asked], start: &Start, dice: &mut Dice) -> Vec<OsString> {
    loop {
        let asked = &commands[dice.below(commands.len())];
        let weight = PLANS.iter().find(|(name, ..)| *name == asked.name);
        if dice.chance(weight.map_or(1.0, |(.., weight)| *weight))
            && let Some(words) = asked.words(start, dice)
        {
            return words.into_iter().map(OsString::from).collect();
        }
    }
}

impl Asked {
    /// Words for this command; none if the search would take too long.
    fn words(&self, start: &Start, dice: &mut Dice) -> Option<Vec<String>> {
        let mut words = vec![self.name.clone()];
        for position in &self.positions {
            let times = match (position.ends_with("..."), position.starts_with('[')) {
                (true, _) => dice.below(4),
                (false, true) => dice.below(2),
                (false, false) => usize::from(dice.chance(0.99)),
            };
            words.extend((0..times).map(|_| value(position, start, dice)));
        }
        for (name, takes) in &self.options {
            let chance = match name.as_str() {
                LIMIT => 1.0,
                _ if self.must.contains(name) => 0.99,
                "--help" => 0.002,
                _ => 0.3,
            };
            if dice.chance(chance) {
                words.push(name.clone());
                words.extend(takes.iter().map(|takes| value(takes, start, dice)));
            }
        }
        let may_plan = |(command, option, _): &(&str, &str, f64)| {
            *command == self.name && (option.is_empty() || words.iter().any(|w| w == option))
        };
        let is_limited = self.options.iter().any(|(name, _)| name == LIMIT);
        let too_long = PLANS.iter().any(may_plan) && !is_limited && !start.is_small;
        (!too_long).then_some(words)
    }
}

/// A value for what an option or a position takes.
fn value(takes: &str, start: &Start, dice: &mut Dice) -> String {
    if dice.chance(0.05) {
        return text(dice);
    }
    let takes = takes.trim_matches(|c: char| !c.is_ascii_uppercase());
    match takes {
        "FILE" if dice.chance(0.1) => any_file(start, dice),
        "FILE" if start.files.contains_key(CLIMATE) && dice.chance(0.2) => CLIMATE.to_owned(),
        "FILE" => GARDEN.to_owned(),
        "PATH" | "PLAN" if dice.chance(0.1) => any_file(start, dice),
        "PATH" | "PLAN" => PLAN.to_owned(),
        "FOLDER" | "CSV" => {
            let places = ["out", "out/deep/er", ".", "..", GARDEN, PLAN, "weather.csv"];
            dice.one(&places).to_owned()
        }
        "GRADE" | "CLASS" => dice
            .one(&["1", "2", "3", "k", "A", "1a", "2A", "Second grade", "9"])
            .to_owned(),
        "DATE" => dice.one(DATES).to_owned(),
        "SECONDS" => dice
            .one(&["0", "1", "1", "1", "2", "-1", "x", "86401"])
            .to_owned(),
        "YEARS" => dice
            .one(&["0", "1", "3", "100", "1000", "1001", "4294967296"])
            .to_owned(),
        "SEED" => dice.one(NUMBERS).to_owned(),
        "KEY=VALUE" => change(start, dice),
        "STEP" | "NAME" => word(start, dice),
        "TABLE" => dice
            .one(&["bed", "grade.classes", "crop", "project", "beds", "[bed]"])
            .to_owned(),
        "SHELL" => dice.one(&["bash", "zsh", "fish", "abacus"]).to_owned(),
        "COMMAND" => dice
            .one(&["plan", "why", "manual", "help", "orchard"])
            .to_owned(),
        other => of_station(other, dice),
    }
}

/// A value that says something of a station's file.
fn of_station(takes: &str, dice: &mut Dice) -> String {
    let values: &[&str] = match takes {
        "STATION" => &["1", "AE000041196", "", "\u{e9}"],
        "TEMPERATURE" => &["-1", "31C", "30F", "-300", "x", "C", "1e400"],
        "DEGREES" => &["celsius", "fahrenheit", "tenths", "k"],
        "PLACE" => &["44.3 N 93.2 W", "-33.9", "18.4", "44", "x", "99 N 200 E"],
        "WORDS" => &[
            "sowed",
            "carrot",
            "missed",
            "up",
            "12",
            "of",
            "lost",
            "20 %",
            "weather -1",
            "words",
            "3a",
            "picked",
        ],
        "WHO" => &["Ms Fern", ""],
        "NUMBER" => &["0", "1", "3", "4", "-1"],
        "DEPTH" => &["inches", "millimetres", "tenths", "cm"],
        "COLUMN" => &[
            "date=date",
            "low=tmin_c",
            "high=3",
            "rain=rain_mm",
            "low=99",
            "x=1",
            "date=",
        ],
        "ORDER" => &["year-first", "day-first", "month-first", "last"],
        other => panic!("the driver needs values for {other}"),
    };
    dice.one(values).to_owned()
}

fn text(dice: &mut Dice) -> String {
    // No argument can hold the sign that ends it.
    dice.one(TEXTS).replace('\0', "")
}

fn any_file(start: &Start, dice: &mut Dice) -> String {
    let mut names: Vec<&str> = start.files.keys().map(String::as_str).collect();
    names.extend(["nothing.toml", ".", ""]);
    dice.one(&names).to_owned()
}

/// A word of the project file, or of a step.
fn word(start: &Start, dice: &mut Dice) -> String {
    let garden = String::from_utf8_lossy(&start.files[GARDEN]);
    let mut words: Vec<&str> = garden.split('"').skip(1).step_by(2).collect();
    words.extend([
        "sow",
        "pick",
        "pot up",
        "plant out",
        "thin",
        "carrot sow",
        "radish",
    ]);
    dice.one(&words).to_owned()
}

/// A change to the project file: one of its keys with another value.
fn change(start: &Start, dice: &mut Dice) -> String {
    let keys = [
        "bed.1.length_m",
        "bed.1.sun",
        "bed.3.cover",
        "place.latitude",
        "project.portions",
        "project.feast",
        "grade.1.classes.1a.minutes",
        "dish.radish.grams_per_portion",
        "shelf.flats",
        "calendar.start",
        "x",
        "bed",
        "bed.1",
        "",
    ];
    let key = dice.one(&keys);
    let value = match dice.below(4) {
        0 => dice.one(NUMBERS).to_owned(),
        1 => dice.one(DATES).to_owned(),
        2 => text(dice),
        _ => word(start, dice),
    };
    format!("{key}={value}")
}
