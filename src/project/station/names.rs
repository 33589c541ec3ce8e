//! What a column holds, by its name: as the archives, weather services and loggers of stations write it.

use super::element::Element;
use super::units::{RainUnit, TemperatureUnit, Units};

/// A column that a person may name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Column {
    /// The day.
    Date,
    /// The station.
    Station,
    /// A measured value.
    Of(Element),
}

/// What the name of a column tells of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Named {
    /// The whole date, or a part of it.
    Date,
    Year,
    Month,
    Day,
    /// The station's number.
    Station,
    /// The station's name.
    StationName,
    /// A value of an element.
    Value(Element),
    /// `Q_TX` and the like of ECA&D: 0 is sound, 9 is missing.
    Quality(Element),
    /// `TMAX_ATTRIBUTES` and the like of GHCN-Daily: the second of its parts marks a doubtful value.
    Attributes(Element),
    /// Of a table with a line for each value: which element it is,
    ElementName,
    /// its value,
    ElementValue,
    /// and what marks a doubtful one.
    QualityFlag,
}

/// Words that tell nothing more of a value.
const IDLE: [&str; 31] = [
    "temp",
    "temperature",
    "temps",
    "t",
    "air",
    "daily",
    "of",
    "the",
    "deg",
    "degree",
    "degrees",
    "c",
    "f",
    "degc",
    "degf",
    "celsius",
    "fahrenheit",
    "mm",
    "millimetre",
    "millimetres",
    "millimeters",
    "in",
    "inch",
    "inches",
    "total",
    "amount",
    "sum",
    "24h",
    "0",
    "1",
    "2m",
];

/// Words for each element (TN, TX, RR: ECA&D; TMIN, TMAX, PRCP: GHCN-Daily; TNK, TXK, RSK and others:
/// weather services; from memory).
const LOW: [&str; 8] = [
    "tmin", "tn", "tnk", "min", "minimum", "lowest", "low", "mintemp",
];
const HIGH: [&str; 8] = [
    "tmax", "tx", "txk", "max", "maximum", "highest", "high", "maxtemp",
];
const RAIN: [&str; 8] = [
    "prcp",
    "rr",
    "rsk",
    "rain",
    "rainfall",
    "precip",
    "precipitation",
    "pcp",
];

/// Names of other columns.
const OTHERS: [(&str, Named); 25] = [
    ("date", Named::Date),
    ("datum", Named::Date),
    ("fecha", Named::Date),
    ("day date", Named::Date),
    ("date time", Named::Date),
    ("datetime", Named::Date),
    ("mess datum", Named::Date),
    ("yyyymmdd", Named::Date),
    ("aaaammjj", Named::Date),
    ("yyyy mm dd", Named::Date),
    ("year", Named::Year),
    ("yyyy", Named::Year),
    ("month", Named::Month),
    ("day", Named::Day),
    ("station", Named::Station),
    ("station id", Named::Station),
    ("id", Named::Station),
    ("staid", Named::Station),
    ("stations id", Named::Station),
    ("stn", Named::Station),
    ("num poste", Named::Station),
    ("name", Named::StationName),
    ("station name", Named::StationName),
    ("element", Named::ElementName),
    ("q flag", Named::QualityFlag),
];

/// Names of the column of values, in a table with a line for each value.
const VALUES: [&str; 3] = ["value", "data value", "datavalue"];

/// What a name tells; `None` if it is of no use here.
pub fn named(name: &str) -> Option<Named> {
    let words = words(name);
    let joined = words.join(" ");
    if let Some((_, named)) = OTHERS.iter().find(|(other, _)| *other == joined) {
        return Some(*named);
    }
    if joined == "qflag" {
        return Some(Named::QualityFlag);
    }
    if VALUES.contains(&joined.as_str()) {
        return Some(Named::ElementValue);
    }
    match words.as_slice() {
        [q, of] if q == "q" => return element(of).map(Named::Quality),
        [of, attributes] if attributes == "attributes" => {
            return element(of).map(Named::Attributes);
        }
        _ => {}
    }
    let telling = |word: &&String| !IDLE.contains(&word.as_str());
    let mut telling = words.iter().filter(telling);
    let word = telling.next()?;
    let alone = telling.next().is_none();
    alone.then(|| element(word).map(Named::Value))?
}

/// The element that a word stands for.
pub fn element(word: &str) -> Option<Element> {
    let lists = [
        (Element::Low, LOW),
        (Element::High, HIGH),
        (Element::Rain, RAIN),
    ];
    let word = word.to_lowercase();
    let found = lists
        .iter()
        .find(|(_, words)| words.contains(&word.as_str()));
    found.map(|(element, _)| *element)
}

/// The unit that the name of an element's column tells.
pub fn unit(name: &str) -> Units {
    let lower = name.to_lowercase();
    let words = words(name);
    let has = |wanted: &[&str]| words.iter().any(|word| wanted.contains(&word.as_str()));
    let tenths = lower.contains("0.1") || lower.contains("tenth");
    let temperature = match () {
        () if has(&["f", "degf", "fahrenheit"]) => Some(TemperatureUnit::Fahrenheit),
        () if !has(&["c", "degc", "celsius"]) => None,
        () if tenths => Some(TemperatureUnit::TenthsOfCelsius),
        () => Some(TemperatureUnit::Celsius),
    };
    let rain = match () {
        () if has(&["in", "inch", "inches"]) => Some(RainUnit::Inches),
        () if !has(&["mm", "millimetre", "millimetres", "millimeters"]) => None,
        () if tenths => Some(RainUnit::TenthsOfMillimetre),
        () => Some(RainUnit::Millimetres),
    };
    Units { temperature, rain }
}

/// The words of a name, in small letters.
fn words(name: &str) -> Vec<String> {
    name.to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}
