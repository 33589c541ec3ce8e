//! The fuzzing driver: seeded inputs for every command and option, each held to one bar (`bar`).
//! `cargo test` runs two thousand of them; the README beside it says how to run a million.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod bar;
mod case;
mod change;
mod commands;
#[path = "../integration/random_gardens/dice.rs"]
mod dice;
mod own_test;
mod shrink;
mod start;
mod values;

use std::collections::BTreeMap;
use std::error::Error;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicU64, Ordering};

use clap::Parser;

use bar::{Fault, LONGEST};
use case::{Case, Content};
use commands::Asked;
use dice::Dice;
use start::Start;

const PROGRAM: &str = env!("CARGO_BIN_EXE_tureen");

/// Changes of one input at most; so seeds of inputs and of their changes never meet.
const MOST_CHANGES: u64 = 6;

/// A line of progress is printed after so many inputs.
const TOLD: u64 = 1000;

/// Runs random inputs.
#[derive(Parser)]
struct Arguments {
    /// How many inputs.
    #[arg(long, default_value_t = 2000)]
    inputs: u64,
    /// The seed of the first; the others follow it.
    #[arg(long, default_value_t = 0)]
    from: u64,
    /// Inputs at a time.
    #[arg(long, default_value_t = std::thread::available_parallelism().map_or(1, usize::from))]
    at_once: usize,
    /// `cargo test` gives the names of wanted tests to all of them, and what is asked of them.
    names: Vec<String>,
    #[arg(long, hide = true)]
    ignored: bool,
    #[arg(long, hide = true)]
    exact: bool,
    #[arg(long, hide = true)]
    list: bool,
    #[arg(long, hide = true)]
    nocapture: bool,
    #[arg(long, short, hide = true)]
    quiet: bool,
}

impl Arguments {
    /// True if this run of `cargo test` is about something else.
    fn is_for_others(&self) -> bool {
        let named = |name: &String| "fuzz".contains(name.as_str());
        self.ignored || self.list || !self.names.iter().all(named)
    }
}

/// All that inputs are made of.
struct Material {
    starts: Vec<Start>,
    commands: Vec<Asked>,
}

impl Material {
    /// The seeds of an input's changes: mostly one or two, sometimes none.
    fn changes(seed: u64) -> Vec<u64> {
        let mut dice = Dice::new(seed * (MOST_CHANGES + 1));
        let count = (0..MOST_CHANGES).take_while(|n| dice.chance(if *n == 0 { 0.97 } else { 0.5 }));
        let first = seed * (MOST_CHANGES + 1) + 1;
        count.map(|n| first + n).collect()
    }

    /// An input, with some of its changes.
    fn case(&self, seed: u64, changes: &[u64]) -> Case {
        let mut dice = Dice::new(seed * (MOST_CHANGES + 1));
        let start = &self.starts[dice.below(self.starts.len())];
        let bytes =
            |(name, bytes): (&String, &Vec<u8>)| (name.clone(), Content::Bytes(bytes.clone()));
        let widths = [
            "0",
            "1",
            "7",
            "30",
            "80",
            "160",
            "99999999999999999999",
            "x",
        ];
        let mut case = Case {
            files: start.files.iter().map(bytes).collect(),
            arguments: commands::arguments(&self.commands, start, &mut dice),
            columns: dice.chance(0.5).then(|| dice.one(&widths).to_owned()),
            color: dice.chance(0.5),
        };
        for seed in changes {
            change::change(&mut case, &self.starts, &mut Dice::new(*seed));
        }
        case
    }
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments = match Arguments::try_parse() {
        Ok(arguments) if arguments.is_for_others() => return Ok(()),
        Ok(arguments) => arguments,
        Err(error) => error.exit(),
    };
    let scratch = Path::new(env!("CARGO_TARGET_TMPDIR")).join("fuzz");
    std::fs::create_dir_all(&scratch)?;
    own_test::broken_programs_are_noticed(&scratch)?;
    let program = Path::new(PROGRAM);
    let material = Material {
        starts: start::starts(program, &scratch)?,
        commands: commands::commands(program)?,
    };
    let found = run_all(&arguments, &material, &scratch)?;
    for (number, (seed, count, fault)) in found.values().enumerate() {
        tell(&material, &scratch, number + 1, *seed, *count, fault)?;
    }
    println!(
        "fuzz: {} inputs from {}, {} faults",
        arguments.inputs,
        arguments.from,
        found.len()
    );
    if found.is_empty() {
        Ok(())
    } else {
        Err("the bar is not kept".into())
    }
}

/// Faults by what they are: the first seed, how many, and the fault.
type Found = BTreeMap<String, (u64, u64, Fault)>;

/// Runs the inputs on all cores.
fn run_all(arguments: &Arguments, material: &Material, scratch: &Path) -> std::io::Result<Found> {
    let (next, found) = (AtomicU64::new(arguments.from), Mutex::new(Found::new()));
    let end = arguments.from + arguments.inputs;
    let worker = |number: usize| -> std::io::Result<()> {
        let folder = folder(scratch, &number.to_string());
        loop {
            let seed = next.fetch_add(1, Ordering::Relaxed);
            if seed >= end {
                return Ok(());
            }
            let case = material.case(seed, &Material::changes(seed));
            if let Some(fault) = case.fault(Path::new(PROGRAM), &folder, LONGEST)? {
                let mut found = found.lock().expect("no worker panics");
                let what = format!("{}: {}", fault.rule, fault.detail);
                let entry = found.entry(what).or_insert_with_key(|what| {
                    println!("fuzz: seed {seed} {what}");
                    (seed, 0, fault)
                });
                entry.1 += 1;
                entry.0 = entry.0.min(seed);
            }
            if (seed + 1) % TOLD == 0 {
                println!("fuzz: seed {} done", seed + 1);
            }
        }
    };
    std::thread::scope(|scope| {
        let workers: Vec<_> = (0..arguments.at_once.max(1))
            .map(|number| scope.spawn(move || worker(number)))
            .collect();
        workers
            .into_iter()
            .try_for_each(|w| w.join().expect("no worker panics"))
    })?;
    Ok(found.into_inner().expect("no worker panics"))
}

/// A folder of an input, in one of its own, so that `..` is ours too.
fn folder(scratch: &Path, name: &str) -> PathBuf {
    scratch.join(format!("worker-{name}")).join("input")
}

/// Prints a fault with the smallest input found, and keeps that.
fn tell(
    material: &Material,
    scratch: &Path,
    number: usize,
    seed: u64,
    count: u64,
    fault: &Fault,
) -> std::io::Result<()> {
    let folder = folder(scratch, "shrink");
    let fault_of = |case: &Case| {
        case.fault(Path::new(PROGRAM), &folder, LONGEST)
            .ok()
            .flatten()
    };
    let make = |changes: &[u64]| material.case(seed, changes);
    let case = shrink::shrink(&Material::changes(seed), fault, make, fault_of);
    let kept = scratch.join("found").join(seed.to_string());
    case.write(&kept)?;
    println!(
        "\n{number}. {}: {}\n   {count} times, first with --from {seed} --inputs 1",
        fault.rule, fault.detail
    );
    println!("   cd {}; {}", kept.display(), case.command_line());
    Ok(())
}
