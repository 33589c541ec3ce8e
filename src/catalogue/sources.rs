//! Which figure of a crop comes from which work. A figure is named by its path in the crop's
//! table, such as `indoor.weeks`.

use std::collections::BTreeMap;

use toml::{Table, Value};

use super::error::Fault;

/// What stands in place of a source key where a figure is from memory.
pub const MEMORY: &str = "memory";

/// What stands in place of a source key where a figure is common practice, without a single
/// published work.
pub const PRACTICE: &str = "common practice";

/// Keys of a crop's table that are no figures.
const NO_FIGURES: [&str; 5] = ["name", "other_names", "botanical", "notes", "from"];

/// The source keys in a source as the catalogue writes it: `HM1954 (cabbage)` holds one,
/// `MIDATL-A4, ISU-WEEKS` two.
pub fn source_keys(source: &str) -> impl Iterator<Item = &str> {
    source
        .split(", ")
        .map(|part| part.split_once(" (").map_or(part, |(key, _)| key))
}

/// The sources of a crop's figures, by path, for single figures and for groups of them.
/// `named` holds those that the file names; all others are from memory.
pub(super) fn of_figures(
    crop: &Table,
    named: &BTreeMap<String, String>,
) -> Result<BTreeMap<String, String>, Fault> {
    let figures = figures(crop);
    if let Some(stray) = named
        .keys()
        .find(|name| !figures.iter().any(|figure| within(figure, name)))
    {
        return Err(Fault::SourceOfNothing(stray.clone()));
    }
    let mut sources: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for figure in &figures {
        let source = groups(figure)
            .find_map(|group| named.get(group))
            .map_or(MEMORY, String::as_str);
        for group in groups(figure) {
            let of_group = sources.entry(group.to_owned()).or_default();
            if !of_group.contains(&source) {
                of_group.push(source);
            }
        }
    }
    Ok(sources
        .into_iter()
        .map(|(group, sources)| (group, sources.join(", ")))
        .collect())
}

/// The text values of a table, by path.
pub(super) fn texts(table: &Table) -> BTreeMap<String, String> {
    leaves(table)
        .into_iter()
        .filter_map(|(path, value)| Some((path, value.as_str()?.to_owned())))
        .collect()
}

/// The paths of a crop's figures.
fn figures(crop: &Table) -> Vec<String> {
    leaves(crop)
        .into_iter()
        .map(|(path, _)| path)
        .filter(|path| !NO_FIGURES.iter().any(|not| within(path, not)))
        .collect()
}

/// All values of a table that are no tables themselves, by path.
fn leaves(table: &Table) -> Vec<(String, &Value)> {
    let mut found = Vec::new();
    for (key, value) in table {
        match value {
            Value::Table(inner) => found.extend(
                leaves(inner)
                    .into_iter()
                    .map(|(path, value)| (format!("{key}.{path}"), value)),
            ),
            _ => found.push((key.clone(), value)),
        }
    }
    found
}

/// A path itself and the groups it lies in, from the narrowest to the widest.
fn groups(path: &str) -> impl Iterator<Item = &str> {
    std::iter::successors(Some(path), |path| Some(path.rsplit_once('.')?.0))
}

/// True if `path` is `group` or lies in it.
fn within(path: &str, group: &str) -> bool {
    groups(path).any(|g| g == group)
}
