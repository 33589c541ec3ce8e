//! The steps of a row: a flag at the first day of each, with its words where they meet no others.

use maud::{Markup, html};

use crate::report::pictures::timeline::Mark;

use super::super::lettering::{LINE, SIZE, width};
use super::super::sheet::{Anchor, Area, line, text};
use super::super::weeks::Scale;

/// Between two words on one line.
const APART: f64 = 5.0;

/// A mark with the place of its words.
pub struct Placed<'m> {
    mark: &'m Mark,
    /// Where its day is.
    x: f64,
    /// Where its words begin, and on which line over the bar; `None` where they find no room.
    words: Option<(f64, usize)>,
}

/// The marks of a row with their words on at most so many lines. From the last to the first, each takes the lowest line
/// on which it is free: so a flag passes beside the words that lie lower, not through them. Where there is one line
/// only, the last one comes first and then the others in order of time, so that the beginning is not lost.
pub fn placed<'m>(marks: &'m [Mark], scale: &Scale, most: usize) -> Vec<Placed<'m>> {
    let mut taken: Vec<(usize, f64, f64)> = Vec::new();
    let mut all: Vec<Placed<'m>> = Vec::new();
    let last = marks.iter().rev().take(1);
    let others: Vec<&Mark> = match most {
        1 => marks.iter().take(marks.len().saturating_sub(1)).collect(),
        _ => marks.iter().rev().skip(1).collect(),
    };
    for mark in last.chain(others) {
        let (x, wide) = (scale.middle(mark.day), width(&mark.words));
        let from = (x + 2.5).min(scale.right - wide);
        let free = |line: &usize| {
            let meets = |(other, left, right): &(usize, f64, f64)| {
                other == line && from < right + APART && left - APART < from + wide
            };
            !taken.iter().any(meets)
        };
        let words = (0..most).find(free).map(|line| (from, line));
        taken.extend(words.map(|(from, line)| (line, from, from + wide)));
        all.push(Placed { mark, x, words });
    }
    all.sort_by(|a, b| a.x.total_cmp(&b.x));
    all
}

/// How many lines of words there are.
pub fn lines(placed: &[Placed<'_>]) -> usize {
    let lines = placed.iter().filter_map(|p| p.words);
    lines.map(|(_, line)| line + 1).max().unwrap_or(0)
}

/// All marks over and across a bar.
pub fn draw(placed: &[Placed<'_>], bar: Area) -> Markup {
    let base = |line: usize| bar.y - 3.0 - LINE * line as f64;
    html! {
        @for Placed { mark, x, words } in placed {
            @let top = words.map_or(bar.y - 2.0, |(_, line)| base(line) - SIZE + 2.0);
            g.mark data-step=(mark.key) data-day=(mark.day) {
                (line((*x, top), (*x, bar.bottom() + 1.5), "hue", 1.3))
            }
        }
        @for Placed { mark, words, .. } in placed {
            @if let Some((from, line)) = words { (text(*from, base(*line), Anchor::Start, &mark.words)) }
        }
    }
}
