//! The watering list: litres for every bed and week, who waters in breaks with room for
//! names, what families pick, seedbeds that must stay damp, and how to use the list.

mod breaks;
mod names;
mod table;

use std::cmp::Ordering;

use crate::checker::{CheckedPlan, Seedbed, WaterNeed, Watering};
use crate::facts::Facts;
use crate::garden::Garden;
use crate::units::{Centimetres, Litres, SquareMetres};

use super::page::Page;
use super::screen::occasion;
use super::view::{View, kind_of_years};
use super::words::sentence;
use super::words::water::WaterMeasure;

use names::{beds, named};

/// How thick mulch lies (common practice).
const MULCH: Centimetres = Centimetres(5.0);

/// What `tureen show --water` prints.
#[must_use]
pub fn watering(garden: &Garden, checked: &CheckedPlan) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let watering = checked.watering(garden);
    let mut page = Page::new();
    page.title(TITLE);
    write(&view, &watering, &mut page);
    page
}

/// What the list is called.
pub(super) const TITLE: &str = "Watering list";

/// All that stands on the list, under its title.
pub(super) fn write(view: &View<'_>, watering: &Watering, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    let measure = view.words.water();
    page.heading(&sentence(&format!("{} for each week", measure.unit)));
    page.line(&format!(
        "60-85 means: 60 {unit} in the whole week in an ordinary year, 85 in a dry one, beside \
         what rain brings. A can is {can} {unit}. A dot: nothing stands there. The line under a \
         week of a break tells who waters and what to pick, with room for a name.",
        unit = measure.unit,
        can = measure.can,
    ));
    page.gap();
    table::write(view, watering, page);
    page.gap();
    page.line(&format!(
        "All weeks together: {}.",
        ordinary_and_dry(measure, watering.whole)
    ));
    seedbeds(view, &watering.seedbeds, page);
    how_to_water(view, watering, page);
    how_computed(view, watering, page);
}

/// `about 8200 litres in an ordinary year, 11000 in a dry one`.
fn ordinary_and_dry(measure: WaterMeasure, need: WaterNeed) -> String {
    format!(
        "about {:.0} {} in an ordinary year, {:.0} in a dry one",
        measure.tens(need.ordinary),
        measure.unit,
        measure.tens(need.dry)
    )
}

/// Seed that dries out in a day.
fn seedbeds(view: &View<'_>, seedbeds: &[Seedbed], page: &mut Page) {
    if seedbeds.is_empty() {
        return;
    }
    page.heading("Seedbeds: a look every day");
    for seedbed in seedbeds {
        let what = if seedbed.lies_deep {
            "look every day"
        } else {
            "a little every day"
        };
        page.item(&format!(
            "{}, {}: {what} from {} until it is up, about {}.",
            sentence(&seedbed.ingredient),
            beds(seedbed.beds.iter().map(|b| view.garden[*b].id.as_str())),
            view.words.day(seedbed.from),
            view.words.day(seedbed.up)
        ));
    }
    if seedbeds.iter().any(|s| !s.lies_deep) {
        page.line(
            "A little every day: only the top of the soil dries, but seed that dries once is lost. Use \
             a fine rose, and lay fleece or a board over it for weekends; look under it every day, \
             and leave it on a wet one.",
        );
    }
    if seedbeds.iter().any(|s| s.lies_deep) {
        page.line(
            "Look every day: large seed lies deep and rots in wet soil. Push a finger in as deep as \
             the seed, and water only where it is dry there (common practice).",
        );
    }
}

fn how_to_water(view: &View<'_>, watering: &Watering, page: &mut Page) {
    page.heading("How to water");
    let measure = view.words.water();
    page.item(
        "Feel the soil first: push a finger in, all of it. If it is damp at the tip, leave it for \
         today. Where soil and list differ, the soil is right.",
    );
    page.item(&format!(
        "Give a week's {} in two or three goes, early in the day, slowly, on the soil and not \
         on the leaves. Pots and sandy beds want more goes.",
        measure.unit
    ));
    page.item(
        "Newly set plants get a cup each at once, and again every second day of their first week \
         (common practice).",
    );
    page.item(&rain_gauge(view, &watering.planted));
    page.item(&format!(
        "Mulch of {} of straw or leaves on damp soil saves much of it (common practice).",
        view.words.short_length(MULCH)
    ));
    for bed in covered(view, watering) {
        page.item(&bed);
    }
    page.item(&format!(
        "Local rules come first: follow drought restrictions and hose bans, and ask the school who \
         may open the tap and which water may go on food. Water in the shade or in the cool, with \
         a hat and something to drink; small children carry a can half full, or {} in a lighter one.",
        measure.small
    ));
}

/// What a millimetre saves in each bed.
fn rain_gauge(view: &View<'_>, planted: &[SquareMetres]) -> String {
    let measure = view.words.water();
    let mut saved: Vec<(String, Vec<&str>)> = Vec::new();
    let used = view.garden.beds.iter().zip(planted);
    for (bed, area) in used.filter(|(_, area)| area.0 > 0.0) {
        let less = measure.saved_by_gauge(*area);
        match saved.iter_mut().find(|(other, _)| *other == less) {
            Some((_, ids)) => ids.push(&bed.id),
            None => saved.push((less, vec![&bed.id])),
        }
    }
    let saved: Vec<String> = saved
        .into_iter()
        .map(|(less, ids)| format!("{less} for {}", named(&ids)))
        .collect();
    format!(
        "Measured rain is better than any average. Hang up a rain gauge. In a week without rain give \
         a dry year's {unit}; for every {gauge} in the gauge give so many {unit} less: {}.",
        saved.join("; "),
        unit = measure.unit,
        gauge = measure.gauge,
    )
}

/// Beds with a cover that may keep rain off.
fn covered(view: &View<'_>, watering: &Watering) -> Vec<String> {
    let used = view.garden.beds.iter().zip(&watering.planted);
    used.filter(|(_, area)| area.0 > 0.0)
        .filter_map(|(bed, _)| {
            let cover = bed.cover.as_ref()?;
            Some(format!(
                "Bed {} has a cover ({}). If it keeps rain off, give that bed a dry year's {} in \
                 every week.",
                bed.id,
                cover.name,
                view.words.water().unit
            ))
        })
        .collect()
}

fn how_computed(view: &View<'_>, watering: &Watering, page: &mut Page) {
    page.heading("How it is computed");
    let adds_up = adds_up(view.words.water(), watering);
    page.line(&format!(
        "For every day of {} {}: what well watered grass loses, from the day's lowest and highest \
         temperature and the sun (Hargreaves), times a figure for the crop and its age, less rain. \
         Rain so light that it dries off at once does not count, nor does rain beyond the week's \
         need. Ordinary is the middle one of those years, dry the one that only one in ten passes; \
         the weeks just before and after count as well. {adds_up} A crop drinks until the last day set aside for picking. Wind, \
         your own soil and shade are not known: it is a first guess.",
        view.years(),
        kind_of_years(view.garden)
    ));
    if view.plan.plantings.iter().any(|p| p.places.is_empty()) {
        page.line("Patches outside the beds are not in the list.");
    }
}

/// Why the figures of the weeks are not to be added up. Middle figures do not add up to that of
/// the sums, nor do those that one in ten passes.
fn adds_up(measure: WaterMeasure, watering: &Watering) -> String {
    let sum = |of: fn(&WaterNeed) -> Litres| watering.weeks.iter().map(of).sum::<Litres>();
    let beside =
        |weeks: Litres, whole: Litres| match measure.tens(weeks).total_cmp(&measure.tens(whole)) {
            Ordering::Less => format!("less ({:.0})", measure.tens(weeks)),
            Ordering::Equal => "as much".to_owned(),
            Ordering::Greater => format!("more ({:.0})", measure.tens(weeks)),
        };
    format!(
        "The line for all weeks together is counted from whole years, not added up from the weeks: \
         hardly a year is ordinary, or dry, in every week. The ordinary weeks alone add up to {}, \
         the dry weeks to {}.",
        beside(sum(|week| week.ordinary), watering.whole.ordinary),
        beside(sum(|week| week.dry), watering.whole.dry)
    )
}
