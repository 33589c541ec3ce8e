//! The checksum that closes a saved plan, over all that stands before it but white space. It tells a
//! plan as the program wrote it from one that was edited; it is no protection against forgers.

use serde::de::IgnoredAny;

use crate::checksum::digits;

/// How every saved plan begins, and what stands before and after its checksum, without white space.
const OPENING: &str = "{\"tureen_plan\":";
const BEFORE: &str = ",\"checksum\":\"";
const AFTER: &str = "\"}";

/// The checksum of a document in JSON that is an object without one.
pub fn seal(text: &str) -> String {
    digits(compact(text).as_bytes())
}

/// True if a text is a saved plan that ends with the checksum of what stands before.
pub fn is_sealed(text: &str) -> bool {
    // White space within a number would go unseen below.
    let is_json = serde_json::from_str::<IgnoredAny>(text).is_ok();
    let compact = compact(text);
    let body = compact.strip_suffix(AFTER);
    let parts = body.and_then(|body| body.rsplit_once(BEFORE));
    let right =
        |(content, written): (&str, &str)| digits(format!("{content}}}").as_bytes()) == written;
    is_json && compact.starts_with(OPENING) && parts.is_some_and(right)
}

/// A document in JSON without the white space between its parts.
fn compact(text: &str) -> String {
    let (mut in_string, mut escaped) = (false, false);
    let keep = |letter: &char| {
        let space = !in_string && matches!(letter, ' ' | '\t' | '\n' | '\r');
        match letter {
            '"' if !escaped => in_string = !in_string,
            _ => {}
        }
        escaped = in_string && !escaped && *letter == '\\';
        !space
    };
    text.chars().filter(keep).collect()
}
