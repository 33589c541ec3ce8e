//! A copy of the source tree in which every mutant stands behind a switch, built once. What does
//! not compile is told by the compiler and left out.

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::ops::Range;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::points::{Point, points};
use crate::weave::weave;

/// The rooms whose code is mutated.
pub const ROOMS: [&str; 5] = ["growth", "checker", "candidates", "model", "project"];

/// The module that tells which mutant lives.
const SWITCH: &str = include_str!("switch.rs");

/// After so many builds something else is wrong.
const MOST_BUILDS: usize = 30;

/// What tests write to, by their own source, and by the copy's: workers do not share it.
const SHARED: &str = "env!(\"CARGO_TARGET_TMPDIR\")";
const OWN: &str = "crate::folder_of_worker()";
const FOLDER_OF_WORKER: &str = "
/// The folder of this worker.
pub fn folder_of_worker() -> &'static str {
    Box::leak(std::env::var(\"MUTANT_FOLDER\").unwrap().into_boxed_str())
}
";

/// Where mutants stand in the files of the copy, by their number.
type Stands = BTreeMap<String, Vec<(u32, Range<usize>)>>;

/// A mutant of a file.
pub struct Mutant {
    pub number: u32,
    pub room: &'static str,
    /// Path below the repository.
    pub file: String,
    pub line: usize,
    /// What it changes to what, on one line.
    pub change: String,
    point: Point,
}

/// The copy.
pub struct Tree {
    folder: PathBuf,
    /// Source of the mutated files.
    sources: BTreeMap<String, String>,
    pub mutants: Vec<Mutant>,
}

impl Tree {
    /// Copies all files that git knows or would take, and finds the mutants.
    pub fn copy(folder: &Path) -> Result<Self, Box<dyn Error>> {
        let root = Path::new(env!("CARGO_MANIFEST_DIR"));
        let listed = Command::new("git")
            .args([
                "ls-files",
                "-z",
                "--cached",
                "--others",
                "--exclude-standard",
            ])
            .current_dir(root)
            .output()?;
        let listed = String::from_utf8(listed.stdout)?;
        let mut tree = Self {
            folder: folder.to_owned(),
            sources: BTreeMap::new(),
            mutants: Vec::new(),
        };
        for path in listed.split_terminator('\0') {
            let Ok(bytes) = std::fs::read(root.join(path)) else {
                continue;
            };
            let room = ROOMS.into_iter().find(|room| is_of(path, room));
            match (room, String::from_utf8(bytes)) {
                (Some(room), Ok(text)) => tree.find(room, path, text)?,
                (None, Ok(text)) if path.ends_with(".rs") => {
                    write(&folder.join(path), prepared(path, text).as_bytes())?;
                }
                (_, Ok(text)) => write(&folder.join(path), text.as_bytes())?,
                (_, Err(error)) => write(&folder.join(path), error.as_bytes())?,
            }
        }
        write(&folder.join("src/mutant.rs"), SWITCH.as_bytes())?;
        Ok(tree)
    }

    fn find(&mut self, room: &'static str, path: &str, text: String) -> Result<(), Box<dyn Error>> {
        for point in points(&text).map_err(|error| format!("{path}: {error}"))? {
            self.mutants.push(Mutant {
                // Nothing lives under 0.
                number: u32::try_from(self.mutants.len())? + 1,
                room,
                file: path.to_owned(),
                line: text[..point.at.start].lines().count().max(1),
                change: point.told(&text),
                point,
            });
        }
        self.sources.insert(path.to_owned(), text);
        Ok(())
    }

    /// Builds the tests with all mutants that compile; the path of the test binary.
    pub fn build(&mut self) -> Result<PathBuf, Box<dyn Error>> {
        for round in 1..=MOST_BUILDS {
            let stands = self.weave()?;
            let step: &[&str] = &["check", "--lib"];
            let messages = self.cargo(step)?;
            let wrong = self.wrong(&messages, &stands)?;
            println!(
                "build {round}: {} mutants, {} do not compile",
                self.mutants.len(),
                wrong.len()
            );
            if wrong.is_empty() {
                let messages = self.cargo(&["test", "--no-run", "--test", "integration"])?;
                let mut binaries = messages.iter().filter_map(|m| m["executable"].as_str());
                let tests = binaries.rfind(|path| path.contains("integration"));
                return Ok(tests.ok_or("the tests do not build")?.into());
            }
            self.mutants
                .retain(|mutant| !wrong.contains(&mutant.number));
        }
        Err("mutants that do not compile are not found".into())
    }

    /// Writes the mutated files; where each mutant stands in them.
    fn weave(&self) -> Result<Stands, Box<dyn Error>> {
        let mut stands = BTreeMap::new();
        for (path, text) in &self.sources {
            let own = self.mutants.iter().filter(|mutant| mutant.file == *path);
            let points: Vec<_> = own.map(|mutant| (mutant.number, &mutant.point)).collect();
            let woven = weave(text, &points);
            write(&self.folder.join(path), woven.text.as_bytes())?;
            stands.insert(path.clone(), woven.stands);
        }
        Ok(stands)
    }

    fn cargo(&self, words: &[&str]) -> Result<Vec<Value>, Box<dyn Error>> {
        let output = Command::new(env!("CARGO"))
            .args(words)
            .args(["--locked", "--message-format", "json"])
            .current_dir(&self.folder)
            .env("CARGO_TARGET_DIR", self.folder.join("target"))
            // Nobody looks into these tests, and half of the code is there twice.
            .env("CARGO_PROFILE_DEV_DEBUG", "false")
            .env("CARGO_PROFILE_TEST_DEBUG", "false")
            // Code that cannot be reached, sums that overflow: a mutant may.
            .env("RUSTFLAGS", "--cap-lints=allow")
            .stderr(Stdio::inherit())
            .output()?;
        let lines = String::from_utf8(output.stdout)?;
        Ok(lines
            .lines()
            .filter_map(|line| serde_json::from_str(line).ok())
            .collect())
    }

    /// The mutants at which the compiler's errors point: the innermost at each.
    fn wrong(&self, messages: &[Value], stands: &Stands) -> Result<BTreeSet<u32>, Box<dyn Error>> {
        let mut wrong = BTreeSet::new();
        for message in messages.iter().map(|m| &m["message"]) {
            let spans = message["spans"].as_array().map_or(&[][..], Vec::as_slice);
            if message["level"] != "error" || spans.is_empty() {
                continue;
            }
            let (first, others): (Vec<&Value>, Vec<&Value>) =
                spans.iter().partition(|span| span["is_primary"] == true);
            let found = first
                .iter()
                .chain(&others)
                .find_map(|span| innermost(span, stands));
            wrong
                .insert(found.ok_or_else(|| {
                    format!("an error without a mutant: {}", message["rendered"])
                })?);
        }
        Ok(wrong)
    }
}

/// The innermost mutant around a place that the compiler names, else the first on its line.
fn innermost(span: &Value, stands: &Stands) -> Option<u32> {
    let number = |name: &str| usize::try_from(span[name].as_u64()?).ok();
    let (from, to) = (number("byte_start")?, number("byte_end")?);
    let there = stands.get(span["file_name"].as_str()?)?;
    let around = there
        .iter()
        .filter(|(_, at)| at.start <= from && to <= at.end);
    let within = there
        .iter()
        .filter(|(_, at)| from <= at.start && at.end <= to);
    let length = |at: &&(u32, Range<usize>)| at.1.len();
    around
        .min_by_key(length)
        .or_else(|| within.max_by_key(length))
        .map(|(number, _)| *number)
}

fn is_of(path: &str, room: &str) -> bool {
    let below = path
        .strip_prefix("src/")
        .and_then(|path| path.strip_prefix(room));
    below.is_some_and(|rest| rest == ".rs" || rest.starts_with('/') && rest.ends_with(".rs"))
}

/// A file of the copy that is not mutated.
fn prepared(path: &str, text: String) -> String {
    match path {
        "src/lib.rs" => format!("{text}\npub mod mutant;\n"),
        "tests/integration/main.rs" => format!("{text}\n{FOLDER_OF_WORKER}"),
        _ if path.starts_with("tests/integration/") => text.replace(SHARED, OWN),
        _ => text,
    }
}

/// Writes a file, unless it is so already: what is not touched is not built again.
fn write(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    if std::fs::read(path).is_ok_and(|old| old == bytes) {
        return Ok(());
    }
    if let Some(folder) = path.parent() {
        std::fs::create_dir_all(folder)?;
    }
    std::fs::write(path, bytes)
}
