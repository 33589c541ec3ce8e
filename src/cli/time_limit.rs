//! `--time-limit`: the same argument for every command that plans.

use std::time::Duration;

use crate::deadline::Deadline;

/// How long a command may take; `USUAL` seconds if nothing is said.
#[derive(clap::Args)]
pub(super) struct TimeLimit<const USUAL: u64> {
    /// So long the whole command may take; then it gives the best that it found, and says so.
    #[arg(long = "time-limit", value_name = "SECONDS", default_value_t = USUAL,
          value_parser = clap::value_parser!(u64).range(0..=86_400))]
    seconds: u64,
}

impl<const USUAL: u64> Default for TimeLimit<USUAL> {
    fn default() -> Self {
        Self { seconds: USUAL }
    }
}

impl<const USUAL: u64> TimeLimit<USUAL> {
    /// Starts the clock.
    pub fn start(&self) -> Deadline {
        Deadline::after(Duration::from_secs(self.seconds))
    }
}
