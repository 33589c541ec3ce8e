//! The words of the timeline: a row for each planting with its spans and the marks of its steps.

use crate::calendar::Date;
use crate::facts::life::{Life, SpanKind, Whose};
use crate::facts::sowings::Sowing;
use crate::plan::{Planting, PlantingAt, StepKind};
use crate::words::view::View;
use crate::words::{step_words, steps};

use super::climate::Climate;
use super::weeks::Weeks;
use super::{Said, Table, grade_at, shown_signs};

pub use crate::words::step_words::Sign;

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
    pub life: Life,
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
    /// Frost behind it, and frost and warmth under it.
    pub climate: Option<Climate>,
    /// Whether they are drawn under it too: not on a grade's page, which has to go on one sheet.
    pub bands: bool,
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
    let lives = view.lives(whose).into_iter();
    let rows: Vec<Row> = lives.map(|life| row(view, life)).collect();
    if rows.is_empty() {
        return None;
    }
    let weeks = Weeks::of(view);
    let climate = Climate::of(view);
    let bands = climate.is_some() && whose == Whose::All;
    let legend = legend(&rows, &weeks, climate.is_some());
    let owner = match whose {
        Whose::All => "All grades".to_owned(),
        Whose::Of(grade) => view.grade_name(grade).to_owned(),
    };
    let mut description = format!(
        "A row for each planting, over the weeks of {} to {}. {}",
        view.words.short(weeks.along.horizon.first()),
        view.words.short(view.garden.last_day()),
        weeks.in_words(view)
    );
    description.push_str(&shown_signs(legend.iter().map(|(_, said)| *said)));
    if let Some(climate) = climate.as_ref().filter(|_| bands) {
        description.push(' ');
        description.push_str(&climate.description);
    }
    Some(Timeline {
        said: Said {
            title: format!("{owner}: what is done in which week"),
            description,
            table: table(view, &rows),
        },
        weeks,
        rows,
        climate,
        bands,
        legend,
    })
}

fn row(view: &View<'_>, life: Life) -> Row {
    let name = numbered_at(view, life.planting);
    let grade = grade_at(view, life.planting);
    let planting = view.plan.planting(life.planting);
    Row {
        short: format!("{}: {name}", planting.map_or("", |p| &p.grade)),
        grade: match life.taken_over {
            true => format!("from {grade}"),
            false => grade.to_owned(),
        },
        name,
        marks: marks(&life),
        life,
    }
}

/// `carrot`, `carrot 2`: of the planting at a position of the plan.
pub(super) fn numbered_at(view: &View<'_>, at: PlantingAt) -> String {
    match view.plan.planting(at) {
        Some(planting) => numbered(planting, view.sowing(at)),
        None => String::new(),
    }
}

/// `carrot`, `carrot 2`.
fn numbered(planting: &Planting, sowing: Sowing) -> String {
    match sowing {
        Sowing { of: 1, .. } => planting.ingredient.clone(),
        Sowing { number, .. } => format!("{} {number}", planting.ingredient),
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

/// The marks of a life, in order of time; of one day in the order of the legend.
fn marks(life: &Life) -> Vec<Mark> {
    let mut marks: Vec<Mark> = marked()
        .iter()
        .filter_map(|(kind, mark)| {
            let (_, day) = life.first_days.iter().find(|(step, _)| step == kind)?;
            Some(Mark {
                sign: mark.sign,
                letter: mark.letter,
                day: *day,
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
        let mut all = rows.iter().flat_map(|row| &row.life.spans);
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
fn table(view: &View<'_>, rows: &[Row]) -> Table {
    let mut table = Table::under(&["Grade", "Ingredient", "Step", "When"]);
    for row in rows {
        let planting = view.plan.planting(row.life.planting);
        for (step, text) in planting.map_or_else(Vec::new, |p| steps::lines(p, view.words)) {
            let cells = [row.grade.clone(), row.name.clone(), step.to_owned(), text];
            table.rows.push(cells.to_vec());
        }
    }
    table
}
