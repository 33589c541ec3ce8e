//! What the next days ask for, in sentences that can be followed the same evening.

use crate::facts::forecast::{Ahead, Cold, InDanger};

use super::{Words, list};

/// Rain that is hardly any, in mm, and rain that waters for most of a week (common practice: 25 mm a week).
const HARDLY: f64 = 5.0;
const PLENTY: f64 = 15.0;

/// The sentences, none where nothing is asked for.
#[must_use]
pub fn ahead(ahead: &Ahead<'_>, words: Words) -> Vec<String> {
    let mut told = Vec::new();
    for night in &ahead.cold {
        told.extend(cold(night, words));
    }
    if let Some((day, high)) = ahead.hot.first() {
        let more = match ahead.hot.len() - 1 {
            0 => String::new(),
            more => format!(" and {} more", super::count(more, "day")),
        };
        let young: Vec<String> = ahead
            .young
            .iter()
            .map(|(name, beds)| at(name, beds))
            .collect();
        let shade = match young.is_empty() {
            true => String::new(),
            false => format!(" Shade what was set out lately: {}.", list(&young)),
        };
        told.push(format!(
            "Heat: {} on {}{more}. Water early in the morning.{shade} Work early, with hats, water and shade, and \
             not at all when the school's rule for heat says so.",
            words.temperatures(*high, *high),
            words.day(*day)
        ));
    }
    if let Some((rain, until)) = ahead.rain {
        let until = words.day(until);
        let told_rain = words.rain(rain);
        told.push(match rain.0 {
            mm if mm < HARDLY => format!("Dry until {until}: water as in a dry week."),
            mm if mm < PLENTY => format!(
                "{told_rain} of rain until {until}: take that off the water once it has fallen."
            ),
            _ => format!(
                "{told_rain} of rain until {until}: wait with watering, and look at the gauge."
            ),
        });
    }
    told
}

/// `tomato (beds 3 and 4)`
fn at(name: &str, beds: &[&str]) -> String {
    let bed = if beds.len() == 1 { "bed" } else { "beds" };
    format!("{name} ({bed} {})", list(beds))
}

fn cold(night: &Cold<'_>, words: Words) -> Vec<String> {
    let (first, last) = night.days;
    let when = match first == last {
        true => format!("night to {}", words.day(first)),
        false => format!(
            "nights to {} until that to {}",
            words.day(first),
            words.day(last)
        ),
    };
    let frost = if night.low.0 > 0.0 { "Cold" } else { "Frost" };
    let mut told = vec![format!(
        "{frost}: {} in the {when}. At the ground and in a hollow it is colder.",
        words.temperatures(night.low, night.low)
    )];
    let ripe = night.in_danger.iter().filter(|one| one.ripe);
    let ripe: Vec<&str> = ripe.map(|one| one.ingredient).collect();
    if !ripe.is_empty() {
        told.push(format!(
            "Pick before it all that can be used: {}.",
            list(&ripe)
        ));
    }
    let open = in_beds(night, |one| &one.open);
    if !open.is_empty() {
        told.push(format!(
            "Before dusk cover {} with fleece or old sheets down to the ground; take them off when it has thawed.",
            list(&open)
        ));
    }
    let covered = in_beds(night, |one| &one.covered);
    if !covered.is_empty() {
        told.push(format!("Close the covers over {}.", list(&covered)));
    }
    let lost = in_beds(night, |one| &one.lost);
    if !lost.is_empty() {
        told.push(format!(
            "It is colder than a cloth or a cover keeps off: count {} as lost.",
            list(&lost)
        ));
    }
    if !night.outdoors.is_empty() {
        told.push(format!(
            "Bring in what hardens off: {}.",
            list(&night.outdoors)
        ));
    }
    if night.in_danger.is_empty() && night.outdoors.is_empty() {
        told.push("Nothing that stands in the beds then is killed by that.".to_owned());
    }
    told
}

/// The crops in danger with some of their beds: `tomato (beds 3 and 4)`.
fn in_beds<'a>(night: &'a Cold<'_>, beds: fn(&'a InDanger<'_>) -> &'a Vec<&'a str>) -> Vec<String> {
    let crops = night.in_danger.iter().filter(|one| !beds(one).is_empty());
    crops.map(|one| at(one.ingredient, beds(one))).collect()
}
