//! Changes of bytes, whatever they mean.

use crate::dice::Dice;

/// Turns, puts in or takes out a few bytes.
pub fn change(mut bytes: Vec<u8>, dice: &mut Dice) -> Vec<u8> {
    if bytes.is_empty() {
        return vec![0];
    }
    let at = dice.below(bytes.len());
    let some = at..bytes.len().min(at + 1 + dice.below(40));
    match dice.below(4) {
        0 => bytes[at] ^= 1 << dice.below(8),
        1 => drop(bytes.drain(some)),
        2 => {
            let new = dice.one::<&[u8]>(&[
                b"\0",
                b"\xff\xfe",
                b"\xc2\x9b2J",
                b"\xc3",
                b"\x1b[2J",
                b"\xed\xa0\x80",
                b"\r",
                b"\xe2\x80\xae",
                b"\x1b]0;x\x07",
                b"\xc2\x85",
                b"\xf0\x9f",
            ]);
            bytes.splice(at..at, new.iter().copied());
        }
        _ => bytes[some].fill_with(|| dice.int(0, 255) as u8),
    }
    bytes
}
