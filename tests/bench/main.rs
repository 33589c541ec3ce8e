//! The benchmark: what a whole run costs against what we allow it, in seconds and megabytes
//! and as a multiple of a fixed yardstick. It tells what is over target; it does not fail.

mod process;
mod yardstick;

use std::error::Error;
use std::ffi::OsStr;
use std::hint::black_box;
use std::path::{Path, PathBuf};
use std::time::Instant;

use tureen::candidates::{Candidates, Scope};
use tureen::catalogue::Catalogue;
use tureen::model::{Options, solve};
use tureen::project;

use process::{Cost, cost};

/// What is measured: a folder of `scenarios`, and the CPU seconds allowed for a whole run, with its own weather
/// and with a record.
const SCENARIOS: [(&str, [f64; 2]); 2] = [("soup-day", [0.5, 1.0]), ("nine-grades", [2.0, 4.0])];

/// Calendar years of a table that are taken for a record.
const RECORD_YEARS: usize = 31;

/// Seconds that `check` may take, in any scenario.
const CHECK_SECONDS: f64 = 0.050;

/// Seconds that all handouts of a saved plan may take, in any scenario.
const HANDOUTS_SECONDS: f64 = 1.0;

/// Megabytes that a whole run may take, in any scenario.
const PEAK_MEGABYTES: f64 = 60.0;

/// How often a process is run; the median counts.
const RUNS: usize = 5;

const PROGRAM: &str = env!("CARGO_BIN_EXE_tureen");

fn main() -> Result<(), Box<dyn Error>> {
    if std::env::args().nth(1).as_deref() == Some(yardstick::ARGUMENT) {
        println!("{}", yardstick::run());
        return Ok(());
    }
    let this = std::env::current_exe()?;
    let unit = cost(this.as_os_str(), [yardstick::ARGUMENT.as_ref()], RUNS)?;
    println!("Medians of {RUNS} runs; x is the multiple of the yardstick.");
    println!("yardstick: {}", yardstick::MEANING);
    line("CPU", unit.cpu, "s", unit.cpu, None);
    line(
        "peak memory",
        unit.peak_megabytes,
        "MB",
        unit.peak_megabytes,
        None,
    );

    // All processes come before the parts, which fill the memory of this process: on Linux a
    // child's peak counts what its parent held when it was started.
    let mut measured = Vec::new();
    for (name, cpu_seconds) in SCENARIOS {
        let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("scenarios");
        let file = folder.join(name).join("garden.toml");
        if file.exists() {
            let run =
                |command: &str| cost(PROGRAM.as_ref(), [command.as_ref(), file.as_os_str()], RUNS);
            let on_record = on_a_record(name, &file)?;
            let costs = [
                run("plan")?,
                on_record,
                run("check")?,
                handouts(name, &file)?,
            ];
            measured.push((name, cpu_seconds, costs, file));
        } else {
            println!("{name}: there is no such scenario yet");
        }
    }
    for (name, cpu_seconds, costs, file) in measured {
        println!("{name}");
        whole(&unit, &costs, cpu_seconds);
        parts(&unit, &file)?;
    }
    Ok(())
}

/// What whole processes cost.
fn whole(unit: &Cost, [plan, on_record, check, handouts]: &[Cost; 4], cpu_seconds: [f64; 2]) {
    let both = [("plan", plan), ("plan on a record", on_record)];
    for ((what, cost), cpu_seconds) in both.into_iter().zip(cpu_seconds) {
        let named = |figure: &str| format!("{what}, {figure}");
        line(&named("CPU"), cost.cpu, "s", unit.cpu, Some(cpu_seconds));
        line(&named("wall"), cost.wall, "s", unit.wall, None);
        let (peak, unit_peak) = (cost.peak_megabytes, unit.peak_megabytes);
        let most = Some(PEAK_MEGABYTES);
        line(&named("peak memory"), peak, "MB", unit_peak, most);
    }
    line(
        "check, wall",
        check.wall,
        "s",
        unit.wall,
        Some(CHECK_SECONDS),
    );
    line(
        "handouts, wall",
        handouts.wall,
        "s",
        unit.wall,
        Some(HANDOUTS_SECONDS),
    );
}

/// What a plan costs if its weather counts as a record: the scenario's own table without the lines that say
/// from which means it was made, cut to some thirty years.
fn on_a_record(name: &str, file: &Path) -> Result<Cost, Box<dyn Error>> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("{name}-on-a-record"));
    std::fs::create_dir_all(&folder)?;
    let table = std::fs::read_to_string(file.with_file_name("weather.csv"))?;
    let mut lines = table.lines().filter(|line| !line.starts_with('#'));
    let head = lines.next().unwrap_or_default();
    let years: Vec<&str> = lines.clone().filter_map(|line| line.get(..4)).collect();
    let last = years.chunk_by(|a, b| a == b).nth(RECORD_YEARS - 1);
    let kept = lines.filter(|line| last.is_none_or(|last| line.get(..4) <= Some(last[0])));
    let record: Vec<&str> = std::iter::once(head).chain(kept).collect();
    std::fs::write(folder.join("weather.csv"), record.join("\n") + "\n")?;
    let own = folder.join("garden.toml");
    std::fs::copy(file, &own)?;
    cost(PROGRAM.as_ref(), ["plan".as_ref(), own.as_os_str()], RUNS)
}

/// What all handouts of a plan cost, the plan being saved before.
fn handouts(name: &str, file: &Path) -> Result<Cost, Box<dyn Error>> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    let (file, plan, out) = (
        file.as_os_str(),
        folder.as_os_str(),
        folder.join("handouts"),
    );
    let word = OsStr::new;
    cost(
        PROGRAM.as_ref(),
        [word("plan"), file, word("--out"), plan],
        1,
    )?;
    let write = [
        word("handouts"),
        file,
        word("--plan"),
        plan,
        word("--out"),
        out.as_os_str(),
    ];
    cost(PROGRAM.as_ref(), write, RUNS)
}

/// Where the time of a plan goes, once each, within this process.
fn parts(unit: &Cost, file: &std::path::Path) -> Result<(), Box<dyn Error>> {
    let begun = Instant::now();
    let catalogue = Catalogue::load()?;
    let garden = project::load(file, &catalogue).map_err(|problems| problems.render(false, 100))?;
    let loaded = begun.elapsed().as_secs_f64();

    let begun = Instant::now();
    let candidates = Candidates::enumerate(&garden).without_needless(&garden, Scope::Everything);
    let enumerated = begun.elapsed().as_secs_f64();

    let begun = Instant::now();
    black_box(solve(&garden, &Options::default()));
    let decided = begun.elapsed().as_secs_f64();

    line("part: load", loaded, "s", unit.wall, None);
    line("part: candidates", enumerated, "s", unit.wall, None);
    // The model makes its candidates itself.
    let solved = (decided - enumerated).max(0.0);
    line("part: solve", solved, "s", unit.wall, None);
    println!(
        "  candidates kept                  {}",
        candidates.all.len()
    );
    Ok(())
}

/// Prints one figure, its multiple of the yardstick's, and how it stands to its target.
fn line(what: &str, figure: f64, of: &str, unit: f64, target: Option<f64>) {
    let stands = match target {
        None => String::new(),
        Some(most) if figure < most => format!("   target < {most} {of}: kept"),
        Some(most) => format!("   target < {most} {of}: OVER TARGET"),
    };
    println!(
        "  {what:<29} {figure:>9.4} {of:<2} {:>8.3} x{stands}",
        figure / unit
    );
}
