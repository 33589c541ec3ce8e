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
    let is = move |n: &Node<'a, 'i>| {
        let own = n.attribute("class").unwrap_or_default();
        own.split(' ').any(|one| one == class)
    };
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
    assert_eq!(numbers[..2], [0.0, 0.0]);
    Frame {
        left: 0.0,
        top: 0.0,
        right: numbers[2],
        bottom: numbers[3],
    }
}

/// The width of a letter in thousandths of an em: Helvetica, of which Arial and Liberation Sans
/// have the widths (Adobe's font metrics, from memory); a whole em for letters outside Latin.
fn letter(c: char) -> f64 {
    let lower = [
        556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556, 556, 556, 333,
        500, 278, 556, 500, 722, 500, 500, 500,
    ];
    let upper = [
        667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778, 667, 778, 722,
        667, 611, 722, 667, 944, 667, 667, 611,
    ];
    let of = |widths: [u32; 26], first: char| widths[(u32::from(c) - u32::from(first)) as usize];
    f64::from(match c {
        'a'..='z' => of(lower, 'a'),
        'A'..='Z' => of(upper, 'A'),
        '0'..='9' => 556,
        ' ' | '\u{a0}' | '.' | ',' | ':' | ';' | '/' | '!' | '[' | ']' => 278,
        '-' | '(' | ')' => 333,
        '\'' => 191,
        '"' => 355,
        '&' => 667,
        '%' => 889,
        '<' | '>' => 584,
        '\u{590}'..='\u{6ff}' => 600,
        '\u{200d}' | '\u{200e}' => 0,
        _ => 1000,
    })
}

/// Every text with the room that it takes, as high as large letters are.
pub fn texts(svg: &Document<'_>) -> Vec<(String, Frame)> {
    named(svg.root(), "text")
        .map(|node| {
            let content = node.text().unwrap_or_default().to_owned();
            // Bold letters are up to a twelfth wider.
            let bold = match node.attribute("class") {
                Some("bold" | "hued") => 1.08,
                _ => 1.0,
            };
            let width = 10.0 * bold * content.chars().map(letter).sum::<f64>() / 1000.0;
            let (x, y) = (number(node, "x"), number(node, "y"));
            let left = match node.attribute("text-anchor") {
                Some("middle") => x - width / 2.0,
                Some("end") => x - width,
                _ => x,
            };
            let frame = Frame {
                left,
                top: y - 7.2,
                right: left + width,
                bottom: y,
            };
            (content, frame)
        })
        .collect()
}
