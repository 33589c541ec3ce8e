//! Reads a drawing again: its shapes as boxes, its texts with the room that they take.

use roxmltree::{Document, Node};

/// A box: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Frame {
    /// True if two share more than a twentieth of a point.
    pub fn meets(&self, other: &Self) -> bool {
        let least = 0.05;
        self.left + least < other.right
            && other.left + least < self.right
            && self.top + least < other.bottom
            && other.top + least < self.bottom
    }

    /// True if it lies within another, but for a twentieth of a point.
    pub fn within(&self, outer: &Self) -> bool {
        let least = 0.05;
        self.left + least >= outer.left
            && self.right <= outer.right + least
            && self.top + least >= outer.top
            && self.bottom <= outer.bottom + least
    }
}

/// A well-formed drawing; panics with the drawing if it is not.
pub fn read(svg: &str) -> Document<'_> {
    Document::parse(svg).unwrap_or_else(|e| panic!("{e}\n{svg}"))
}

/// A number of an element.
pub fn number(node: Node<'_, '_>, name: &str) -> f64 {
    let text = node.attribute(name);
    text.and_then(|text| text.parse().ok())
        .unwrap_or_else(|| panic!("{node:?} has no number {name}"))
}

/// All elements of a name.
pub fn named<'a, 'i>(node: Node<'a, 'i>, name: &'static str) -> impl Iterator<Item = Node<'a, 'i>> {
    node.descendants().filter(move |n| n.has_tag_name(name))
}

/// All elements of a class.
pub fn of_class<'a, 'i>(
    node: Node<'a, 'i>,
    class: &'static str,
) -> impl Iterator<Item = Node<'a, 'i>> {
    let is = move |n: &Node<'a, 'i>| n.attribute("class") == Some(class);
    node.descendants().filter(is)
}

/// The box of a rectangle.
pub fn rect(node: Node<'_, '_>) -> Frame {
    let (left, top) = (number(node, "x"), number(node, "y"));
    Frame {
        left,
        top,
        right: left + number(node, "width"),
        bottom: top + number(node, "height"),
    }
}

/// The whole paper.
pub fn paper(svg: &Document<'_>) -> Frame {
    let view_box = svg.root_element().attribute("viewBox").unwrap();
    let numbers: Vec<f64> = view_box.split(' ').map(|n| n.parse().unwrap()).collect();
    assert_eq!(numbers[..3], [0.0, 0.0, 510.0], "18 cm in points");
    Frame {
        left: 0.0,
        top: 0.0,
        right: numbers[2],
        bottom: numbers[3],
    }
}

/// Every text with the room that it takes: half an em a letter (Arial's mean is less), a whole
/// one for letters outside Latin, as high as large letters are.
pub fn texts(svg: &Document<'_>) -> Vec<(String, Frame)> {
    named(svg.root(), "text")
        .map(|node| {
            let content = node.text().unwrap_or_default().to_owned();
            let ems = content.chars().map(|c| match c {
                c if c.is_ascii() => 0.5,
                '\u{a0}'..='\u{24f}' | '\u{2026}' => 0.5,
                '\u{590}'..='\u{6ff}' => 0.6,
                _ => 1.0,
            });
            let width = 9.0 * ems.sum::<f64>();
            let (x, y) = (number(node, "x"), number(node, "y"));
            let left = match node.attribute("text-anchor") {
                Some("middle") => x - width / 2.0,
                Some("end") => x - width,
                _ => x,
            };
            let frame = Frame {
                left,
                top: y - 6.5,
                right: left + width,
                bottom: y,
            };
            (content, frame)
        })
        .collect()
}
