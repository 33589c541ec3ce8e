//! What stood in beds and on the shelf: it leaves when it is over, and stays as it is when it still stands.

use std::ops::Range;

use toml::de::{DeTable, DeValue};

use crate::calendar::Date;

use super::days::next;
use super::edits::Edits;
use super::tables::{last_end, tables, text};
use super::told::{Gone, MARK, What};

/// Takes out what is over when the next year begins on a day.
pub fn clear(file: &DeTable<'_>, start: Date, edits: &mut Edits<'_>) -> Vec<Gone> {
    let start = next(start);
    let mut gone = Vec::new();
    for key in ["growing", "seedlings"] {
        for (table, place) in tables(file, key) {
            let Some((crop, _)) = text(table, "crop") else {
                continue;
            };
            if cleared(table).is_some_and(|day| day > start) {
                continue;
            }
            let what = match (key, text(table, "for")) {
                ("seedlings", _) => What::Seedlings(crop.to_owned()),
                (_, Some(_)) => What::ForTheDish(crop.to_owned()),
                (_, None) => What::ForNone(crop.to_owned()),
            };
            let bed = text(table, "bed").map(|(bed, _)| bed.to_owned());
            take(table, place, &remark(&what, bed.as_deref()), edits);
            gone.push(Gone { what, bed });
        }
    }
    gone
}

/// The day on which something is cleared that is for no ingredient.
fn cleared(table: &DeTable<'_>) -> Option<Date> {
    let DeValue::Datetime(at) = table.get("cleared")?.get_ref() else {
        return None;
    };
    let date = at.date?;
    Date::from_ymd_opt(date.year.into(), date.month.into(), date.day.into())
}

/// What is said where it stood.
fn remark(what: &What, bed: Option<&str>) -> String {
    let bed = bed.map_or_else(String::new, |bed| format!(" in bed {bed}"));
    let text = match what {
        What::ForTheDish(crop) => format!(
            "{crop} stood{bed} for the dish, and is picked. If it is planted again before this plan begins, it comes here."
        ),
        What::ForNone(crop) => {
            format!(
                "{crop} stood{bed}, and is cleared. What covers the ground this time comes here."
            )
        }
        What::Seedlings(crop) => {
            format!("{crop} seedlings are planted out. Those of this year come here.")
        }
        What::Unknown => String::new(),
    };
    format!("{MARK}{text}")
}

/// Takes out an entry; a remark stands in its place.
fn take(table: &DeTable<'_>, place: Range<usize>, remark: &str, edits: &mut Edits<'_>) {
    match edits
        .text
        .get(place.clone())
        .is_some_and(|text| text.starts_with('{'))
    {
        true => {
            edits.line_before(place.start, remark);
            edits.take_out(place);
        }
        false => {
            let start = edits.line_of(place.start).start;
            let end = edits.line_of(last_end(table).max(place.end)).end;
            edits.put(start..end, format!("{remark}\n"));
        }
    }
}
