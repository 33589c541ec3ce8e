//! The order of names in lists that people read: numbers in them count as numbers.

use std::cmp::Ordering;

/// `2` before `10`, `Bed 9` before `Bed 10`, `3a` before `3b`. Names that differ only in leading noughts
/// keep the order of their letters.
#[must_use]
pub fn natural(a: &str, b: &str) -> Ordering {
    let (mut left, mut right) = (a, b);
    while !left.is_empty() && !right.is_empty() {
        let (one, rest_of_left) = piece(left);
        let (other, rest_of_right) = piece(right);
        let order = match (number(one), number(other)) {
            // More digits without leading noughts are a greater number, whatever its size.
            (Some(one), Some(other)) => (one.len(), one).cmp(&(other.len(), other)),
            _ => one.cmp(other),
        };
        if order != Ordering::Equal {
            return order;
        }
        (left, right) = (rest_of_left, rest_of_right);
    }
    left.len().cmp(&right.len()).then_with(|| a.cmp(b))
}

/// The first run of digits, or the first letter, and what comes after it.
fn piece(text: &str) -> (&str, &str) {
    let digits = text.bytes().take_while(u8::is_ascii_digit).count();
    let first = text.chars().next().map_or(0, char::len_utf8);
    text.split_at(if digits > 0 { digits } else { first })
}

/// The digits of a number without leading noughts.
fn number(piece: &str) -> Option<&str> {
    let is_number = piece.bytes().next().is_some_and(|b| b.is_ascii_digit());
    is_number.then(|| piece.trim_start_matches('0'))
}
