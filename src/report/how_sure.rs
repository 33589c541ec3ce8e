//! How sure the numbers of ready years are, and what they leave out.

use crate::facts::how_sure::Years;

use crate::page::Page;
use crate::words::view::View;
use crate::words::{list, promise};

/// Writes what to expect of each ingredient, by which method, and what it does not know.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    let years = view.years();
    page.heading("How sure this is");
    let expected = |at| view.expected(view.promised_of(at));
    let parts: Vec<String> = view
        .ingredients()
        .filter_map(|(at, ingredient, _)| {
            let (fewest, most) = expected(at)?;
            Some(format!("{} in {fewest} to {most}", ingredient.name))
        })
        .collect();
    match parts.is_empty() {
        true => page.item(&format!(
            "What is ready in {years} years says next to nothing of others: with five there is a range, \
             from ten on it tells something."
        )),
        false => page.item(&format!(
            "Of {years} more years expect {}. Nineteen times in twenty it comes out so, if the \
             weather goes on as it was.",
            parts.join(", ")
        )),
    }
    page.item(&promise::suits_its_own(view));
    if let Some(late) = autumn_light(view) {
        page.item(&late);
    }
    page.item(&climate(view));
    if let Some(text) = promise::frosts_unchecked(view.garden) {
        page.item(&text);
    }
    if !parts.is_empty() {
        page.item(
            "Method: 95 % prediction interval by joint sampling, Krishnamoorthy and Peng 2011.",
        );
    }
}

/// The ingredients that ripen in the weakening light of autumn, which degree-days do not know.
fn autumn_light(view: &View<'_>) -> Option<String> {
    let names = view.in_autumn_light();
    (!names.is_empty()).then(|| {
        format!(
            "What is sown or planted after midsummer and picked after the day and night are equal \
             grows in weakening light, of which these figures know too little: {}. A crop of \
             65 days may then take 80 (rule of A. McDaniel, Virginia Tech). Where you can, start it \
             a week or two earlier.",
            list(&names)
        )
    })
}

/// What the years themselves cannot tell: whether the climate is still theirs.
fn climate(view: &View<'_>) -> String {
    match view.weather_years() {
        Years::Generated { mild } => {
            let mild = if mild {
                " Where it seldom freezes, as here, made-up days differ more from one another than \
                 real ones: a record of your own place tells far better."
            } else {
                ""
            };
            format!(
                "The years are made up from monthly means. A station's record may have more years \
                 far from the mean, and the climate changes.{mild}"
            )
        }
        Years::None => "No weather year covers the plan.".to_owned(),
        Years::Measured {
            first,
            last,
            old,
            change,
            later,
        } => {
            let old = old.map_or_else(String::new, |age| {
                format!(", the last of them {age} years before this one")
            });
            let later =
                later.map_or_else(String::new, |later| format!(" {}", promise::later(&later)));
            format!(
                "The years are {first} to {last}{old}. {}{later}",
                trend(change)
            )
        }
    }
}

/// Whether it grew warmer in the years; `change` in ten years.
fn trend(change: Option<f64>) -> String {
    match change {
        Some(more) if more > 0.0 => format!(
            "In these weeks it grew warmer, by {more:.1} C in ten years (Sen's slope; certain by \
             the Mann-Kendall test), so the later years tell more than the early ones."
        ),
        Some(less) => format!(
            "In these weeks it grew cooler, by {:.1} C in ten years (Sen's slope; certain by the \
             Mann-Kendall test), so the later years tell more than the early ones.",
            -less
        ),
        None => {
            "No trend of warmth is certain in them; the climate may change all the same.".to_owned()
        }
    }
}
