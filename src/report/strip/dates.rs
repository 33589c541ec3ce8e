//! The table of a grade's dates: what is done on which day, by which class, in how long.

use crate::calendar::Date;
use crate::garden::Ingredient;
use crate::plan::{Planting, Step, StepKind, Visit, When};
use crate::units::Minutes;

use super::super::page::Page;
use super::super::view::View;
use super::super::words::{Words, count, minutes};
use super::super::{steps, timeline};
use super::ours::Ours;

/// One thing to do on one day.
struct Job {
    day: Date,
    who: String,
    what: String,
    takes: Option<Minutes>,
}

/// Writes everything in order of time; of what is taken over, only what comes after that.
pub(super) fn write(view: &View<'_>, ours: &Ours<'_>, page: &mut Page) {
    page.heading("Our dates");
    let own = ours.own.iter().flat_map(|(p, i)| jobs(view, p, i, None));
    let moves_up = view.garden.school_year.moves_up;
    let adopted = ours
        .adopted
        .iter()
        .flat_map(|(p, i)| jobs(view, p, i, moves_up));
    let mut all: Vec<Job> = own.chain(adopted).collect();
    all.sort_by(|a, b| (a.day, &a.who).cmp(&(b.day, &b.who)));
    let rows: Vec<Vec<String>> = all
        .chunk_by(|a, b| (a.day, &a.who) == (b.day, &b.who))
        .flat_map(|session| rows(view, session))
        .collect();
    page.table(&["Day", "Who", "What", "Takes"], &rows, &[3]);
    page.gap();
    page.line(
        "In the sessions between: water, weed, look what has changed, measure it and draw it.",
    );
    let picks = |p: &Planting| p.steps.iter().filter(|s| s.kind == StepKind::Pick).count();
    if ours.all().any(|(p, _)| picks(p) > 1) {
        page.line(
            "Look before each day of picking: pick on the first one on which it is ripe. The \
             later ones then fall away.",
        );
    }
}

/// The rows of one class on one day. Of several jobs the last one tells what all take together:
/// minutes that are rounded job by job do not add up.
fn rows(view: &View<'_>, session: &[Job]) -> Vec<Vec<String>> {
    let timed = || session.iter().filter_map(|job| job.takes);
    let together = (timed().count() > 1).then(|| minutes(timed().sum()));
    let mut rows: Vec<Vec<String>> = session
        .iter()
        .map(|job| {
            let takes = job.takes.map_or_else(String::new, minutes);
            vec![
                view.words.day(job.day),
                job.who.clone(),
                job.what.clone(),
                takes,
            ]
        })
        .collect();
    let last = rows.last_mut().and_then(|row| row.last_mut());
    if let (Some(last), Some(together)) = (last, together) {
        last.push_str(&format!(" (in all {together})"));
    }
    rows
}

/// The jobs of a planting from a day on.
fn jobs(
    view: &View<'_>,
    planting: &Planting,
    ingredient: &Ingredient,
    from: Option<Date>,
) -> Vec<Job> {
    planting
        .steps
        .iter()
        .flat_map(|step| jobs_of(view, planting, ingredient, step))
        .filter(|job| from.is_none_or(|from| job.day >= from))
        .collect()
}

fn jobs_of(view: &View<'_>, planting: &Planting, ingredient: &Ingredient, step: &Step) -> Vec<Job> {
    let name = steps::name(planting.method, step.kind);
    let what = match timeline::sowing(view, planting) {
        Some(which) => format!("{name}: {}, {which}", ingredient.name),
        None => format!("{name}: {}", ingredient.name),
    };
    let job = |day: Date, who: &str, what: String| Job {
        day,
        who: who.to_owned(),
        what,
        takes: None,
    };
    match &step.when {
        When::Sessions(visits) => visits
            .iter()
            .map(|visit| Job {
                takes: Some(step.minutes),
                ..job(
                    visit.date,
                    &visit.class,
                    format!("{what}{}", share(view, planting, step, visit, visits)),
                )
            })
            .collect(),
        When::Families(day) => vec![job(*day, "families", what)],
        When::Adult(day) => vec![job(*day, "an adult", what)],
        When::Daily { from, to } => vec![job(
            *from,
            "whoever is there",
            daily(step.kind, &what, *to, view.words),
        )],
    }
}

/// A step that runs over days; drying follows the pick, so its days are the latest ones.
fn daily(kind: StepKind, what: &str, to: Date, words: Words) -> String {
    match kind {
        StepKind::Cure => format!(
            "{what}, daily until {} (earlier if it was picked earlier)",
            words.day(to)
        ),
        _ => format!("{what}, daily until {}", words.day(to)),
    }
}

/// A class's part of the seeds or plants: `, about 109 of 217 seeds`.
fn share(
    view: &View<'_>,
    planting: &Planting,
    step: &Step,
    visit: &Visit,
    visits: &[Visit],
) -> String {
    let Some((total, thing)) = steps::counted(planting, step) else {
        return String::new();
    };
    let children = |name: &str| {
        view.garden
            .grades
            .iter()
            .flat_map(|g| &g.classes)
            .find(|c| c.name == name)
            .map_or(0, |c| c.children)
    };
    let all: u32 = visits.iter().map(|v| children(&v.class)).sum();
    let part = f64::from(total) * f64::from(children(&visit.class)) / f64::from(all.max(1));
    let part = part.ceil() as u32;
    if part >= total {
        format!(", {}", count(total, thing))
    } else {
        format!(", about {part} of {}", count(total, thing))
    }
}
