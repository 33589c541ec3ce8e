//! How a figure of a crop is worded, with its source. A figure that the project gives itself is
//! marked.

use crate::catalogue::{Entry, MEMORY};
use crate::garden::{Crop, Method};

use crate::words::{Words, count};

/// A figure as it is shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Figure {
    /// What it is.
    pub label: &'static str,
    /// The figure with its unit, in words.
    pub text: String,
    /// Where it comes from.
    pub source: String,
    /// The fields of the catalogue that it shows; none if it is worked out from others.
    pub fields: &'static [&'static str],
}

/// How a figure is worded. `text` is `None` where a crop has no such figure.
pub(super) struct Line {
    label: &'static str,
    /// The fields of the catalogue that it shows.
    fields: &'static [&'static str],
    text: fn(&Crop, &Entry, Words) -> Option<String>,
}

/// A line of a table.
pub(super) const fn line(
    label: &'static str,
    fields: &'static [&'static str],
    text: fn(&Crop, &Entry, Words) -> Option<String>,
) -> Line {
    Line {
        label,
        fields,
        text,
    }
}

impl Line {
    /// The figure, unless the crop has none, or has only what is so for every crop that says
    /// nothing of it.
    pub fn show(&self, entry: &Entry, crop: &Crop, words: Words) -> Option<Figure> {
        let text = (self.text)(crop, entry, words)?;
        let built_in = (self.text)(&entry.crop, entry, words);
        let source = if self.fields.is_empty() || built_in.as_ref() == Some(&text) {
            self.source(entry)?
        } else {
            let instead = built_in.unwrap_or_else(|| "none".to_owned());
            format!("your own; built in: {instead}")
        };
        Some(Figure {
            label: self.label,
            text,
            source,
            fields: self.fields,
        })
    }

    /// The sources of the fields, each once; `None` if the catalogue gives none of them.
    fn source(&self, entry: &Entry) -> Option<String> {
        if self.fields.is_empty() {
            return Some("worked out".to_owned());
        }
        let mut sources: Vec<&str> = self.fields.iter().filter_map(|f| entry.source(f)).collect();
        sources.dedup();
        let named = |source: &&str| source.replace(MEMORY, "from memory");
        let text: Vec<String> = sources.iter().map(named).collect();
        (!text.is_empty()).then(|| text.join(", "))
    }
}

/// `1 day`, `1.5 days`.
pub(super) fn days(days: f64) -> String {
    let unit = if days == 1.0 { "day" } else { "days" };
    format!("{days}\u{a0}{unit}")
}

/// `1 year`, `2 years`.
pub(super) fn years(years: u32) -> String {
    count(years, "year")
}

/// From which age on children do a part of the work.
pub(super) fn old_enough(age: u32) -> String {
    match age {
        0 => "children of every age".to_owned(),
        _ => format!("children of {age} and older, unless the file names a grade"),
    }
}

/// How it is started, after "it is".
pub(crate) fn way(method: Method) -> &'static str {
    match method {
        Method::Direct => "sown as seed in the bed",
        Method::Indoor => "sown on the shelf and planted out",
        Method::Pieces => "planted as pieces, sets or cloves",
        Method::Bought => "bought as young plants",
        Method::Seedlings | Method::Growing | Method::Patch => "standing already",
    }
}
