//! The timeline: a row for each planting with its spans and the marks of its steps.

use crate::calendar::Date;
use crate::facts::spans::span_of;
use crate::garden::{GradeAt, Method};
use crate::plan::{Planting, StepKind};
use crate::report::view::View;
use crate::report::{step_words, steps, timeline};

use super::climate::Climate;
use super::weeks::Weeks;
use super::{Said, Table, shown_signs};

pub use crate::report::step_words::Sign;

/// Whose plantings are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Whose {
    /// Those of all grades.
    All,
    /// Those of one grade, with those that it takes over.
    Of(GradeAt),
}

/// What a planting does over a span of days.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SpanKind {
    /// It stands on the shelf.
    Shelf,
    /// It takes its strips of bed, the week to clear them included.
    Bed,
    /// It may be picked.
    Pick,
    /// It dries or cures.
    Cure,
}

/// A span of days, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Span {
    /// What it is.
    pub kind: SpanKind,
    /// First day.
    pub from: Date,
    /// Last day.
    pub to: Date,
}

/// A step with a mark of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Mark {
    /// Its shape.
    pub sign: Sign,
    /// Its letter.
    pub letter: &'static str,
    /// The first day of it.
    pub day: Date,
}

/// One planting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The grade's name, with what it takes over said.
    pub grade: String,
    /// The ingredient, with the number of the sowing where there are several.
    pub name: String,
    /// Grade and name in one line.
    pub short: String,
    /// Its spans.
    pub spans: Vec<Span>,
    /// Its marks, in order of time.
    pub marks: Vec<Mark>,
}

/// One entry of the legend.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// A mark with its letter.
    Mark(Sign, &'static str),
    /// A span.
    Span(SpanKind),
    /// Breaks and days off.
    Closed,
    /// Weeks in which frost is likely, behind the rows.
    Frost,
}

/// The whole timeline.
#[derive(Debug, Clone, PartialEq)]
pub struct Timeline {
    /// Title, description, table.
    pub said: Said,
    /// The weeks.
    pub weeks: Weeks,
    /// A row for each planting.
    pub rows: Vec<Row>,
    /// Frost and warmth behind it.
    pub climate: Option<Climate>,
    /// The legend: what is in the picture, and what it means.
    pub legend: Vec<(Key, &'static str)>,
}

/// The spans with their meaning.
const SPANS: [(SpanKind, &str); 4] = [
    (SpanKind::Shelf, "On the shelf"),
    (SpanKind::Bed, "In the bed"),
    (SpanKind::Pick, "May be picked"),
    (SpanKind::Cure, "Dries or cures"),
];

/// The timeline; `None` where nothing is planted.
#[must_use]
pub fn timeline(view: &View<'_>, whose: Whose) -> Option<Timeline> {
    let shown = shown(view, whose);
    let in_bed = view.checked.in_bed(view.garden);
    let rows: Vec<Row> = shown
        .iter()
        .map(|(at, p)| row(view, whose, in_bed.get(*at).copied().flatten(), p))
        .collect();
    if rows.is_empty() {
        return None;
    }
    let weeks = Weeks::of(view);
    let climate = match whose {
        Whose::All => Climate::of(view),
        Whose::Of(_) => Climate::small(view),
    };
    let legend = legend(&rows, &weeks, climate.is_some());
    let owner = match whose {
        Whose::All => "All grades".to_owned(),
        Whose::Of(grade) => view.grade_name(grade).to_owned(),
    };
    let mut description = format!(
        "A row for each planting, over the weeks of {} to {}. {}",
        view.words.short(weeks.horizon.first()),
        view.words.short(view.garden.last_day()),
        weeks.in_words(view)
    );
    description.push_str(&shown_signs(legend.iter().map(|(_, said)| *said)));
    if let Some(climate) = &climate {
        description.push(' ');
        description.push_str(&climate.description);
    }
    Some(Timeline {
        said: Said {
            title: format!("{owner}: what is done in which week"),
            description,
            table: table(view, &shown, &rows),
        },
        weeks,
        rows,
        climate,
        legend,
    })
}

/// The plantings with their positions in the plan, grade by grade.
fn shown<'a>(view: &View<'a>, whose: Whose) -> Vec<(usize, &'a Planting)> {
    let end = view.garden.last_day();
    let plantings = || view.plan.plantings.iter().enumerate();
    let own = |grade: GradeAt| plantings().filter(move |(_, p)| view.grade_of(p) == Some(grade));
    match whose {
        Whose::All => view.garden.grade_positions().flat_map(own).collect(),
        Whose::Of(grade) => {
            let adopted = plantings().filter(|(_, p)| {
                let other = view.grade_of(p).filter(|other| *other != grade);
                other.is_some_and(|other| view.garden.tending(other, end) == grade)
            });
            own(grade).chain(adopted).collect()
        }
    }
}

fn row(view: &View<'_>, whose: Whose, in_bed: Option<(Date, Date)>, planting: &Planting) -> Row {
    let name = numbered(view, planting);
    let grade = view.grade_of(planting).map_or("", |g| view.grade_name(g));
    let grade = match whose {
        Whose::Of(own) if view.grade_of(planting) != Some(own) => format!("from {grade}"),
        _ => grade.to_owned(),
    };
    Row {
        short: format!("{}: {name}", planting.grade),
        grade,
        name,
        spans: spans(view, in_bed, planting),
        marks: marks(planting),
    }
}

/// `carrot`, `carrot 2`.
pub(super) fn numbered(view: &View<'_>, planting: &Planting) -> String {
    let mut same = view.plantings_named(&planting.ingredient);
    let at = same.position(|p| p == planting).unwrap_or(0);
    match timeline::sowing(view, planting) {
        Some(_) => format!("{} {}", planting.ingredient, at + 1),
        None => planting.ingredient.clone(),
    }
}

fn spans(view: &View<'_>, in_bed: Option<(Date, Date)>, planting: &Planting) -> Vec<Span> {
    let horizon = view.garden.horizon();
    let within = |kind, from: Date, to: Date| Span {
        kind,
        from: from.max(horizon.first()),
        to: to.min(horizon.last()),
    };
    let shelf = (planting.method == Method::Indoor).then(|| {
        let sown = span_of(planting, StepKind::Sow)?;
        let out = span_of(planting, StepKind::PlantOut)?;
        Some(within(SpanKind::Shelf, sown.0, out.1))
    });
    let of_step = |kind: &StepKind| {
        let (from, to) = span_of(planting, *kind)?;
        Some(within(span_kind(*kind)?, from, to))
    };
    let in_bed = in_bed.map(|(from, to)| within(SpanKind::Bed, from, to));
    let stands = shelf.flatten().into_iter().chain(in_bed);
    stands
        .chain(StepKind::ALL.iter().filter_map(of_step))
        .collect()
}

/// As what the days of a step are drawn, if they are more than a mark.
fn span_kind(kind: StepKind) -> Option<SpanKind> {
    match kind {
        StepKind::Pick => Some(SpanKind::Pick),
        StepKind::Cure => Some(SpanKind::Cure),
        // These are days on the shelf or in the bed, which are drawn as such.
        StepKind::Sow | StepKind::PotUp | StepKind::Harden | StepKind::PlantOut => None,
        StepKind::Thin => None,
    }
}

/// The steps that have a mark, in the order of the legend.
fn marked() -> Vec<(StepKind, step_words::Mark)> {
    let kinds = StepKind::ALL.iter();
    let mut marked: Vec<_> = kinds
        .filter_map(|kind| Some((*kind, step_words::of(*kind).mark?)))
        .collect();
    marked.sort_by_key(|(_, mark)| mark.order);
    marked
}

fn marks(planting: &Planting) -> Vec<Mark> {
    let mut marks: Vec<Mark> = marked()
        .iter()
        .filter_map(|(kind, mark)| {
            let (day, _) = span_of(planting, *kind)?;
            Some(Mark {
                sign: mark.sign,
                letter: mark.letter,
                day,
            })
        })
        .collect();
    marks.sort_by_key(|mark| mark.day);
    marks
}

/// What the rows show, in the order of a planting's life.
fn legend(rows: &[Row], weeks: &Weeks, frost: bool) -> Vec<(Key, &'static str)> {
    let is_shown = |(_, said): &(StepKind, step_words::Mark)| {
        let mut all = rows.iter().flat_map(|row| &row.marks);
        all.any(|mark| mark.letter == said.letter)
    };
    let marks = marked().into_iter().filter(is_shown);
    let spans = SPANS.iter().filter(|(kind, _)| {
        let mut all = rows.iter().flat_map(|row| &row.spans);
        all.any(|span| span.kind == *kind)
    });
    marks
        .map(|(_, said)| (Key::Mark(said.sign, said.letter), said.meaning))
        .chain(spans.map(|(kind, said)| (Key::Span(*kind), *said)))
        .chain(weeks.closed.map(|said| (Key::Closed, said)))
        .chain(frost.then_some((Key::Frost, "Frost in 1 year of 10; darker: in half")))
        .collect()
}

/// Dates of the steps, a row for each planting.
fn table(view: &View<'_>, shown: &[(usize, &Planting)], rows: &[Row]) -> Table {
    let mut table = Table::under(&["Grade", "Ingredient", "Step", "When"]);
    for ((_, planting), row) in shown.iter().zip(rows) {
        for (step, text) in steps::lines(planting, view.words) {
            let cells = [row.grade.clone(), row.name.clone(), step.to_owned(), text];
            table.rows.push(cells.to_vec());
        }
    }
    table
}
