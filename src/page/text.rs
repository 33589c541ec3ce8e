//! A page as plain text that fits a width.

use std::fmt::Write;

use anstyle::Style;
use comfy_table::{
    Cell, CellAlignment, ColumnConstraint, ContentArrangement, Table as Laid, Width, presets,
};
use textwrap::{Options, WordSplitter};

use crate::harmless;

use super::blocks::{Agenda, Block, Drawing, Grid, Page, Table, TooWide};

/// How a page is to look.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Look {
    /// Columns of text; at least 40 are used.
    pub width: usize,
    /// True if the reader's screen shows bold text.
    pub color: bool,
}

/// The left margin of everything under a heading.
const MARGIN: &str = "  ";

/// Pages narrower than this keep no column of labels wider than it must be.
const NARROW: usize = 80;

/// The most columns that names of rows take when a table is shown in parts.
const NAME: usize = 26;

/// Columns between two cells of a table that is shown in parts.
const GAP: usize = 2;

impl Page {
    /// The page as text, with a line end after the last line. What people gave is made harmless
    /// before it is laid out; spaces that held dates together become plain ones.
    #[must_use]
    pub fn text(&self, look: Look) -> String {
        let mut text = Text {
            look: Look {
                width: look.width.max(40),
                ..look
            },
            text: String::new(),
        };
        for block in self.map(harmless::lines).blocks() {
            text.block(block);
        }
        text.text.replace('\u{a0}', " ")
    }
}

/// Text under construction.
struct Text {
    look: Look,
    text: String,
}

impl Text {
    fn block(&mut self, block: &Block) {
        match block {
            Block::Title(text) => self.bold(text),
            Block::Heading(text) => {
                self.gap();
                self.bold_line(&text.to_uppercase());
            }
            Block::Gap => self.gap(),
            Block::Paragraph(text) => self.wrapped(text, "", ""),
            Block::Line(text) => self.wrapped(text, MARGIN, MARGIN),
            Block::Item(text) => self.wrapped(text, "  - ", "    "),
            Block::Entry { label, width, text } => {
                let first = format!("{MARGIN}{label:<width$}  ");
                let hanging = " ".repeat(MARGIN.len() + width + 2);
                self.wrapped(text, &first, &hanging);
            }
            Block::Table(table) => self.table(table),
            Block::Grid(grid) => self.grid(grid),
            Block::Agendas(agendas) => agendas.iter().for_each(|agenda| self.agenda(agenda)),
            Block::Drawing(drawing) => self.drawing(drawing),
            Block::Picture(_) => {}
        }
    }

    /// The columns between margin and edge.
    fn room(&self) -> usize {
        self.look.width - MARGIN.len()
    }

    /// An empty line, unless the page is empty or ends with one.
    fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    fn table(&mut self, table: &Table) {
        match table.too_wide {
            TooWide::Wrap => self.columns(table, &table.used_columns(), 0),
            TooWide::Labels(_) if self.look.width < NARROW => {
                self.columns(table, &table.used_columns(), 0);
            }
            TooWide::Labels(width) => self.columns(table, &table.used_columns(), width),
            TooWide::Repeat(kept) => {
                for (n, columns) in parts(table, kept, self.room()).iter().enumerate() {
                    if n > 0 {
                        self.gap();
                    }
                    self.columns(table, columns, 0);
                }
            }
        }
    }

    /// Some columns of a table, the first at least `label` wide.
    fn columns(&mut self, table: &Table, columns: &[usize], label: usize) {
        let room = self.room();
        // Where whole dates do not fit, they break between their parts, so that words do not.
        let (whole, fits) = laid_out(table, columns, label, room, true);
        let laid = if fits {
            whole
        } else {
            laid_out(table, columns, label, room, false).0
        };
        for line in laid.lines() {
            self.raw(line.trim_end());
        }
    }

    /// A grid, in as many blocks as the width asks for; what stands under a row, in the first.
    fn grid(&mut self, grid: &Grid) {
        let longest = |texts: &mut dyn Iterator<Item = &String>| {
            texts.map(|t| t.chars().count()).max().unwrap_or(0)
        };
        let header = &grid.header;
        let names = header.iter().filter_map(|line| line.first());
        let label = longest(&mut grid.rows.iter().map(|r| &r.label).chain(names));
        let columns = header.iter().map(|line| line.len()).max().unwrap_or(1) - 1;
        let widths: Vec<usize> = (0..columns)
            .map(|c| {
                let names = header.iter().filter_map(|line| line.get(c + 1));
                let cells = grid.rows.iter().filter_map(|row| row.cells.get(c));
                longest(&mut cells.chain(names)) + grid.gap
            })
            .collect();
        for (n, block) in blocks(&widths, self.room().saturating_sub(label))
            .into_iter()
            .enumerate()
        {
            if n > 0 {
                self.raw("");
            }
            let line = |first: &str, cells: &[String]| {
                let cells = block.clone().filter_map(|c| {
                    let (cell, width) = (cells.get(c)?, widths.get(c)?);
                    Some(format!("{cell:>width$}"))
                });
                format!("{first:<label$}{}", cells.collect::<String>())
            };
            for names in header {
                if let [first, cells @ ..] = names.as_slice() {
                    self.raw(&line(first, cells));
                }
            }
            for row in &grid.rows {
                self.raw(&line(&row.label, &row.cells));
                if let Some(text) = row.under.as_ref().filter(|_| n == 0) {
                    self.wrapped(text, "    > ", "      ");
                }
            }
        }
    }

    /// An agenda: its head, then a line for each entry.
    fn agenda(&mut self, agenda: &Agenda) {
        self.gap();
        self.bold(&agenda.head);
        for entry in &agenda.entries {
            let when = entry.when.join(" ");
            let parts = std::iter::once(&entry.what).chain(&entry.more);
            let told: Vec<&str> = parts.map(String::as_str).collect();
            self.wrapped(&format!("{when}: {}", told.join(" ")), MARGIN, "    ");
        }
    }

    fn drawing(&mut self, drawing: &Drawing) {
        let (wide, _) = &drawing.wide;
        let longest = wide.iter().map(|line| line.chars().count()).max();
        let (lines, key) = if longest.unwrap_or(0) <= self.room() {
            &drawing.wide
        } else {
            &drawing.narrow
        };
        for line in lines {
            self.raw(line);
        }
        self.gap();
        self.wrapped(key, MARGIN, MARGIN);
    }

    /// A line that is already laid out, under the margin.
    fn raw(&mut self, line: &str) {
        let line = format!("{MARGIN}{line}");
        self.text.push_str(line.trim_end());
        self.text.push('\n');
    }

    fn bold(&mut self, text: &str) {
        for line in textwrap::wrap(text, self.look.width) {
            self.bold_line(&line);
        }
    }

    fn bold_line(&mut self, line: &str) {
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

/// The columns of a table in as many parts as the width asks for, each with the first `kept`.
fn parts(table: &Table, kept: usize, room: usize) -> Vec<Vec<usize>> {
    let width = |column: usize| {
        let cells = table.rows.iter().filter_map(|row| row.get(column));
        let cells = cells.chain(table.header.get(column));
        cells.map(|cell| cell.chars().count()).max().unwrap_or(0) + GAP
    };
    let first: Vec<usize> = (0..kept).collect();
    let always: usize = first
        .iter()
        .map(|c| {
            if *c == 0 {
                width(0).min(NAME)
            } else {
                width(*c)
            }
        })
        .sum();
    let mut parts: Vec<Vec<usize>> = Vec::new();
    let mut used = room;
    for column in kept..table.header.len() {
        match parts.last_mut() {
            Some(part) if used + width(column) <= room + GAP => part.push(column),
            _ => {
                parts.push(first.iter().copied().chain([column]).collect());
                used = always;
            }
        }
        used += width(column);
    }
    parts
}

/// Runs of columns that fit side by side.
fn blocks(widths: &[usize], room: usize) -> Vec<std::ops::Range<usize>> {
    let mut blocks: Vec<std::ops::Range<usize>> = Vec::new();
    let mut used = 0;
    for (column, width) in widths.iter().enumerate() {
        match blocks.last_mut() {
            Some(block) if used + width <= room => {
                block.end = column + 1;
                used += width;
            }
            _ => {
                blocks.push(column..column + 1);
                used = *width;
            }
        }
    }
    blocks
}

/// Columns of a table laid out; false if a word had to be broken. A header of nothing is left
/// out.
fn laid_out(
    table: &Table,
    columns: &[usize],
    label: usize,
    room: usize,
    whole_dates: bool,
) -> (Laid, bool) {
    let mut laid = Laid::new();
    laid.load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(u16::try_from(room).unwrap_or(u16::MAX));
    if table.has_header() {
        laid.set_header(columns.iter().filter_map(|&c| table.header.get(c)));
    }
    for row in &table.rows {
        laid.add_row(columns.iter().map(|&c| {
            let text = row.get(c).map_or("", String::as_str);
            let text = match whole_dates {
                true => text.to_owned(),
                false => text.replace('\u{a0}', " "),
            };
            let text = match c {
                // Spaces that do not break keep the column as wide under every heading.
                0 if label > 0 => format!("{text:<label$}").replace(' ', "\u{a0}"),
                _ => text,
            };
            let side = if table.right.contains(&c) {
                CellAlignment::Right
            } else {
                CellAlignment::Left
            };
            Cell::new(text).set_alignment(side)
        }));
    }
    let fits = keep_words_whole(&mut laid, room);
    (laid, fits)
}

/// Gives every column room for its longest word, with a gap of two columns between, or of one
/// where two do not fit. Words break only where not even that fits; then false.
fn keep_words_whole(table: &mut Laid, room: usize) -> bool {
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
fn longest_word(table: &Laid, column: usize) -> usize {
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
