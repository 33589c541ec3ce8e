//! Text of people made harmless: nothing moves the terminal, turns a line round or hides in it, and
//! what can be seen stays. Held to the Unicode Character Database.

use std::path::Path;

use tureen::harmless::{in_place, lines, path, plain};

/// General category Cf in the Unicode Character Database 14.0, as Python's `unicodedata` tells it.
const FORMAT: [(u32, u32); 21] = [
    (0xad, 0xad),
    (0x600, 0x605),
    (0x61c, 0x61c),
    (0x6dd, 0x6dd),
    (0x70f, 0x70f),
    (0x890, 0x891),
    (0x8e2, 0x8e2),
    (0x180e, 0x180e),
    (0x200b, 0x200f),
    (0x202a, 0x202e),
    (0x2060, 0x2064),
    (0x2066, 0x206f),
    (0xfeff, 0xfeff),
    (0xfff9, 0xfffb),
    (0x110bd, 0x110bd),
    (0x110cd, 0x110cd),
    (0x13430, 0x13438),
    (0x1bca0, 0x1bca3),
    (0x1d173, 0x1d17a),
    (0xe0001, 0xe0001),
    (0xe0020, 0xe007f),
];

/// Of these, the ones that can be seen: signs before Arabic and Kaithi numbers, the end of a verse.
const SEEN: [u32; 12] = [
    0x600, 0x601, 0x602, 0x603, 0x604, 0x605, 0x6dd, 0x890, 0x891, 0x8e2, 0x110bd, 0x110cd,
];

/// All signs that must not be printed as they are.
fn hostile() -> impl Iterator<Item = char> {
    let controls = (0..0x20).chain(0x7f..0xa0);
    let format = FORMAT.iter().flat_map(|(from, to)| *from..=*to);
    let format = format.filter(|c| !SEEN.contains(c));
    controls.chain(format).filter_map(char::from_u32)
}

#[test]
fn no_hostile_sign_is_left_alone_between_letters_or_at_an_end() {
    let mut seen = 0;
    for sign in hostile() {
        for text in [
            format!("{sign}"),
            format!("a{sign}b"),
            format!("{sign}a{sign}{sign}"),
        ] {
            assert!(!plain(&text).contains(sign), "{sign:?}");
            assert!(sign == '\n' || !lines(&text).contains(sign), "{sign:?}");
            let stays = matches!(sign, '\n' | '\t');
            assert!(stays || !in_place(&text).contains(sign), "{sign:?}");
            seen += 1;
        }
    }
    assert!(seen > 600, "{seen}");
}

#[test]
fn every_other_sign_stays() {
    let hostile: std::collections::BTreeSet<char> = hostile().collect();
    let fillers = ['\u{34f}', '\u{2028}', '\u{2029}'];
    let others = (0x20..0x20000).filter_map(char::from_u32);
    let others = others.filter(|c| !hostile.contains(c) && !fillers.contains(c));
    let changed: Vec<char> = others
        .filter(|c| lines(&c.to_string()) != c.to_string())
        .collect();
    // Numbers that are no characters, two in each plane, and those that Unicode keeps back beside
    // the format characters that it has.
    for sign in changed {
        let number = u32::from(sign);
        let none = number & 0xfffe == 0xfffe || matches!(number, 0x2065 | 0x13439..=0x1343f);
        assert!(none, "{sign:?}");
    }
}

#[test]
fn joiners_stay_between_letters_and_emoji_that_they_join() {
    for text in ["👩\u{200d}🌾", "می\u{200c}خواهم", "क\u{94d}\u{200d}ष"] {
        assert_eq!(plain(text), text);
        assert_eq!(lines(text), text);
    }
    for (text, expected) in [
        ("a\u{200d}b", "ab"),
        ("\u{200c}می", "می"),
        ("می\u{200c}", "می"),
        ("می\u{200c}\u{200c}\u{200d}خ", "می\u{200d}خ"),
        ("👩\u{200d} 🌾", "👩 🌾"),
    ] {
        assert_eq!(plain(text), expected, "{text:?}");
        assert_eq!(lines(text), expected, "{text:?}");
    }
}

#[test]
fn an_excerpt_keeps_its_columns_and_lines() {
    let text = "a\u{1b}[31mb\tc\u{9b}\u{202e}\r\nd\u{200b}e\r";
    let shown = in_place(text);
    assert_eq!(
        shown,
        "a\u{fffd}[31mb\tc\u{fffd}\u{fffd}\r\nd\u{fffd}e\u{fffd}"
    );
    assert_eq!(shown.chars().count(), text.chars().count());
}

#[test]
fn laid_out_lines_keep_their_blanks_and_names_of_files_are_one_line() {
    assert_eq!(lines("a  b\n\n  c\u{a0}d\re"), "a  b\n\n  c\u{a0}d e");
    assert_eq!(path(Path::new("a\nb\u{1b}[2J/c d")), "a b[2J/c d");
}
