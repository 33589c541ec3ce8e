//! The tool of mutation testing, on small code: which mutants it finds, and that what it weaves is
//! still Rust. What the mutants do is told by running it; see the README of `tests/mutation`.

#[path = "../mutation/points.rs"]
mod points;
#[path = "../mutation/weave.rs"]
mod weave;

use points::{Point, points};
use weave::weave;

/// What the mutants of a function's body do, in order.
fn mutants(body: &str) -> Vec<String> {
    let text = format!("fn f() {{ {body} }}");
    let found = points(&text).unwrap();
    let told = found.iter().map(|point| point.told(&text));
    // That the function gives nothing at once.
    told.skip(1).collect()
}

#[test]
fn every_kind_of_mutant_is_found() {
    for (body, expected) in [
        ("a < b;", vec!["`a < b` is `a <= b`"]),
        ("a == b;", vec!["`a == b` is `a != b`"]),
        (
            "a * b + c;",
            vec!["`a * b + c` is `a * b - c`", "`a * b` is `a / b`"],
        ),
        ("x && y;", vec!["`x` is `true`", "`y` is `true`"]),
        ("x || y;", vec!["`x` is `false`", "`y` is `false`"]),
        ("!x;", vec!["`!x` is `x`"]),
        ("g(7u8, 0.5);", vec!["`7u8` is `8u8`", "`0.5` is `1.5`"]),
        ("if x {}", vec!["`x` is `true`", "`x` is `false`"]),
        ("if x && let Some(y) = z {}", vec!["`x` is `true`"]),
        (
            "match x { y if z => {} _ => {} }",
            vec!["`z` is `true`", "`z` is `false`"],
        ),
        ("for x in a..=b {}", vec!["`b` is `(b) - 1`"]),
        ("for x in a..b {}", vec!["`b` is `(b) + 1`"]),
        ("a.min(b);", vec!["`a.min(b)` is `a.max(b)`"]),
        (
            "a.filter(|x| g(x));",
            vec!["`g(x)` is `true`", "`g(x)` is `false`"],
        ),
        ("a.push(b);", vec!["`a.push(b);` is left out"]),
        ("a += b;", vec!["`a += b;` is left out"]),
        ("Some(x);", vec!["`Some(x)` is `None`"]),
    ] {
        assert_eq!(mutants(body), expected, "{body}");
    }
    let given = "fn f() -> bool { x } fn g() -> Option<u8> { y } fn h() -> u32 { z }";
    let told: Vec<String> = points(given)
        .unwrap()
        .iter()
        .map(|p| p.told(given))
        .collect();
    let fs = ["`fn f` gives `true`", "`fn f` gives `false`"];
    let rest = [
        "`fn g` gives `None`",
        "`fn h` gives `0`",
        "`fn h` gives `1`",
    ];
    assert_eq!(told, [&fs[..], &rest].concat());
}

#[test]
fn constants_patterns_types_and_macros_are_left_alone() {
    let text = "const A: u8 = 1 + 2; static B: [u8; 3] = [4; 3]; enum C { D = 5 } \
                const fn e() -> u8 { 6 } struct G([u8; 7]);";
    assert!(points(text).unwrap().is_empty());
    let body = "match x { 8 | 9..=10 => {} _ => { assert!(a < b); } } let y: [u8; 11] = h::<12>();";
    assert_eq!(mutants(body), Vec::<String>::new());
}

#[test]
fn woven_mutants_stand_where_they_are_said_to_and_are_still_rust() {
    let text = "fn f(a: u8, b: u8) -> bool {\n    let mut c = vec![a];\n    \
                if a + 1 < b && !(a == b || b > 2) {\n        c.push(a.min(b));\n    }\n    \
                (0..=b).any(|d| d * 2 == a)\n}\n";
    let found = points(text).unwrap();
    let numbered: Vec<(u32, &Point)> = (1..).zip(&found).collect();
    let woven = weave(text, &numbered);
    syn::parse_file(&woven.text).unwrap();
    assert_eq!(woven.stands.len(), found.len());
    for (number, at) in &woven.stands {
        let switch = format!("crate::mutant::on({number})");
        assert!(woven.text[at.clone()].contains(&switch), "{number}");
        assert_eq!(woven.text.matches(&switch).count(), 1, "{number}");
    }
    // Without mutants nothing is changed.
    assert_eq!(weave(text, &[]).text, text);
}
