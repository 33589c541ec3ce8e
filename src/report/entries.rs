//! What stands in calendars, in words: a title, lines and a place for every entry.

use crate::explain::{IfMissed, StepSlack};
use crate::facts::entries::{self, About};
use crate::facts::missed::if_missed;
use crate::facts::tasks::{Chance, Doer, Task};
use crate::garden::{Break, Care, ClassAt, Garden};

use crate::words::occasion::occasion;
use crate::words::step_words::CROWDED;
use crate::words::view::View;
use crate::words::{care, decisions, plantings};
use crate::words::{cautions, minutes, sentence, step_words, tasks};

/// One entry of a calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry<'f> {
    /// What it is about, and when it is.
    pub entry: entries::Entry<'f>,
    /// Its title.
    pub title: String,
    /// What else is to be known, line by line.
    pub lines: Vec<String>,
    /// Where it is; empty where that is no question.
    pub place: String,
}

/// What a calendar is called: that of a class, or that of all.
#[must_use]
pub fn calendar_name(garden: &Garden, class: Option<ClassAt>) -> String {
    match class {
        Some(class) => format!("{}: {}", garden.name, garden.class(class).name),
        None => garden.name.clone(),
    }
}

/// All entries of a plan, in order of time. With the slack of its steps, they also tell until
/// when what was cancelled can be made up for.
#[must_use]
pub fn entries<'f>(view: &View<'f>, slack: &[StepSlack]) -> Vec<Entry<'f>> {
    let worded = |entry: entries::Entry<'f>| {
        let place = match entry.about {
            About::Task(task) => tasks::spot(view.garden, task),
            _ => String::new(),
        };
        let (title, lines) = said(view, entry.about, slack);
        Entry {
            entry,
            title,
            lines,
            place,
        }
    };
    view.facts().entries().into_iter().map(worded).collect()
}

/// Title and lines of an entry.
fn said(view: &View<'_>, about: About<'_>, slack: &[StepSlack]) -> (String, Vec<String>) {
    let garden = view.garden;
    let name = &garden.name;
    let of_the_dish = |title: String| (title, vec![occasion(garden)]);
    match about {
        About::Task(task) => (title(garden, task), lines(view, task, slack)),
        About::Feast => of_the_dish(name.clone()),
        About::Delivery => of_the_dish(format!("{name}: all of the harvest is in the kitchen")),
        About::RainDate => of_the_dish(format!("{name}: rain date")),
        About::Break(pause) => (break_title(pause), Vec::new()),
        About::Gap(gap) => (
            "Someone must be found who waters".to_owned(),
            vec![care::gap(view, gap)],
        ),
        About::Decision(decision) => {
            let short = decisions::short(view, &decision.topic);
            (
                format!("Decide: {}", short.strip_suffix('.').unwrap_or(&short)),
                vec![decisions::what(view, &decision.topic)],
            )
        }
    }
}

/// `5a: Pick: leek (chance 1 of 3)`.
fn title(garden: &Garden, task: &Task<'_>) -> String {
    let who = tasks::who(garden, task.who);
    // A class's name is written as it is.
    let shown = match task.who {
        Doer::Class(_) => who,
        Doer::Families | Doer::Adult | Doer::Anyone => sentence(&who),
    };
    let chance = task
        .chance
        .map_or_else(String::new, |Chance { number, of }| {
            format!(" (chance {number} of {of})")
        });
    format!("{shown}: {}{chance}", tasks::title(task))
}

/// `Summer: families water`.
fn break_title(pause: &Break) -> String {
    match pause.care {
        Care::Nobody => format!("{}: nobody is on site", pause.name),
        Care::Staff => format!("{}: staff water", pause.name),
        Care::Families => format!("{}: families water", pause.name),
    }
}

fn lines(view: &View<'_>, task: &Task<'_>, slack: &[StepSlack]) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(takes) = task.takes {
        lines.push(match task.session {
            Some(session) => format!("Takes {} of {}.", minutes(takes), minutes(session)),
            None => format!("Takes {}.", minutes(takes)),
        });
    }
    lines.extend(
        task.part
            .map(|part| sentence(&format!("{}.", tasks::part(part)))),
    );
    let with = task.who.class().and_then(|class| {
        let team = view.garden.tending(task.team, task.from);
        plantings::together_with(view, team, class.grade)
    });
    lines.extend(with.map(|with| sentence(&format!("{with}."))));
    let bring = (step_words::of(task.kind).bring)(task.planting.method);
    lines.extend(bring.map(|what| format!("Bring: {what}.")));
    if task.chance.is_some() {
        lines.push(
            "Pick on the first of these days on which it is ripe. The later ones then fall away."
                .to_owned(),
        );
    }
    match (task.who, task.kind.follows_harvest()) {
        (Doer::Anyone, true) => lines.push(
            "Every day from the day after the pick; earlier if it was picked earlier.".to_owned(),
        ),
        (Doer::Anyone, false) => lines.push("Every day.".to_owned()),
        _ => {}
    }
    lines.extend(made_up(view, task, slack));
    lines.extend(cautions::of(task.ingredient).map(|caution| sentence(&caution)));
    if matches!(task.who, Doer::Class(_) | Doer::Families) {
        lines.push(cautions::HANDS.to_owned());
    }
    lines
}

/// What to do if it is cancelled.
fn made_up(view: &View<'_>, task: &Task<'_>, slack: &[StepSlack]) -> Option<String> {
    Some(match if_missed(task, slack)? {
        IfMissed::Nothing => {
            "If it is cancelled, nothing is lost: if the other days of picking are kept, they bring \
             in as much."
                .to_owned()
        }
        IfMissed::MadeUp(day) => format!(
            "If it is cancelled: make up for it on {}.",
            view.words.day(day)
        ),
        IfMissed::AndThinned(day) => format!(
            "If it is cancelled: make up for it on {}, and thin later than planned; ask the \
             coordinator when.",
            view.words.day(day)
        ),
        IfMissed::Little { ready_years } => {
            let now = view.ready_years(&task.ingredient.name);
            format!(
                "If it is cancelled, the other days of picking bring in nearly as much, if they are \
                 kept: {} is ready in {ready_years} years instead of {now}.",
                task.ingredient.name
            )
        }
        IfMissed::Crowded => format!(
            "If it is cancelled, thin as soon as you can: no lesson comes in time, and {CROWDED}."
        ),
        IfMissed::Lost => {
            "If it is cancelled, tell the coordinator at once: no later lesson does as well."
                .to_owned()
        }
    })
}
