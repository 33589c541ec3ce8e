//! Dates, numbers and lists in words.

use tureen::report::words::{
    Dates, choice, count, full_month, list, mass, mass_range, minutes, month_day, sentence,
};
use tureen::units::{Kilograms, Minutes};

use crate::support::day;
use crate::support::gardens::tiny_garden;

/// Text with plain spaces for those that do not break.
fn spaced(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

#[test]
fn dates_carry_their_year_only_outside_the_year_of_the_feast() {
    let dates = Dates::of(&tiny_garden());
    assert_eq!(spaced(&dates.day(day("2027-02-09"))), "Tue 9 Feb");
    assert_eq!(spaced(&dates.day(day("2026-10-13"))), "Tue 13 Oct 2026");
    assert_eq!(spaced(&dates.short(day("2027-02-09"))), "9 Feb");
}

#[test]
fn spans_name_the_month_once_where_they_can() {
    let dates = Dates::of(&tiny_garden());
    let span = |from, to| spaced(&dates.span(day(from), day(to)));
    assert_eq!(span("2027-02-09", "2027-02-18"), "9-18 Feb");
    assert_eq!(span("2027-02-09", "2027-03-04"), "9 Feb - 4 Mar");
    assert_eq!(span("2027-02-09", "2027-02-09"), "9 Feb");
    assert_eq!(span("2026-12-29", "2027-01-04"), "29 Dec 2026 - 4 Jan");
}

#[test]
fn days_of_no_year_carry_none() {
    assert_eq!(spaced(&month_day(day("2001-02-09"))), "9 Feb");
    assert_eq!(spaced(&full_month(day("2001-02-09"))), "9 February");
}

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
fn masses_have_the_digits_of_a_kitchen_scale() {
    let kg = |kg: f64| spaced(&mass(Kilograms(kg)));
    assert_eq!(kg(0.064), "60 g");
    assert_eq!(kg(0.994), "990 g");
    assert_eq!(kg(0.996), "1.0 kg");
    assert_eq!(kg(4.76), "4.8 kg");
    assert_eq!(kg(9.96), "10 kg");
    let range = |low: f64, high: f64| spaced(&mass_range(Kilograms(low), Kilograms(high)));
    assert_eq!(range(4.76, 7.64), "4.8 to 7.6 kg");
    assert_eq!(range(0.91, 1.7), "910 g to 1.7 kg");
    assert_eq!(range(2.0, 2.0), "2.0 kg");
}

#[test]
fn a_begun_minute_counts() {
    assert_eq!(spaced(&minutes(Minutes(24.1))), "25 min");
    assert_eq!(spaced(&minutes(Minutes(25.0))), "25 min");
}

#[test]
fn a_sentence_begins_with_a_capital() {
    assert_eq!(sentence("from May on"), "From May on");
    assert_eq!(sentence(""), "");
}
