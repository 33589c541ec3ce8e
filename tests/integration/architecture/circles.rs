//! Circles: files use each other one way only, and so do the folders within a folder.

use std::collections::{BTreeMap, BTreeSet};

use super::source::{SourceFile, crate_of, rust_files};
use super::uses::{Module, Use, shown, uses};

/// The two ends of a use at one level.
type Side<'a> = &'a dyn Fn(&Use) -> Option<(Module, Module)>;

/// Groups of nodes that reach each other.
fn cycles(edges: &BTreeSet<(Module, Module)>) -> BTreeSet<BTreeSet<Module>> {
    let mut below: BTreeMap<&Module, BTreeSet<&Module>> = BTreeMap::new();
    for (from, to) in edges {
        below.entry(from).or_default().insert(to);
    }
    let reached = |start: &Module| {
        let mut seen: BTreeSet<&Module> = BTreeSet::new();
        let mut open: Vec<&Module> = below.get(start).into_iter().flatten().copied().collect();
        while let Some(next) = open.pop() {
            if seen.insert(next) {
                open.extend(below.get(next).into_iter().flatten().copied());
            }
        }
        seen.into_iter().cloned().collect::<BTreeSet<Module>>()
    };
    let reach: BTreeMap<&Module, BTreeSet<Module>> =
        below.keys().map(|m| (*m, reached(m))).collect();
    reach
        .iter()
        .filter(|(module, ends)| ends.contains(**module))
        .map(|(module, ends)| {
            let mutual = |end: &&Module| reach.get(*end).is_some_and(|back| back.contains(*module));
            ends.iter().filter(mutual).cloned().collect()
        })
        .collect()
}

/// Cycles among files, and among the folders of each folder, with the uses that close them.
fn circles(files: &[SourceFile]) -> BTreeSet<String> {
    let mut all = uses(files).inside;
    all.sort();
    all.dedup_by(|b, a| (&a.from, &a.to) == (&b.from, &b.to));
    let file: Side = &|u| Some((u.from.clone(), u.to.clone()));
    // One level below the folder that both share, each side with all that is below it.
    let folder: Side = &|u| {
        let shared = u.from.iter().zip(&u.to).take_while(|(a, b)| a == b);
        let depth = shared.count() + 1;
        let side = |m: &Module| m.get(..depth).map(<[String]>::to_vec);
        side(&u.from).zip(side(&u.to))
    };
    [file, folder]
        .into_iter()
        .flat_map(|side| {
            let groups = cycles(&all.iter().filter_map(side).collect());
            let all = &all;
            groups.into_iter().map(move |group| {
                let both = |(a, b)| group.contains(&a) && group.contains(&b);
                all.iter()
                    .filter(|u| side(u).is_some_and(both))
                    .map(|u| format!("{} -> {}, line {}\n", shown(&u.from), shown(&u.to), u.line))
                    .collect()
            })
        })
        .collect()
}

#[test]
fn files_do_not_use_each_other_in_circles() {
    let found: Vec<String> = circles(rust_files("src")).into_iter().collect();
    assert!(found.is_empty(), "\n{}", found.join("\n"));
}

#[test]
fn circles_are_seen_through_imports_and_re_exports() {
    let found = |files| circles(&crate_of(files)).len();
    // A folder's file that hands on what its own files define closes no circle.
    let one_way: &[(&str, &str)] = &[
        ("src/a.rs", "mod b; mod c; pub use b::B; pub use c::C;"),
        ("src/a/b.rs", "pub struct B;"),
        ("src/a/c.rs", "use super::B; pub struct C;"),
    ];
    assert_eq!(found(one_way), 0);
    let through_re_export: &[(&str, &str)] = &[
        ("src/a.rs", "mod b; mod c; pub use b::B; pub use c::C;"),
        ("src/a/b.rs", "use crate::a::C; pub struct B;"),
        ("src/a/c.rs", "use super::B; pub struct C;"),
    ];
    assert_eq!(found(through_re_export), 1);
    let parent_and_child: &[(&str, &str)] = &[
        ("src/a.rs", "mod b; pub struct A; fn f() { b::g() }"),
        ("src/a/b.rs", "use super::A;"),
    ];
    assert_eq!(found(parent_and_child), 1);
    let through_a_module: &[(&str, &str)] = &[
        ("src/a.rs", "mod b; mod c;"),
        ("src/a/b.rs", "use super::c; fn f() { c::d::g() }"),
        ("src/a/c.rs", ""),
        ("src/a/c/d.rs", "use crate::a::b::f;"),
    ];
    assert_eq!(found(through_a_module), 2, "among files and among folders");
    // No file closes a circle here, but the folders do.
    let folders_only: &[(&str, &str)] = &[
        ("src/a.rs", ""),
        ("src/a/b.rs", "use super::c::d::X;"),
        ("src/a/c.rs", ""),
        ("src/a/c/d.rs", ""),
        ("src/a/c/e.rs", "use crate::a::b::Y;"),
    ];
    assert_eq!(found(folders_only), 1);
}
