//! Lists, counts and sentences in words.

use tureen::units::Minutes;
use tureen::words::{choice, count, list, minutes, sentence};

#[test]
fn lists_end_in_and_choices_in_or() {
    assert_eq!(list(&["a"]), "a");
    assert_eq!(list(&["a", "b", "c"]), "a, b and c");
    assert_eq!(list::<&str>(&[]), "");
    let items = ["a", "b", "c"].map(String::from);
    assert_eq!(choice(&items[..1]), "a");
    assert_eq!(choice(&items[..2]), "a or b");
    assert_eq!(choice(&items), "a, b or c");
}

#[test]
fn things_are_counted_in_english() {
    assert_eq!(count(1, "flat"), "1 flat");
    assert_eq!(count(2, "flat"), "2 flats");
    assert_eq!(count(0, "day"), "0 days");
    assert_eq!(count(2, "class"), "2 classes");
    assert_eq!(count(2, "try"), "2 tries");
}

#[test]
fn a_begun_minute_counts() {
    assert_eq!(minutes(Minutes(24.1)).replace('\u{a0}', " "), "25 min");
    assert_eq!(minutes(Minutes(25.0)).replace('\u{a0}', " "), "25 min");
}

#[test]
fn a_sentence_begins_with_a_capital() {
    assert_eq!(sentence("from May on"), "From May on");
    assert_eq!(sentence(""), "");
}
