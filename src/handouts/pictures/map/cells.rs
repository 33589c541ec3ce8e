//! The strips of a bed on the paper: which planting has which, side by side where one follows
//! the other; and the trellis.

use maud::{Markup, html};

use crate::facts::map::{MapBed, Planted};
use crate::garden::Runs;
use crate::report::pictures::map::{BedWords, PlantedWords};
use crate::units::STRIP;

use super::super::sheet::{Area, line};

/// The strips of one planting on the paper.
pub struct Cell<'m> {
    /// What stands there.
    pub planted: &'m Planted,
    /// What is written there.
    pub words: &'m PlantedWords,
    /// Where.
    pub area: Area,
}

/// The cells of a bed whose box is given.
pub fn cells<'m>(bed: &'m MapBed, words: &'m BedWords, area: Area, south: bool) -> Vec<Cell<'m>> {
    let lanes = lanes(&bed.planted);
    let metre = area.w / bed.ground.extent.0.0;
    let strip = STRIP.0 * metre;
    let cell =
        |((planted, words), (lane, of)): ((&'m Planted, &'m PlantedWords), (usize, usize))| {
            let strips = planted.dated.stand.strips;
            let (first, length) = (
                strip * f64::from(strips.first.0),
                strip * f64::from(strips.count),
            );
            let (lane, of) = (lane as f64, of as f64);
            let area = match bed.runs {
                Runs::EastWest => Area {
                    x: area.x + first,
                    y: area.y + area.h / of * lane,
                    w: length,
                    h: area.h / of,
                },
                Runs::NorthSouth => Area {
                    x: area.x + area.w / of * lane,
                    y: match south {
                        false => area.y + first,
                        true => area.bottom() - first - length,
                    },
                    w: area.w / of,
                    h: length,
                },
            };
            Cell {
                planted,
                words,
                area,
            }
        };
    let planted = bed.planted.iter().zip(&words.planted);
    planted.zip(lanes).map(cell).collect()
}

/// For each planting its lane, and of how many: those that share strips, also through others,
/// part the bed's width among them.
fn lanes(planted: &[Planted]) -> Vec<(usize, usize)> {
    let stand = |k: usize| &planted[k].dated.stand;
    let share = |a: usize, b: usize| stand(a).shares_strips(stand(b));
    let mut lanes: Vec<usize> = Vec::new();
    let mut groups: Vec<usize> = Vec::new();
    for at in 0..planted.len() {
        let near: Vec<usize> = (0..at).filter(|other| share(*other, at)).collect();
        let taken = |lane: &usize| near.iter().any(|other| lanes[*other] == *lane);
        lanes.push((0..).find(|lane| !taken(lane)).unwrap_or(0));
        groups.push(at);
        let joined: Vec<usize> = near.iter().map(|other| groups[*other]).collect();
        for group in &mut groups {
            if joined.contains(group) {
                *group = at;
            }
        }
    }
    let deepest = |group: usize| {
        let of_group = groups.iter().zip(&lanes).filter(|(g, _)| **g == group);
        of_group.map(|(_, lane)| lane + 1).max().unwrap_or(1)
    };
    let both = lanes.iter().zip(&groups);
    both.map(|(lane, group)| (*lane, deepest(*group))).collect()
}

/// The trellis of a bed: on the side away from the sun, from the bed's start.
pub fn trellis(bed: &MapBed, area: Area, south: bool) -> Markup {
    if bed.trellis.0 <= 0.0 {
        return html! {};
    }
    let length = bed.trellis.0 * area.w / bed.ground.extent.0.0;
    let (from, to, out) = match (bed.runs, south) {
        (Runs::EastWest, false) => ((area.x, area.y), (area.x + length, area.y), (0.0, -1.0)),
        (Runs::EastWest, true) => {
            let y = area.bottom();
            ((area.x, y), (area.x + length, y), (0.0, 1.0))
        }
        (Runs::NorthSouth, false) => {
            let x = area.right();
            ((x, area.y), (x, area.y + length), (1.0, 0.0))
        }
        (Runs::NorthSouth, true) => {
            let (x, y) = (area.right(), area.bottom());
            ((x, y - length), (x, y), (1.0, 0.0))
        }
    };
    html! { g.trellis { (rail(from, to, out)) } }
}

/// A thick line with short posts to one side.
pub fn rail(from: (f64, f64), to: (f64, f64), out: (f64, f64)) -> Markup {
    let (dx, dy) = (to.0 - from.0, to.1 - from.1);
    let posts = (dx.hypot(dy) / 7.0).floor().max(1.0) as u32;
    let post = |k: u32| {
        let part = f64::from(k) / f64::from(posts);
        let at = (from.0 + dx * part, from.1 + dy * part);
        line(at, (at.0 + out.0 * 4.5, at.1 + out.1 * 4.5), "ink", 1.2)
    };
    html! {
        (line(from, to, "ink", 2.6))
        @for k in 0..=posts { (post(k)) }
    }
}
