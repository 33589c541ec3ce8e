//! Changes of a whole file: gone, empty, cut, another's, written otherwise, or no file at all.

use std::collections::BTreeMap;

use crate::case::Content;
use crate::dice::Dice;
use crate::start::Start;

/// Puts something else in the place of a file.
pub fn change(
    files: &mut BTreeMap<String, Content>,
    name: &str,
    starts: &[Start],
    dice: &mut Dice,
) {
    let Some(Content::Bytes(old)) = files.remove(name) else {
        return;
    };
    let text = String::from_utf8_lossy(&old).into_owned();
    let new = match dice.below(100) {
        0..10 => return,
        10..18 => Content::Bytes(Vec::new()),
        18..35 => Content::Bytes(old[..dice.below(old.len() + 1)].to_vec()),
        35..43 => Content::Folder,
        // Each waits until the longest time is over.
        43 if dice.chance(0.2) => Content::Pipe,
        43..63 => another(starts, dice).map_or(Content::Folder, Content::Bytes),
        63 if !old.is_empty() => Content::Large(old),
        _ => Content::Bytes(encoded(&text, dice)),
    };
    files.insert(name.to_owned(), new);
}

/// Any file of any start.
fn another(starts: &[Start], dice: &mut Dice) -> Option<Vec<u8>> {
    let files = &starts[dice.below(starts.len())].files;
    files.values().nth(dice.below(files.len())).cloned()
}

/// A text as other editors would save it.
fn encoded(text: &str, dice: &mut Dice) -> Vec<u8> {
    let wide = |to: fn(u16) -> [u8; 2]| text.encode_utf16().flat_map(to).collect::<Vec<u8>>();
    match dice.below(9) {
        0 => [b"\xff\xfe".to_vec(), wide(u16::to_le_bytes)].concat(),
        1 => [b"\xfe\xff".to_vec(), wide(u16::to_be_bytes)].concat(),
        2 => wide(u16::to_le_bytes),
        3 => [b"\xef\xbb\xbf", text.as_bytes()].concat(),
        4 => text.replace('\n', "\r\n").into_bytes(),
        5 => text.replace('\n', "\r").into_bytes(),
        6 => text.replace('\n', "\u{2028}").into_bytes(),
        // Latin letters in one byte, as old systems wrote them.
        7 => text
            .replace('e', "\u{e9}")
            .chars()
            .map(|c| c as u8)
            .collect(),
        _ => text.replace(' ', "\u{a0}").into_bytes(),
    }
}
