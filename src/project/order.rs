//! Pairs of values that must be in order, as several sections hold them: two dates, and the
//! figures of a poor and an ordinary year.

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Given, Problem, Read};

/// Reports it if the second date is before the first.
pub fn in_order(
    first: (&str, Given<Date>),
    second: (&str, Given<Date>),
    findings: &mut Findings,
) -> Read<()> {
    let ((first_key, first), (second_key, second)) = (first, second);
    if first.value <= second.value {
        return Ok(());
    }
    let cause = format!("`{second_key}` is before `{first_key}`");
    Err(findings.report(
        Problem::new(Code::DatesOutOfOrder, cause)
            .at(second.span, "the earlier day")
            .also(first.span, format!("`{first_key}` is here"))
            .remedy("correct one of the two dates"),
    ))
}

/// The problem that a poor year gives more than an ordinary one.
pub fn low_above(low: (&str, Given<f64>), expected: (&str, Given<f64>)) -> Option<Problem> {
    let ((low_key, low), (expected_key, expected)) = (low, expected);
    let cause = format!("`{low_key}` is more than `{expected_key}`");
    (low.value > expected.value).then(|| {
        Problem::new(Code::LowAboveExpected, cause)
            .at(low.span, "in a poor year")
            .also(expected.span, "in an ordinary year")
            .remedy("a poor year cannot give more than an ordinary one")
    })
}
