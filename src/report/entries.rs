//! What stands in calendars: a class's lessons with what is done in them, and all the other days
//! of the plan. Plain texts and days; how they are written down is left to the format.

use crate::calendar::{Date, Time};
use crate::checker::{CheckedPlan, Unattended};
use crate::explain::{IfMissed, StepSlack};
use crate::facts::Facts;
use crate::facts::tasks::{Chance, Doer, Task};
use crate::garden::{Break, Care, ClassAt, Garden};
use crate::units::Minutes;

use super::decisions::Decision;
use super::screen::occasion;
use super::step_words;
use super::view::View;
use super::words::{minutes, sentence};
use super::{care, cautions, decisions, make_up, tasks};

/// One entry of a calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry {
    /// What makes it the same entry in every plan of the project, whatever its days.
    pub key: Vec<String>,
    /// The class in whose calendar it stands; every other entry is only in the calendar of all.
    pub class: Option<ClassAt>,
    /// True for the feast, which stands in every calendar.
    pub everywhere: bool,
    /// Its title.
    pub title: String,
    /// What else is to be known, line by line.
    pub lines: Vec<String>,
    /// Where it is; empty where that is no question.
    pub place: String,
    /// When it is.
    pub span: Span,
}

/// When an entry is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Span {
    /// Whole days, both ends included.
    Days(Date, Date),
    /// A lesson: its day, when it begins by the school's clock, how long it is.
    Lesson(Date, Time, Minutes),
}

impl Span {
    /// The first day.
    #[must_use]
    pub fn first(&self) -> Date {
        match self {
            Self::Days(from, _) => *from,
            Self::Lesson(day, ..) => *day,
        }
    }
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
pub fn entries(garden: &Garden, checked: &CheckedPlan, slack: &[StepSlack]) -> Vec<Entry> {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut all: Vec<Entry> = view
        .tasks
        .iter()
        .map(|task| of_task(&view, task, slack))
        .collect();
    all.extend(days_of_the_dish(garden));
    all.extend(breaks(garden));
    let gaps = view.replay.unattended.iter().enumerate();
    all.extend(gaps.map(|(n, gap)| of_gap(&view, n, gap)));
    all.extend(decisions::all(&view).iter().map(of_decision));
    all.sort_by(|a, b| (a.span.first(), &a.key).cmp(&(b.span.first(), &b.key)));
    all
}

/// An entry without a class, on whole days.
fn all_day(key: &[&str], from: Date, to: Date, title: String, lines: Vec<String>) -> Entry {
    Entry {
        key: key.iter().map(|part| (*part).to_owned()).collect(),
        class: None,
        everywhere: false,
        title,
        lines,
        place: String::new(),
        span: Span::Days(from, to),
    }
}

fn of_task(view: &View<'_>, task: &Task<'_>, slack: &[StepSlack]) -> Entry {
    let who = tasks::who(view.garden, task.who);
    let chance = task
        .chance
        .map_or_else(String::new, |Chance { number, of }| {
            format!(" (chance {number} of {of})")
        });
    let span = match (task.begins, task.session) {
        (Some(begins), Some(session)) => Span::Lesson(task.from, begins, session),
        _ => Span::Days(task.from, task.to),
    };
    let number = |n: usize| n.to_string();
    // A class's name is written as it is.
    let shown = match task.who {
        Doer::Class(_) => who.clone(),
        _ => sentence(&who),
    };
    Entry {
        key: vec![
            "step".to_owned(),
            task.ingredient.name.clone(),
            number(task.sowing.number),
            task.kind.facts().key.to_owned(),
            task.who.key().to_owned(),
            who.clone(),
            task.chance
                .map_or_else(String::new, |chance| number(chance.number)),
        ],
        class: task.who.class(),
        everywhere: false,
        title: format!("{shown}: {}{chance}", tasks::title(task)),
        lines: lines(view, task, slack),
        place: tasks::spot(view.garden, task),
        span,
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
    Some(match make_up::if_missed(task, slack)? {
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
            let seen = view.seen(&task.ingredient.name);
            let now = seen.map_or(0, |seen| seen.ready_years());
            format!(
                "If it is cancelled, the other days of picking bring in nearly as much, if they are \
                 kept: {} is ready in {ready_years} years instead of {now}.",
                task.ingredient.name
            )
        }
        IfMissed::Crowded => "If it is cancelled, thin as soon as you can: no lesson comes in time, \
                              and in a crowded row roots stay small (common practice)."
            .to_owned(),
        IfMissed::Lost => {
            "If it is cancelled, tell the coordinator at once: no later lesson does as well."
                .to_owned()
        }
    })
}

/// The feast, the day on which the harvest has to be in the kitchen, and the rain date.
fn days_of_the_dish(garden: &Garden) -> Vec<Entry> {
    let feast = garden.feast;
    let whole = |key: &str, day: Date, title: String| {
        all_day(&[key], day, day, title, vec![occasion(garden)])
    };
    let mut entries = vec![
        Entry {
            everywhere: true,
            ..whole("feast", feast.day, garden.name.clone())
        },
        whole(
            "delivery",
            feast.deliver_by,
            format!("{}: all of the harvest is in the kitchen", garden.name),
        ),
    ];
    let rain = feast.rain_date;
    entries.extend(rain.map(|day| whole("rain", day, format!("{}: rain date", garden.name))));
    entries
}

/// Breaks within the plan, with who waters. Breaks of one name are told apart by their order.
fn breaks(garden: &Garden) -> Vec<Entry> {
    let horizon = garden.horizon();
    let breaks = &garden.school_year.breaks;
    let entry = |(at, b): (usize, &Break)| {
        let same = breaks.iter().take(at).filter(|other| other.name == b.name);
        let title = match b.care {
            Care::Nobody => format!("{}: nobody is on site", b.name),
            Care::Staff => format!("{}: staff water", b.name),
            Care::Families => format!("{}: families water", b.name),
        };
        let key = ["break", &b.name, &same.count().to_string()];
        all_day(&key, b.from, b.to, title, Vec::new())
    };
    let all = breaks.iter().enumerate();
    all.filter(|(_, b)| b.from <= horizon.last() && horizon.first() <= b.to)
        .map(entry)
        .collect()
}

fn of_gap(view: &View<'_>, n: usize, gap: &Unattended) -> Entry {
    let title = "Someone must be found who waters".to_owned();
    let key = ["gap", &n.to_string()];
    let lines = vec![care::gap(view, gap)];
    all_day(&key, gap.gap.from, gap.gap.to, title, lines)
}

fn of_decision(decision: &Decision) -> Entry {
    let title = format!("Decide: {}", decision.short().trim_end_matches('.'));
    let key = ["decision", &decision.topic];
    let (by, lines) = (decision.by, vec![decision.what.clone()]);
    all_day(&key, by, by, title, lines)
}
