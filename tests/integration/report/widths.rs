//! Pages keep to their width, and carry no escape codes without colour.

use tureen::catalogue::Catalogue;
use tureen::explain::least_space;
use tureen::garden::GradeAt;
use tureen::model::Options;
use tureen::page::Look;
use tureen::report;

use super::{plain, tiny};
use crate::support::day;
use crate::support::gardens::tiny_garden;

/// All pages of the tiny garden, and those of the catalogue.
fn pages(look: Look) -> Vec<String> {
    let (garden, checked) = tiny();
    let least = least_space(&garden, &checked, &Options::default());
    let catalogue = Catalogue::load().unwrap();
    let entry = catalogue.entry("cucumber").unwrap();
    vec![
        report::crops(&catalogue).text(look),
        report::crop(&catalogue, entry, None).text(look),
        report::crop(&catalogue, entry, Some(&garden)).text(look),
        report::climate(&garden).text(look),
        report::plan(&garden, &checked).text(look),
        report::grade(&garden, &checked, GradeAt(0)).text(look),
        report::grade(&garden, &checked, GradeAt(1)).text(look),
        report::principal(&garden, &checked, &least).text(look),
        report::watering(&garden, &checked).text(look),
        report::understood(&tiny_garden()).text(look),
    ]
}

#[test]
fn no_line_is_longer_than_the_width() {
    for width in [60, 80, 100, 120] {
        for page in pages(plain(width)) {
            let longest = page.lines().max_by_key(|l| l.chars().count()).unwrap();
            assert!(longest.chars().count() <= width, "{width}: {longest}");
        }
    }
}

#[test]
fn no_line_ends_in_a_space_and_every_page_ends_in_one_line_end() {
    for page in pages(plain(80)) {
        assert!(page.ends_with('\n') && !page.ends_with("\n\n"));
        assert!(page.lines().all(|l| l.trim_end() == l));
    }
}

#[test]
fn bold_only_with_colour_and_the_same_words_without() {
    let colored = Look {
        width: 80,
        color: true,
    };
    for (plain, colored) in pages(plain(80)).iter().zip(pages(colored)) {
        assert!(!plain.contains('\u{1b}'));
        assert!(colored.contains('\u{1b}'));
        assert_eq!(*plain, anstream::adapter::strip_str(&colored).to_string());
    }
}

#[test]
fn strips_that_something_else_still_holds_are_not_called_free() {
    let (mut garden, checked) = tiny();
    let least = least_space(&garden, &checked, &Options::default());
    let mut held = garden.beds[1].clone();
    held.id = "C".to_owned();
    held.free_from = Some(day("2027-04-26"));
    garden.beds.push(held);
    // The garden is fullest in the week of 19 April, which ends on the 25th.
    let page = report::principal(&garden, &checked, &least).text(plain(400));
    let line = "week of 19 Apr: 8 of the 12 strips that are free then; 16 in all.";
    assert!(page.contains(line), "{page}");
    garden.beds[2].free_from = Some(day("2027-04-25"));
    let page = report::principal(&garden, &checked, &least).text(plain(400));
    assert!(page.contains("week of 19 Apr: 8 of 16 strips."), "{page}");
}
