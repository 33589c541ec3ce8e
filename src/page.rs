//! What is shown, as blocks: paragraphs, tables, rows of weeks, pictures; and the same as text for a
//! screen of any width. Whoever words something puts it here, whoever shows it takes it from here.

mod bars;
mod blocks;
mod text;

pub use bars::{BarLine, bars};
pub use blocks::{
    Agenda, AgendaEntry, Block, Drawing, Grid, GridRow, Page, Picture, Table, TooWide, Weight,
};
pub use text::Look;
