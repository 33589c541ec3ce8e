//! What the program sends to a real terminal, through a pseudo-terminal: with every text of every
//! input full of signs that move, colour or rename a terminal, none of them arrives.
#![cfg(unix)]

use std::fs::File;
use std::io::Read;
use std::os::fd::OwnedFd;
use std::os::unix::ffi::OsStrExt;
use std::process::{Command, Stdio};

use rustix::pty::{OpenptFlags, grantpt, openpt, ptsname, unlockpt};
use rustix::termios::{Winsize, tcsetwinsize};

use super::{Folder, GARDEN};

/// Colour, a window's title, the bell, C1 controls, direction, nothing, backspace; between them
/// letters by which the text is found again.
const HOSTILE: &str = "Zq\u{1b}[35mzQ\u{1b}]0;own\u{7}Zq\u{9b}31mzQ\u{9d}0;own\u{9c}Zq\u{202e}zQ\
                       \u{2066}Zq\u{200b}zQ\u{feff}Zq\u{8}zQ\u{7f}Zq";

/// The part of it that a TOML file may hold as it is.
const IN_TOML: &str = "Zq\u{9b}31mzQ\u{9d}0;own\u{9c}Zq\u{202e}zQ\u{2066}Zq\u{200b}zQ";

/// The part of it that the program takes for a name.
const IN_A_NAME: &str = "Zq\u{202e}zQ\u{2066}Zq\u{200b}zQ\u{feff}Zq";

/// A pseudo-terminal: our end, and the program's.
pub fn pseudo_terminal() -> (OwnedFd, File) {
    let ours = openpt(OpenptFlags::RDWR | OpenptFlags::NOCTTY).unwrap();
    grantpt(&ours).unwrap();
    unlockpt(&ours).unwrap();
    let name = ptsname(&ours, Vec::new()).unwrap();
    let name = std::ffi::OsStr::from_bytes(name.as_bytes());
    let its = File::options().read(true).write(true).open(name).unwrap();
    (ours, its)
}

/// What arrives at a terminal from a run, and its exit code.
fn arrives(folder: &Folder, arguments: &[&str]) -> (String, Option<i32>) {
    arrives_at(folder, arguments, None, "cat")
}

/// The same at a terminal of so many lines, where PAGER says `pager`.
fn arrives_at(
    folder: &Folder,
    arguments: &[&str],
    lines: Option<u16>,
    pager: &str,
) -> (String, Option<i32>) {
    let (ours, its) = pseudo_terminal();
    if let Some(ws_row) = lines {
        let (ws_col, ws_xpixel, ws_ypixel) = (100, 0, 0);
        let size = Winsize {
            ws_row,
            ws_col,
            ws_xpixel,
            ws_ypixel,
        };
        tcsetwinsize(&ours, size).unwrap();
    }
    let mut child = Command::new(assert_cmd::cargo::cargo_bin("tureen"))
        .args(arguments)
        .current_dir(folder.path(""))
        .env("TERM", "xterm-256color")
        .env("COLUMNS", "100")
        .env("PAGER", pager)
        .env_remove("NO_COLOR")
        .env_remove("CLICOLOR")
        .stdin(Stdio::null())
        .stdout(its.try_clone().unwrap())
        .stderr(its)
        .spawn()
        .unwrap();
    let (mut bytes, mut ours) = (Vec::new(), File::from(ours));
    // When the last writer has gone, Linux says so by an error.
    let _ = ours.read_to_end(&mut bytes);
    let code = child.wait().unwrap().code();
    (String::from_utf8(bytes).unwrap(), code)
}

/// The same without our own signs: plain, bold, underlined and the colours of error messages; and
/// those of the progress line, which hides the cursor, moves it up and down and clears its line.
fn without_our_own(text: &str) -> String {
    let own = [
        "0m", "1m", "4m", "31m", "32m", "33m", "91m", "92m", "94m", "96m", "?25l", "?25h", "1A",
        "1B", "2K",
    ];
    let own = own.map(|sign| format!("\u{1b}[{sign}"));
    own.iter()
        .fold(text.to_owned(), |text, own| text.replace(own, ""))
}

/// That nothing hostile arrives; tells whether something of the hostile text does.
#[track_caller]
fn harmless(folder: &Folder, arguments: &[&str]) -> bool {
    let (text, code) = arrives(folder, arguments);
    assert!(
        matches!(code, Some(0 | 2..=6)),
        "{arguments:?} {code:?}\n{text}"
    );
    // A terminal ends lines with both signs; the progress line goes back to the start of its own.
    let rest = without_our_own(&text).replace('\r', "");
    let hostile = rest
        .chars()
        .find(|c| (c.is_control() && *c != '\n') || HOSTILE.contains(*c) && !c.is_ascii());
    assert_eq!(hostile, None, "{arguments:?}\n{rest:?}");
    rest.contains("Zq") || rest.contains("zQ")
}

/// A text of a TOML file in quotes, so that the file can be read.
fn escaped(text: &str) -> String {
    let sign = |c: char| match c {
        c if c.is_control() => format!("\\u{:04x}", u32::from(c)),
        c => c.to_string(),
    };
    text.chars().map(sign).collect()
}

/// The places at which a text in quotes ends.
fn ends_of_texts(toml: &str) -> Vec<usize> {
    let quotes: Vec<usize> = toml.match_indices('"').map(|(at, _)| at).collect();
    quotes.chunks(2).map(|pair| pair[1]).collect()
}

#[test]
fn every_text_of_a_project_file() {
    let folder = Folder::new("terminal-project");
    let ends = ends_of_texts(GARDEN);
    assert!(ends.len() > 20);
    let mut told = 0;
    for text in [HOSTILE, IN_TOML, &escaped(HOSTILE), IN_A_NAME] {
        for at in &ends {
            let (before, after) = GARDEN.split_at(*at);
            std::fs::write(folder.path("garden.toml"), format!("{before}{text}{after}")).unwrap();
            told += usize::from(harmless(&folder, &["check", "garden.toml"]));
        }
    }
    assert!(told > 3 * ends.len(), "{told} of {}", 4 * ends.len());
}

#[test]
fn keys_sections_comments_and_values_of_a_project_file() {
    let folder = Folder::new("terminal-keys");
    let mut told = 0;
    for text in [HOSTILE, IN_TOML, &escaped(HOSTILE)] {
        for line in [
            format!("\"{text}\" = 1\n"),
            format!("[\"{text}\"]\n"),
            format!("{text} = 1\n"),
            format!("x = {text}\n"),
            format!("# {text}\n"),
            format!("x = '''{text}'''\n"),
            format!("[bed.{text}]\nx = 1\n"),
        ] {
            std::fs::write(folder.path("garden.toml"), format!("{GARDEN}{line}")).unwrap();
            told += usize::from(harmless(&folder, &["check", "garden.toml"]));
        }
    }
    assert!(told >= 15, "{told}");
}

#[test]
fn every_line_of_a_weather_file() {
    let folder = Folder::with("terminal-weather", |garden| {
        let (before, rest) = garden.split_once("[place.monthly]").unwrap();
        let (_, after) = rest.split_once("[calendar]").unwrap();
        format!("{before}weather = \"w.csv\"\n[calendar]{after}")
    });
    let mut told = 0;
    for table in [
        format!("{HOSTILE}\n"),
        format!("# {HOSTILE}\ndate,tmin_c,tmax_c,rain_mm\n2026-01-01,1,2,x\n"),
        format!("date,tmin_c,{HOSTILE},rain_mm\n2026-01-01,1,2,3\n"),
        format!("date,tmin_c,tmax_c,rain_mm\n{HOSTILE},1,2,3\n"),
        format!("date,tmin_c,tmax_c,rain_mm\n2026-01-01,{HOSTILE},2,3\n"),
        format!("date,tmin_c,tmax_c,rain_mm\n2026-01-01,1,2,3,{HOSTILE}\n"),
    ] {
        std::fs::write(folder.path("w.csv"), table).unwrap();
        told += usize::from(harmless(&folder, &["check", "garden.toml"]));
    }
    assert!(told >= 4, "{told}");
}

/// The texts and keys of a JSON value, each replaced in its turn; of lists the first entry alone.
fn replaced(value: &serde_json::Value) -> Vec<serde_json::Value> {
    use serde_json::Value;
    let mut all = Vec::new();
    match value {
        Value::Object(fields) => {
            for (key, field) in fields {
                for changed in replaced(field) {
                    let mut fields = fields.clone();
                    fields[key] = changed;
                    all.push(Value::Object(fields));
                }
            }
            let mut fields = fields.clone();
            fields.insert(HOSTILE.to_owned(), Value::Null);
            all.push(Value::Object(fields));
        }
        Value::Array(entries) => {
            for changed in entries.first().map(replaced).unwrap_or_default() {
                let mut entries = entries.clone();
                entries[0] = changed;
                all.push(Value::Array(entries));
            }
        }
        _ => all.push(Value::String(HOSTILE.to_owned())),
    }
    all
}

#[test]
fn every_field_of_a_saved_plan() {
    let folder = Folder::new("terminal-plan");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let plan: serde_json::Value = serde_json::from_str(&folder.read("plan.json")).unwrap();
    let plans = replaced(&plan);
    assert!(plans.len() > 35, "{}", plans.len());
    let mut told = 0;
    for plan in &plans {
        std::fs::write(folder.path("plan.json"), plan.to_string()).unwrap();
        told += usize::from(harmless(&folder, &["verify", "garden.toml", "plan.json"]));
    }
    assert!(2 * told > plans.len(), "{told} of {}", plans.len());
    for text in [format!("{{\"tureen_plan\": {HOSTILE}"), HOSTILE.to_owned()] {
        std::fs::write(folder.path("plan.json"), text).unwrap();
        for command in [
            &["verify", "garden.toml", "."][..],
            &["show", "garden.toml"],
        ] {
            harmless(&folder, command);
        }
    }
}

#[test]
fn names_on_every_screen() {
    let mut count = 0;
    let folder = Folder::with("terminal-names", |garden| {
        let names = garden.replace("name = \"Grade ", &format!("name = \"{IN_A_NAME}Grade "));
        let names = names.replace("name = \"Salad", &format!("name = \"{IN_A_NAME}Salad"));
        names.replace("school = \"", &format!("school = \"{IN_A_NAME}"))
    });
    for command in [
        "plan garden.toml --out out --write-program mps",
        "plan garden.toml --out out --give-back 0",
        "show garden.toml --plan out",
        "show garden.toml --plan out --grade 1",
        "show garden.toml --plan out --water",
        "show garden.toml --plan out --slack",
        "handouts garden.toml --plan out --out pages",
        "why garden.toml",
        "climate garden.toml",
        "try garden.toml --set grade.1.name=x",
        "weather garden.toml --out w.csv",
    ] {
        let arguments: Vec<&str> = command.split(' ').collect();
        count += usize::from(harmless(&folder, &arguments));
    }
    assert!(count >= 6, "{count}");
}

#[test]
fn arguments_and_names_of_files() {
    let folder = Folder::new("terminal-arguments");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let day = format!("2027-01-01{HOSTILE}");
    let file = format!("{HOSTILE}.toml");
    std::fs::write(folder.path(&file), GARDEN).unwrap();
    std::fs::write(folder.path(&format!("wrong{file}")), "x = [").unwrap();
    let wrong = format!("wrong{file}");
    let to = format!("below/{HOSTILE}");
    std::fs::create_dir(folder.path("below")).unwrap();
    let equals = format!("bed.A.cover={HOSTILE}");
    let mut told = 0;
    let runs: [&[&str]; 22] = [
        &[HOSTILE],
        &["check", HOSTILE],
        &["check", &wrong],
        &["check", "garden.toml", HOSTILE],
        &["check", &format!("--{HOSTILE}")],
        &["plan", "garden.toml", "--time-limit", HOSTILE],
        &["plan", "garden.toml", "--give-back", HOSTILE],
        &["plan", &file, "--out", &to],
        &["plan", &file, "--out", &to],
        &["plan", "garden.toml", "--out", "garden.toml/x"],
        &["show", "garden.toml", "--plan", HOSTILE],
        &["show", "garden.toml", "--grade", HOSTILE],
        &["verify", "garden.toml", HOSTILE],
        &["handouts", "garden.toml", "--out", &to],
        &["handouts", &file, "--plan", ".", "--out", &format!("{to}2")],
        &["weather", "garden.toml", "--out", &format!("no/{HOSTILE}")],
        &["weather", &file, "--out", &format!("{to}.csv")],
        &["days", "garden.toml", "--from", &day],
        &["why", "garden.toml", HOSTILE],
        &["try", "garden.toml", "--set", &equals],
        &["try", "garden.toml", "--set", HOSTILE],
        &["crops", HOSTILE, "--for", HOSTILE],
    ];
    for arguments in runs {
        told += usize::from(harmless(&folder, arguments));
    }
    assert!(told >= 20, "{told}");
}

/// An argument with a line break would put words of its own at the start of a line.
#[test]
fn an_argument_cannot_begin_a_line() {
    let folder = Folder::new("terminal-line-break");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let text = "x\nForged";
    let runs: [&[&str]; 9] = [
        &[text],
        &["check", text],
        &["check", "garden.toml", &format!("--{text}")],
        &["plan", "garden.toml", &format!("--time-limit={text}")],
        &["show", "garden.toml", "--grade", text],
        &["why", "garden.toml", text],
        &["try", "garden.toml", "--set", &format!("dish.name={text}")],
        &["crops", text],
        &["keys", text],
    ];
    for arguments in runs {
        let (arrived, code) = arrives(&folder, arguments);
        assert!(matches!(code, Some(2 | 3)), "{arguments:?}: {code:?}");
        assert!(arrived.contains("Forged"), "{arguments:?}: {arrived}");
        let mut lines = arrived.lines();
        assert!(
            lines.all(|line| !line.starts_with("Forged")),
            "{arguments:?}: {arrived}"
        );
    }
}

#[test]
fn a_mark_points_at_its_sign_behind_signs_that_cannot_be_seen() {
    let folder = Folder::new("terminal-columns");
    let line = "[bed]\nx = \"\u{202e}\u{9b}\u{200b}\" y\n";
    std::fs::write(folder.path("garden.toml"), line).unwrap();
    let output = folder.run(&["check", "garden.toml"]);
    let text = super::text(&output.stderr);
    let lines: Vec<&str> = text.lines().collect();
    let at = lines
        .iter()
        .position(|line| line.contains("x = \""))
        .unwrap();
    assert!(text.contains("garden.toml:2:11"), "{text}");
    let column = |line: &str, sign| line.chars().position(|c| c == sign);
    assert_eq!(column(lines[at], 'y'), column(lines[at + 1], '^'), "{text}");
}

/// An answer that is longer than the terminal goes through the pager that PAGER names; a shorter one, or
/// one for which there is no pager, is printed as it is.
#[test]
fn what_is_longer_than_the_terminal_is_paged() {
    let folder = Folder::new("terminal-pager");
    let check = ["check", "garden.toml"];
    let (plain, _) = arrives(&folder, &check);
    let lines = u16::try_from(plain.lines().count()).unwrap();
    assert!(lines > 20, "else this test shows nothing: {plain}");
    let numbered = "cat -n";
    let (paged, code) = arrives_at(&folder, &check, Some(lines), numbered);
    assert_eq!(code, Some(0));
    assert_ne!(paged, plain);
    let first = |text: &str| {
        text.lines()
            .next()
            .unwrap_or_default()
            .trim_end()
            .to_owned()
    };
    assert!(first(&paged).trim_start().starts_with("1\t"), "{paged}");
    assert!(first(&paged).ends_with(&first(&plain)), "{paged}");
    for (height, pager) in [(lines + 1, numbered), (5, ""), (5, "no-such-program-here")] {
        let (printed, code) = arrives_at(&folder, &check, Some(height), pager);
        assert_eq!(
            (printed, code),
            (plain.clone(), Some(0)),
            "{height} {pager:?}"
        );
    }
}
