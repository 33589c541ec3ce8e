//! What stands in the repository: the top level, the pairs of rules, and no trace of the
//! machine on which it was written.

use std::collections::BTreeSet;
use std::process::Command;

use tureen::plan::Rule;

use super::source::root;

/// The whole top level.
const TOP: [&str; 12] = [
    ".ci",
    ".gitignore",
    "Cargo.lock",
    "Cargo.toml",
    "DEVELOPERS.md",
    "KEYS.md",
    "LICENSE",
    "README.md",
    "THIRD-PARTY.md",
    "scenarios",
    "src",
    "tests",
];

/// The paths of all tracked files; `None` outside a git checkout.
fn tracked() -> Option<Vec<String>> {
    if !root().join(".git").exists() {
        eprintln!("not a git checkout: tracked files are not looked at");
        return None;
    }
    let output = Command::new("git")
        .args(["-c", "safe.directory=*", "ls-files", "-z"])
        .current_dir(root())
        .output()
        .expect("git runs");
    assert!(output.status.success(), "git lists the tracked files");
    let names = String::from_utf8(output.stdout).expect("names are UTF-8");
    Some(names.split_terminator('\0').map(str::to_owned).collect())
}

/// What stands at the top and should not.
fn not_at_the_top(paths: &[String]) -> BTreeSet<&str> {
    let top = |path: &'_ String| path.find('/').unwrap_or(path.len());
    paths
        .iter()
        .map(|path| &path[..top(path)])
        .filter(|name| !TOP.contains(name))
        .collect()
}

/// Rules without a file in the model or in the checker.
fn unpaired(is_file: impl Fn(&str) -> bool) -> Vec<String> {
    let files = |rule: Rule| {
        ["model", "checker"].map(|side| format!("src/{side}/rules/{}.rs", rule.name()))
    };
    let all = Rule::ALL.into_iter().flat_map(files);
    all.filter(|path| !is_file(path)).collect()
}

/// Folders of a machine and hosts of package registries, put together here so that this file
/// does not hold them.
fn traces() -> Vec<String> {
    let folders = ["work", "tmp", "home", "root", "Users"].map(|f| format!("/{f}/"));
    let hosts = [
        ("crates", "io"),
        ("pypi", "org"),
        ("pythonhosted", "org"),
        ("npmjs", "org"),
        ("npmjs", "com"),
        ("yarnpkg", "com"),
    ]
    .map(|(name, end)| format!("{name}.{end}"));
    [folders.as_slice(), &hosts].concat()
}

/// Lines with such a trace. A folder counts where a path begins, so not within a longer one.
fn traced(path: &str, text: &str) -> Vec<String> {
    let lock_source = format!(
        "registry+https://github.com/rust-lang/{}-index",
        traces()[5]
    );
    let begins = |line: &str, at: usize, trace: &str| {
        let before = line[..at].chars().next_back();
        !trace.starts_with('/')
            || before.is_none_or(|c| !c.is_alphanumeric() && !"_-.}/".contains(c))
    };
    (1..)
        .zip(text.lines())
        .filter(|(_, line)| path != "Cargo.lock" || !line.contains(&lock_source))
        .flat_map(|(number, line)| {
            let seen = move |trace: &String| {
                line.match_indices(trace.as_str())
                    .any(|(at, _)| begins(line, at, trace))
            };
            let told = move |trace| format!("{path}:{number}: {trace}");
            traces()
                .into_iter()
                .filter(seen)
                .map(told)
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn the_top_level_is_what_it_should_be() {
    let paths = tracked().unwrap_or_default();
    assert_eq!(not_at_the_top(&paths), BTreeSet::new());
}

#[test]
fn tracked_files_name_no_folder_of_a_machine_and_no_registry() {
    let mut found = Vec::new();
    for path in tracked().unwrap_or_default() {
        // A file that is gone but not yet committed so, or that is no text, is passed over.
        if let Ok(text) = std::fs::read_to_string(root().join(&path)) {
            found.extend(traced(&path, &text));
        }
    }
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn every_rule_has_its_rows_and_its_check() {
    assert_eq!(
        unpaired(|path| root().join(path).is_file()),
        Vec::<String>::new()
    );
}

#[test]
fn a_stray_file_and_a_lone_rule_are_seen() {
    let paths = ["src/a.rs", ".ci/run", "notes.txt", "benches/b.rs"].map(str::to_owned);
    assert_eq!(
        not_at_the_top(&paths),
        BTreeSet::from(["benches", "notes.txt"])
    );
    let missing = unpaired(|path| path != "src/checker/rules/shelf.rs");
    assert_eq!(missing, ["src/checker/rules/shelf.rs"]);
}

#[test]
fn a_trace_is_seen_where_it_begins() {
    for trace in traces() {
        let text = format!("fine\nsee {trace}x");
        assert_eq!(traced("a.md", &text), [format!("a.md:2: {trace}")]);
        if trace.starts_with('/') {
            let within = format!("https://example.org{trace}x ..{trace} crops{trace}");
            assert_eq!(traced("a.md", &within), Vec::<String>::new());
        }
    }
    let source = format!(
        "source = \"registry+https://github.com/rust-lang/{}-index\"",
        traces()[5]
    );
    assert!(traced("Cargo.lock", &source).is_empty());
    assert_eq!(traced("Cargo.toml", &source).len(), 1);
}
