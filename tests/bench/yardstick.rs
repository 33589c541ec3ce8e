//! The yardstick: a fixed piece of work like a solver's, so that figures from machines of
//! different speed can be compared. Never change it: old multiples would mean something else.

/// The argument on which the benchmark runs the yardstick, as a process of its own.
pub const ARGUMENT: &str = "yardstick";

/// What it is, for the reader.
pub const MEANING: &str = "10 dense systems of 320 equations, solved by elimination";

const SIZE: usize = 320;
const SYSTEMS: u32 = 10;

/// Does the work; gives a number that depends on all of it.
pub fn run() -> f64 {
    (1..=SYSTEMS).map(|seed| eliminate(system(seed))).sum()
}

/// A system whose diagonal outweighs its rows, so that elimination needs no exchange of rows.
fn system(seed: u32) -> Vec<f64> {
    let mut state = seed;
    let mut next = || {
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 8) / f64::from(1 << 24)
    };
    let mut cells: Vec<f64> = (0..SIZE * SIZE).map(|_| next()).collect();
    for row in 0..SIZE {
        cells[row * SIZE + row] += SIZE as f64;
    }
    cells
}

/// Brings a system to its upper triangle; the sum of the diagonal.
fn eliminate(mut cells: Vec<f64>) -> f64 {
    for pivot in 0..SIZE {
        let (upper, lower) = cells.split_at_mut((pivot + 1) * SIZE);
        let top = &upper[pivot * SIZE..];
        for row in lower.chunks_exact_mut(SIZE) {
            let factor = row[pivot] / top[pivot];
            for (cell, above) in row.iter_mut().zip(top).skip(pivot) {
                *cell -= factor * above;
            }
        }
    }
    (0..SIZE).map(|row| cells[row * SIZE + row]).sum()
}
