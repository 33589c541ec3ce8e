//! Ids in a saved plan, as the project file has them: one stands by itself, several in a list.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

#[derive(Deserialize)]
#[serde(untagged)]
enum Ids {
    One(String),
    Several(Vec<String>),
}

/// Writes them.
pub fn serialize<S: Serializer>(ids: &[String], serializer: S) -> Result<S::Ok, S::Error> {
    match ids {
        [one] => one.serialize(serializer),
        _ => ids.serialize(serializer),
    }
}

/// Reads them.
pub fn deserialize<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Vec<String>, D::Error> {
    Ok(match Ids::deserialize(deserializer)? {
        Ids::One(id) => vec![id],
        Ids::Several(ids) => ids,
    })
}
