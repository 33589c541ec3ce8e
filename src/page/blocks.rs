//! What people read, as a list of blocks: titles, headings, paragraphs, lists, tables. `text`
//! makes plain text of it, the handouts make pages.

use crate::garden::GradeAt;

/// Text under construction, block by block.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Page {
    blocks: Vec<Block>,
}

/// One block. Spaces that hold a date or an amount together are no-break spaces.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// A title or verdict.
    Title(String),
    /// Opens a section.
    Heading(String),
    /// Sets the next block apart.
    Gap,
    /// A paragraph of its own.
    Paragraph(String),
    /// A paragraph under a heading.
    Line(String),
    /// A list item.
    Item(String),
    /// A label with its text beside it.
    Entry {
        /// The label.
        label: String,
        /// Columns that labels of this list take.
        width: usize,
        /// The text.
        text: String,
    },
    /// A table whose cells may wrap.
    Table(Table),
    /// A table of short figures.
    Grid(Grid),
    /// Lists of dated things, side by side where there is room.
    Agendas(Vec<Agenda>),
    /// A picture made of letters.
    Drawing(Drawing),
    /// A drawn picture, on pages that can show one. What it shows stands in words beside it.
    Picture(Picture),
}

/// A drawn picture of a plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Picture {
    /// The weeks of all plantings, or of those of one grade.
    Timeline(Option<GradeAt>),
    /// Strips of each bed in use, week by week.
    BedsByWeek,
    /// Flats and strips of all beds in use, week by week.
    Space,
    /// The garden from above; the beds of one grade may be stressed.
    Map(Option<GradeAt>),
    /// How the plants of a grade stand in its beds.
    Pattern(GradeAt),
    /// The drawings of what a grade grows.
    Plants(GradeAt),
    /// Empty frames in which a child writes and draws.
    Journal,
    /// The timeline of all grades for a wall.
    Poster,
    /// Labels to cut out.
    Labels,
}

/// A table whose cells may wrap; columns that are empty throughout are not shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// A name for each column; all may be empty.
    pub header: Vec<String>,
    /// The rows. Lines of a cell end with `\n`.
    pub rows: Vec<Vec<String>>,
    /// The columns whose cells are numbers.
    pub right: Vec<usize>,
    /// How a table that is wider than the page is shown.
    pub too_wide: TooWide,
}

/// How a table that is wider than the page is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TooWide {
    /// Cells wrap.
    Wrap,
    /// In parts, each with so many of the first columns.
    Repeat(usize),
    /// The first column holds labels of so many columns, which a narrow page does not keep.
    Labels(usize),
}

/// A list of dated things with a head.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Agenda {
    /// Whose list it is.
    pub head: String,
    /// Its entries, in order of time.
    pub entries: Vec<AgendaEntry>,
}

/// An entry of an agenda.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AgendaEntry {
    /// The day, and the hour under it.
    pub when: Vec<String>,
    /// What is done.
    pub what: String,
    /// More of it, line by line.
    pub more: Vec<String>,
    /// What is written down there.
    pub fields: Vec<String>,
    /// How it is shown.
    pub weight: Weight,
}

/// How an entry of an agenda is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    /// Something to do, with a box to tick.
    Task,
    /// The same, which must not fall out.
    Crucial,
    /// Something small.
    Quiet,
    /// Something that parts what was before it from what comes after.
    Rule,
}

/// A table of short figures, of which a line may stand under a row.
#[derive(Debug, Clone, PartialEq)]
pub struct Grid {
    /// Lines of column names; each line opens with the name of the column of labels.
    pub header: Vec<Vec<String>>,
    /// The rows.
    pub rows: Vec<GridRow>,
    /// Columns of text between two figures.
    pub gap: usize,
}

/// A row of a grid.
#[derive(Debug, Clone, PartialEq)]
pub struct GridRow {
    /// What the row is about.
    pub label: String,
    /// Its figures.
    pub cells: Vec<String>,
    /// What belongs to it.
    pub under: Option<String>,
}

/// A picture made of letters, with its key, for pages on which it fits and for narrower ones.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// The lines for pages that hold the longest of them.
    pub wide: (Vec<String>, String),
    /// The lines for all other pages.
    pub narrow: (Vec<String>, String),
}

impl Page {
    /// An empty page.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// What stands on it, from the top.
    #[must_use]
    pub fn blocks(&self) -> &[Block] {
        &self.blocks
    }

    /// A title or verdict.
    pub fn title(&mut self, text: &str) {
        self.blocks.push(Block::Title(text.to_owned()));
    }

    /// Opens a section.
    pub fn heading(&mut self, text: &str) {
        self.blocks.push(Block::Heading(text.to_owned()));
    }

    /// Sets the next block apart.
    pub fn gap(&mut self) {
        self.blocks.push(Block::Gap);
    }

    /// A paragraph of its own.
    pub fn paragraph(&mut self, text: &str) {
        self.blocks.push(Block::Paragraph(text.to_owned()));
    }

    /// A paragraph under a heading.
    pub fn line(&mut self, text: &str) {
        self.blocks.push(Block::Line(text.to_owned()));
    }

    /// A list item.
    pub fn item(&mut self, text: &str) {
        self.blocks.push(Block::Item(text.to_owned()));
    }

    /// A label of `width` columns and its text beside it.
    pub fn entry(&mut self, label: &str, width: usize, text: &str) {
        let (label, text) = (label.to_owned(), text.to_owned());
        self.blocks.push(Block::Entry { label, width, text });
    }

    /// A table. `right` names the columns whose cells are numbers.
    pub fn table(&mut self, header: &[&str], rows: &[Vec<String>], right: &[usize]) {
        self.push_table(header, rows.to_vec(), right, TooWide::Wrap);
    }

    /// A table that is shown in parts where it is too wide, each with the first `kept` columns.
    pub fn table_in_parts(&mut self, header: &[&str], rows: Vec<Vec<String>>, kept: usize) {
        self.push_table(header, rows, &[], TooWide::Repeat(kept));
    }

    /// Labels of `width` columns, with text and further columns beside them.
    pub fn labelled(&mut self, mut rows: Vec<Vec<String>>, width: usize) {
        for label in rows.iter_mut().filter_map(|row| row.first_mut()) {
            *label = label.replace(' ', "\u{a0}");
        }
        let columns = rows.iter().map(Vec::len).max().unwrap_or(0);
        self.push_table(&vec![""; columns], rows, &[], TooWide::Labels(width));
    }

    /// A table of short figures.
    pub fn grid(&mut self, grid: Grid) {
        self.blocks.push(Block::Grid(grid));
    }

    /// Lists of dated things, side by side.
    pub fn agendas(&mut self, agendas: Vec<Agenda>) {
        self.blocks.push(Block::Agendas(agendas));
    }

    /// A picture made of letters.
    pub fn drawing(&mut self, drawing: Drawing) {
        self.blocks.push(Block::Drawing(drawing));
    }

    /// A drawn picture, where the page can show one.
    pub fn picture(&mut self, picture: Picture) {
        self.blocks.push(Block::Picture(picture));
    }

    /// The same page with every text of it changed by `f`.
    #[must_use]
    pub fn map(&self, f: impl Fn(&str) -> String) -> Self {
        Self {
            blocks: self.blocks.iter().map(|block| block.map(&f)).collect(),
        }
    }

    /// Goes on with another page.
    pub fn append(&mut self, other: Page) {
        self.blocks.extend(other.blocks);
    }

    fn push_table(
        &mut self,
        header: &[&str],
        rows: Vec<Vec<String>>,
        right: &[usize],
        too_wide: TooWide,
    ) {
        self.blocks.push(Block::Table(Table {
            header: header.iter().map(|name| (*name).to_owned()).collect(),
            rows,
            right: right.to_vec(),
            too_wide,
        }));
    }
}

impl Block {
    fn map(&self, f: &impl Fn(&str) -> String) -> Self {
        let all = |texts: &[String]| texts.iter().map(|text| f(text)).collect::<Vec<_>>();
        let tables = |rows: &[Vec<String>]| rows.iter().map(|row| all(row)).collect();
        let drawn = |(lines, key): &(Vec<String>, String)| (all(lines), f(key));
        match self {
            Self::Title(text) => Self::Title(f(text)),
            Self::Heading(text) => Self::Heading(f(text)),
            Self::Gap => Self::Gap,
            Self::Paragraph(text) => Self::Paragraph(f(text)),
            Self::Line(text) => Self::Line(f(text)),
            Self::Item(text) => Self::Item(f(text)),
            Self::Entry { label, width, text } => Self::Entry {
                label: f(label),
                width: *width,
                text: f(text),
            },
            Self::Table(table) => Self::Table(Table {
                header: all(&table.header),
                rows: tables(&table.rows),
                right: table.right.clone(),
                too_wide: table.too_wide,
            }),
            Self::Grid(grid) => Self::Grid(Grid {
                header: tables(&grid.header),
                rows: grid.rows.iter().map(|row| row.map(f)).collect(),
                gap: grid.gap,
            }),
            Self::Drawing(drawing) => Self::Drawing(Drawing {
                wide: drawn(&drawing.wide),
                narrow: drawn(&drawing.narrow),
            }),
            Self::Agendas(agendas) => {
                Self::Agendas(agendas.iter().map(|agenda| agenda.map(f)).collect())
            }
            Self::Picture(picture) => Self::Picture(*picture),
        }
    }
}

impl Agenda {
    fn map(&self, f: &impl Fn(&str) -> String) -> Self {
        let all = |texts: &[String]| texts.iter().map(|text| f(text)).collect::<Vec<_>>();
        let entry = |entry: &AgendaEntry| AgendaEntry {
            when: all(&entry.when),
            what: f(&entry.what),
            more: all(&entry.more),
            fields: all(&entry.fields),
            weight: entry.weight,
        };
        Self {
            head: f(&self.head),
            entries: self.entries.iter().map(entry).collect(),
        }
    }
}

impl GridRow {
    fn map(&self, f: &impl Fn(&str) -> String) -> Self {
        Self {
            label: f(&self.label),
            cells: self.cells.iter().map(|cell| f(cell)).collect(),
            under: self.under.as_deref().map(f),
        }
    }
}

impl Table {
    /// The columns in which something stands.
    #[must_use]
    pub fn used_columns(&self) -> Vec<usize> {
        let used = |c: &usize| {
            let mut cells = self.rows.iter().filter_map(|row| row.get(*c));
            cells.any(|text| !text.is_empty())
        };
        (0..self.header.len()).filter(used).collect()
    }

    /// True if its columns have names.
    #[must_use]
    pub fn has_header(&self) -> bool {
        self.header.iter().any(|name| !name.is_empty())
    }
}
