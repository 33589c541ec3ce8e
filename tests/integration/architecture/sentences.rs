//! Words that people read stand in `report` and `words`, never in `handouts`: a second language has
//! one place. What stands beside its check instead is the message of an error or the remark on a key: `project`
//! and `diagnostic` write no page, `plan` has texts in `error.rs` alone, and `cli` puts no words of its own on a page.

use super::source::{SourceFile, crate_of, rust_files};
use super::uses::{shown, uses};

/// Strings with two words side by side, doc comments and documentation for the schema left out.
fn sentences(file: &SourceFile) -> Vec<String> {
    let after_doc = |at: usize| at >= 2 && file.tokens[at - 2].text == "doc";
    let tokens = file.tokens.iter().enumerate();
    tokens
        .filter(|(at, token)| token.text.contains('"') && !after_doc(*at))
        .filter(|(_, token)| has_two_words(&token.text))
        .map(|(_, token)| format!("{}:{}: {}", file.path, token.line, token.text))
        .collect()
}

/// How words come on a page.
const ON_A_PAGE: [&str; 9] = [
    "title",
    "heading",
    "paragraph",
    "line",
    "item",
    "entry",
    "table",
    "table_in_parts",
    "labelled",
];

/// True for a file of a room.
fn is_of(file: &SourceFile, room: &str) -> bool {
    let path = file.path.strip_prefix("src/").unwrap_or(&file.path);
    let rest = path.strip_prefix(room);
    rest.is_some_and(|rest| rest == ".rs" || rest.starts_with('/'))
}

/// Strings that a file itself puts on a page: of one word too, such as a heading.
fn put_on_a_page(file: &SourceFile) -> Vec<String> {
    let mut found = Vec::new();
    // For every open bracket: true if it, or one around it, holds what goes on a page.
    let mut open = Vec::new();
    for (at, token) in file.tokens.iter().enumerate() {
        let before = |back: usize| at.checked_sub(back).map(|at| file.tokens[at].text.as_str());
        let inside = open.last().copied().unwrap_or(false);
        match token.text.as_str() {
            "(" => {
                let called = before(1).is_some_and(|name| ON_A_PAGE.contains(&name));
                open.push(inside || called && before(2) == Some("."));
            }
            "[" | "{" => open.push(inside),
            ")" | "]" | "}" => {
                open.pop();
            }
            text if inside && text.contains('"') => {
                found.push(format!("{}:{}: {text}", file.path, token.line));
            }
            _ => {}
        }
    }
    found
}

/// Texts that are neither the message of an error nor in a room of words.
fn misplaced(files: &[SourceFile]) -> Vec<String> {
    let of = |room: &'static str| files.iter().filter(move |file| is_of(file, room));
    let of_plan = of("plan").filter(|file| !file.path.ends_with("/error.rs"));
    let on_pages = uses(files).inside.into_iter().filter(|u| {
        let messages = ["project", "diagnostic", "plan"].contains(&u.from[0].as_str());
        messages && ["page", "words", "report"].contains(&u.to[0].as_str())
    });
    let on_pages =
        on_pages.map(|u| format!("{} uses {}, line {}", shown(&u.from), shown(&u.to), u.line));
    of_plan
        .flat_map(sentences)
        .chain(of("cli").flat_map(put_on_a_page))
        .chain(on_pages)
        .collect()
}

/// True where two runs of at least two letters have one blank between them.
fn has_two_words(text: &str) -> bool {
    let ends = |word: &str| word.chars().rev().take_while(|c| c.is_alphabetic()).count();
    let begins = |word: &str| word.chars().take_while(|c| c.is_alphabetic()).count();
    let words: Vec<&str> = text.split(' ').collect();
    words
        .windows(2)
        .any(|pair| ends(pair[0]) >= 2 && begins(pair[1]) >= 2)
}

/// True where blanks stand within a sentence that are no more than the indent of a line of the source, which its
/// author did not end with a backslash, or ended with a blank besides.
fn has_a_gap(text: &str) -> bool {
    let mut lines = text.split("\\\n");
    let first = lines.next().unwrap_or_default().to_owned();
    let joined = lines.fold(first, |text, line| text + line.trim_start());
    let words = joined.split("  ");
    let words: Vec<&str> = words.filter(|words| !words.trim().is_empty()).collect();
    words.windows(2).any(|pair| {
        let after = pair[1].trim_start();
        pair[0].ends_with(|c: char| c.is_alphanumeric() || ".,;:".contains(c))
            && after.starts_with(char::is_alphanumeric)
    })
}

#[test]
fn no_sentence_holds_the_indent_of_its_source() {
    let rooms = |file: &&SourceFile| is_of(file, "words") || is_of(file, "report");
    let files = rust_files("src").iter().filter(rooms);
    let found: Vec<String> = files
        .flat_map(|file| file.tokens.iter().map(move |token| (file, token)))
        .filter(|(_, token)| token.text.contains('"') && has_a_gap(&token.text))
        .map(|(file, token)| format!("{}:{}: {}", file.path, token.line, token.text))
        .collect();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
    assert!(has_a_gap("\"Give your          town's dates\""));
    assert!(!has_a_gap("\"one \\\n   two\"") && !has_a_gap("\"one two\""));
}

#[test]
fn handouts_hold_no_sentence() {
    let files = rust_files("src").iter();
    let handouts = files.filter(|f| f.path.starts_with("src/handouts"));
    let found: Vec<String> = handouts.flat_map(sentences).collect();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

#[test]
fn other_rooms_hold_messages_of_errors_alone() {
    let found = misplaced(rust_files("src"));
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

#[test]
fn a_text_that_is_no_message_is_seen() {
    let rooms = |room: &str, text: &str| {
        let of = |name: &str| {
            if name == room {
                text.to_owned()
            } else {
                String::new()
            }
        };
        let names = [
            "plan",
            "plan/error",
            "project",
            "cli",
            "page",
            "words",
            "report",
        ];
        let paths = names.map(|name| (format!("src/{name}.rs"), of(name)));
        let files: Vec<(&str, &str)> = paths
            .iter()
            .map(|(p, t)| (p.as_str(), t.as_str()))
            .collect();
        misplaced(&crate_of(&files))
    };
    for (room, bad) in [
        ("plan", "fn f() -> &'static str { \"All in order\" }"),
        ("project", "use crate::page::Page;"),
        ("project", "fn f() { crate::words::list(&[]) }"),
        (
            "cli",
            "fn f(p: P) { p.paragraph(&format!(\"No plan {n}\")) }",
        ),
        ("cli", "fn f(p: P) { p.table(&[\"Day\"], &rows, &[]) }"),
    ] {
        assert_eq!(rooms(room, bad).len(), 1, "{bad}");
    }
    for (room, good) in [
        ("plan/error", "fn f() -> &'static str { \"Plan it anew\" }"),
        ("plan", "fn f() -> &'static str { \"plan-out\" }"),
        (
            "project",
            "fn f() -> Problem { Problem::new(\"no such bed\") }",
        ),
        (
            "cli",
            "fn f(p: P) { p.append(g); Trouble::new(\"No such crop\") }",
        ),
    ] {
        assert_eq!(rooms(room, good), Vec::<String>::new(), "{good}");
    }
}

#[test]
fn a_sentence_is_seen_in_code_and_in_markup_but_not_in_comments() {
    let bad = "fn f() { say(\"All handouts\"); html! { p { \"Look {x} every day\" } } }";
    let good = "//! Some words.\n/// More words.\nfn f() { html! { p.a class=\"weeks\" \
                style=\"width: 3px\" { (\"0 0 10 20\") } } }";
    let found = crate_of(&[("src/handouts/a.rs", bad), ("src/handouts/b.rs", good)]);
    assert_eq!(sentences(&found[0]).len(), 2);
    assert_eq!(sentences(&found[1]), Vec::<String>::new());
}
