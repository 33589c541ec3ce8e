//! What stands in the file of an aim's program for people: what the aim is, what was found, what names and
//! rows mean. The file itself is written by `handouts::mps`.

use std::path::Path;

use crate::facts::program::{For, MayBeMade, Program};
use crate::facts::record::grown_through;
use crate::garden::Garden;
use crate::harmless::{self, plain};

use crate::words::aims::name;
use crate::words::rule_words::rule_sentence;
use crate::words::{count, list, step_words};

/// How every file opens.
pub(crate) const OPENING: &str = "* Written by `tureen plan`";
/// Comments are cut off after this many letters.
const LONGEST_COMMENT: usize = 200;

/// What the file is about, what was found, and what the names mean, line by line.
pub(crate) fn head(garden: &Garden, solved: &Program<'_>) -> Vec<String> {
    let result = &solved.result;
    let years = grown_through(garden).years;
    let (great, bound) = if result.aim.more_is_better() {
        ("great", "at most")
    } else {
        ("small", "at least")
    };
    let project = in_a_comment(&garden.name);
    let proved = if result.proved() { "yes" } else { "no" };
    let about = [
        format!("{project}: the arithmetic behind one aim of the plan."),
        format!("Aim: {}.", name(garden, years, result.aim)),
        format!("It is made as {great} as can be; the aims before it are held."),
        format!("Value found: {}", result.value + 0.0),
        format!("Possible, {bound}: {}", result.bound + 0.0),
        format!("Proved best: {proved}"),
        String::new(),
        "Names: made.carrot.3 is 1 if the third planting of carrots is made, and".to_owned(),
        "blocks.carrot.3 is how large it is. Rows begin with the rule that they keep.".to_owned(),
        "The plantings, with the first day of each step:".to_owned(),
    ];
    let meanings = solved.plantings.iter();
    let meanings = meanings.map(|planting| in_a_comment(&what_it_is(garden, planting)));
    about.into_iter().chain(meanings).collect()
}

/// What a section of rows is there for.
pub(crate) fn meaning(what_for: For) -> String {
    match what_for {
        For::Rule(rule) => rule_sentence(rule).to_owned(),
        For::Held(aim) => format!("An earlier aim is held: {}.", aim.name()),
        For::Forbidden => "Plantings that cannot be laid out together.".to_owned(),
    }
}

/// Words for a comment: a line break would end it, and some readers take long lines for two.
fn in_a_comment(words: &str) -> String {
    plain(words).chars().take(LONGEST_COMMENT).collect()
}

/// `carrot.3: Sow in bed 2027-05-19, Thin 2027-06-09, Pick 2027-08-30; bed 2`.
fn what_it_is(garden: &Garden, planting: &MayBeMade<'_>) -> String {
    let days = planting.first_days.iter();
    let days: Vec<String> = days
        .map(|(kind, day)| format!("{} {day}", step_words::name(planting.method, *kind)))
        .collect();
    let beds = planting.beds.iter();
    let ids: Vec<&str> = beds.map(|bed| garden[*bed].id.as_str()).collect();
    let name = planting.name;
    match ids[..] {
        [] => format!("{name}: {}", days.join(", ")),
        _ => format!("{name}: {}; bed {}", days.join(", "), list(&ids)),
    }
}

/// What `tureen plan --write-program` adds.
#[must_use]
pub fn programs_written(folder: &Path, files: usize) -> String {
    format!(
        "\nThe arithmetic behind the plan: {} in {}, one for each aim that was followed.\n",
        count(files, "file"),
        harmless::path(folder)
    )
}
