//! What `tureen crops` prints: all crops of the catalogue, grouped as a gardener would look for
//! them, one line each.

use crate::catalogue::{Catalogue, Entry};
use crate::facts::crop::{is_warm_season, packet_days};
use crate::garden::{Crop, Method};

use crate::page::Page;
use crate::words::{count, sentence};

/// The list of all crops.
#[must_use]
pub fn crops(catalogue: &Catalogue) -> Page {
    let mut page = Page::new();
    let number = catalogue.names().count();
    page.title(&format!("{} that the program knows", count(number, "crop")));
    for (group, entries) in catalogue.groups() {
        page.heading(heading(group).unwrap_or(group));
        let rows: Vec<Vec<String>> = entries.into_iter().map(row).collect();
        let header = ["Crop", "Started as", "Days to ripe", "Season", "Family"];
        page.table(&header, &rows, &[]);
    }
    page.gap();
    page.line(
        "Started as: seed in the bed; shelf: sown indoors, then planted out; pieces: seed \
         potatoes, sets or cloves; bought: young plants. The best way comes first. Days to ripe: as \
         packets say, from sowing in the bed, or from planting out. Season: warm crops want \
         warmth and most die of frost, cool crops grow in spring and autumn. Family: crops of one \
         family should not follow each other in a bed.",
    );
    page.gap();
    page.line(
        "All about one: tureen crops tomato. What it means for your place: tureen crops tomato \
         --for garden.toml",
    );
    page
}

/// The heading of a group of the catalogue.
fn heading(group: &str) -> Option<&'static str> {
    Some(match group {
        "fruits" => "Grown for their fruit",
        "grains" => "Grains",
        "roots" => "Roots and tubers",
        "onions" => "Onions and their kin",
        "leaves" => "Leaves, heads and stalks",
        "pulses" => "Peas and beans",
        "herbs" => "Herbs",
        "standing" => "Flowers, and plants that stand for years",
        _ => return None,
    })
}

fn row(entry: &Entry) -> Vec<String> {
    let crop = &entry.crop;
    let methods: Vec<&str> = crop.methods.iter().map(|m| method(*m)).collect();
    vec![
        sentence(&crop.name),
        if methods.is_empty() {
            "stands for years".to_owned()
        } else {
            methods.join(", ")
        },
        days(crop),
        season(crop).to_owned(),
        crop.rotation.family.clone(),
    ]
}

fn method(method: Method) -> &'static str {
    match method {
        Method::Direct => "seed",
        Method::Indoor => "shelf",
        Method::Pieces => "pieces",
        Method::Bought => "bought",
        Method::Seedlings | Method::Growing | Method::Patch => "standing",
    }
}

/// `57 sown, 47 planted`.
fn days(crop: &Crop) -> String {
    let days = packet_days(crop);
    let told = |days: Option<f64>, how: &str| days.map(|days| format!("{days:.0} {how}"));
    let both = [told(days.sown, "sown"), told(days.planted, "planted")];
    both.into_iter().flatten().collect::<Vec<_>>().join(", ")
}

/// `warm` or `cool`.
pub(super) fn season(crop: &Crop) -> &'static str {
    if is_warm_season(crop) { "warm" } else { "cool" }
}
