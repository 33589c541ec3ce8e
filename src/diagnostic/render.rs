//! Problems as text: cause, file, line, column, a caret under the place, and the remedy.

use std::ops::Range;

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Level, Origin, Renderer, Snippet};

use crate::harmless::{in_place, lines, plain};

use super::findings::Findings;
use super::problem::Problem;
use super::source::{Source, Span};

/// The width where no terminal tells another.
pub const USUAL_WIDTH: usize = 100;

/// Problems that are printed of one file.
const MOST_PRINTED: usize = 20;

/// Further lines of a problem that are named.
const MOST_LINES: usize = 6;

/// Bytes that are marked.
const LONGEST_MARK: usize = 60;

/// Bytes of a line that are shown from a marked place on.
const LONGEST_REST: usize = 300;

/// All problems of all files, then their number.
pub fn render(files: &[(Source, Findings)], color: bool, width: usize) -> String {
    let renderer = if color {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let renderer = renderer
        .decor_style(DecorStyle::Ascii)
        .term_width(width.max(40));
    let mut text = String::new();
    for (source, found) in files {
        for problem in found.kept().iter().take(MOST_PRINTED) {
            text += &one(&renderer, source, problem);
            text += "\n\n";
        }
        let hidden = found.len().saturating_sub(MOST_PRINTED);
        if hidden > 0 {
            text += &format!("... and {hidden} more in {}.\n\n", plain(&source.name));
        }
    }
    text + &summary(files)
}

/// `2 errors in garden.toml, 1 error in weather.csv`
fn summary(files: &[(Source, Findings)]) -> String {
    let parts: Vec<String> = files
        .iter()
        .map(|(source, found)| (plain(&source.name), found.len()))
        .map(|(name, errors)| match errors {
            1 => format!("1 error in {name}"),
            n => format!("{n} errors in {name}"),
        })
        .collect();
    parts.join(", ") + "\n"
}

/// One problem.
fn one(renderer: &Renderer, source: &Source, problem: &Problem) -> String {
    let title = Level::ERROR
        .primary_title(lines(&problem.cause))
        .id(problem.code.name());
    let mut group = match &problem.at {
        Some((span, label)) => title.element(snippet(source, *span, label, &problem.also)),
        None => title.element(Origin::path(plain(&source.name))),
    };
    if let Some(remedy) = &problem.remedy {
        group = group.element(Level::HELP.message(lines(remedy)));
    }
    if let Some(again) = again(source, &problem.again) {
        group = group.element(Level::NOTE.message(again));
    }
    renderer.render(&[group])
}

/// Where else a problem stands: all lines if they are few, else how many.
fn again(source: &Source, places: &[Span]) -> Option<String> {
    let lines = places.iter().map(|span| source.line_number(span.start));
    let text = match places {
        [] => return None,
        [one] => format!("likewise in line {}", source.line_number(one.start)),
        few if few.len() <= MOST_LINES => {
            let lines: Vec<String> = lines.map(|line| line.to_string()).collect();
            format!("likewise in lines {}", lines.join(", "))
        }
        many => {
            let last = many.iter().map(|span| span.start).max().unwrap_or(0);
            let last = source.line_number(last);
            format!("likewise in {} more places, up to line {last}", many.len())
        }
    };
    Some(text)
}

/// The lines that hold the marked places. Only these are handed on, so that a long file
/// costs nothing. They are made harmless sign by sign, so that columns stay, and the marks go along.
fn snippet<'a>(
    source: &'a Source,
    span: Span,
    label: &'a str,
    also: &'a [(Span, String)],
) -> Snippet<'a, annotate_snippets::Annotation<'a>> {
    let text = source.text.as_str();
    let main = on_one_line(text, span);
    let others: Vec<(Range<usize>, &str)> = also
        .iter()
        .map(|(span, label)| (on_one_line(text, *span), label.as_str()))
        .collect();
    let first = others
        .iter()
        .map(|(r, _)| r.start)
        .fold(main.start, usize::min);
    let last = others.iter().map(|(r, _)| r.end).fold(main.end, usize::max);
    let from = line_start(text, first);
    let to = line_end(text, last).min(text.floor_char_boundary(last + LONGEST_REST));
    let shown = |end: usize| in_place(text.get(from..end).unwrap_or_default());
    let shift = |r: Range<usize>| shown(r.start).len()..shown(r.end).len();
    let mark = AnnotationKind::Primary.span(shift(main));
    let mark = if label.is_empty() {
        mark
    } else {
        mark.label(lines(label))
    };
    Snippet::source(shown(to))
        .path(plain(&source.name))
        .line_start(source.line_number(from))
        .annotation(mark)
        .annotations(others.into_iter().map(|(range, label)| {
            AnnotationKind::Context
                .span(shift(range))
                .label(lines(label))
        }))
}

/// The span cut to whole characters, to its first line, and to a bearable length.
fn on_one_line(text: &str, span: Span) -> Range<usize> {
    let start = text.floor_char_boundary(span.start);
    let end = span.end.min(start + LONGEST_MARK);
    start
        ..text
            .floor_char_boundary(end)
            .clamp(start, line_end(text, start))
}

/// Where the line that holds `at` begins.
fn line_start(text: &str, at: usize) -> usize {
    text.get(..at)
        .and_then(|before| before.rfind('\n'))
        .map_or(0, |newline| newline + 1)
}

/// Where the line that holds `at` ends, without its line break.
fn line_end(text: &str, at: usize) -> usize {
    let rest = text.get(at..).unwrap_or_default();
    let line = rest.split('\n').next().unwrap_or_default();
    at + line.trim_end_matches('\r').len()
}
