//! What cannot be true together: told with both places.

use std::collections::BTreeMap;

use super::entry::{Entry, Happened};
use crate::diagnostic::{Code, Findings, Given, Problem, Span};
use crate::plan::StepKind;

/// A fault, the second place, and the first.
type Fault<'a> = (String, &'a Given<Entry>, Option<Span>);

/// Tells all of them.
pub(super) fn tell(entries: &[(usize, Given<Entry>)], findings: &mut Findings) {
    let mut by_ingredient: BTreeMap<&str, Vec<&Given<Entry>>> = BTreeMap::new();
    for (_, given) in entries {
        if let Some(ingredient) = given.value.what.ingredient() {
            by_ingredient.entry(ingredient).or_default().push(given);
        }
    }
    for (name, entries) in &by_ingredient {
        for (cause, second, first) in faults(name, entries) {
            let mut problem = Problem::new(Code::DatesOutOfOrder, cause).at(second.span, "");
            if let Some(first) = first {
                problem = problem.also(first, "this was written before");
            }
            findings.report(problem.remedy(
                "correct one of them, or take it back with `tureen note FILE --undo NUMBER`",
            ));
        }
    }
}

fn faults<'a>(name: &str, entries: &[&'a Given<Entry>]) -> Vec<Fault<'a>> {
    let mut found = Vec::new();
    let done = |kind: StepKind| {
        let is_it = move |given: &&&Given<Entry>| matches!(given.value.what, Happened::Done { step, .. } if step == kind);
        entries.iter().filter(is_it).copied()
    };
    let first_sown = done(StepKind::Sow).min_by_key(|given| given.value.on);
    if let Some(sown) = first_sown {
        for later in entries
            .iter()
            .filter(|given| follows_sowing(&given.value.what))
        {
            if later.value.on < sown.value.on {
                let cause = format!("{name} was sown on {}, after this day", sown.value.on);
                found.push((cause, *later, Some(sown.span)));
            }
        }
    }
    let counts = done(StepKind::Sow).filter_map(|given| match given.value.what {
        Happened::Done { count, .. } => count,
        _ => None,
    });
    let sown: u32 = counts.fold(0, u32::saturating_add);
    for given in entries {
        match given.value.what {
            Happened::Up {
                count,
                of: Some(of),
                ..
            } if count > of => {
                found.push((format!("{count} are more than {of}"), *given, None));
            }
            Happened::Up { count, .. } if sown > 0 && count > sown => {
                let cause = format!("{count} are up, and only {sown} were sown");
                found.push((cause, *given, first_sown.map(|given| given.span)));
            }
            _ => {}
        }
    }
    found
}

/// True for what can only come after the sowing.
fn follows_sowing(what: &Happened) -> bool {
    match what {
        Happened::Done { step, .. } => StepKind::ALL.first() != Some(step),
        Happened::Up { .. } => true,
        Happened::Missed { .. }
        | Happened::Lost { .. }
        | Happened::Closed { .. }
        | Happened::NoLesson { .. }
        | Happened::Weather { .. }
        | Happened::Words(_)
        | Happened::TakenBack(_) => false,
    }
}
