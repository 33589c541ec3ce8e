//! The words of the timeline: a row for each planting with its spans and the marks of its steps.

use crate::calendar::Date;
use crate::facts::cloth::{Cloth, Form};
use crate::facts::life::{Life, Whose};
use crate::facts::places;
use crate::facts::sowings::Sowing;
use crate::plan::{Planting, PlantingAt};
use crate::words::view::View;
use crate::words::{Words, plantings, step_words, steps};

use super::{Said, Table, grades_at};
use crate::words::along::Weeks;
use crate::words::warmth::Climate;

/// A step with a mark of its own.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mark {
    /// The key of its kind.
    pub key: &'static str,
    /// `sow 29 Apr`.
    pub words: String,
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
    /// Its look.
    pub cloth: Cloth,
    /// Its form, for a drawing.
    pub form: Form,
    /// Its spans.
    pub life: Life,
    /// What is written on each span: the longest that fits.
    pub said: Vec<Vec<String>>,
    /// Its marks, in order of time.
    pub marks: Vec<Mark>,
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
    /// Whether they are drawn under it too: not on a grade's page.
    pub bands: bool,
    /// What the tints behind it mean.
    pub frost: &'static str,
}

/// What the tints mean.
const FROST: &str = "Frost in 1 year of 10; darker: in half";

/// How spans look.
const SPANS: &str = "Dashed: on the shelf, or drying. With a woven foot: growing in the beds that are \
                     named. Woven all over: it may be picked.";

/// The timeline; `None` where nothing is planted.
#[must_use]
pub fn timeline(view: &View<'_>, whose: Whose) -> Option<Timeline> {
    let lives = view.lives(whose);
    let horizon = view.season(whose, &lives);
    let rows: Vec<Row> = lives.into_iter().map(|life| row(view, life)).collect();
    if rows.is_empty() {
        return None;
    }
    let weeks = Weeks::over(view, horizon);
    let climate = Climate::of(view).map(|seen| seen.over(view.garden.horizon(), horizon));
    let bands = climate.is_some() && whose == Whose::All;
    let owner = match whose {
        Whose::All => "All grades".to_owned(),
        Whose::Of(grade) => view.grade_name(grade).to_owned(),
    };
    let mut description = format!(
        "A row for each planting, over the weeks of {} to {}. {} {SPANS}",
        view.words.short(horizon.first()),
        view.words.short(horizon.last().min(view.garden.last_day())),
        weeks.in_words(view)
    );
    if climate.is_some() {
        description.push_str(&format!(" Behind the rows: {FROST}."));
    }
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
        frost: FROST,
    })
}

fn row(view: &View<'_>, life: Life) -> Row {
    let name = numbered_at(view, life.planting);
    let planting = view.plan.planting(life.planting);
    Row {
        short: format!(
            "{}: {name}",
            planting.map_or_else(String::new, |p| p.grades.join("+"))
        ),
        grade: match planting.filter(|_| life.taken_over) {
            Some(planting) => format!("from {}", view.team_name(view.left_by(planting))),
            None => grades_at(view, life.planting),
        },
        name,
        cloth: view.cloth_of(planting.map_or("", |p| &p.ingredient)),
        form: view.form_of(planting.map_or("", |p| &p.ingredient)),
        marks: planting.map_or_else(Vec::new, |p| marks(view.words, p, &life)),
        said: life
            .spans
            .iter()
            .map(|span| plantings::on_span(span.kind, planting))
            .collect(),
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

/// The marks of a life, in order of time; of one day in the order of the table of steps.
fn marks(words: Words, planting: &Planting, life: &Life) -> Vec<Mark> {
    let marked = life.first_days.iter().filter_map(|(kind, day)| {
        let mark = step_words::of(*kind).mark?;
        let said = (mark.word)(planting.method);
        let mark_of = Mark {
            key: kind.facts().key,
            words: format!("{said}\u{a0}{}", words.short(*day)),
            day: *day,
        };
        Some((mark.order, mark_of))
    });
    let mut marks: Vec<(u8, Mark)> = marked.collect();
    marks.sort_by_key(|(order, mark)| (mark.day, *order));
    marks.into_iter().map(|(_, mark)| mark).collect()
}

/// Dates of the steps, a row for each planting.
fn table(view: &View<'_>, rows: &[Row]) -> Table {
    let mut table = Table::under(&["Grade", "Ingredient", "Beds", "Step", "When"]);
    for row in rows {
        let planting = view.plan.planting(row.life.planting);
        for (step, text) in planting.map_or_else(Vec::new, |p| steps::lines(p, view.words)) {
            let beds = places::beds(planting.iter().flat_map(|p| &p.places)).join(", ");
            let step = step.to_owned();
            let cells = [row.grade.clone(), row.name.clone(), beds, step, text];
            table.rows.push(cells.to_vec());
        }
    }
    table
}
