//! Why the candidates of a garden may not be listed.

/// With more candidates than this no plan is sought: they and what is made of them would fill
/// hundreds of megabytes.
pub const MOST_CANDIDATES: usize = 80_000;

/// Why the candidates of a garden are not listed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unlisted {
    /// There are more than [`MOST_CANDIDATES`].
    TooMany,
    /// There was no time.
    OutOfTime,
}
