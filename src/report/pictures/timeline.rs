//! The words of the timeline: a row for each planting with its spans and the marks of its steps.

use crate::facts::life::{Life, MARKED, SpanKind, Whose};
use crate::plan::{Planting, StepKind};
use crate::report::steps;
use crate::report::view::View;

use super::climate::Climate;
use super::weeks::Weeks;
use super::{Said, Table, grade_at, shown_signs};

/// One planting.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Row {
    /// The grade's name, with what it takes over said.
    pub grade: String,
    /// The ingredient, with the number of the sowing where there are several.
    pub name: String,
    /// Grade and name in one line.
    pub short: String,
    /// Its spans and marks.
    pub life: Life,
}

/// One entry of the legend.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Key {
    /// A mark with its letter.
    Mark(StepKind, &'static str),
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

/// The letter and the meaning of a step that has a mark.
fn mark(kind: StepKind) -> Option<(&'static str, &'static str)> {
    match kind {
        StepKind::Sow => Some(("S", "Sow, or plant in bed")),
        StepKind::Thin => Some(("T", "Thin")),
        StepKind::PotUp => Some(("U", "Pot up")),
        StepKind::PlantOut => Some(("O", "Plant out")),
        StepKind::Pick => Some(("P", "Pick, first day")),
        StepKind::Harden | StepKind::Cure => None,
    }
}

/// The spans with their meaning.
const SPANS: [(SpanKind, &str); 4] = [
    (SpanKind::Shelf, "On the shelf"),
    (SpanKind::Bed, "In the bed"),
    (SpanKind::Pick, "May be picked"),
    (SpanKind::Cure, "Dries or cures"),
];

/// The letter of a mark.
#[must_use]
pub fn letter(kind: StepKind) -> &'static str {
    mark(kind).map_or("", |(letter, _)| letter)
}

/// The timeline; `None` where nothing is planted.
#[must_use]
pub fn timeline(view: &View<'_>, whose: Whose) -> Option<Timeline> {
    let lives = view.lives(whose).into_iter();
    let rows: Vec<Row> = lives.map(|life| row(view, life)).collect();
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
        view.words.short(weeks.along.horizon.first()),
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
            table: table(view, &rows),
        },
        weeks,
        rows,
        climate,
        legend,
    })
}

fn row(view: &View<'_>, life: Life) -> Row {
    let name = numbered_at(view, life.planting);
    let grade = grade_at(view, life.planting);
    let planting = view.plan.plantings.get(life.planting);
    Row {
        short: format!("{}: {name}", planting.map_or("", |p| &p.grade)),
        grade: match life.taken_over {
            true => format!("from {grade}"),
            false => grade.to_owned(),
        },
        name,
        life,
    }
}

/// `carrot`, `carrot 2`: of the planting at a position of the plan.
pub(super) fn numbered_at(view: &View<'_>, planting: usize) -> String {
    let planting = view.plan.plantings.get(planting);
    planting.map_or_else(String::new, |p| numbered(view, p))
}

/// `carrot`, `carrot 2`.
pub(super) fn numbered(view: &View<'_>, planting: &Planting) -> String {
    match view.sowing(planting) {
        Some(at) => format!("{} {}", planting.ingredient, at + 1),
        None => planting.ingredient.clone(),
    }
}

/// What the rows show, in the order of a planting's life.
fn legend(rows: &[Row], weeks: &Weeks, frost: bool) -> Vec<(Key, &'static str)> {
    let shown = |kind: &StepKind| {
        let mut all = rows.iter().flat_map(|row| &row.life.marks);
        all.any(|mark| mark.kind == *kind)
    };
    let marks = MARKED.into_iter().filter(shown).filter_map(|kind| {
        let (letter, said) = mark(kind)?;
        Some((Key::Mark(kind, letter), said))
    });
    let spans = SPANS.iter().filter(|(kind, _)| {
        let mut all = rows.iter().flat_map(|row| &row.life.spans);
        all.any(|span| span.kind == *kind)
    });
    marks
        .chain(spans.map(|(kind, said)| (Key::Span(*kind), *said)))
        .chain(weeks.closed.map(|said| (Key::Closed, said)))
        .chain(frost.then_some((Key::Frost, "Frost in 1 year of 10; darker: in half")))
        .collect()
}

/// Dates of the steps, a row for each planting.
fn table(view: &View<'_>, rows: &[Row]) -> Table {
    let mut table = Table::under(&["Grade", "Ingredient", "Step", "When"]);
    for row in rows {
        let planting = view.plan.plantings.get(row.life.planting);
        for (step, text) in planting.map_or_else(Vec::new, |p| steps::lines(p, view.words)) {
            let cells = [row.grade.clone(), row.name.clone(), step.to_owned(), text];
            table.rows.push(cells.to_vec());
        }
    }
    table
}
