//! What stands in calendars: lessons with what is done in them, and all the other days of a plan.

use crate::calendar::{Date, Time};
use crate::garden::{Break, ClassAt};
use crate::units::Minutes;

use super::Facts;
use super::breaks;
use super::decisions::Decision;
use super::gaps::OpenGap;
use super::tasks::{Doer, Task};

/// One entry of a calendar.
#[derive(Debug, Clone, PartialEq)]
pub struct Entry<'f> {
    /// What makes it the same entry in every plan of the project, whatever its days.
    pub key: Vec<String>,
    /// What it is about.
    pub about: About<'f>,
    /// When it is.
    pub span: Span,
}

/// What an entry is about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum About<'f> {
    /// Something to do.
    Task(&'f Task<'f>),
    /// The day on which the whole school eats.
    Feast,
    /// The day on which all of the harvest is in the kitchen.
    Delivery,
    /// The second day, for rain.
    RainDate,
    /// A break.
    Break(&'f Break),
    /// Days for which somebody must be found.
    Gap(&'f OpenGap<'f>),
    /// Something to decide.
    Decision(&'f Decision<'f>),
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

impl Entry<'_> {
    /// The class in whose calendar it stands; every other entry is only in the calendar of all.
    #[must_use]
    pub fn class(&self) -> Option<ClassAt> {
        match self.about {
            About::Task(task) => task.who.class(),
            _ => None,
        }
    }

    /// True for the feast, which stands in every calendar.
    #[must_use]
    pub fn is_everywhere(&self) -> bool {
        self.about == About::Feast
    }
}

impl<'a> Facts<'a> {
    /// All entries of the plan, in order of time.
    #[must_use]
    pub fn entries(&self) -> Vec<Entry<'_>> {
        let mut all: Vec<Entry<'_>> = self.tasks.iter().map(|task| self.of_task(task)).collect();
        all.extend(self.days_of_the_dish());
        all.extend(breaks::within(self.garden).into_iter().map(of_break));
        all.extend(self.gaps.iter().map(of_gap));
        all.extend(self.decisions.iter().map(of_decision));
        all.sort_by(|a, b| (a.span.first(), &a.key).cmp(&(b.span.first(), &b.key)));
        all
    }

    fn of_task<'f>(&'f self, task: &'f Task<'f>) -> Entry<'f> {
        let who = match task.who {
            Doer::Class(class) => self.garden.class(class).name.clone(),
            other => people(other).join(" "),
        };
        let chance = task.chance.map(|chance| chance.number.to_string());
        Entry {
            key: vec![
                "step".to_owned(),
                task.ingredient.name.clone(),
                task.sowing.number.to_string(),
                task.kind.facts().key.to_owned(),
                task.who.key().to_owned(),
                who,
                chance.unwrap_or_default(),
            ],
            about: About::Task(task),
            span: match (task.begins, task.session) {
                (Some(begins), Some(session)) => Span::Lesson(task.from, begins, session),
                _ => Span::Days(task.from, task.to),
            },
        }
    }

    /// The feast, the day on which the harvest has to be in the kitchen, and the rain date.
    fn days_of_the_dish(&self) -> impl Iterator<Item = Entry<'a>> + use<'a> {
        let feast = self.garden.feast;
        [
            ("feast", About::Feast, Some(feast.day)),
            ("delivery", About::Delivery, Some(feast.deliver_by)),
            ("rain", About::RainDate, feast.rain_date),
        ]
        .into_iter()
        .filter_map(|(key, about, day)| Some(all_day(&[key], about, (day?, day?))))
    }
}

/// An entry on whole days.
fn all_day<'f>(key: &[&str], about: About<'f>, (from, to): (Date, Date)) -> Entry<'f> {
    Entry {
        key: key.iter().map(|part| (*part).to_owned()).collect(),
        about,
        span: Span::Days(from, to),
    }
}

/// A break; those of one name are told apart by their order.
fn of_break(b: breaks::BreakIn<'_>) -> Entry<'_> {
    let (pause, before) = (b.pause, b.same_before.to_string());
    let key = ["break", &pause.name, &before];
    all_day(&key, About::Break(pause), (pause.from, pause.to))
}

fn of_gap<'f>(gap: &'f OpenGap<'f>) -> Entry<'f> {
    let key = ["gap", &gap.number.to_string()];
    all_day(&key, About::Gap(gap), (gap.from, gap.to))
}

fn of_decision<'f>(decision: &'f Decision<'f>) -> Entry<'f> {
    let key = ["decision", &decision.topic.key()];
    all_day(&key, About::Decision(decision), (decision.by, decision.by))
}

/// What people without a name are called in keys. Calendars that were imported know these words, so
/// they stay as they are in whatever language pages are written.
fn people(who: Doer) -> &'static [&'static str] {
    match who {
        Doer::Class(_) => &[],
        Doer::Families => &["families"],
        Doer::Adult => &["an", "adult"],
        Doer::Anyone => &["whoever", "is", "there"],
    }
}
