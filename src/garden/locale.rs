//! In which language and customs a garden's papers are written.

/// The language and customs of what people read: how dates, times and amounts are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Locale {
    /// British English: `Tue 9 Feb`, 24 hours, kilograms, metres and litres.
    #[default]
    British,
    /// American English: `Tue Feb 9`, 12 hours, pounds, feet and US gallons.
    American,
}

impl Locale {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::British, Self::American];

    /// Its tag, as the project file and a page's `lang` write it (BCP 47, RFC 5646).
    #[must_use]
    pub fn tag(self) -> &'static str {
        match self {
            Self::British => "en-GB",
            Self::American => "en-US",
        }
    }
}
