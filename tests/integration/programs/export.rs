//! Writes the programs of random gardens into a folder, for outside solvers.

use std::fmt::Write;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use tureen::garden::Garden;
use tureen::model::{Options, solve_and_record};
use tureen::report;

use crate::random_gardens::make::{LARGER, TINY, garden};
use crate::scenarios;

/// How long a random garden may take; that of a scenario is what a user has.
const SHORT: Duration = Duration::from_secs(5);

/// A garden with its name, and how long it may take.
fn gardens() -> impl Iterator<Item = (String, Garden, Duration)> {
    let tiny = (20_000..20_085).map(|seed| (format!("tiny-{seed}"), garden(seed, &TINY), SHORT));
    let larger =
        (20_000..20_015).map(|seed| (format!("larger-{seed}"), garden(seed, &LARGER), SHORT));
    let bundled = scenarios::ALL.into_iter().map(|name| {
        let usual = Options::default().time_limit;
        (name.to_owned(), scenarios::load(name, "garden.toml"), usual)
    });
    tiny.chain(larger).chain(bundled)
}

/// `GARDEN/NN-AIM.mps` for every aim of every garden, and `solve.csv`: the seconds of each
/// solve and what came of it.
#[test]
#[ignore = "writes files for tests/reference"]
fn programs_are_written() {
    let folder = PathBuf::from(std::env::var_os("TUREEN_EXPORT").expect("TUREEN_EXPORT"));
    let mut solves = "garden,seconds,aims\n".to_owned();
    for (name, garden, time_limit) in gardens() {
        let options = Options {
            time_limit,
            ..Options::default()
        };
        let begun = Instant::now();
        let recorded = solve_and_record(&garden, &options);
        let seconds = begun.elapsed().as_secs_f64();
        writeln!(solves, "{name},{seconds},{}", recorded.programs.len()).unwrap();
        let folder = folder.join(name);
        std::fs::create_dir_all(&folder).unwrap();
        for solved in &recorded.programs {
            let file = folder.join(report::mps_file(solved.result.aim));
            std::fs::write(file, report::mps(&garden, solved)).unwrap();
        }
    }
    std::fs::write(folder.join("solve.csv"), solves).unwrap();
}
