//! Words that people read stand in `report` and below, never in `handouts`: a second language has
//! one place.

use super::source::{SourceFile, crate_of, rust_files};

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

/// True where two runs of at least two letters have one blank between them.
fn has_two_words(text: &str) -> bool {
    let ends = |word: &str| word.chars().rev().take_while(|c| c.is_alphabetic()).count();
    let begins = |word: &str| word.chars().take_while(|c| c.is_alphabetic()).count();
    let words: Vec<&str> = text.split(' ').collect();
    words
        .windows(2)
        .any(|pair| ends(pair[0]) >= 2 && begins(pair[1]) >= 2)
}

#[test]
fn handouts_hold_no_sentence() {
    let files = rust_files("src").iter();
    let handouts = files.filter(|f| f.path.starts_with("src/handouts"));
    let found: Vec<String> = handouts.flat_map(sentences).collect();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
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
