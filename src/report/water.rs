//! The watering list: litres for every bed and week, who waters in breaks with room for
//! names, what families pick, seedbeds that must stay damp, and how to use the list.

use crate::checker::{CheckedPlan, WaterNeed};
use crate::facts::order::natural;
use crate::facts::water::{Note, Row, added_up, asked_of_families, rows, used_beds};
use crate::facts::{Facts, places};
use crate::garden::{Garden, Tongue};

use crate::page::{Grid, GridRow, Page};
use crate::words::view::View;
use crate::words::water::WaterMeasure;
use crate::words::watering::{English, Spanish, Speech, Sums};

/// What `tureen show --water` prints.
#[must_use]
pub fn watering(garden: &Garden, checked: &CheckedPlan) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.title(&title(&view));
    write(&view, &mut page);
    page
}

/// What the list is called.
pub(super) fn title(view: &View<'_>) -> String {
    English::of(view).title()
}

/// All that stands on the list, under its title.
pub(super) fn write(view: &View<'_>, page: &mut Page) {
    list(view, &English::of(view), page);
}

/// What the list is called in a second language.
pub(super) fn title_in(view: &View<'_>, tongue: Tongue) -> String {
    match tongue {
        Tongue::Spanish => Spanish::of(view).title(),
    }
}

/// The list in a second language.
pub(super) fn write_in(view: &View<'_>, tongue: Tongue, page: &mut Page) {
    match tongue {
        Tongue::Spanish => list(view, &Spanish::of(view), page),
    }
}

fn list(view: &View<'_>, speech: &dyn Speech, page: &mut Page) {
    if let Some(note) = speech.note() {
        page.paragraph(&note);
    }
    page.paragraph(&speech.occasion(view.garden));
    for asked in asked_of_families(view) {
        page.title(&speech.asked(&asked));
    }
    page.heading(&speech.for_each_week());
    page.line(&speech.legend());
    page.gap();
    table(view, speech, page);
    page.gap();
    page.line(&speech.whole(view.watering().whole));
    seedbeds(view, speech, page);
    how_to_water(view, speech, page);
    page.heading(speech.computed());
    page.line(&speech.how_computed(&Sums {
        weeks: added_up(view.watering()),
        whole: view.watering().whole,
        years: view.years(),
    }));
    if view.plan.plantings.iter().any(|p| p.places.is_empty()) {
        page.line(speech.patches());
    }
}

/// A row a week, a column a bed. What belongs to a week of a break stands under its row.
fn table(view: &View<'_>, speech: &dyn Speech, page: &mut Page) {
    let measure = speech.measure();
    let heads = speech.heads().into_iter().map(str::to_owned);
    let beds = used_beds(view);
    let beds = beds.iter().map(|(_, bed)| speech.bed(bed));
    let row = |row: Row<'_>| GridRow {
        label: speech.week(row.monday),
        cells: cells(measure, &row),
        under: row.note.map(|note| match note {
            Note::Break(week) => speech.break_week(&week),
            Note::Until(day) => speech.until(day),
        }),
    };
    let rows = rows(view, |dry| measure.told(dry) <= measure.can);
    page.grid(Grid {
        header: vec![heads.chain(beds).collect()],
        rows: rows.into_iter().map(row).collect(),
        gap: 2,
    });
}

/// The cells of a row: all beds, cans, then bed by bed.
fn cells(measure: WaterMeasure, row: &Row<'_>) -> Vec<String> {
    let told = |need: &Option<WaterNeed>| {
        need.map_or(".".to_owned(), |n| {
            range(measure.told(n.ordinary), measure.told(n.dry))
        })
    };
    let carried = row.all.map_or(".".to_owned(), |n| {
        range(measure.cans(n.ordinary), measure.cans(n.dry))
    });
    let beds = row.beds.iter().map(told);
    [told(&row.all), carried].into_iter().chain(beds).collect()
}

/// `60-85`, or one figure where both are the same.
fn range(ordinary: f64, dry: f64) -> String {
    if ordinary == dry {
        format!("{dry:.0}")
    } else {
        format!("{ordinary:.0}-{dry:.0}")
    }
}

/// Seed that dries out in a day.
fn seedbeds(view: &View<'_>, speech: &dyn Speech, page: &mut Page) {
    let seedbeds = &view.watering().seedbeds;
    if seedbeds.is_empty() {
        return;
    }
    page.heading(speech.seedbeds());
    for seedbed in seedbeds {
        let beds = seedbed.beds.iter().map(|b| view.garden[*b].id.as_str());
        page.item(&speech.seedbed(seedbed, &places::in_order(beds)));
    }
    if seedbeds.iter().any(|s| !s.lies_deep) {
        page.line(speech.lies_shallow());
    }
    if seedbeds.iter().any(|s| s.lies_deep) {
        page.line(speech.lies_deep());
    }
}

fn how_to_water(view: &View<'_>, speech: &dyn Speech, page: &mut Page) {
    page.heading(speech.how());
    for habit in speech.habits() {
        page.item(&habit);
    }
    let saved = saved(view, speech.measure());
    if !saved.is_empty() {
        page.item(&speech.rain_gauge(&saved));
    }
    page.item(&speech.mulch());
    let planted = view.garden.beds.iter().zip(&view.watering().planted);
    for (bed, _) in planted.filter(|(_, area)| area.0 > 0.0) {
        if let Some(cover) = &bed.cover {
            page.item(&speech.cover(bed, &cover.name));
        }
    }
    page.item(&speech.caution());
}

/// What a line of the rain gauge saves in each bed; beds of one figure together.
fn saved<'a>(view: &View<'a>, measure: WaterMeasure) -> Vec<(String, Vec<&'a str>)> {
    let mut saved: Vec<(String, Vec<&str>)> = Vec::new();
    let planted = view.garden.beds.iter().zip(&view.watering().planted);
    for (bed, area) in planted.filter(|(_, area)| area.0 > 0.0) {
        let less = measure.saved_by_gauge(*area);
        match saved.iter_mut().find(|(other, _)| *other == less) {
            Some((_, ids)) => ids.push(&bed.id),
            None => saved.push((less, vec![&bed.id])),
        }
    }
    for (_, ids) in &mut saved {
        ids.sort_by(|a, b| natural(a, b));
    }
    saved
}
