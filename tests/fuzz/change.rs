//! One random change of an input: of a file's tokens, values, lines, bytes or tree, of a whole
//! file, or of the arguments.

mod bytes;
mod text;
mod tree;
mod whole;

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::os::unix::ffi::OsStringExt;

use crate::case::{Case, Content};
use crate::dice::Dice;
use crate::start::{GARDEN, PLAN, Start};
use crate::values::{NUMBERS, TEXTS};

/// Changes a case in one way.
pub fn change(case: &mut Case, starts: &[Start], dice: &mut Dice) {
    if dice.chance(0.1) {
        return change_arguments(&mut case.arguments, dice);
    }
    let Some(name) = file(&case.files, dice) else {
        return;
    };
    let is_json = name == PLAN;
    let text_of = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let Some(Content::Bytes(old)) = case.files.get(&name) else {
        return;
    };
    let new = match dice.below(20) {
        0..5 => text::value(&text_of(old), dice).into_bytes(),
        5..9 if is_json => tree::change(old, dice),
        5..9 => text::token(&text_of(old), dice).into_bytes(),
        9..13 => text::line(&text_of(old), dice).into_bytes(),
        13..16 => bytes::change(old.clone(), dice),
        16 => text::nest(&text_of(old), dice).into_bytes(),
        _ => return whole::change(&mut case.files, &name, starts, dice),
    };
    case.files.insert(name, Content::Bytes(new));
}

/// A file to change: the plan and the project more often than the weather.
fn file(files: &BTreeMap<String, Content>, dice: &mut Dice) -> Option<String> {
    let weight = |name: &str| match name {
        GARDEN => 6,
        PLAN => 4,
        _ => 1,
    };
    let often = files
        .keys()
        .flat_map(|name| std::iter::repeat_n(name, weight(name)));
    let often: Vec<&String> = often.collect();
    (!often.is_empty()).then(|| dice.one(&often).clone())
}

fn change_arguments(arguments: &mut Vec<OsString>, dice: &mut Dice) {
    if arguments.is_empty() {
        return;
    }
    let (at, other) = (dice.below(arguments.len()), dice.below(arguments.len()));
    match dice.below(6) {
        0 => {
            arguments.remove(at);
        }
        1 => arguments.insert(at, arguments[other].clone()),
        2 => arguments.swap(at, other),
        3 => arguments[at] = dice.one(TEXTS).replace('\0', "").into(),
        4 => arguments[at] = dice.one(NUMBERS).into(),
        _ => arguments[at].push(OsString::from_vec(vec![0xff, 0xfe])),
    }
}
