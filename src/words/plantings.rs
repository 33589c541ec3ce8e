//! A planting as it is called in a line, and who goes on with it when the grades move up.

use crate::facts::life::SpanKind;
use crate::facts::ours::Ours;
use crate::facts::places::beds;
use crate::garden::{GradeAt, HandOver, Method, Team};
use crate::plan::Planting;

use super::view::View;
use super::{list, places, tasks};

/// `carrot, second sowing, bed 3, strips 1 to 6`.
pub(crate) fn title(view: &View<'_>, planting: &Planting) -> String {
    let mut parts = vec![planting.ingredient.clone()];
    parts.extend(sowing(view, planting));
    match planting.method {
        Method::Patch => parts.push("from the standing patch".to_owned()),
        Method::Growing => parts.push("already growing".to_owned()),
        Method::Seedlings => parts.push("from seedlings on the shelf".to_owned()),
        Method::Direct | Method::Indoor | Method::Pieces | Method::Bought => {}
    }
    if !planting.places.is_empty() {
        parts.push(places::in_words(view.garden, &planting.places));
    }
    parts.join(", ")
}

/// `Grade 1 and Grade 4: carrot, bed 3, strips 1 to 6`.
pub(crate) fn with_grades(view: &View<'_>, planting: &Planting) -> String {
    let grades = view.team_name(view.team_of(planting));
    format!("{grades}: {}", title(view, planting))
}

/// `together with Grade 4`: with whom a grade grows what a team does; nothing where it does so alone.
pub(crate) fn together_with(view: &View<'_>, team: Team, grade: GradeAt) -> Option<String> {
    let others = team.grades().filter(|other| *other != grade);
    let others: Team = others.collect();
    let shares = team.has(grade) && others.size() > 0;
    shares.then(|| format!("together with {}", view.team_name(others)))
}

/// `We grow carrot together with Grade 4 (4a and 4b): ...`, for each crop that a grade shares.
pub(crate) fn shared(view: &View<'_>, ours: &Ours<'_>) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for (planting, ingredient) in &ours.own {
        let team = view.team_of(planting);
        let Some(with) = together_with(view, team, ours.grade) else {
            continue;
        };
        let classes = view.garden.classes_of(team);
        let others = classes.filter(|class| class.grade != ours.grade);
        let others = others.map(|class| view.garden.class(class).name.as_str());
        let line = format!(
            "We grow {} {with} ({}): one crop, and every class of each grade has its part in every step.",
            ingredient.name,
            list(&others.collect::<Vec<_>>())
        );
        if !said.contains(&line) {
            said.push(line);
        }
    }
    said
}

/// `second sowing`, where an ingredient has several.
pub(crate) fn sowing(view: &View<'_>, planting: &Planting) -> Option<String> {
    tasks::sowing(view.sowing_of(planting))
}

/// Who carries the grade's plantings on after moving up, if something is left to do then.
pub(crate) fn hand_over(view: &View<'_>, grade: GradeAt) -> Option<String> {
    let over = view.handed_over(grade)?;
    let who = match over.to {
        HandOver::SameChildren => {
            "the same children carry on, one grade up (class names as before)".to_owned()
        }
        HandOver::SameGrade => format!(
            "the children who then enter {} take over",
            view.grade_name(grade)
        ),
        HandOver::Leaves { adopter } => format!("{} takes over", view.grade_name(adopter)),
    };
    Some(format!(
        "from {}, when the grades move up, {who}.",
        view.words.day(over.from)
    ))
}

/// What is written on a span, from the longest to the shortest.
pub(crate) fn on_span(kind: SpanKind, planting: Option<&Planting>) -> Vec<String> {
    let said: Vec<&str> = match kind {
        SpanKind::Shelf => vec!["on the shelf", "shelf"],
        SpanKind::Bed => {
            let named = beds(planting.iter().flat_map(|p| &p.places));
            let place = places::beds(&named);
            return vec![format!("growing in {place}"), place];
        }
        SpanKind::Pick => Vec::new(),
        SpanKind::Cure => vec!["drying"],
    };
    said.into_iter().map(str::to_owned).collect()
}
