//! The checksum of a saved plan: any edit breaks it, white space does not.

use tureen::checksum::digits;
use tureen::plan::saved::{self, SavedError, Since};

use crate::support::gardens::tiny_garden;
use crate::support::plans::tiny_plan;

fn saved_text() -> String {
    let garden = tiny_garden();
    saved::write(&garden, &tiny_plan(&garden))
}

#[test]
fn the_checksum_is_fnv_1a_of_128_bits() {
    // Test vectors of IETF draft-eastlake-fnv, appendix C (the empty text, "a", "foobar").
    for (text, expected) in [
        ("", "6c62272e07bb014262b821756295c58d"),
        ("a", "d228cb696f1a8caf78912b704e4a8964"),
        ("foobar", "343e1662793c64bf6f0d3597ba446f18"),
    ] {
        assert_eq!(digits(text.as_bytes()), expected, "{text}");
    }
}

#[test]
fn white_space_does_not_count_but_in_texts() {
    let text = saved_text();
    let value: serde_json::Value = serde_json::from_str(&text).unwrap();
    assert!(saved::is_as_written(&text));
    for same in [
        text.replace('\n', "\r\n\t "),
        format!("\n{} ", text.trim()),
        text.lines().map(str::trim).collect(),
    ] {
        assert!(saved::is_as_written(&same), "{same}");
        assert_eq!(saved::read(&same), saved::read(&text));
    }
    // Within a text, within a number, and in another order.
    for other in [
        text.replacen("Tiny garden", "Tiny  garden", 1),
        text.replacen("\"plants\": 48", "\"plants\": 4 8", 1),
        serde_json::to_string_pretty(&value).unwrap(),
    ] {
        assert!(!saved::is_as_written(&other), "{other}");
    }
}

#[test]
fn no_letter_can_be_changed_left_out_or_doubled_unseen() {
    let text = saved_text();
    let letters: Vec<char> = text.chars().collect();
    for at in 0..letters.len() {
        if letters[at].is_ascii_whitespace() {
            continue;
        }
        let changed = |with: &[char]| -> String {
            let rest = letters.iter().skip(at + 1);
            letters[..at].iter().chain(with).chain(rest).collect()
        };
        let other = if letters[at] == '1' { '2' } else { '1' };
        let damaged = match at % 3 {
            0 => changed(&[]),
            1 => changed(&[other]),
            _ => changed(&[letters[at], letters[at]]),
        };
        assert!(!saved::is_as_written(&damaged), "{damaged}");
    }
}

/// How far apart exchanged lines are: what comes between them changes the checksum so far, near and far
/// alike, so that not every distance need be tried with every line.
const APART: [usize; 10] = [1, 2, 3, 5, 8, 13, 21, 34, 55, 89];

#[test]
fn lines_left_out_or_exchanged_are_seen() {
    let text = saved_text();
    let lines: Vec<&str> = text.lines().collect();
    for at in 0..lines.len() {
        let mut fewer = lines.clone();
        fewer.remove(at);
        assert!(!saved::is_as_written(&fewer.join("\n")), "without {at}");
        let others = APART.into_iter().map(|apart| at + apart);
        for other in others.filter(|other| *other < lines.len()) {
            if lines[at].trim() != lines[other].trim() {
                let mut exchanged = lines.clone();
                exchanged.swap(at, other);
                assert!(!saved::is_as_written(&exchanged.join("\n")), "{at} {other}");
            }
        }
    }
}

#[test]
fn other_files_are_not_taken_for_saved_plans() {
    let own = |text: &str| {
        let open = text.trim_end().strip_suffix('}').unwrap();
        format!("{open},\"checksum\":\"{}\"}}", digits(text.as_bytes()))
    };
    assert!(saved::is_as_written(&own("{\"tureen_plan\":9}")));
    for text in ["", "{}", "[]", "\"}", "{\"checksum\":\"\"}"] {
        assert!(!saved::is_as_written(text), "{text}");
    }
    assert!(!saved::is_as_written(&own("{\"tureen_plan_data\":1}")));
}

#[test]
fn what_happened_since_a_plan_was_saved_is_told() {
    let garden = tiny_garden();
    let text = saved_text();
    let since = |garden, text: &str| saved::read(text).unwrap().for_garden(garden).unwrap().1;
    assert_eq!(since(&garden, &text), Since::Nothing);
    let mut other = garden.clone();
    other.grades[0].classes[0].children += 1;
    assert_eq!(since(&other, &text), Since::ProjectChanged);
    let edited = text.replacen("\"plants\": 48", "\"plants\": 47", 1);
    assert_eq!(since(&garden, &edited), Since::Edited);
    assert_eq!(since(&other, &edited), Since::Edited);
    // A plan of another version of the program, which seals its files in the same way.
    let foreign = text.replacen(env!("CARGO_PKG_VERSION"), "0.0.1", 1);
    let (content, _) = foreign.rsplit_once(",\n  \"checksum\"").unwrap();
    let content: String = content.lines().map(str::trim).collect();
    let content = content.replace("\": ", "\":");
    let foreign = format!(
        "{content},\"checksum\":\"{}\"}}",
        digits(format!("{content}}}").as_bytes())
    );
    assert_eq!(since(&garden, &foreign), Since::Nothing);
    assert_eq!(since(&other, &foreign), Since::ProgramChanged);
}

#[test]
fn a_plan_of_the_version_before_checksums_is_refused_with_a_way_on() {
    let text = saved_text();
    let lines = text.lines().filter(|line| {
        let field = |name: &str| line.trim().starts_with(&format!("\"{name}\""));
        !["program", "garden", "checksum"].into_iter().any(field)
    });
    let before: Vec<&str> = lines.collect();
    let before = before.join("\n").replace("  },\n}", "  }\n}");
    let before = before.replace("\"tureen_plan\": 3", "\"tureen_plan\": 2");
    let refused = saved::read(&before).unwrap_err();
    assert!(matches!(refused, SavedError::OtherVersion { .. }));
    assert!(refused.remedy().contains("set its `tureen_plan` to 3"));
    // The remedy works.
    let read = saved::read(&before.replace("\"tureen_plan\": 2", "\"tureen_plan\": 3")).unwrap();
    let (plan, since) = read.for_garden(&tiny_garden()).unwrap();
    assert_eq!((plan, since), (tiny_plan(&tiny_garden()), Since::Edited));
}
