//! What may stand behind a key, as plain data: made by asking the reader itself, so that the table of
//! all keys and the schema say what is read, and nothing else.

use super::other_units::OtherUnit;

/// A key that the reader asks for.
#[derive(Debug, Clone, PartialEq)]
pub struct Key {
    /// Its name in the file.
    pub name: &'static str,
    /// The key that may stand in its place, in another unit.
    pub instead: Option<OtherUnit>,
    /// What it means, in a few words.
    pub meaning: &'static str,
    /// If it may be left out, what then holds; else how it is written.
    pub presence: Presence,
    /// What may stand behind it.
    pub form: Form,
}

/// Whether a key must be given.
#[derive(Debug, Clone, PartialEq)]
pub enum Presence {
    /// It must; here is an example of a value.
    Needed(String),
    /// It may be left out; this then holds.
    Otherwise(String),
    /// It may be left out; these figures of the catalogue then hold.
    BuiltIn(&'static [&'static str]),
}

/// What may stand behind a key.
#[derive(Debug, Clone, PartialEq)]
pub enum Form {
    /// A text that is not empty.
    Text,
    /// True or false.
    Flag,
    /// A date without a time.
    Date,
    /// A day of no particular year.
    DayOfYear,
    /// A time of day, to the minute.
    Time,
    /// A number from the first to the second.
    Number(f64, f64),
    /// A whole number from the first to the second.
    Whole(u32, u32),
    /// One of these words.
    Word(Vec<&'static str>),
    /// A list of one form, with the fewest and the most values.
    List(Box<Form>, usize, Option<usize>),
    /// One of two forms.
    Either(Box<Form>, Box<Form>),
    /// A table of these keys.
    Table(Vec<Key>),
    /// A table whose keys are names: what names, and the form of each value.
    Named(&'static str, Box<Form>),
}

/// Units by the part of a key's name that tells them.
const UNITS: [(&str, &str); 19] = [
    ("cm", "cm"),
    ("mm", "mm"),
    ("kg", "kg"),
    ("m", "m"),
    ("c", "degrees C"),
    ("grams", "g"),
    ("latitude", "degrees"),
    ("minutes", "minutes"),
    ("hours", "hours"),
    ("days", "days"),
    ("weeks", "weeks"),
    ("years", "years"),
    ("age", "years"),
    ("every", "weeks"),
    ("ft", "feet"),
    ("in", "inches"),
    ("lb", "pounds"),
    ("ounces", "ounces"),
    ("f", "degrees F"),
];

impl Key {
    /// True if it must be given.
    #[must_use]
    pub fn is_needed(&self) -> bool {
        matches!(self.presence, Presence::Needed(_))
    }

    /// The unit of its figures, if they have one. It is a part of the name, as everywhere in the file.
    #[must_use]
    pub fn unit(&self) -> Option<&'static str> {
        self.unit_of(self.name)
    }

    /// The unit of the key that may stand in its place.
    #[must_use]
    pub fn unit_of(&self, name: &str) -> Option<&'static str> {
        self.form.is_of_figures().then(|| unit(name)).flatten()
    }
}

impl Form {
    /// The same in another unit.
    #[must_use]
    pub fn in_unit(&self, other: &OtherUnit) -> Self {
        match self {
            Self::Number(least, most) => {
                let range = other.range(&(*least..=*most));
                Self::Number(*range.start(), *range.end())
            }
            Self::List(of, least, most) => Self::List(Box::new(of.in_unit(other)), *least, *most),
            as_it_is => as_it_is.clone(),
        }
    }

    /// True for a number, or numbers in a list.
    fn is_of_figures(&self) -> bool {
        match self {
            Self::Number(..) | Self::Whole(..) => true,
            Self::List(of, ..) => of.is_of_figures(),
            _ => false,
        }
    }
}

/// The key of [crop.NAME] that takes the place of a figure of the catalogue, if one does.
#[must_use]
pub fn key_of_figure(keys: &[Key], figure: &str) -> Option<&'static str> {
    keys.iter()
        .find_map(|key| match (&key.presence, &key.form) {
            (Presence::BuiltIn(figures), _) => figures.contains(&figure).then_some(key.name),
            (_, Form::Named(_, of)) => match &**of {
                Form::Table(keys) => key_of_figure(keys, figure),
                _ => None,
            },
            _ => None,
        })
}

/// The unit that a part of a key's name tells.
pub fn unit(key: &str) -> Option<&'static str> {
    let found = UNITS
        .iter()
        .find(|(part, _)| key.split('_').any(|p| p == *part));
    found.map(|(_, unit)| *unit)
}
