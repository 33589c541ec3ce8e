//! Checks on dates that several sections share.

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
