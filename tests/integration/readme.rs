//! README.md: its files can be planned, its commands work as they stand there, and what it shows of a
//! plan is what the program prints.

use std::path::Path;
use std::process::Output;

use assert_cmd::Command;
use tureen::catalogue::Catalogue;
use tureen::model::Options;
use tureen::pipeline::plan;
use tureen::project;

const README: &str = include_str!("../../README.md");

/// The two commands with which everything begins.
const FIRST: &str = "cargo run --release -- plan scenarios/soup-day/garden.toml";
const SECOND: &str = "cargo test";

/// The blocks of code in a language, without the indent of a list.
fn blocks(readme: &str, language: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut open: Option<(bool, String)> = None;
    for line in readme.lines() {
        match (line.trim_start().strip_prefix("```"), open.take()) {
            (Some(name), None) => open = Some((name == language, String::new())),
            (Some(_), Some((wanted, text))) => found.extend(wanted.then_some(text)),
            (None, Some((wanted, text))) => open = Some((wanted, text + line + "\n")),
            (None, None) => {}
        }
    }
    assert!(open.is_none(), "a block of code is not closed");
    found
}

/// The commands of all blocks.
fn commands(readme: &str) -> Vec<String> {
    let lines = blocks(readme, "sh");
    lines
        .iter()
        .flat_map(|block| block.lines())
        .map(|line| line.trim().to_owned())
        .collect()
}

/// What is said to the program in a command, if it is one of the program.
fn arguments(command: &str) -> Option<Vec<&str>> {
    let said = ["cargo run --release -- ", "tureen "]
        .iter()
        .find_map(|start| command.strip_prefix(start))?;
    Some(said.split_whitespace().collect())
}

/// The program's answer in a folder, as if it were not on a terminal.
fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::cargo_bin("tureen").unwrap();
    command.current_dir(folder).args(arguments);
    for name in ["COLUMNS", "NO_COLOR", "CLICOLOR_FORCE", "CLICOLOR"] {
        command.env_remove(name);
    }
    command.output().unwrap()
}

#[test]
fn it_begins_with_the_job_and_two_commands() {
    let (_, top) = README.split_once("# Tureen\n\n").unwrap();
    let (job, _) = top.split_once("\n\n").unwrap();
    assert!(job.contains("grade") && job.contains("backward"), "{job}");
    let all = blocks(README, "sh");
    assert_eq!(all[..2], [format!("{FIRST}\n"), format!("{SECOND}\n")]);
    let first_block = README.find("```").unwrap();
    assert!(README[first_block..].starts_with(&format!("```sh\n{FIRST}\n```\n")));
}

#[test]
fn its_project_files_load_and_can_be_planned() {
    let files = blocks(README, "toml");
    assert_eq!(files.len(), 2, "the first plan and the file by example");
    let catalogue = Catalogue::load().unwrap();
    let weather = include_str!("../../scenarios/nine-grades/weather.csv");
    for file in &files {
        let loaded = project::load_text("garden.toml", file, Some(weather), &catalogue);
        let garden = loaded.unwrap_or_else(|found| panic!("{}", found.render(false, 100)));
        let planned = plan(&garden, &Options::default());
        assert!(planned.is_ok(), "{planned:?}");
    }
}

#[test]
fn its_weather_file_begins_as_weather_files_do() {
    let scenario = include_str!("../../scenarios/two-beds/weather.csv");
    let header = scenario.lines().find(|line| !line.starts_with('#'));
    let said = format!("begins with the line `{}`", header.unwrap());
    assert!(README.contains(&said), "{said}");
}

#[test]
fn the_first_plan_works_from_the_first_command_to_the_last() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("readme");
    if folder.exists() {
        std::fs::remove_dir_all(&folder).unwrap();
    }
    std::fs::create_dir_all(folder.join("my-garden")).unwrap();
    let files = blocks(README, "toml");
    std::fs::write(folder.join("my-garden/garden.toml"), &files[0]).unwrap();
    let commands = commands(README);
    let own: Vec<_> = commands
        .iter()
        .filter(|command| command.starts_with("tureen "))
        .filter_map(|command| arguments(command))
        .collect();
    for arguments in &own {
        let answer = run(&folder, arguments);
        let told = String::from_utf8_lossy(&answer.stderr);
        assert!(answer.status.success(), "{arguments:?}\n{told}");
    }
    for sub_command in [
        "check", "plan", "show", "verify", "weather", "crops", "keys", "climate",
    ] {
        assert!(own.iter().any(|a| a[0] == sub_command), "{sub_command}");
    }
}

#[test]
fn every_command_of_the_program_is_one_that_it_has() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let help = String::from_utf8(run(here, &["--help"]).stdout).unwrap();
    let (_, list) = help.split_once("Commands:\n").unwrap();
    let (list, _) = list.split_once("\n\n").unwrap();
    let known: Vec<&str> = list
        .lines()
        .filter_map(|line| line.split_whitespace().next())
        .collect();
    for command in commands(README) {
        match arguments(&command) {
            Some(arguments) => assert!(known.contains(&arguments[0]), "{command}"),
            None => assert!(
                [SECOND, "cargo install --locked --path ."].contains(&command.as_str()),
                "{command}"
            ),
        }
    }
}

#[test]
fn what_it_shows_of_the_soup_is_what_the_program_prints() {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let printed = run(here, &arguments(FIRST).unwrap());
    assert!(printed.status.success());
    let printed = String::from_utf8(printed.stdout).unwrap();
    let shown = blocks(README, "text");
    assert_eq!(shown.len(), 1);
    assert!(printed.contains(&shown[0]), "\n{}\n{printed}", shown[0]);
}

#[test]
fn the_examples_and_the_exit_codes_are_all_there() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    for entry in std::fs::read_dir(folder).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(
            README.contains(&format!("- `scenarios/{name}`: ")),
            "{name}"
        );
    }
    let (_, codes) = README.split_once("It ends with ").unwrap();
    for code in 0..=6 {
        assert!(codes.contains(&format!("{code}: ")), "{code}");
    }
}
