//! Changes of a text by what it is made of: tokens, values and lines.

use std::ops::Range;

use crate::dice::Dice;
use crate::values::{DATES, NUMBERS, TEXTS, WRITTEN};

/// Takes out, doubles, exchanges or replaces one token.
pub fn token(text: &str, dice: &mut Dice) -> String {
    let tokens = tokens(text);
    if tokens.is_empty() {
        return text.to_owned();
    }
    let at = any(&tokens, dice);
    let other = &text[any(&tokens, dice)];
    let own = &text[at.clone()];
    let new = match dice.below(5) {
        0 => String::new(),
        1 => format!("{own}{own}"),
        2 => other.to_owned(),
        3 => dice.one(TEXTS).to_owned(),
        _ => dice.one(WRITTEN).to_owned(),
    };
    replaced(text, at, &new)
}

/// Puts another value in the place of one.
pub fn value(text: &str, dice: &mut Dice) -> String {
    let mut values = tokens(text);
    values.retain(|at| text[at.clone()].starts_with(|c: char| c == '"' || c.is_ascii_digit()));
    if values.is_empty() {
        return text.to_owned();
    }
    let at = any(&values, dice);
    let own = &text[at.clone()];
    let new = match own.parse::<f64>() {
        Ok(number) if dice.chance(0.5) => {
            let times = dice.one(&[-1.0, 0.0, 0.1, 0.9, 1.1, 2.0, 10.0, 1000.0, 1e9]);
            (number * times).to_string()
        }
        Ok(_) => dice.one(NUMBERS).to_owned(),
        Err(_) if !own.starts_with('"') && dice.chance(0.8) => dice.one(DATES).to_owned(),
        Err(_) => match dice.below(4) {
            0 => dice.one(WRITTEN).to_owned(),
            1 => text[any(&values, dice)].to_owned(),
            2 => format!("\"{}\"", dice.one(TEXTS)),
            _ => format!("\"{}\"", dice.one(TEXTS).repeat(300)),
        },
    };
    replaced(text, at, &new)
}

/// Takes out, doubles, moves, or repeats lines.
pub fn line(text: &str, dice: &mut Dice) -> String {
    let mut lines: Vec<&str> = text.split('\n').collect();
    let (at, to) = (dice.below(lines.len()), dice.below(lines.len()));
    let some = at..lines.len().min(at + 1 + dice.below(12));
    match dice.below(5) {
        0 => drop(lines.drain(some)),
        1 => {
            let doubled: Vec<&str> = lines[some].to_vec();
            lines.splice(to..to, doubled);
        }
        2 => lines.swap(at, to),
        3 => {
            let many = vec![lines[at]; dice.one(&[10, 100, 1000])];
            lines.splice(to..to, many);
        }
        _ => lines[at] = dice.one(TEXTS),
    }
    lines.join("\n")
}

/// Opens so many brackets that a reader may lose count.
pub fn nest(text: &str, dice: &mut Dice) -> String {
    let open = dice.one(&["[", "{", "(", "[[", "{a=", "{\"a\":", "a.", "\""]);
    let deep = open.repeat(dice.one(&[1, 40, 200, 5000, 100_000]));
    let mut values = tokens(text);
    values.push(text.len()..text.len());
    let at = any(&values, dice);
    replaced(text, at, &deep)
}

fn replaced(text: &str, at: Range<usize>, new: &str) -> String {
    [&text[..at.start], new, &text[at.end..]].concat()
}

fn any(tokens: &[Range<usize>], dice: &mut Dice) -> Range<usize> {
    tokens[dice.below(tokens.len())].clone()
}

/// Words (with what numbers and days are written with), quoted texts, and single signs.
fn tokens(text: &str) -> Vec<Range<usize>> {
    let mut found = Vec::new();
    let mut from = 0;
    while let Some(first) = text[from..].chars().next() {
        let rest = &text[from..];
        let is_word = |c: char| c.is_alphanumeric() || "_-.+".contains(c);
        let length = match first {
            '"' => rest[1..]
                .find(['"', '\n'])
                .map_or(rest.len(), |end| end + 2),
            c if is_word(c) => rest.find(|c| !is_word(c)).unwrap_or(rest.len()),
            c => c.len_utf8(),
        };
        if !first.is_whitespace() {
            found.push(from..from + length);
        }
        from += length;
    }
    found
}
