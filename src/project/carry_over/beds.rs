//! What grew in the beds goes into their histories, for rotation to read.

use std::collections::BTreeMap;
use std::ops::Range;

use toml::Value;
use toml::de::{DeTable, DeValue};

use crate::garden::{Bed, Garden};
use crate::project::along_trellis;

use super::days::next;
use super::edits::Edits;
use super::tables::{section, tables, text, whole_span};
use super::told::{Gone, Grown, What};

/// Writes what grew into the `grew` of each bed, and takes out years before `since`.
pub fn write(file: &DeTable<'_>, (grown, since): (&[Grown], i32), edits: &mut Edits<'_>) {
    for (bed, place) in tables(file, "bed") {
        let Some((id, id_place)) = text(bed, "id") else {
            continue;
        };
        let mut years: BTreeMap<i32, Vec<&str>> = BTreeMap::new();
        for own in grown.iter().filter(|own| is_in(own, id)) {
            let crops = years.entry(own.year).or_default();
            if !crops.contains(&own.crop.as_str()) {
                crops.push(&own.crop);
            }
        }
        match section(bed, "grew") {
            None if years.is_empty() => {}
            None => {
                let new = format!("grew = {{ {} }}", listed(&years, &[]));
                match edits
                    .text
                    .get(place.clone())
                    .is_some_and(|text| text.starts_with('{'))
                {
                    true => edits.put(id_place.end..id_place.end, format!(", {new}")),
                    false => {
                        let end = edits.line_of(id_place.end).end;
                        edits.put(end..end, format!("{new}\n"));
                    }
                }
            }
            Some(grew) => {
                let place = bed.get("grew").map_or(0..0, |value| value.span());
                rewrite(grew, place, (years, since), edits);
            }
        }
    }
}

/// What grew on the ground along a trellis grew in the bed.
fn is_in(grown: &Grown, bed: &str) -> bool {
    grown.bed == bed || grown.bed == along_trellis::name(bed)
}

/// A history that is there already.
fn rewrite(
    grew: &DeTable<'_>,
    place: Range<usize>,
    (mut years, since): (BTreeMap<i32, Vec<&str>>, i32),
    edits: &mut Edits<'_>,
) {
    let old = grew.iter().filter_map(|(key, value)| {
        let year: i32 = key.get_ref().parse().ok()?;
        Some((year, key.span().start..value.span().end, value.get_ref()))
    });
    let mut kept: Vec<(i32, String)> = Vec::new();
    let mut lines: Vec<(i32, Range<usize>)> = Vec::new();
    for (year, span, value) in old {
        if let (Some(crops), DeValue::Array(list)) = (years.get_mut(&year), value) {
            let names = list.iter().filter_map(|name| name.get_ref().as_str());
            let names: Vec<&str> = names.filter(|name| !crops.contains(name)).collect();
            crops.splice(0..0, names);
        } else if year >= since {
            let text = edits.text.get(span.clone()).unwrap_or_default();
            kept.push((year, text.to_owned()));
        }
        lines.push((year, span));
    }
    if edits
        .text
        .get(place.clone())
        .is_some_and(|text| text.starts_with('{'))
    {
        edits.put(place, format!("{{ {} }}", listed(&years, &kept)));
        return;
    }
    // A year on each line, under a header or after `grew.`
    lines.sort_by_key(|(_, span)| span.start);
    let Some((_, first)) = lines.first().cloned() else {
        return;
    };
    let before = edits.line_of(first.start).start..first.start;
    let before = edits.text.get(before).unwrap_or_default().to_owned();
    for (year, crops) in years.iter().rev() {
        let line = format!("{}{}", before.trim_start(), of_year(*year, crops));
        edits.line_before(first.start, &line);
    }
    for (year, span) in lines {
        if year < since || years.contains_key(&year) {
            let line = edits.line_of(span.start).start..edits.line_of(span.end).end;
            edits.put(line, String::new());
        }
    }
}

/// Years and crops, the last year first.
fn listed(years: &BTreeMap<i32, Vec<&str>>, kept: &[(i32, String)]) -> String {
    let new = years
        .iter()
        .map(|(year, crops)| (*year, of_year(*year, crops)));
    let mut all: Vec<(i32, String)> = new.chain(kept.iter().cloned()).collect();
    all.sort_by_key(|(year, _)| std::cmp::Reverse(*year));
    let all: Vec<String> = all.into_iter().map(|(_, text)| text).collect();
    all.join(", ")
}

fn of_year(year: i32, crops: &[&str]) -> String {
    let crops: Vec<String> = crops
        .iter()
        .map(|crop| Value::from(*crop).to_string())
        .collect();
    format!("{year} = [{}]", crops.join(", "))
}

/// Beds are free of what stood in them until a day that is over when the next year begins.
pub fn free(file: &DeTable<'_>, garden: &Garden, edits: &mut Edits<'_>) -> Vec<Gone> {
    let start = next(garden.start());
    let is_over = |bed: &Bed| bed.free_from.is_some_and(|free| free <= start);
    let mut gone = Vec::new();
    for (bed, _) in tables(file, "bed") {
        let Some((id, _)) = text(bed, "id") else {
            continue;
        };
        let of_garden = garden.bed_with_id(id).map(|at| &garden[at]);
        if let Some(place) = whole_span(bed, "free_from")
            && of_garden.is_some_and(is_over)
        {
            edits.take_out(place);
            gone.push(Gone {
                what: What::Unknown,
                bed: Some(id.to_owned()),
            });
        }
    }
    gone
}
