//! The part of `check` about the place: beds, seedling shelf, weather and frosts.

use crate::facts::record::{grown_through, light_frosts};
use crate::facts::space::all_strips;
use crate::garden::{BedKind, Garden, Sun};

use super::super::frost;
use crate::page::Page;
use crate::units::STRIP;
use crate::words::promise;
use crate::words::view::kind_of_years;
use crate::words::{Words, count};

pub(super) fn beds(garden: &Garden, page: &mut Page) {
    let strips = all_strips(garden);
    page.heading("Beds");
    let words = Words::of(garden);
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
                words.size(bed.length, bed.width),
                bed.strips().to_string(),
                words.short_length(bed.soil),
                sun.to_owned(),
                trellis,
                bed.cover
                    .as_ref()
                    .map_or_else(String::new, |c| c.name.clone()),
                bed.free_from.map_or_else(String::new, |d| words.short(d)),
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
        "{} of bed in all; a strip is {} of a bed's length, over its full width.",
        count(strips, "strip"),
        words.short_length(STRIP.to_centimetres())
    ));
}

pub(super) fn shelf(garden: &Garden, page: &mut Page) {
    let shelf = garden.shelf;
    page.heading("Seedling shelf");
    if shelf.flats == 0 {
        page.line("None: everything is sown in the beds or bought as plants.");
        return;
    }
    let words = Words::of(garden);
    let until = shelf
        .until
        .map_or_else(String::new, |d| format!(" until {}", words.day(d)));
    page.line(&format!(
        "Room for {}, {} of them on a heat mat, in a room of {:.0} C, from {}{until}.",
        count(shelf.flats, "flat"),
        shelf.warm_flats,
        shelf.room.0,
        words.day(shelf.from)
    ));
}

pub(super) fn weather(garden: &Garden, page: &mut Page) {
    page.heading("Weather");
    let seen = grown_through(garden);
    let kind = kind_of_years(garden);
    let span = seen.measured;
    let span = span.map_or_else(String::new, |(from, to)| format!(" ({from} to {to})"));
    page.line(&format!(
        "The plan is grown through {} {kind}{span}.",
        seen.years
    ));
    let words = Words::of(garden);
    let frosts = light_frosts(garden);
    page.item(&frost::spring(&frosts, words));
    page.item(&frost::autumn(&frosts, words));
    if let Some(text) = promise::frosts_unchecked(garden) {
        page.item(&text);
    }
}
