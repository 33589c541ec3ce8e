//! What a repair of a project without a plan changes, in words.

use crate::explain::Kind;
use crate::garden::{Care, Garden, Kept};
use crate::units::Kilograms;

use super::{Words, count, places, sentence};

/// A change in words, with its price.
pub(crate) fn what_changes(garden: &Garden, kind: &Kind) -> String {
    let words = Words::of(garden);
    match kind {
        Kind::FewerGrams {
            ingredient,
            from,
            to,
        } => fewer_grams(garden, ingredient, *from, *to),
        Kind::SomeoneThere { pause, who } => match who {
            Care::Families => format!("Families there in {pause}, who water and pick."),
            Care::Staff | Care::Nobody => {
                format!("Staff there in {pause}, who water and keep picking what bears.")
            }
        },
        Kind::PutBy { ingredient, kept } => put_by(ingredient, *kept),
        Kind::LaterDelivery { from, to } => format!(
            "The kitchen takes the harvest by {} instead of {}, so it can be picked until then.",
            words.day(*to),
            words.day(*from)
        ),
        Kind::HarvestDay { day, minutes } => format!(
            "A day of the harvest on {} on which every class comes for {minutes} minutes.",
            words.day(*day)
        ),
        Kind::EveryWeek { grade, term, more } => {
            let when = term
                .as_ref()
                .map_or_else(String::new, |term| format!(" in the term {term}"));
            format!(
                "Classes of grade {grade} that meet every week{when}: {} more until the feast.",
                count(*more, "session")
            )
        }
        Kind::LongerSessions { grade, minutes } => format!(
            "Sessions of grade {grade} that are {} longer.",
            count(*minutes, "minute")
        ),
        Kind::BedForAll { bed } => format!("Bed {bed} for all grades."),
        Kind::MoreFlats { more } => format!("{} more on the shelf.", count(*more, "flat")),
        Kind::Cover { beds } => format!("Fleece over {}.", places::beds(beds)),
        Kind::Trellis { beds } => {
            format!("A trellis, stakes or a net along {}.", places::beds(beds))
        }
        Kind::MoreBeds { like, more } => {
            format!("{} more like bed {like}.", count(*more, "bed"))
        }
        Kind::AnotherGrade { ingredient, grade } => {
            format!("{grade} grows {ingredient} instead.")
        }
        Kind::AnotherCrop { ingredient, crop } => format!("{crop} in place of {ingredient}."),
        Kind::AnotherDay { later } => another_day(*later),
        Kind::Bought { ingredient } => format!("All {ingredient} bought, none grown."),
    }
}

/// Less of an ingredient in a portion, and what the kitchen buys then.
fn fewer_grams(garden: &Garden, ingredient: &str, from: f64, to: f64) -> String {
    let words = Words::of(garden);
    let bought = (from - to) * f64::from(garden.feast.portions) / 1000.0;
    format!(
        "{} of {ingredient} in a portion instead of {}: the kitchen buys {} more.",
        words.portion(to),
        words.portion_figure(from),
        words.mass(Kilograms(bought))
    )
}

/// A feast so many days later, or earlier.
fn another_day(later: i64) -> String {
    let side = if later > 0 { "later" } else { "earlier" };
    format!(
        "The feast {} {side}.",
        count(later.unsigned_abs() / 7, "week")
    )
}

fn put_by(ingredient: &str, kept: Kept) -> String {
    let how = match kept {
        Kept::Frozen => "frozen",
        Kept::Dried => "dried",
    };
    format!(
        "{} {how} when it is picked, and kept until the day.",
        sentence(ingredient)
    )
}
