//! The style of files: short, opened with a few words, no panics and no global state in `src`.

use super::source::{SourceFile, Token, rust_files};

const LONGEST_FILE: usize = 400;
const LONGEST_FUNCTION: usize = 60;
const LONGEST_OPENING: usize = 4;

/// Runs of tokens that `src` does without, beside what clippy is told to refuse.
const REFUSED: [(&[&str], &str); 21] = [
    (&[".", "unwrap", "("], "may panic"),
    (&[".", "expect", "("], "may panic"),
    (&["panic", "!"], "panics"),
    (&["todo", "!"], "is not done"),
    (&["unimplemented", "!"], "is not done"),
    (&["unreachable", "!"], "panics"),
    (&["static", "mut"], "is global state"),
    (&["thread_local", "!"], "is global state"),
    (&["lazy_static", "!"], "is global state"),
    (&["LazyLock"], "is global state"),
    (&["LazyCell"], "is global state"),
    (&["OnceLock"], "is global state"),
    (&["OnceCell"], "is global state"),
    (&["RefCell"], "is a hidden cache"),
    (&["cfg", "(", "test", ")"], "is a test in src"),
    (&["#", "[", "test", "]"], "is a test in src"),
    (
        &[".", "display", "("],
        "may print signs that move a terminal",
    ),
    (&["print", "!"], "goes past `cli/terminal`"),
    (&["println", "!"], "goes past `cli/terminal`"),
    (&["eprint", "!"], "goes past `cli/terminal`"),
    (&["eprintln", "!"], "goes past `cli/terminal`"),
];

/// The one place that keeps what is worked out when it is first asked for: in a value that its maker
/// owns, so it is no state of the program.
const KEPT: (&str, &str) = ("src/facts/made.rs", "OnceCell");

/// What is refused in a file, with lines.
fn refused(file: &SourceFile) -> Vec<String> {
    let lines = |(run, why): &(&[&str], &str)| {
        let name = run.concat();
        if (file.path.as_str(), name.as_str()) == KEPT {
            return Vec::new();
        }
        let told = |line| format!("{}:{line}: {name} {why}", file.path);
        file.lines_with(run)
            .into_iter()
            .map(told)
            .collect::<Vec<_>>()
    };
    REFUSED.iter().flat_map(lines).collect()
}

/// Examples in docs: no test would run them.
fn examples(file: &SourceFile) -> Vec<String> {
    let fences = file.tokens.iter().filter(|t| t.text.contains("```"));
    fences
        .map(|t| format!("{}:{}: an example that is not run", file.path, t.line))
        .collect()
}

/// `allow` and `expect` without a reason.
fn lints_off_without_reason(file: &SourceFile) -> Vec<String> {
    let tokens = &file.tokens;
    let opens = |w: &[Token]| {
        w[0].text == "[" && matches!(w[1].text.as_str(), "allow" | "expect") && w[2].text == "("
    };
    (0..tokens.len().saturating_sub(2))
        .filter(|at| opens(&tokens[*at..at + 3]))
        .filter(|at| {
            let end = closing(tokens, *at);
            !tokens[*at..end].iter().any(|t| t.text == "reason")
        })
        .map(|at| format!("{}:{}: no reason", file.path, tokens[at].line))
        .collect()
}

/// The place of the bracket that closes the one at `open`.
fn closing(tokens: &[Token], open: usize) -> usize {
    let mut depth = 0;
    for (at, token) in tokens.iter().enumerate().skip(open) {
        match token.text.as_str() {
            "(" | "[" | "{" => depth += 1,
            ")" | "]" | "}" => depth -= 1,
            _ => {}
        }
        if depth == 0 {
            return at;
        }
    }
    panic!("brackets come in pairs");
}

/// Functions with their lines, from `fn` to the closing brace; those without a body left out.
fn functions(tokens: &[Token]) -> Vec<(&str, usize, usize)> {
    let mut found = Vec::new();
    for (at, pair) in tokens.windows(2).enumerate() {
        if pair[0].text != "fn" || !pair[1].is_word {
            continue;
        }
        let mut next = at + 2;
        while !matches!(tokens[next].text.as_str(), "{" | ";") {
            // Over arguments and array types, in which a `;` ends nothing.
            let steps_over = matches!(tokens[next].text.as_str(), "(" | "[");
            next = 1 + if steps_over {
                closing(tokens, next)
            } else {
                next
            };
        }
        if tokens[next].text == "{" {
            let end = tokens[closing(tokens, next)].line;
            found.push((pair[1].text.as_str(), pair[0].line, end + 1 - pair[0].line));
        }
    }
    found
}

/// Functions of 60 lines and more.
fn long_functions(file: &SourceFile) -> Vec<String> {
    functions(&file.tokens)
        .into_iter()
        .filter(|(_, _, lines)| *lines >= LONGEST_FUNCTION)
        .map(|(name, line, lines)| format!("{}:{line}: {name} has {lines} lines", file.path))
        .collect()
}

/// True if a file opens with `//!` of one to four lines that are not empty.
fn is_opened(text: &str) -> bool {
    let opening: Vec<&str> = text.lines().map_while(|l| l.strip_prefix("//!")).collect();
    (1..=LONGEST_OPENING).contains(&opening.len()) && !opening.concat().trim().is_empty()
}

/// Files too long, not opened, or named `mod.rs`.
fn misshapen(file: &SourceFile) -> Vec<String> {
    let lines = file.text.lines().count();
    let named_mod = file.path.ends_with("/mod.rs");
    [
        (lines > LONGEST_FILE, format!("has {lines} lines")),
        (
            !is_opened(&file.text),
            "does not open with 1 to 4 lines of //!".to_owned(),
        ),
        (named_mod, "stands in its folder, not beside it".to_owned()),
    ]
    .into_iter()
    .filter(|(wrong, _)| *wrong)
    .map(|(_, what)| format!("{} {what}", file.path))
    .collect()
}

fn all_files() -> impl Iterator<Item = &'static SourceFile> {
    rust_files("src").iter().chain(rust_files("tests"))
}

/// Holds that nothing was found.
fn none(found: Vec<String>) {
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn files_are_short_and_say_what_they_are_for() {
    none(all_files().flat_map(misshapen).collect());
}

#[test]
fn functions_are_short() {
    none(all_files().flat_map(long_functions).collect());
}

#[test]
fn src_does_not_panic_and_keeps_no_global_state() {
    none(rust_files("src").iter().flat_map(refused).collect());
}

#[test]
fn docs_hold_no_example_that_no_test_runs() {
    none(rust_files("src").iter().flat_map(examples).collect());
    let bad = SourceFile::new(
        "a.rs",
        "/// Like so:\n/// ```\n/// f();\n/// ```\nfn f() {}",
    );
    assert_eq!(examples(&bad).len(), 2);
}

#[test]
fn a_lint_is_only_turned_off_with_a_reason() {
    none(
        rust_files("src")
            .iter()
            .flat_map(lints_off_without_reason)
            .collect(),
    );
}

#[test]
fn every_refused_run_is_seen_in_code_and_in_macros_but_not_in_words() {
    let bad = "fn f() { a.unwrap(); m!(b.expect(\"x\")); panic!(); todo!(); unimplemented!(); \
               unreachable!() } static mut A: u8 = 0; thread_local! { } lazy_static! { } \
               type T = (LazyLock<u8>, LazyCell<u8>, OnceLock<u8>, OnceCell<u8>, RefCell<u8>); \
               #[cfg(test)] #[test] fn t() { path.display(); print!(); println!(); eprint!(); \
               eprintln!() }";
    assert_eq!(
        refused(&SourceFile::new("bad.rs", bad)).len(),
        REFUSED.len()
    );
    let good = "//! panic!() in words.\n/// `x.unwrap()`\nfn f(s: &'static mut str) { \
                a.unwrap_or(\"todo!()\") }";
    assert_eq!(
        refused(&SourceFile::new("good.rs", good)),
        Vec::<String>::new()
    );
}

#[test]
fn a_lint_turned_off_is_seen() {
    let text = "#![allow(dead_code)]\n#[expect(unused, reason = \"why\")] fn f() {}\n\
                #[allow(unused)] fn expect(x: [u8; 1]) {}";
    let found = lints_off_without_reason(&SourceFile::new("a.rs", text));
    assert_eq!(found, ["a.rs:1: no reason", "a.rs:3: no reason"]);
}

#[test]
fn a_function_is_measured_from_its_name_to_its_brace() {
    let text = "trait T { fn a(x: [u8; 2]) -> [u8; 3]; }\nfn b(\nx: [u8; 2],\n) {\n{}\n}\n\
                type F = fn(u8) -> u8;";
    let file = SourceFile::new("a.rs", text);
    assert_eq!(functions(&file.tokens), [("b", 2, 5)]);
    let long = |lines: usize| format!("fn a() {{{}}}", "\n".repeat(lines - 1));
    assert!(long_functions(&SourceFile::new("a.rs", &long(59))).is_empty());
    assert_eq!(long_functions(&SourceFile::new("a.rs", &long(60))).len(), 1);
}

#[test]
fn a_misshapen_file_is_seen() {
    let lines = |n: usize| format!("//! Says something.\n{}", "\n".repeat(n - 1));
    let faults = |path: &str, text: &str| misshapen(&SourceFile::new(path, text)).len();
    assert_eq!(faults("a.rs", &lines(400)), 0);
    assert_eq!(faults("a.rs", &lines(401)), 1);
    assert_eq!(faults("a/mod.rs", &lines(1)), 1);
    assert_eq!(faults("a.rs", "fn f() {}"), 1);
    assert_eq!(faults("a.rs", "//!\n"), 1);
    assert_eq!(faults("a.rs", &"//! Says something.\n".repeat(5)), 1);
}
