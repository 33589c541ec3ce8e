//! Raw manure and compost, as the cautions state them.

use tureen::facts::manure::last_raw_manure;

use super::check::Check;
use super::ours::day;
use crate::report::{plain, tiny};

pub fn checks() -> Vec<Check> {
    let (touching, above) = last_raw_manure(day(10, 15));
    let (garden, checked) = tiny();
    let text = tureen::report::plan(&garden, &checked).text(plain(1000));
    let source = "7CFR205.203";
    let mut checks = vec![
        Check::day(
            "120 days before 15 October",
            Some(touching),
            day(6, 17),
            source,
        ),
        Check::day("90 days before 15 October", Some(above), day(7, 17), source),
    ];
    let stated = [
        ("manure under what touches the soil", "120 days"),
        ("manure under other crops", "90 days"),
        ("heat of compost", "55 to 77 C"),
        ("days of heat, turned", "15 days with five turnings"),
        (
            "days of heat in a vessel",
            "three days in a closed or aired vessel",
        ),
    ];
    checks.extend(stated.map(|(what, words)| Check::words(what, &text, words, source)));
    checks
}
