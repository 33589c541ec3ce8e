//! How the plans for other days and other dishes do, in a column each.

use crate::explain::Idea;
use crate::facts::verdict::Readiness;
use crate::garden::Team;

use super::list;
use super::view::{View, figure};

/// How another dish comes into the file.
pub(crate) const TO_TAKE_IT: &str = "Put these lines in place of all [[dish.ingredient]] of your file. Sections [crop], \
                                     [[growing]] and [[seedlings]] of crops that are not among them go too: `tureen \
                                     check` names each.";

/// For what is planned when other dishes are.
pub(crate) const AS_IT_IS: &str = "The file stays as it is, and all is planned as if nothing had been sown yet. Grams of the \
                                   other dishes are ours, and the program chose their grades.";

/// Signs of the longest bar.
const BAR: usize = 20;

/// `######..............`: in what share of the years the dish is ready.
pub(crate) fn bar(of: Readiness) -> String {
    let (ready, years) = (of.ready, of.years);
    let full = (ready * BAR + years / 2) / years.max(1);
    format!(
        "{}{}",
        "#".repeat(full),
        ".".repeat(BAR.saturating_sub(full))
    )
}

/// The ingredients that are ready in the fewest years, unless all always are.
pub(crate) fn held_back_by(view: &View<'_>) -> String {
    match view.held_back_by() {
        None => "nothing".to_owned(),
        Some((names, fewest)) => format!("{} ({})", list(&names), figure(fewest)),
    }
}

/// The name of a dish that could be cooked.
pub(crate) fn dish_of(idea: &Idea) -> String {
    match &idea.dish {
        Some(dish) => dish.name.clone(),
        None => "the dish of your file".to_owned(),
    }
}

/// `potato by Grade 2, carrot by Grade 1`: who grows what.
pub(crate) fn who_grows_what(view: &View<'_>) -> String {
    let who = |name: &str, team: Team| match team.size() {
        0 => name.to_owned(),
        _ => format!("{name} by {}", view.team_name(team)),
    };
    let ingredients = view.garden.ingredients.iter();
    let each: Vec<String> = ingredients
        .map(|ingredient| who(&ingredient.name, view.grown_by(ingredient)))
        .collect();
    list(&each)
}
