//! Which mutant lives in this process: the variable MUTANT names it by number, or says `trace`:
//! then every point that is reached is written, once, to the file that MUTANT_TRACE names.

use std::fs::File;
use std::io::Write;
use std::sync::OnceLock;
use std::sync::atomic::{AtomicBool, AtomicU32, Ordering};

const NOT_READ: u32 = u32::MAX;
const TRACE: u32 = u32::MAX - 1;

/// More than there are points.
const MOST: usize = 100_000;

static LIVING: AtomicU32 = AtomicU32::new(NOT_READ);
static REACHED: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];
static FILE: OnceLock<Option<File>> = OnceLock::new();

/// True if this mutant lives.
#[inline]
pub fn on(point: u32) -> bool {
    let living = LIVING.load(Ordering::Relaxed);
    if living < TRACE { living == point } else { first_or_trace(point) }
}

#[cold]
fn first_or_trace(point: u32) -> bool {
    if LIVING.load(Ordering::Relaxed) == NOT_READ {
        let named = std::env::var("MUTANT").unwrap_or_default();
        let living = if named == "trace" { TRACE } else { named.parse().unwrap_or(0) };
        LIVING.store(living, Ordering::Relaxed);
        return on(point);
    }
    let reached = &REACHED[point as usize];
    // Most are reached many times: to look is cheaper than to swap.
    if !reached.load(Ordering::Relaxed) && !reached.swap(true, Ordering::Relaxed) {
        let open = || {
            let path = std::env::var_os("MUTANT_TRACE")?;
            File::options().append(true).create(true).open(path).ok()
        };
        if let Some(mut file) = FILE.get_or_init(open).as_ref() {
            let _ = file.write_all(&point.to_le_bytes());
        }
    }
    false
}
