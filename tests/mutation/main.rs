//! Mutation testing: are small faults in the rooms that count noticed by the tests? A seeded
//! sample of all mutants, each run against the tests that reach it. The README beside it says how.

mod judge;
mod points;
mod tree;
mod weave;

use std::collections::BTreeMap;
use std::error::Error;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::sync::atomic::{AtomicUsize, Ordering};

use clap::Parser;
use rand::SeedableRng;
use rand::seq::SliceRandom;
use rand_pcg::Pcg64Mcg;

use judge::{Fate, Judge, Kills, Test};
use tree::{Mutant, Tree};

/// Runs a sample of mutants against the tests.
#[derive(Parser)]
struct Arguments {
    /// How many mutants. None: nothing is done, so that `cargo bench` measures alone.
    #[arg(long, default_value_t = 0)]
    sample: usize,
    /// Another number gives another sample.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// Only mutants in whose line of the report this stands, such as a file and a line.
    #[arg(long, default_value = "")]
    at: String,
    /// CPU seconds of tests for a mutant; one that lives longer survives.
    #[arg(long, default_value_t = 60.0)]
    seconds: f64,
    /// The list of survivors.
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// `cargo bench` gives this to every benchmark.
    #[arg(long, hide = true)]
    bench: bool,
}

fn main() -> Result<(), Box<dyn Error>> {
    let arguments = Arguments::parse();
    if arguments.sample == 0 {
        println!("mutation: give --sample NUMBER to run mutants");
        return Ok(());
    }
    let scratch = Path::new(env!("CARGO_TARGET_TMPDIR")).join("mutation");
    let copy = scratch.join("copy");
    let mut tree = Tree::copy(&copy)?;
    let binary = tree.build()?;
    let judges: Vec<Judge> = (0..std::thread::available_parallelism()?.get())
        .map(|worker| Judge {
            tests: &binary,
            copy: &copy,
            folder: scratch.join(format!("worker-{worker}")),
        })
        .collect();
    let tests = traced(&judges)?;
    let all = tree.mutants.len();
    let mut mutants = tree.mutants;
    mutants.shuffle(&mut Pcg64Mcg::seed_from_u64(arguments.seed));
    mutants.retain(|mutant| told(mutant).contains(&arguments.at));
    mutants.truncate(arguments.sample);
    let kills = Kills::default();
    let judge = |judge: &Judge<'_>, mutant: &Mutant| {
        let fate = judge.fate(mutant, &tests, &kills, arguments.seconds);
        if let Ok(fate) = &fate {
            println!("{}: {}", told(mutant), fate_told(fate));
        }
        fate
    };
    let fates = shared(&judges, &mutants, judge)?;
    let report = report(&mutants, &fates, all);
    println!("\n{report}");
    if let Some(out) = &arguments.out {
        std::fs::write(out, report)?;
    }
    Ok(())
}

/// All tests that pass.
fn traced(judges: &[Judge<'_>]) -> Result<Vec<Test>, Box<dyn Error>> {
    let names = judges[0].names()?;
    let traces = shared(judges, &names, |judge, name| judge.trace(name))?;
    for (name, trace) in names.iter().zip(&traces) {
        if trace.is_none() {
            println!("left out, because it fails without a mutant: {name}");
        }
    }
    let tests: Vec<Test> = traces.into_iter().flatten().collect();
    let seconds: f64 = tests.iter().map(|test| test.seconds).sum();
    println!("{} tests, {seconds:.0} CPU seconds", tests.len());
    Ok(tests)
}

/// Does work on a list with a judge per core; results in the order of the list.
fn shared<T: Sync, R: Send>(
    judges: &[Judge<'_>],
    list: &[T],
    work: impl Fn(&Judge<'_>, &T) -> Result<R, Box<dyn Error>> + Sync,
) -> Result<Vec<R>, Box<dyn Error>> {
    let (next, results) = (AtomicUsize::new(0), Mutex::new(BTreeMap::new()));
    let worker = |judge: &Judge<'_>| {
        loop {
            let at = next.fetch_add(1, Ordering::Relaxed);
            let Some(item) = list.get(at) else {
                return;
            };
            let result = work(judge, item).map_err(|error| error.to_string());
            if let Ok(mut results) = results.lock() {
                results.insert(at, result);
            }
        }
    };
    std::thread::scope(|scope| {
        for judge in judges {
            scope.spawn(|| worker(judge));
        }
    });
    let results = results.into_inner().map_err(|_| "a worker panicked")?;
    Ok(results.into_values().collect::<Result<_, _>>()?)
}

fn told(mutant: &Mutant) -> String {
    format!("{}:{}: {}", mutant.file, mutant.line, mutant.change)
}

fn fate_told(fate: &Fate) -> String {
    match fate {
        Fate::Killed(by) => format!("killed by {}", by.join(" or ")),
        Fate::Survives { tests: 0, .. } => "SURVIVES, no test reaches it".to_owned(),
        Fate::Survives { tests, cut: false } => format!("SURVIVES {tests} tests"),
        Fate::Survives { tests, cut: true } => {
            format!("SURVIVES those of {tests} tests for which there was time")
        }
    }
}

/// The score of each room, and the survivors.
fn report(mutants: &[Mutant], fates: &[Fate], all: usize) -> String {
    let mut text = format!(
        "{} of {all} mutants\n\n| room | run | killed | score |\n| --- | ---: | ---: | ---: |\n",
        mutants.len()
    );
    for room in tree::ROOMS.into_iter().chain(["all"]) {
        let own = mutants
            .iter()
            .zip(fates)
            .filter(|(m, _)| room == "all" || m.room == room);
        let (mut run, mut killed) = (0_u32, 0_u32);
        for (_, fate) in own {
            run += 1;
            killed += u32::from(matches!(fate, Fate::Killed(_)));
        }
        let score = 100.0 * f64::from(killed) / f64::from(run.max(1));
        let _ = writeln!(text, "| {room} | {run} | {killed} | {score:.0} % |");
    }
    text.push_str("\nSurvivors:\n\n");
    for (mutant, fate) in mutants.iter().zip(fates) {
        if !matches!(fate, Fate::Killed(_)) {
            let _ = writeln!(text, "- {}: {}", told(mutant), fate_told(fate));
        }
    }
    text
}
