//! The one deadline of a command: started once, when the command begins, and handed down to all
//! that it does.

use std::panic::resume_unwind;
use std::sync::{Mutex, PoisonError};
use std::thread::{self, ScopedJoinHandle};
use std::time::{Duration, Instant};

/// Of the time allowed, searches have all but this part; the rest is for what turns a found plan
/// into an answer: bounds, the layout, the checker's replay, what each step bears.
const AFTER_THE_SEARCH: u32 = 5;
/// What is worked out about a plan that was found ends this part after the search: with the time
/// allowed.
const FOR_THE_ANSWER: f64 = 0.2;
/// All bounds together may run over the end of the search by this part: a plan without a bound
/// tells less.
const FOR_BOUNDS: u32 = 20;
/// So long is left where there is no deadline.
const A_YEAR: Duration = Duration::from_secs(365 * 86_400);

/// When to stop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Deadline {
    limit: Duration,
    /// The end of the search; `None` where there is none.
    end: Option<Instant>,
}

impl Deadline {
    /// A deadline some time from now.
    #[must_use]
    pub fn after(limit: Duration) -> Self {
        let search = limit.saturating_sub(limit / AFTER_THE_SEARCH);
        Self {
            limit,
            end: Instant::now().checked_add(search),
        }
    }

    /// The same for a part of the work, of which searches have all.
    #[must_use]
    pub fn of_a_part(limit: Duration) -> Self {
        let end = Instant::now().checked_add(limit);
        Self { limit, end }
    }

    /// No deadline: for work of a size that is known to be small.
    #[must_use]
    pub fn never() -> Self {
        Self {
            limit: A_YEAR,
            end: None,
        }
    }

    /// The time allowed in all.
    #[must_use]
    pub fn limit(&self) -> Duration {
        self.limit
    }

    /// The time left for searches.
    #[must_use]
    pub fn left(&self) -> Duration {
        self.left_with(Duration::ZERO)
    }

    /// True if no time is left.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.left().is_zero()
    }

    /// The time left for bounds.
    #[must_use]
    pub fn left_for_bounds(&self) -> Duration {
        self.left_with(self.limit / FOR_BOUNDS)
    }

    /// The same end for a part of the work that has no more than `limit` to itself.
    #[must_use]
    pub fn at_most(&self, limit: Duration) -> Self {
        Self::of_a_part(limit.min(self.left()))
    }

    /// The end of the first of `n` like tasks, done one after the other in the time left.
    #[must_use]
    pub fn shared_by(&self, n: usize) -> Self {
        let n = u32::try_from(n.max(1)).unwrap_or(u32::MAX);
        Self::of_a_part(self.left() / n)
    }

    /// The end of what is worked out about a plan that was found.
    #[must_use]
    pub fn for_the_answer(&self) -> Self {
        Self {
            end: self.end.map(|end| end + self.limit.mul_f64(FOR_THE_ANSWER)),
            ..*self
        }
    }

    /// Does the same with several things, side by side, in the order of the things. Each has its share of the time that
    /// is left when it begins, so what one leaves over is there for the rest. Their threads are their own: one of the
    /// pool would begin the next thing while it waits for a part of this one, and this one's time would run out.
    pub fn side_by_side<T: Send, R: Send>(
        &self,
        things: Vec<T>,
        act: impl Fn(T, Self) -> R + Sync,
    ) -> Vec<R> {
        let at_once = rayon::current_num_threads().min(things.len());
        let waiting = Mutex::new(things.into_iter().enumerate());
        let next = || {
            let mut waiting = waiting.lock().unwrap_or_else(PoisonError::into_inner);
            let turns = waiting.len().div_ceil(at_once.max(1));
            Some((waiting.next()?, turns))
        };
        let work = || {
            let mut done = Vec::new();
            while let Some(((at, thing), turns)) = next() {
                done.push((at, act(thing, self.shared_by(turns))));
            }
            done
        };
        let mut all: Vec<(usize, R)> = thread::scope(|scope| {
            let threads: Vec<_> = (0..at_once).map(|_| scope.spawn(work)).collect();
            let done = threads.into_iter().map(ScopedJoinHandle::join);
            done.flat_map(|done| done.unwrap_or_else(|panic| resume_unwind(panic)))
                .collect()
        });
        all.sort_unstable_by_key(|(at, _)| *at);
        all.into_iter().map(|(_, result)| result).collect()
    }

    fn left_with(&self, more: Duration) -> Duration {
        let until = |end: Instant| (end + more).saturating_duration_since(Instant::now());
        self.end.map_or(A_YEAR, until)
    }
}
