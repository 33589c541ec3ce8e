//! Names that could hurt a file come out harmless and readable, in every format and as names of
//! files; with a garden made by hand, that no project file could give.

use tureen::handouts::file_name::FileNames;
use tureen::handouts::safe::cell;
use tureen::harmless::plain;

#[test]
fn what_is_plain_stays_as_it_is() {
    for text in [
        "2a",
        "<b>\"x\"</b> & c, d; e\\n",
        "כיתה ג",
        "صف ٣",
        "🌻 👩\u{200d}🌾",
        "Tue\u{a0}9\u{a0}Feb",
        "=1+1",
    ] {
        assert_eq!(plain(text), text);
    }
}

#[test]
fn what_cannot_be_seen_falls_away_and_lines_become_one() {
    for (text, expected) in [
        ("a\r\nb\tc\u{b}d", "a b c d"),
        ("  a \u{2028} b\u{2029}c\u{85}", "a b c"),
        ("a\0b\u{7}c\u{1b}[31md\u{7f}e\u{9b}", "abc[31mde"),
        ("\u{202e}evil\u{202c}", "evil"),
        (
            "\u{2066}a\u{2069}\u{200e}\u{200f}\u{61c}\u{feff}b\u{200b}",
            "ab",
        ),
        ("\n\t ", ""),
    ] {
        assert_eq!(plain(text), expected, "{text:?}");
    }
}

#[test]
fn a_cell_that_begins_like_a_formula_gets_an_apostrophe() {
    for text in ["=1+1", "+2", "-x", "@SUM(1)", "＝1", "－1", "＋1", "＠a"] {
        assert_eq!(cell(text), format!("'{text}"));
    }
    assert_eq!(cell("\t=1"), "'=1");
    assert_eq!(cell("\u{202e}=1"), "'=1");
    assert_eq!(cell("\r\n@a"), "'@a");
    for text in ["a=b", "2a", "", "'x", "<b>", "3-4"] {
        assert_eq!(cell(text), text);
    }
}

#[test]
fn file_names_are_portable_and_tell_names_apart() {
    let mut names = FileNames::default();
    for (name, expected) in [
        ("2a", "class-2a.ics"),
        ("2A", "class-2a-2.ics"),
        ("2/a", "class-2-a.ics"),
        ("../../etc/passwd", "class-etc-passwd.ics"),
        ("..\\con", "class-con.ics"),
        ("con.", "class-con-2.ics"),
        ("...", "class.ics"),
        ("\u{202e}", "class-2.ics"),
        ("  ", "class-3.ics"),
        ("<b>&\"'`$(x)", "class-b-x.ics"),
        ("Klasse ÄÖ", "class-klasse-äö.ics"),
        ("e\u{301}te\u{301}", "class-ete.ics"),
        ("כיתה ג", "class-כיתה-ג.ics"),
        ("🌻", "class-4.ics"),
        ("a\0b\nc", "class-a-b-c.ics"),
    ] {
        assert_eq!(names.name("class", name, "ics"), expected, "{name:?}");
    }
    for _ in 0..3 {
        let long = names.name("class", &"漢".repeat(300), "ics");
        assert!(long.len() < 200, "{} bytes", long.len());
    }
}
