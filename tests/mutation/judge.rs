//! Runs tests against mutants: only those that reach it, the fastest first and those that killed
//! others near it, in processes of their own with limits, and stops at the first that fails.

use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::os::unix::process::CommandExt;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::Mutex;
use std::time::{Duration, Instant};

use wait4::Wait4;

use crate::tree::Mutant;

/// Modules of tests that look at the source or at a page about it, not at what the code does.
const NOT_ASKED: [&str; 1] = ["architecture::"];

/// Tests are run together up to so many seconds.
const TOGETHER: f64 = 1.0;

/// Kilobytes of addresses that a test may have.
const ADDRESSES: u64 = 8_000_000;

/// One test.
pub struct Test {
    pub name: String,
    /// CPU seconds that it takes without a mutant.
    pub seconds: f64,
    reaches: BTreeSet<u32>,
}

/// What became of a mutant.
pub enum Fate {
    /// One of these tests fails.
    Killed(Vec<String>),
    Survives {
        /// How many tests reach it.
        tests: usize,
        /// Time was up before all of them were run.
        cut: bool,
    },
}

/// How many mutants of each room each test has killed: what killed some is asked sooner of others.
#[derive(Default)]
pub struct Kills(Mutex<BTreeMap<(&'static str, String), u32>>);

impl Kills {
    /// Tests in the order in which they are asked: by the seconds that a kill may be expected to take.
    fn order<'t>(&self, room: &'static str, mut tests: Vec<&'t Test>) -> Vec<&'t Test> {
        if let Ok(kills) = self.0.lock() {
            let of = |test: &Test| kills.get(&(room, test.name.clone())).copied();
            let cost = |test: &&Test| test.seconds / f64::from(1 + of(test).unwrap_or(0));
            tests.sort_by(|a, b| cost(a).total_cmp(&cost(b)));
        }
        tests
    }

    fn note(&self, room: &'static str, by: &[String]) {
        if let Ok(mut kills) = self.0.lock() {
            for test in by {
                *kills.entry((room, test.clone())).or_default() += 1;
            }
        }
    }
}

/// A test binary, and a folder in which a worker runs it.
pub struct Judge<'a> {
    pub tests: &'a Path,
    pub copy: &'a Path,
    pub folder: PathBuf,
}

impl Judge<'_> {
    /// The names of all tests that are asked.
    pub fn names(&self) -> Result<Vec<String>, Box<dyn Error>> {
        let listed = Command::new(self.tests)
            .args(["--list", "--format", "terse"])
            .output()?;
        let listed = String::from_utf8(listed.stdout)?;
        let names = listed
            .lines()
            .filter_map(|line| line.strip_suffix(": test"));
        let asked = |name: &&str| !NOT_ASKED.iter().any(|module| name.starts_with(module));
        Ok(names.filter(asked).map(str::to_owned).collect())
    }

    /// Runs a test without a mutant; none if it fails so. One that has no time to be traced, for
    /// it works against the clock, is asked once more without.
    pub fn trace(&self, name: &str) -> Result<Option<Test>, Box<dyn Error>> {
        std::fs::create_dir_all(&self.folder)?;
        let trace = self.folder.join("trace");
        std::fs::write(&trace, [])?;
        let (mut passes, mut seconds) = self.run(&[name], "trace", 600.0)?;
        if !passes {
            (passes, seconds) = self.run(&[name], "0", 600.0)?;
        }
        let reached = std::fs::read(&trace)?;
        let numbers = reached
            .chunks_exact(4)
            .filter_map(|four| four.try_into().ok());
        let reaches = numbers.map(u32::from_le_bytes).collect();
        Ok(passes.then(|| Test {
            name: name.to_owned(),
            seconds,
            reaches,
        }))
    }

    /// What becomes of a mutant, in about so many seconds of tests.
    pub fn fate(
        &self,
        mutant: &Mutant,
        tests: &[Test],
        kills: &Kills,
        seconds: f64,
    ) -> Result<Fate, Box<dyn Error>> {
        let reaching = tests.iter().filter(|t| t.reaches.contains(&mutant.number));
        let reaching = kills.order(mutant.room, reaching.collect());
        let (mut spent, mut from) = (0.0, 0);
        while from < reaching.len() {
            let mut sum = 0.0;
            let more = reaching[from..].iter().take_while(|test| {
                let fits = sum == 0.0 || sum + test.seconds <= TOGETHER;
                sum += test.seconds;
                fits
            });
            let together: Vec<&Test> = more.copied().collect();
            let sum: f64 = together.iter().map(|test| test.seconds).sum();
            if spent > 0.0 && spent + sum > seconds {
                return Ok(Fate::Survives {
                    tests: reaching.len(),
                    cut: true,
                });
            }
            let names: Vec<&str> = together.iter().map(|test| test.name.as_str()).collect();
            let limit = 5.0 + 5.0 * sum;
            // A test that fails without the mutant too, because the machine is busy, tells nothing.
            let living = mutant.number.to_string();
            if !self.run(&names, &living, limit)?.0 && self.run(&names, "0", limit)?.0 {
                let by: Vec<String> = names.into_iter().map(str::to_owned).collect();
                kills.note(mutant.room, &by);
                return Ok(Fate::Killed(by));
            }
            spent += sum;
            from += together.len();
        }
        Ok(Fate::Survives {
            tests: reaching.len(),
            cut: false,
        })
    }

    /// Runs tests in one process: whether all pass, and the CPU seconds that it took.
    fn run(&self, names: &[&str], mutant: &str, limit: f64) -> Result<(bool, f64), Box<dyn Error>> {
        std::fs::create_dir_all(&self.folder)?;
        let limits = format!("ulimit -v {ADDRESSES}; ulimit -t {}", limit.ceil());
        let child = Command::new("sh")
            .args(["-c", &format!("{limits}; exec \"$0\" \"$@\"")])
            .arg(self.tests)
            .args(["--exact", "--test-threads", "1"])
            .args(names)
            .current_dir(self.copy)
            .env("MUTANT", mutant)
            .env("MUTANT_TRACE", self.folder.join("trace"))
            .env("MUTANT_FOLDER", &self.folder)
            .env("TMPDIR", &self.folder)
            .env("INSTA_UPDATE", "no")
            .env("PROPTEST_DISABLE_FAILURE_PERSISTENCE", "true")
            // Cargo names the program that it built for this benchmark: a test would run that one, in
            // which nothing lives, and not the one beside itself.
            .env_remove("CARGO_BIN_EXE_tureen")
            .stdin(Stdio::null())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .process_group(0)
            .spawn()?;
        // A process that waits takes no CPU time.
        wait(child, Duration::from_secs_f64(60.0 + 20.0 * limit))
    }
}

fn wait(mut child: Child, longest: Duration) -> Result<(bool, f64), Box<dyn Error>> {
    let begun = Instant::now();
    while begun.elapsed() < longest {
        if let Some(ended) = child.try_wait4()? {
            let cpu = ended.rusage.utime + ended.rusage.stime;
            return Ok((ended.status.success(), cpu.as_secs_f64()));
        }
        std::thread::sleep(Duration::from_millis(3));
    }
    // Its children too.
    Command::new("kill")
        .args(["-KILL", "--", &format!("-{}", child.id())])
        .status()?;
    child.wait()?;
    Ok((false, longest.as_secs_f64()))
}
