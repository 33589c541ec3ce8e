//! What may be chosen for a solve.

use std::time::Duration;

use crate::deadline::Deadline;

/// What may be chosen for a solve.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// Then the best plan so far is given, with its bounds.
    pub deadline: Deadline,
    /// Weather years that each aim about years may give back for amounts and slack.
    pub concession_years: u32,
}

/// Years that each aim about years may give back where nothing else is asked for.
pub const CONCESSION_YEARS: u32 = 1;

/// So long a plan is sought where nothing else is asked for.
pub const USUAL_TIME: Duration = Duration::from_secs(10);

impl Options {
    /// The usual choice, with a deadline.
    #[must_use]
    pub fn until(deadline: Deadline) -> Self {
        Self {
            deadline,
            concession_years: CONCESSION_YEARS,
        }
    }
}

impl Default for Options {
    /// The usual choice; its time begins now.
    fn default() -> Self {
        Self::until(Deadline::after(USUAL_TIME))
    }
}
