//! Parts of a file by their keys, with their places.

use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// The tables of a list, with the place of each: that of its header, or of all of it where it stands in braces.
pub fn tables<'t>(
    table: &'t DeTable<'t>,
    key: &str,
) -> impl Iterator<Item = (&'t DeTable<'t>, Range<usize>)> {
    let list = table.get(key).and_then(|value| value.get_ref().as_array());
    list.into_iter()
        .flat_map(|list| list.iter())
        .filter_map(|entry| Some((entry.get_ref().as_table()?, entry.span())))
}

/// A table in a table.
pub fn section<'t>(table: &'t DeTable<'t>, key: &str) -> Option<&'t DeTable<'t>> {
    table.get(key)?.get_ref().as_table()
}

/// A text, with its place.
pub fn text<'t>(table: &'t DeTable<'t>, key: &str) -> Option<(&'t str, Range<usize>)> {
    let value = table.get(key)?;
    Some((value.get_ref().as_str()?, value.span()))
}

/// The place of a whole number.
pub fn int_span(table: &DeTable<'_>, key: &str) -> Option<Range<usize>> {
    let value = table.get(key)?;
    matches!(value.get_ref(), DeValue::Integer(_)).then(|| value.span())
}

/// The place of a key.
pub fn key_span(table: &DeTable<'_>, key: &str) -> Option<Range<usize>> {
    Some(table.get_key_value(key)?.0.span())
}

/// The place of a key with its value.
pub fn whole_span(table: &DeTable<'_>, key: &str) -> Option<Range<usize>> {
    let (key, value) = table.get_key_value(key)?;
    Some(key.span().start..value.span().end)
}

/// The end of the last value in a table, however deep.
pub fn last_end(table: &DeTable<'_>) -> usize {
    let end = |value: &Spanned<DeValue<'_>>| match value.get_ref() {
        DeValue::Table(inner) => last_end(inner).max(value.span().end),
        _ => value.span().end,
    };
    table.iter().map(|(_, value)| end(value)).max().unwrap_or(0)
}
