//! What the plan was asked for, in order, how far it got, and what is proved best.

use crate::checker::Standing;
use crate::facts::verdict::reachable;
use crate::plan::AimResult;

use crate::page::Page;
use crate::words::aims::{figure, name};
use crate::words::view::View;

/// Writes one line per aim.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    page.heading("What was aimed at, in this order");
    if view.plan.aims.is_empty() {
        for (aim, reached) in &view.replay.counted {
            let name = name(view.garden, view.years(), *aim);
            page.item(&format!("{name}: {}.", figure(*aim, *reached)));
        }
        page.gap();
        page.line("Counted in the plan as it stands; how much better any could be is not known.");
        return;
    }
    for result in &view.plan.aims {
        page.item(&line(view, result));
    }
    page.gap();
    if *view.standing() == Standing::Saved {
        page.line("What is best was proved when the plan was made.");
    }
    page.line(
        "Each aim comes before the next. Best means: no plan does better that keeps the aims \
         above it. A later aim may give back a little of an earlier one, so the figures of \
         the finished plan, further up, can be slightly lower.",
    );
}

/// One aim in words, with its figure and how far it is proved.
fn line(view: &View<'_>, result: &AimResult) -> String {
    let value = figure(result.aim, result.value);
    let name = name(view.garden, view.years(), result.aim);
    let proof = if result.proved() {
        "best".to_owned()
    } else {
        let edge = if result.aim.more_is_better() {
            "at most"
        } else {
            "at least"
        };
        format!(
            "not proved best; {edge} {} is possible",
            figure(result.aim, reachable(result))
        )
    };
    format!("{name}: {value} ({proof}).")
}
