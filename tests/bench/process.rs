//! What a process costs: CPU time, wall time and peak memory, as the system counts them for a
//! child that has ended.

use std::error::Error;
use std::ffi::OsStr;
use std::process::{Command, Stdio};
use std::time::Instant;

use wait4::Wait4;

/// What a process costs.
pub struct Cost {
    /// Seconds of CPU time, of the program and of the system for it.
    pub cpu: f64,
    /// Seconds from start to end.
    pub wall: f64,
    /// Greatest resident memory, in millions of bytes.
    pub peak_megabytes: f64,
}

/// Runs a program some times; medians of each figure.
///
/// # Errors
/// It cannot be run, or does not end with success.
pub fn cost<'a, A>(program: &OsStr, arguments: A, runs: usize) -> Result<Cost, Box<dyn Error>>
where
    A: IntoIterator<Item = &'a OsStr> + Clone,
{
    let costs: Vec<Cost> = (0..runs)
        .map(|_| once(program, arguments.clone()))
        .collect::<Result<_, _>>()?;
    let median = |figure: fn(&Cost) -> f64| {
        let mut figures: Vec<f64> = costs.iter().map(figure).collect();
        figures.sort_by(f64::total_cmp);
        figures[figures.len() / 2]
    };
    Ok(Cost {
        cpu: median(|c| c.cpu),
        wall: median(|c| c.wall),
        peak_megabytes: median(|c| c.peak_megabytes),
    })
}

fn once<'a>(
    program: &OsStr,
    arguments: impl IntoIterator<Item = &'a OsStr>,
) -> Result<Cost, Box<dyn Error>> {
    let mut command = Command::new(program);
    command
        .args(arguments)
        .stdin(Stdio::null())
        .stdout(Stdio::null());
    let begun = Instant::now();
    let ended = command.spawn()?.wait4()?;
    let wall = begun.elapsed().as_secs_f64();
    if !ended.status.success() {
        return Err(format!("{command:?}: {}", ended.status).into());
    }
    let used = ended.rusage;
    Ok(Cost {
        cpu: (used.utime + used.stime).as_secs_f64(),
        wall,
        peak_megabytes: used.maxrss as f64 / 1e6,
    })
}
