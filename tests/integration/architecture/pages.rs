//! The developers' pages: what they link to and name is there.

use std::path::{Path, PathBuf};

use super::source::root;

/// All pages for developers, by their paths from the root.
fn pages() -> Vec<PathBuf> {
    let mut found = vec![PathBuf::from("DEVELOPERS.md")];
    let mut folders = vec![PathBuf::from("src"), PathBuf::from("tests")];
    while let Some(folder) = folders.pop() {
        let entries = std::fs::read_dir(root().join(&folder)).expect("a folder can be read");
        for entry in entries {
            let entry = entry.expect("an entry can be read");
            let path = folder.join(entry.file_name());
            if entry.path().is_dir() {
                folders.push(path);
            } else if path.ends_with("README.md") {
                found.push(path);
            }
        }
    }
    found.sort();
    found
}

/// The goals of a page's links, `[text](goal)`.
fn links(page: &str) -> Vec<&str> {
    let after = page.split("](").skip(1);
    after.filter_map(|rest| rest.split(')').next()).collect()
}

/// Files that a page names as `room/file`, without the ending of Rust.
fn named(page: &str) -> Vec<&str> {
    let is_path = |text: &&str| {
        let plain = |c: char| c.is_ascii_lowercase() || "_/.-".contains(c);
        text.contains('/') && !text.starts_with(['/', '.']) && text.chars().all(plain)
    };
    page.split('`')
        .skip(1)
        .step_by(2)
        .filter(is_path)
        .filter(|text| ROOMS.contains(&text.split('/').next().unwrap_or_default()))
        .collect()
}

/// What the first part of a named file may be; all else with a stroke in it is no file of ours.
const ROOMS: [&str; 19] = [
    "src",
    "tests",
    "scenarios",
    "cli",
    "handouts",
    "report",
    "facts",
    "explain",
    "model",
    "candidates",
    "checker",
    "project",
    "growth",
    "plan",
    "catalogue",
    "garden",
    "disk",
    "outside",
    "diagnostic",
];

/// True if a file or folder is there under a name, in the sources, the tests or as it is written.
fn is_there(name: &str) -> bool {
    let name = name.trim_end_matches('/');
    let homes = ["", "src", "tests", "tests/integration"].map(|home| root().join(home));
    let there = |path: &Path| path.exists() || path.with_extension("rs").exists();
    homes.iter().any(|home| there(&home.join(name)))
}

#[test]
fn what_a_developers_page_links_to_or_names_is_there() {
    let mut missing = Vec::new();
    let (mut linked, mut seen) = (0, 0);
    for path in pages() {
        let page = std::fs::read_to_string(root().join(&path)).expect("a page can be read");
        let folder = path.parent().expect("a page has a folder").to_owned();
        for goal in links(&page) {
            linked += 1;
            if !root().join(&folder).join(goal).exists() {
                missing.push(format!("{}: {goal}", path.display()));
            }
        }
        for name in named(&page) {
            seen += 1;
            if !is_there(name) {
                missing.push(format!("{}: `{name}`", path.display()));
            }
        }
    }
    assert!(missing.is_empty(), "\n{}", missing.join("\n"));
    assert!(linked > 10 && seen > 50, "{linked} links, {seen} names");
}

/// Every page is reached from the first one, which fits on two screens.
#[test]
fn the_first_page_is_short_and_leads_to_all_others() {
    let first = std::fs::read_to_string(root().join("DEVELOPERS.md")).expect("it can be read");
    assert!(first.lines().count() <= 130, "{}", first.lines().count());
    let folders: Vec<&Path> = links(&first).into_iter().map(Path::new).collect();
    for page in pages().iter().skip(1) {
        assert!(folders.contains(&page.as_path()), "{}", page.display());
    }
}

#[test]
fn a_link_into_nothing_is_seen() {
    let page = "See [this](src/nothing.md), `report/nothing`, `garden/crop` and `a/b`.";
    assert_eq!(links(page), ["src/nothing.md"]);
    assert_eq!(named(page), ["report/nothing", "garden/crop"]);
    assert!(!is_there("report/nothing") && is_there("garden/crop"));
}
