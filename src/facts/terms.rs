//! How often classes meet in the terms of a garden, and how many steps of work find time in them.

use crate::calendar::Date;
use crate::garden::{ClassAt, Garden, GradeAt, Term};

/// The terms that begin before the plan ends.
#[must_use]
pub fn terms(garden: &Garden) -> Vec<&Term> {
    let terms = garden.school_year.terms.iter();
    terms.filter(|t| t.from <= garden.last_day()).collect()
}

/// How often a class meets in each of some terms.
#[must_use]
pub fn sessions_by_term(garden: &Garden, class: ClassAt, terms: &[&Term]) -> Vec<usize> {
    let days = garden.sessions(class);
    terms.iter().map(|term| within(&days, term)).collect()
}

/// How often all classes of a grade can have met in each of some terms: so many steps find time.
#[must_use]
pub fn rounds_by_term(garden: &Garden, grade: GradeAt, terms: &[&Term]) -> Vec<usize> {
    let of_class = |class| sessions_by_term(garden, class, terms);
    let classes: Vec<Vec<usize>> = garden.classes_of(grade).map(of_class).collect();
    let fewest = |term: usize| {
        let sessions = classes.iter().filter_map(|class| class.get(term));
        sessions.min().copied().unwrap_or(0)
    };
    (0..terms.len()).map(fewest).collect()
}

fn within(days: &[Date], term: &Term) -> usize {
    let in_term = |day: &&Date| term.from <= **day && **day <= term.to;
    days.iter().filter(in_term).count()
}
