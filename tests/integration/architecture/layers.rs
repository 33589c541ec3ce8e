//! Layers: a module uses only lower ones, and the solver and the file format stay in theirs.

use super::source::{SourceFile, crate_of, root, rust_files};
use super::uses::{Module, Use, shown, uses};

/// The layers, from the top. DEVELOPERS.md shows the same table.
const LAYERS: [&[&str]; 17] = [
    &["cli"],
    &["handouts"],
    &["report"],
    &["words"],
    &["facts"],
    &["explain"],
    &["pipeline"],
    &["model"],
    &["candidates", "checker"],
    &["project", "growth"],
    &["plan"],
    &["page"],
    &["catalogue"],
    &["garden"],
    &["weather"],
    &[
        "units",
        "calendar",
        "diagnostic",
        "checksum",
        "deadline",
        "disk",
    ],
    &["harmless"],
];

/// Crates that only some modules may use.
const KEPT_APART: [(&str, &[&str]); 4] = [
    ("good_lp", &["model"]),
    ("microlp", &["model"]),
    ("toml", &["project", "catalogue"]),
    ("maud", &["handouts"]),
];

fn layer(module: &str) -> Option<usize> {
    LAYERS.iter().position(|layer| layer.contains(&module))
}

/// Uses that do not go down, and modules without a layer.
fn against_layers(files: &[SourceFile]) -> Vec<String> {
    let mut found = Vec::new();
    for Use { from, to, line, .. } in uses(files).inside {
        let (above, below) = (&from[0], &to[0]);
        if above == below {
            continue;
        }
        match (layer(above), layer(below)) {
            (Some(a), Some(b)) if a < b => {}
            (Some(_), Some(_)) => {
                found.push(format!("{} uses {}, line {line}", shown(&from), shown(&to)))
            }
            _ => found.push(format!("{above} or {below} has no layer")),
        }
    }
    found
}

/// Uses of a crate outside the modules that may use it.
fn crates_out_of_place(files: &[SourceFile]) -> Vec<String> {
    let outside = uses(files).outside;
    let wrong = |(from, name, _): &&(Module, String, usize)| {
        KEPT_APART
            .iter()
            .any(|(kept, homes)| kept == name && !homes.contains(&from[0].as_str()))
    };
    outside
        .iter()
        .filter(wrong)
        .map(|(from, name, line)| format!("{} uses {name}, line {line}", shown(from)))
        .collect()
}

#[test]
fn a_module_uses_only_lower_layers() {
    assert_eq!(against_layers(rust_files("src")), Vec::<String>::new());
}

#[test]
fn the_developers_page_shows_the_same_table() {
    let table: Vec<String> = LAYERS.iter().map(|layer| layer.join("   ")).collect();
    let page = std::fs::read_to_string(root().join("DEVELOPERS.md")).expect("it can be read");
    assert!(page.contains(&format!("```\n{}\n```", table.join("\n"))));
}

#[test]
fn the_solver_and_the_file_format_stay_where_they_belong() {
    assert_eq!(crates_out_of_place(rust_files("src")), Vec::<String>::new());
}

#[test]
fn a_use_that_goes_up_or_sideways_is_seen_however_it_is_written() {
    for text in [
        "use crate::model::X;",
        "use crate::{garden, model::{self, X}};",
        "use super::model;",
        "use crate::model as m;",
        "fn f() { crate::model::solve() }",
        "fn f() { m!(x, crate::model::solve()) }",
        "fn f(x: super::model::X) {}",
        "pub use crate::model::*;",
        "fn f() { use crate::model::X; }",
        "use crate::candidates::Y;",
        "fn f() { ..crate::model::X }",
    ] {
        let files = crate_of(&[
            ("src/checker.rs", text),
            ("src/model.rs", ""),
            ("src/candidates.rs", ""),
            ("src/garden.rs", ""),
        ]);
        assert!(!against_layers(&files).is_empty(), "{text}");
    }
}

#[test]
fn a_use_that_goes_down_is_fine() {
    let text = "//! crate::model in words.\npub(crate) fn f(x: crate::garden::X) -> impl A + use<> \
                { \"crate::model::X\"; Self::model::<u8>() }";
    let files = crate_of(&[
        ("src/checker.rs", text),
        ("src/model.rs", ""),
        ("src/garden.rs", ""),
        ("src/main.rs", "fn main() { tureen::cli::run() }"),
    ]);
    assert_eq!(against_layers(&files), Vec::<String>::new());
}

#[test]
fn a_module_without_a_layer_is_seen() {
    let files = crate_of(&[
        ("src/new.rs", "use crate::garden::X;"),
        ("src/garden.rs", ""),
    ]);
    assert_eq!(against_layers(&files), ["new or garden has no layer"]);
}

#[test]
fn a_crate_out_of_place_is_seen() {
    let wrong = [
        "use good_lp::X;",
        "fn f() { toml::from_str(s) }",
        "use toml;",
    ];
    for text in wrong {
        let files = crate_of(&[("src/garden/bed.rs", text)]);
        assert_eq!(crates_out_of_place(&files).len(), 1, "{text}");
    }
    let fine = crate_of(&[
        (
            "src/project/file.rs",
            "use toml::Table; use crate::garden::toml;",
        ),
        ("src/garden.rs", "fn f(toml: &str) { toml.len() }"),
    ]);
    assert_eq!(crates_out_of_place(&fine), Vec::<String>::new());
}
