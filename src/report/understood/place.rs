//! The part of `check` about the place: beds, seedling shelf, weather and frosts.

use crate::garden::{BedKind, Garden, Sun};

use super::super::frost::Frosts;
use super::super::page::Page;
use super::super::view::kind_of_years;
use super::super::words::{Dates, count};

pub(super) fn beds(garden: &Garden, page: &mut Page) {
    let strips: u32 = garden.beds.iter().map(|b| b.strips()).sum();
    page.heading("Beds");
    let dates = Dates::of(garden);
    let rows: Vec<Vec<String>> = garden
        .beds
        .iter()
        .map(|bed| {
            let kind = match bed.kind {
                BedKind::Bed => "",
                BedKind::Container => "container ",
            };
            let sun = match bed.sun {
                Sun::Full => "full sun",
                Sun::Part => "part sun",
                Sun::Shade => "shade",
            };
            let trellis = match bed.trellis_strips() {
                0 => String::new(),
                n => count(n, "strip"),
            };
            vec![
                format!("{kind}{}", bed.id),
                format!("{:.1} x {:.1} m", bed.length.0, bed.width.0),
                bed.strips().to_string(),
                format!("{:.0} cm", bed.soil.0),
                sun.to_owned(),
                trellis,
                bed.cover
                    .as_ref()
                    .map_or_else(String::new, |c| c.name.clone()),
                bed.free_from.map_or_else(String::new, |d| dates.short(d)),
            ]
        })
        .collect();
    let header = [
        "Bed",
        "Size",
        "Strips",
        "Soil",
        "Sun",
        "Trellis",
        "Cover",
        "Free from",
    ];
    page.table(&header, &rows, &[2, 3]);
    page.gap();
    page.line(&format!(
        "{} of bed in all; a strip is 30 cm of a bed's length, over its full width.",
        count(strips, "strip")
    ));
}

pub(super) fn shelf(garden: &Garden, page: &mut Page) {
    let shelf = garden.shelf;
    page.heading("Seedling shelf");
    if shelf.flats == 0 {
        page.line("None: everything is sown in the beds or bought as plants.");
        return;
    }
    let dates = Dates::of(garden);
    let until = shelf
        .until
        .map_or_else(String::new, |d| format!(" until {}", dates.day(d)));
    page.line(&format!(
        "Room for {}, {} of them on a heat mat, in a room of {:.0} C, from {}{until}.",
        count(shelf.flats, "flat"),
        shelf.warm_flats,
        shelf.room.0,
        dates.day(shelf.from)
    ));
}

pub(super) fn weather(garden: &Garden, page: &mut Page) {
    page.heading("Weather");
    let years = garden.weather.years(garden.horizon());
    let kind = kind_of_years(garden);
    let span = match (years.first(), years.last()) {
        (Some(first), Some(last)) if !garden.weather.is_generated() => {
            format!(" ({} to {})", first.label, last.label)
        }
        _ => String::new(),
    };
    page.line(&format!(
        "The plan is grown through {} {kind}{span}.",
        years.len()
    ));
    let frosts = Frosts::of(&garden.weather, garden.latitude);
    page.item(&frosts.spring());
    page.item(&frosts.autumn());
}
