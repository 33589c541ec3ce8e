//! Strips that are turned over, in words: what leaves, who clears and prepares them, what comes; and whose beds are.

use crate::facts::turned_over::{Leaves, TurnedOver};
use crate::garden::{Former, Garden, Strips};
use crate::plan::Place;

use super::view::View;
use super::{Words, list, places, sentence};

/// All strips that are turned over, a line each, and what to take care of.
pub(crate) fn all(view: &View<'_>) -> Vec<String> {
    let all = view.turned_over();
    let lines = all.iter().map(|turned| turned_over(view, turned));
    let care = (!all.is_empty()).then(|| "Wash hands after compost and soil.".to_owned());
    lines.chain(care).collect()
}

/// Beds to which a family comes back sooner than one would wish, a line each.
pub(crate) fn family_again(view: &View<'_>) -> Vec<String> {
    let missed = view.replay.rotation_wishes_missed.iter();
    let line = missed.map(|miss| {
        format!(
            "Bed {}: {} is of the {} family, which grew there in {}. Watch for disease.",
            miss.bed, miss.ingredient, miss.family, miss.grew_in
        )
    });
    line.collect()
}

/// `Bed 3 (strips 1 to 4): garlic leaves with its last pick, Mon 12 Jul 2027. ...`
fn turned_over(view: &View<'_>, turned: &TurnedOver<'_>) -> String {
    let words = view.words;
    let place = places::in_words(view.garden, std::slice::from_ref(&turned.place));
    let (off, until) = (words.day(turned.off), words.day(turned.until));
    let leaves = match turned.leaves {
        Leaves::Planting(planting) => {
            let who = match turned.lesson {
                Some((class, day)) => format!(
                    "{} has a lesson free for it on {}, else staff do it",
                    view.garden.class(class).name,
                    words.day(day)
                ),
                None => "staff do it".to_owned(),
            };
            format!(
                "{} leaves with its last pick, {off}. Clear the strips, add compost and rake by {until}: {who}.",
                planting.ingredient
            )
        }
        Leaves::Former(former) => format!(
            "staff clear the {} on {off}; the ground rests and is raked by {until}.",
            former.name
        ),
    };
    let (comes, from) = (&turned.comes.ingredient, words.day(turned.from));
    format!("{}: {leaves} Then comes {comes}, {from}.", sentence(&place))
}

/// Which beds belong to which grades, and what stands where for no ingredient, a sentence each.
pub(crate) fn whose_and_until_when(garden: &Garden) -> Vec<String> {
    let owned = garden.beds.iter().filter(|bed| !bed.of.is_empty());
    let whose = owned.map(|bed| {
        let of: Vec<&str> = bed.of.iter().map(|at| garden[*at].name.as_str()).collect();
        let (id, of) = (&bed.id, list(&of));
        format!("Bed {id} belongs to {of}; nobody else sows or plants in it.")
    });
    let former = garden.former.iter().map(|former| stands(garden, former));
    whose.chain(former).collect()
}

/// `Bed 3 (strips 1 to 4) carries rye until it is cleared on Tue 6 Apr 2027, and is free from Tue 27 Apr 2027.`
fn stands(garden: &Garden, former: &Former) -> String {
    let words = Words::of(garden);
    let strips: Strips = former.strips;
    let place = places::in_words(garden, &[Place::of(&garden[former.bed].id, strips)]);
    format!(
        "{} carries {} until it is cleared on {}, and is free from {}.",
        sentence(&place),
        former.name,
        words.day(former.cleared),
        words.day(former.free_from())
    )
}
