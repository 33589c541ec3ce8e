//! The arrow to the north, and the measure in metres and feet.

use maud::{Markup, html};

use crate::report::pictures::map::Map;
use crate::units::Metres;

use super::super::lettering::SIZE;
use super::super::sheet::{Anchor, bold, line, n, points, text};

/// Lengths that a measure may have, in its unit.
const LENGTHS: [f64; 8] = [1.0, 2.0, 3.0, 5.0, 10.0, 20.0, 50.0, 100.0];

/// The longest measure on the paper.
const LONGEST: f64 = 160.0;

/// Both from a height on, and the height under them.
pub fn draw(map: &Map, scale: f64, top: f64) -> (Markup, f64) {
    let [metres, feet] = map.units;
    let left = 44.0;
    let head = [
        (12.0, top),
        (17.0, top + 12.0),
        (12.0, top + 9.0),
        (7.0, top + 12.0),
    ];
    let body = html! {
        g.north {
            polygon.black points=(points(&head)) {}
            (line((12.0, top + 9.0), (12.0, top + 26.0), "ink", 1.6))
            (bold(21.0, top + 24.0, Anchor::Start, map.north))
        }
        g.measure {
            (bar(left, top + 2.0, scale, metres))
            (bar(left, top + 16.0, scale / Metres(1.0).to_feet().0, feet))
        }
    };
    (body, top + 28.0)
}

/// One measure: four parts, black and white in turn, its length beside it.
fn bar(left: f64, top: f64, unit: f64, name: &str) -> Markup {
    let fitting = LENGTHS
        .iter()
        .rev()
        .find(|length| **length * unit <= LONGEST);
    let length = fitting.copied().unwrap_or(LENGTHS[0]);
    let part = length * unit / 4.0;
    html! {
        @for k in 0..4_u8 {
            rect.bar.black[k % 2 == 0] x=(n(left + part * f64::from(k)))
                y=(n(top)) width=(n(part)) height="7" {}
        }
        (text(left + 4.0 * part + 5.0, top + SIZE - 1.0, Anchor::Start, &format!("{} {name}", n(length))))
    }
}
