//! The blocks of a report as markup: sections, paragraphs, lists, tables.

mod agendas;
mod said;

use std::ops::Range;

use maud::{Markup, html};

use crate::page::{Block, Grid, Page, Picture, Table, TooWide};

use super::safe::steady;

use said::said;

/// The most columns of figures that fit on paper side by side.
const COLUMNS: usize = 11;

/// A cell of so many letters is not broken on a screen: it asks for less room than most heads of columns.
const SHORT: usize = 10;

/// What is drawn on a page, where there is something to draw.
pub struct Draw<'a> {
    /// A picture.
    pub picture: &'a dyn Fn(Picture) -> Option<Markup>,
    /// The cloth of a crop, before its name in a table.
    pub chip: &'a dyn Fn(&str) -> Option<Markup>,
}

/// All blocks of a page; a heading opens a section. Neighbouring sections of nothing but text stand in one element, which
/// paper may set in columns.
pub fn markup(page: &Page, draw: &Draw<'_>) -> Markup {
    let opens = |_: &Block, next: &Block| !matches!(next, Block::Heading(_));
    let sections: Vec<&[Block]> = page.blocks().chunk_by(opens).collect();
    html! {
        @for run in sections.chunk_by(|a, b| is_text(a) && is_text(b)) {
            @if run.iter().copied().all(is_text) {
                div.lists { @for section in run { (self::section(section, draw)) } }
            } @else {
                @for section in run { (self::section(section, draw)) }
            }
        }
    }
}

/// True for a section of lists and sentences only.
fn is_text(section: &[Block]) -> bool {
    let set_wide = |block: &Block| match block {
        Block::Table(_) | Block::Grid(_) | Block::Agendas(_) => true,
        Block::Drawing(_) | Block::Picture(_) => true,
        Block::Title(_) | Block::Heading(_) | Block::Gap => false,
        Block::Paragraph(_) | Block::Line(_) | Block::Item(_) | Block::Entry { .. } => false,
    };
    matches!(section, [Block::Heading(_), ..]) && !section.iter().any(set_wide)
}

fn section(blocks: &[Block], draw: &Draw<'_>) -> Markup {
    html! {
        @if let [Block::Heading(name), rest @ ..] = blocks {
            section { h2 { (said(name)) } (content(rest, name, draw)) }
        } @else {
            (content(blocks, "", draw))
        }
    }
}

/// Blocks below one heading; blocks of one kind that make a list stand in one.
fn content(blocks: &[Block], heading: &str, draw: &Draw<'_>) -> Markup {
    let same_list = |a: &Block, b: &Block| {
        matches!(
            (a, b),
            (Block::Item(_), Block::Item(_)) | (Block::Entry { .. }, Block::Entry { .. })
        )
    };
    html! {
        @for run in blocks.chunk_by(same_list) {
            @match run {
                [Block::Item(_), ..] => ul {
                    @for block in run { @if let Block::Item(text) = block { li { (said(text)) } } }
                }
                [Block::Entry { .. }, ..] => dl {
                    @for entries in run.chunk_by(|a, b| label(a) == label(b)) {
                        div {
                            dt { (said(label(&entries[0]))) }
                            @for block in entries {
                                @if let Block::Entry { text, .. } = block { dd { (said(text)) } }
                            }
                        }
                    }
                }
                [Block::Title(text)] => p.verdict { (said(text)) },
                [Block::Paragraph(text) | Block::Line(text)] => p { (said(text)) },
                [Block::Table(table)] => (self::table(table, heading, draw.chip)),
                [Block::Grid(grid)] => (self::grid(grid, heading)),
                [Block::Agendas(agendas)] => (agendas::markup(agendas)),
                [Block::Drawing(drawing)] => { pre { (drawing.wide.0.join("\n")) } p { (drawing.wide.1) } }
                [Block::Picture(picture)] => @if let Some(drawn) = (draw.picture)(*picture) { (drawn) },
                _ => {}
            }
        }
    }
}

/// The label of an entry.
fn label(block: &Block) -> &str {
    match block {
        Block::Entry { label, .. } => label,
        _ => "",
    }
}

fn table(table: &Table, heading: &str, chip: &dyn Fn(&str) -> Option<Markup>) -> Markup {
    let columns = table.used_columns();
    let number = |column: &usize| table.right.contains(column).then_some("n");
    let named = table.has_header();
    let label = |column: usize| {
        let name = table.header.get(column).filter(|_| named);
        name.map(|name| steady(name.trim()))
            .filter(|name| !name.is_empty())
    };
    html! {
        table aria-label=[name_of(heading)] {
            @if named {
                thead { tr {
                    @for column in &columns {
                        (head(table.header.get(*column), number(column)))
                    }
                } }
            }
            tbody {
                @for row in &table.rows {
                    tr {
                        @for column in &columns {
                            td class=[number(column).or(whole(row.get(*column)))] data-label=[label(*column)] { (lines(row.get(*column), chip)) }
                        }
                    }
                }
            }
        }
    }
}

/// The class of a cell that stays on one line on a screen, such as a day or `Grade 1`; paper is narrower.
fn whole(cell: Option<&String>) -> Option<&'static str> {
    let text = cell.filter(|text| text.contains(' '))?;
    (text.chars().count() <= SHORT).then_some("whole")
}

/// The name of a table for whoever cannot see its heading.
fn name_of(heading: &str) -> Option<String> {
    (!heading.is_empty()).then(|| steady(heading))
}

/// A table of rows under a header.
pub fn rows(name: &str, header: &[String], rows: &[Vec<String>]) -> Markup {
    let whole = Table {
        header: header.to_vec(),
        rows: rows.to_vec(),
        right: Vec::new(),
        too_wide: TooWide::Wrap,
    };
    table(&whole, name, &|_| None)
}

/// A grid, in parts where it has more columns than a sheet of paper is wide.
fn grid(grid: &Grid, heading: &str) -> Markup {
    let columns = grid
        .rows
        .iter()
        .map(|row| row.cells.len())
        .max()
        .unwrap_or(0);
    let parts = columns.div_ceil(COLUMNS).max(1);
    let each = columns.div_ceil(parts);
    html! {
        @for part in 0..parts {
            (grid_part(grid, part * each..columns.min((part + 1) * each), heading))
        }
    }
}

/// Some columns of a grid; what stands under a row, where the first of them is.
fn grid_part(grid: &Grid, columns: Range<usize>, heading: &str) -> Markup {
    let label = |column: usize| {
        let names = grid.header.iter().filter_map(|names| names.get(column + 1));
        let names: Vec<String> = names.map(|name| steady(name.trim())).collect();
        names.join(" ")
    };
    html! {
        table.grid aria-label=[name_of(heading)] {
            thead {
                @for names in &grid.header {
                    tr {
                        (head(names.first(), None))
                        @for column in columns.clone() { (head(names.get(column + 1), Some("n"))) }
                    }
                }
            }
            @for row in &grid.rows {
                tbody {
                    tr {
                        th scope="row" { (said(&row.label)) }
                        @for (column, cell) in columns.clone().zip(row.cells.get(columns.clone()).unwrap_or_default()) {
                            td.n data-label=(label(column)) { (said(cell)) }
                        }
                    }
                    @if let Some(text) = row.under.as_ref().filter(|_| columns.start == 0) {
                        tr.under { td colspan=(columns.len() + 1) { (said(text)) } }
                    }
                }
            }
        }
    }
}

/// The name of a column; nothing is no heading.
fn head(name: Option<&String>, class: Option<&str>) -> Markup {
    let name = name.map_or("", |name| name.trim());
    html! {
        @if name.is_empty() { td {} } @else { th scope="col" class=[class] { (said(name)) } }
    }
}

/// The lines of a cell; a line that is a crop's name has its cloth before it.
fn lines(cell: Option<&String>, chip: &dyn Fn(&str) -> Option<Markup>) -> Markup {
    let text = cell.map_or("", String::as_str);
    html! {
        @for (n, line) in text.split('\n').enumerate() {
            @if n > 0 { br; }
            @if let Some(chip) = chip(line) { (chip) }
            (said(line))
        }
    }
}
