//! What is read of a day, of all that stations measure.

/// What is read of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Element {
    /// The lowest temperature.
    Low,
    /// The highest temperature.
    High,
    /// Rain, with melted snow.
    Rain,
}

impl Element {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Low, Self::High, Self::Rain];
}
