//! Writes the programs of random gardens into a folder, for outside solvers.

use std::fmt::Write;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use tureen::deadline::Deadline;
use tureen::facts::program::Program;
use tureen::garden::Garden;
use tureen::handouts::mps::{file_name, mps};
use tureen::model::{Options, USUAL_TIME, solve_and_record};

use crate::random_gardens::make::{LARGER, TINY, garden};
use crate::scenarios;

/// How long a random garden may take; that of a scenario is what a user has.
const SHORT: Duration = Duration::from_secs(5);

/// A garden with its name, and how long it may take.
fn gardens() -> impl Iterator<Item = (String, Garden, Duration)> {
    let tiny = (20_000..20_098).map(|seed| (format!("tiny-{seed}"), garden(seed, &TINY), SHORT));
    let larger =
        (20_000..20_005).map(|seed| (format!("larger-{seed}"), garden(seed, &LARGER), SHORT));
    let bundled = scenarios::ALL.into_iter().map(|name| {
        (
            name.to_owned(),
            scenarios::load(name, "garden.toml"),
            USUAL_TIME,
        )
    });
    tiny.chain(larger).chain(bundled)
}

/// Seconds of processor time that this thread has had, where the system tells (Linux); else by
/// the clock. A busy machine changes the clock's, not these.
fn seconds(begun: Instant) -> f64 {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok();
    let nanoseconds = told.and_then(|t| t.split_whitespace().next()?.parse::<f64>().ok());
    nanoseconds.map_or_else(|| begun.elapsed().as_secs_f64(), |n| n / 1e9)
}

/// `GARDEN/NN-AIM.mps` for every aim of every garden, and `solve.csv`: the seconds of each
/// garden's solve.
#[test]
#[ignore = "writes files for tests/reference"]
fn programs_are_written() {
    let folder = PathBuf::from(std::env::var_os("TUREEN_EXPORT").expect("TUREEN_EXPORT"));
    let begun = Instant::now();
    let mut solves = "garden,seconds\n".to_owned();
    for (name, garden, time_limit) in gardens() {
        let options = Options {
            deadline: Deadline::after(time_limit),
            ..Options::default()
        };
        let before = seconds(begun);
        let recorded = solve_and_record(&garden, &options);
        writeln!(solves, "{name},{}", seconds(begun) - before).unwrap();
        let folder = folder.join(name);
        std::fs::create_dir_all(&folder).unwrap();
        for solved in &recorded.programs {
            let file = folder.join(file_name(solved.result.aim));
            std::fs::write(file, mps(&garden, &Program::of(solved))).unwrap();
        }
    }
    std::fs::write(folder.join("solve.csv"), solves).unwrap();
}
