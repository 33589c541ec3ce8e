//! Upright bars in letters, one beside the other, each from one figure to another.

/// A line of the picture.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BarLine {
    /// Which line: so many steps above zero.
    pub step: i32,
    /// A letter for each bar: `#` where it reaches here, `-` on the line of zero, else a blank.
    pub marks: String,
}

/// The bars from lowest to highest, from the uppermost line down; a line stands for `step`, which is above zero.
#[must_use]
pub fn bars(spans: &[(f64, f64)], step: f64) -> Vec<BarLine> {
    let steps = |figure: f64| (figure / step).round() as i32;
    let spans = spans.iter().map(|(low, high)| (steps(*low), steps(*high)));
    let spans: Vec<(i32, i32)> = spans.collect();
    let bottom = spans.iter().map(|(low, _)| *low).min().unwrap_or(0);
    let top = spans.iter().map(|(_, high)| *high).max().unwrap_or(0);
    let line = |step: i32| BarLine {
        step,
        marks: spans
            .iter()
            .map(|(low, high)| match step {
                _ if (*low..=*high).contains(&step) => '#',
                0 => '-',
                _ => ' ',
            })
            .collect(),
    };
    (bottom..=top).rev().map(line).collect()
}
