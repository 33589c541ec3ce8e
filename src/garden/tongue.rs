//! Further languages of what families read.

/// A language, beside English, in which what families read is written as well.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Tongue {
    /// Spanish.
    Spanish,
}

impl Tongue {
    /// All of them.
    pub const ALL: [Self; 1] = [Self::Spanish];

    /// Its tag, as the project file and a page's `lang` write it (BCP 47, RFC 5646).
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::Spanish => "es",
        }
    }
}
