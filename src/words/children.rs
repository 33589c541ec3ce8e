//! What stands on the children's page and in its journal, in words for those who have just learnt to read.

use crate::facts::for_children::Deed;
use crate::facts::ours::Ours;
use crate::garden::{GradeAt, HandOver};

use super::view::View;
use super::{Words, plantings, step_words};

/// What we do, and when: `We sow carrot: 21-28 Apr.`, in the order of time, the meal last.
#[must_use]
pub fn steps(view: &View<'_>, ours: &Ours<'_>) -> Vec<String> {
    let told = |deed: Deed<'_>| {
        let words = step_words::of(deed.kind);
        let mark = words.mark.map(|mark| (mark.word)(deed.planting.method));
        let what = mark.unwrap_or(words.plain);
        let when = view.words.span(deed.from, deed.to);
        format!("We {what} {}: {when}.", deed.planting.ingredient)
    };
    let deeds = view.deeds(ours).into_iter().map(told);
    let shared = with_whom(view, ours).into_iter();
    shared
        .chain(deeds)
        .chain(last_lines(view, ours.grade))
        .collect()
}

/// `We grow carrot together with Grade 4.`
fn with_whom(view: &View<'_>, ours: &Ours<'_>) -> Vec<String> {
    let own = ours.own.iter();
    let mut shared: Vec<String> = own
        .filter_map(|(planting, ingredient)| {
            let team = view.team_of(planting);
            let with = plantings::together_with(view, team, ours.grade)?;
            Some(format!("We grow {} {with}.", ingredient.name))
        })
        .collect();
    shared.dedup();
    shared
}

/// Who goes on where these children leave, and who eats it when.
fn last_lines(view: &View<'_>, grade: GradeAt) -> Vec<String> {
    let next = view.handed_over(grade).and_then(|over| match over.to {
        HandOver::Leaves { adopter } => {
            let from = view.words.short(over.from);
            Some(format!("{} takes over: {from}.", view.grade_name(adopter)))
        }
        HandOver::SameChildren | HandOver::SameGrade => None,
    });
    let feast = view.words.short(view.garden.feast.day);
    let meal = match view.is_there_at_the_feast(grade) {
        true => format!("We eat it together: {feast}!"),
        false => format!("The school eats it: {feast}!"),
    };
    next.into_iter().chain([meal]).collect()
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
