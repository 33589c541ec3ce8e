//! A page of plain text that fits a width: headings, paragraphs, lists, tables.

use std::fmt::Write;

use anstyle::Style;
use comfy_table::{
    Cell, CellAlignment, ColumnConstraint, ContentArrangement, Table, Width, presets,
};
use textwrap::{Options, WordSplitter};

/// How a page is to look.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Columns of text; at least 40 are used.
    pub width: usize,
    /// True if the reader's screen shows bold text.
    pub color: bool,
}

/// Text under construction.
pub(super) struct Page {
    look: Look,
    text: String,
}

/// The left margin of everything under a heading.
const MARGIN: &str = "  ";

impl Page {
    /// An empty page.
    pub fn new(look: Look) -> Self {
        Self {
            look: Look {
                width: look.width.max(40),
                ..look
            },
            text: String::new(),
        }
    }

    /// The columns between margin and edge.
    pub fn room(&self) -> usize {
        self.look.width - MARGIN.len()
    }

    /// A title or verdict: bold, wrapped, without a margin.
    pub fn title(&mut self, text: &str) {
        for line in textwrap::wrap(text, self.look.width) {
            self.bold(&line);
        }
    }

    /// A heading in capitals, after an empty line.
    pub fn heading(&mut self, text: &str) {
        self.gap();
        self.bold(&text.to_uppercase());
    }

    /// An empty line, unless the page is empty or ends with one.
    pub fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// A wrapped paragraph without a margin.
    pub fn paragraph(&mut self, text: &str) {
        self.wrapped(text, "", "");
    }

    /// A wrapped paragraph under a heading.
    pub fn line(&mut self, text: &str) {
        self.wrapped(text, MARGIN, MARGIN);
    }

    /// A list item.
    pub fn item(&mut self, text: &str) {
        self.wrapped(text, "  - ", "    ");
    }

    /// What belongs to the row of a table above it.
    pub fn under(&mut self, text: &str) {
        self.wrapped(text, "    > ", "      ");
    }

    /// A label of `label_width` columns and its text beside it.
    pub fn entry(&mut self, label: &str, label_width: usize, text: &str) {
        let first = format!("{MARGIN}{label:<label_width$}  ");
        let hanging = " ".repeat(MARGIN.len() + label_width + 2);
        self.wrapped(text, &first, &hanging);
    }

    /// A table; columns that are empty throughout are left out, and so is a header of nothing.
    /// `right` names the columns whose cells are numbers.
    pub fn table(&mut self, header: &[&str], rows: &[Vec<String>], right: &[usize]) {
        let room = self.room();
        let kept: Vec<usize> = (0..header.len())
            .filter(|&c| rows.iter().any(|r| r.get(c).is_some_and(|t| !t.is_empty())))
            .collect();
        let lay_out = |whole_dates: bool| {
            let mut table = Table::new();
            table
                .load_style(presets::NOTHING)
                .set_content_arrangement(ContentArrangement::Dynamic)
                .set_width(u16::try_from(room).unwrap_or(u16::MAX));
            if header.iter().any(|name| !name.is_empty()) {
                table.set_header(kept.iter().filter_map(|&c| header.get(c)));
            }
            for row in rows {
                table.add_row(kept.iter().map(|&c| {
                    let text = row.get(c).map_or("", String::as_str);
                    let text = match whole_dates {
                        true => text.to_owned(),
                        false => text.replace('\u{a0}', " "),
                    };
                    let side = if right.contains(&c) {
                        CellAlignment::Right
                    } else {
                        CellAlignment::Left
                    };
                    Cell::new(text).set_alignment(side)
                }));
            }
            let fits = keep_words_whole(&mut table, room);
            (table, fits)
        };
        // Where whole dates do not fit, they break between their parts, so that words do not.
        let (table, fits) = lay_out(true);
        let table = if fits { table } else { lay_out(false).0 };
        for line in table.lines() {
            self.raw(line.trim_end());
        }
    }

    /// A line that is already laid out, under the margin.
    pub fn raw(&mut self, line: &str) {
        let line = format!("{MARGIN}{line}");
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    /// The finished text, with a line end after the last line. Spaces that held dates
    /// together become plain ones.
    pub fn finish(self) -> String {
        self.text.replace('\u{a0}', " ")
    }

    fn bold(&mut self, line: &str) {
        let bold = if self.look.color {
            Style::new().bold()
        } else {
            Style::new()
        };
        // Writing to a string cannot fail.
        let _ = writeln!(self.text, "{bold}{line}{bold:#}");
    }

    fn wrapped(&mut self, text: &str, first: &str, hanging: &str) {
        let options = Options::new(self.look.width)
            .initial_indent(first)
            .subsequent_indent(hanging)
            .word_splitter(WordSplitter::NoHyphenation);
        for line in textwrap::wrap(text, options) {
            self.text.push_str(line.trim_end());
            self.text.push('\n');
        }
    }
}

/// Gives every column room for its longest word, with a gap of two columns between, or of one
/// where two do not fit. Words break only where not even that fits; then false.
fn keep_words_whole(table: &mut Table, room: usize) -> bool {
    let longest: Vec<usize> = table
        .column_iter()
        .enumerate()
        .map(|(c, _)| longest_word(table, c))
        .collect();
    let gaps = longest.len().saturating_sub(1);
    let words: usize = longest.iter().sum();
    let gap = if words + 2 * gaps <= room { 2 } else { 1 };
    let fits = words + gap * gaps <= room;
    for (column, longest) in table.column_iter_mut().zip(longest) {
        let padding = if column.index == gaps { 0 } else { gap };
        column.set_padding((0, u16::try_from(padding).unwrap_or(0)));
        if fits {
            let least = u16::try_from(longest + padding).unwrap_or(u16::MAX);
            column.set_constraint(ColumnConstraint::LowerBoundary(Width::Fixed(least)));
        }
    }
    fits
}

/// The longest word in a column, its header included.
fn longest_word(table: &Table, column: usize) -> usize {
    table
        .header()
        .into_iter()
        .chain(table.row_iter())
        .filter_map(|row| row.cell_iter().nth(column))
        .flat_map(|cell| {
            cell.content()
                .split([' ', '\n'])
                .map(|word| word.chars().count())
                .collect::<Vec<_>>()
        })
        .max()
        .unwrap_or(0)
}
