//! What stands on the children's page and in its journal, in words for those who have just learnt to read.

use crate::garden::Method;
use crate::plan::StepKind;

use super::Words;
use super::view::View;
use crate::facts::ours::Ours;
use crate::facts::spans::{by_children, span_of};

/// What we do, and when: `We sow carrot: 21-28 Apr.`, in the order of time, the meal last.
#[must_use]
pub fn steps(view: &View<'_>, ours: &Ours<'_>) -> Vec<String> {
    let mut told = Vec::new();
    for (planting, _) in &ours.own {
        let ours = planting.steps.iter().filter(|step| by_children(step));
        let mut kinds: Vec<StepKind> = ours.map(|step| step.kind).collect();
        kinds.dedup();
        for kind in kinds {
            if let Some((from, to)) = span_of(planting, kind) {
                let what = does(kind, planting.method);
                let when = view.words.span(from, to);
                told.push((from, format!("We {what} {}: {when}.", planting.ingredient)));
            }
        }
    }
    told.sort_by_key(|(from, _)| *from);
    let feast = view.words.short(view.garden.feast.day);
    let meal = format!("We eat it together: {feast}!");
    told.into_iter()
        .map(|(_, text)| text)
        .chain([meal])
        .collect()
}

/// What is done in a step.
fn does(kind: StepKind, method: Method) -> &'static str {
    match kind {
        StepKind::Sow => match method {
            Method::Pieces | Method::Bought => "plant",
            Method::Direct | Method::Indoor | Method::Seedlings => "sow",
            Method::Growing | Method::Patch => "sow",
        },
        StepKind::PotUp => "pot up",
        StepKind::Harden => "air",
        StepKind::PlantOut => "plant out",
        StepKind::Thin => "thin",
        StepKind::Pick => "pick",
        StepKind::Cure => "dry",
    }
}

/// The words of a frame of the journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Frame {
    /// Before the day.
    pub date: &'static str,
    /// What the sky looks like, to be ringed.
    pub sky: [&'static str; 4],
    /// What is measured, each with its unit.
    pub measured: [(&'static str, &'static str); 3],
}

impl Words {
    /// The words of a frame of the journal.
    #[must_use]
    pub fn journal(self) -> Frame {
        Frame {
            date: "Date",
            sky: ["sun", "cloud", "rain", "wind"],
            measured: [
                ("Rain in the gauge", self.choose("mm", "in")),
                ("Lowest last night", self.choose("\u{b0}C", "\u{b0}F")),
                ("How tall", self.choose("cm", "in")),
            ],
        }
    }

    /// Over the journal.
    #[must_use]
    pub fn journal_head(self) -> [&'static str; 2] {
        ["I look, I measure, I draw.", "Name"]
    }
}
