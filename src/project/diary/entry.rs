//! One entry: a day, who wrote it, and what happened; and how it is written.

use crate::calendar::Date;
use crate::garden::{Care, Garden};
use crate::plan::StepKind;

/// What a garden calls its ingredients and classes, for an entry must name one of them.
#[derive(Debug, Clone)]
pub struct Names {
    /// All ingredients of the dish.
    pub ingredients: Vec<String>,
    /// All classes.
    pub classes: Vec<String>,
}

impl Names {
    /// Those of a garden.
    #[must_use]
    pub fn of(garden: &Garden) -> Self {
        let classes = garden.grades.iter().flat_map(|grade| &grade.classes);
        Self {
            ingredients: garden.ingredients.iter().map(|i| i.name.clone()).collect(),
            classes: classes.map(|class| class.name.clone()).collect(),
        }
    }
}

/// One entry.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// The day on which it happened.
    pub on: Date,
    /// Who wrote it.
    pub by: Option<String>,
    /// What happened.
    pub what: Happened,
}

/// What happened.
#[derive(Debug, Clone, PartialEq)]
pub enum Happened {
    /// A step was done, by a class or by somebody; of a pick, how much came in.
    Done {
        /// Which step.
        step: StepKind,
        /// Of which ingredient.
        ingredient: String,
        /// By which class, if by one.
        class: Option<String>,
        /// How many seeds or plants.
        count: Option<u32>,
        /// Kilograms, of a pick.
        kg: Option<f64>,
    },
    /// A class missed its step.
    Missed {
        /// Which step.
        step: StepKind,
        /// Of which ingredient.
        ingredient: String,
        /// Which class.
        class: String,
    },
    /// So many are up on that day, whatever was told before.
    Up {
        /// Of which ingredient.
        ingredient: String,
        /// How many.
        count: u32,
        /// Of so many sown, if somebody counted.
        of: Option<u32>,
    },
    /// A part of what stood of it is lost.
    Lost {
        /// Of which ingredient.
        ingredient: String,
        /// The part of what stood on that day, 0 to 1.
        share: f64,
        /// By what.
        cause: String,
    },
    /// The school is closed.
    Closed {
        /// The first day.
        from: Date,
        /// The last day.
        to: Date,
        /// Who cares for plants then.
        care: Care,
    },
    /// A lesson falls out.
    NoLesson {
        /// Of which class.
        class: String,
        /// On which day.
        day: Date,
    },
    /// What thermometer and rain gauge told.
    Weather {
        /// The lowest, degrees C.
        low: Option<f64>,
        /// The highest, degrees C.
        high: Option<f64>,
        /// Rain in the gauge, mm.
        rain: Option<f64>,
        /// True if there was frost to be seen.
        frost: bool,
    },
    /// Anything else.
    Words(String),
    /// An entry is taken back: its number, counted from 1.
    TakenBack(usize),
}

impl Entry {
    /// The section of the file.
    #[must_use]
    pub fn text(&self) -> String {
        let head = [
            ("on", Some(self.on.to_string())),
            ("by", self.by.as_deref().map(quoted)),
        ];
        let lines = head.into_iter().chain(self.what.keys());
        let given = lines.filter_map(|(key, value)| Some(format!("{key} = {}\n", value?)));
        format!("\n[[entry]]\n{}", given.collect::<String>())
    }
}

/// A key, and its value if there is one.
type Line = (&'static str, Option<String>);

impl Happened {
    /// The ingredient that it is about, if it is about one.
    #[must_use]
    pub fn ingredient(&self) -> Option<&str> {
        match self {
            Self::Done { ingredient, .. }
            | Self::Missed { ingredient, .. }
            | Self::Up { ingredient, .. }
            | Self::Lost { ingredient, .. } => Some(ingredient),
            Self::Closed { .. }
            | Self::NoLesson { .. }
            | Self::Weather { .. }
            | Self::Words(_)
            | Self::TakenBack(_) => None,
        }
    }

    /// What stands in the file for it.
    fn keys(&self) -> Vec<Line> {
        let named = |name: &str| Some(quoted(name));
        let number = |count: &Option<u32>| count.map(|count| count.to_string());
        let figure = |figure: &Option<f64>| figure.map(|figure| figure.to_string());
        match self {
            Self::Done { .. } | Self::Missed { .. } => self.of_work(),
            Self::Up {
                ingredient,
                count,
                of,
            } => vec![
                ("up", Some(count.to_string())),
                ("ingredient", named(ingredient)),
                ("of", number(of)),
            ],
            Self::Lost {
                ingredient,
                share,
                cause,
            } => vec![
                ("lost", Some(share.to_string())),
                ("ingredient", named(ingredient)),
                (
                    "cause",
                    Some(cause.as_str())
                        .filter(|cause| !cause.is_empty())
                        .map(quoted),
                ),
            ],
            Self::Closed { from, to, care } => vec![
                ("closed_from", Some(from.to_string())),
                ("closed_to", Some(to.to_string())),
                ("care", Some(quoted(care.key()))),
            ],
            Self::NoLesson { class, day } => vec![
                ("no_lesson", Some(quoted(class))),
                ("day", Some(day.to_string())),
            ],
            Self::Weather {
                low,
                high,
                rain,
                frost,
            } => vec![
                ("low_c", figure(low)),
                ("high_c", figure(high)),
                ("rain_mm", figure(rain)),
                ("frost", frost.then(|| "true".to_owned())),
            ],
            Self::Words(words) => vec![("words", named(words))],
            Self::TakenBack(number) => vec![("takes_back", Some(number.to_string()))],
        }
    }

    /// What stands in the file for a step that was done or missed.
    fn of_work(&self) -> Vec<Line> {
        let (key, step, ingredient, class) = match self {
            Self::Done {
                step,
                ingredient,
                class,
                ..
            } => ("done", step, ingredient, class.as_deref()),
            Self::Missed {
                step,
                ingredient,
                class,
            } => ("missed", step, ingredient, Some(class.as_str())),
            Self::Up { .. }
            | Self::Lost { .. }
            | Self::Closed { .. }
            | Self::NoLesson { .. }
            | Self::Weather { .. }
            | Self::Words(_)
            | Self::TakenBack(_) => return Vec::new(),
        };
        let (count, kg) = match self {
            Self::Done { count, kg, .. } => (*count, *kg),
            _ => (None, None),
        };
        vec![
            (key, Some(quoted(step.facts().key))),
            ("ingredient", Some(quoted(ingredient))),
            ("class", class.map(quoted)),
            ("count", count.map(|count| count.to_string())),
            ("kg", kg.map(|kg| kg.to_string())),
        ]
    }
}

fn quoted(text: &str) -> String {
    toml::Value::from(text).to_string()
}
