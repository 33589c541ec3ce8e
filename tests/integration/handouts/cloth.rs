//! The cloth of the crops: no two of a project look alike, a crop keeps its look, every hue can be read in both modes.

use std::collections::BTreeSet;

use tureen::facts::Facts;
use tureen::facts::cloth::{CLOTHS, Cloth};

use super::pictures::full::full;

fn cloths(of: impl Fn(&mut tureen::garden::Garden)) -> Vec<Cloth> {
    let (mut garden, checked) = full();
    of(&mut garden);
    Facts::new(&garden, &checked).cloths().to_vec()
}

#[test]
fn no_two_ingredients_look_alike() {
    let all = cloths(|_| {});
    assert_eq!(all.len(), 36);
    let looks: BTreeSet<(u8, u8)> = all.iter().map(|c| (c.hue, c.weave)).collect();
    assert_eq!(looks.len(), 36);
    // The first dozen differ in the weave too, so they are told apart in grey.
    let first = all.iter().take(usize::from(CLOTHS));
    let weaves: BTreeSet<u8> = first.map(|c| c.weave).collect();
    assert_eq!(weaves.len(), usize::from(CLOTHS));
}

#[test]
fn a_crop_keeps_its_look_when_others_come_after_it() {
    let all = cloths(|_| {});
    for kept in [1, 5, 13, 30] {
        let fewer = cloths(|garden| garden.ingredients.truncate(kept));
        assert_eq!(fewer, all[..kept]);
    }
}

/// The colours of a block of the styles, by name.
fn colours(block: &str) -> Vec<(String, [f64; 3])> {
    let of = |part: &str| {
        let (name, value) = part.trim().strip_prefix("--")?.split_once(": #")?;
        let digits: Vec<char> = value.trim().chars().collect();
        let one = |at: usize| match digits.len() {
            3 => u8::from_str_radix(&digits[at].to_string().repeat(2), 16).ok(),
            _ => {
                u8::from_str_radix(&digits[2 * at..2 * at + 2].iter().collect::<String>(), 16).ok()
            }
        };
        Some((name.to_owned(), [one(0)?, one(1)?, one(2)?].map(f64::from)))
    };
    block.split(';').filter_map(of).collect()
}

/// Relative luminance and contrast as WCAG 2.2 defines them.
fn luminance(colour: [f64; 3]) -> f64 {
    let linear = |part: f64| match part / 255.0 {
        c if c <= 0.04045 => c / 12.92,
        c => ((c + 0.055) / 1.055).powf(2.4),
    };
    0.2126 * linear(colour[0]) + 0.7152 * linear(colour[1]) + 0.0722 * linear(colour[2])
}

fn contrast(a: [f64; 3], b: [f64; 3]) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// WCAG 2.2, 1.4.3: 4.5 to 1 for text, 1.4.11: 3 to 1 for what is drawn.
#[test]
fn every_hue_can_be_read_in_both_modes() {
    let css = include_str!("../../../src/handouts/cloth.css");
    let (light, dark) = css.split_once("@media").unwrap();
    let inside = |block: &str| block.split_once(":root {").unwrap().1.replace('}', ";");
    for (mode, block) in [("light", inside(light)), ("dark", inside(dark))] {
        let all = colours(&block.replace("color-scheme: light dark;", ""));
        let find = |name: &str| {
            let mut found = all.iter().filter(|(other, _)| other == name);
            found.next().unwrap_or_else(|| panic!("{mode}: {name}")).1
        };
        let paper = find("paper");
        assert!(contrast(find("ink"), paper) >= 7.0, "{mode}");
        for name in ["soft", "accent"] {
            assert!(contrast(find(name), paper) >= 4.5, "{mode}: {name}");
        }
        for tint in ["rest", "cold", "colder", "warm"] {
            assert!(contrast(find("ink"), find(tint)) >= 4.5, "{mode}: {tint}");
        }
        for hue in 1..=CLOTHS {
            let (own, tint) = (find(&format!("c{hue}")), find(&format!("t{hue}")));
            assert!(contrast(own, paper) >= 4.5, "{mode}: hue {hue} on paper");
            assert!(contrast(own, tint) >= 4.5, "{mode}: hue {hue} on its tint");
            assert!(
                contrast(find("ink"), tint) >= 4.5,
                "{mode}: ink on tint {hue}"
            );
        }
    }
    assert!(
        (contrast([0.0; 3], [255.0; 3]) - 21.0).abs() < 1e-9,
        "by definition"
    );
}
