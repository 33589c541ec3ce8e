//! Tables as CSV (RFC 4180) for spreadsheets: UTF-8 with a byte order mark, or else some take the
//! text for another encoding; every text in quotes, so that no separator cuts it.

use csv::{QuoteStyle, Terminator, WriterBuilder};

use crate::report::tables::{Cell, Table};

use super::safe;

/// The mark by which spreadsheets know UTF-8.
const BYTE_ORDER_MARK: &str = "\u{feff}";

/// A table as CSV: a line of heads, then the rows.
///
/// # Errors
/// Those of the writer; a table whose rows have all their cells gives none.
pub fn csv(table: &Table) -> Result<Vec<u8>, csv::Error> {
    let mut writer = WriterBuilder::new()
        .quote_style(QuoteStyle::NonNumeric)
        .terminator(Terminator::CRLF)
        .from_writer(BYTE_ORDER_MARK.as_bytes().to_vec());
    let heads = table.columns.iter().map(|column| safe::cell(&column.head));
    writer.write_record(heads)?;
    for row in &table.rows {
        writer.write_record(row.iter().map(text))?;
    }
    writer
        .into_inner()
        .map_err(|error| error.into_error().into())
}

/// A cell as text. Days are ISO 8601; numbers have a point and no sign for thousands.
fn text(cell: &Cell) -> String {
    match cell {
        Cell::Empty => String::new(),
        Cell::Text(text) => safe::cell(text),
        Cell::Number(number) => number.to_string(),
        Cell::Day(day) => day.format("%Y-%m-%d").to_string(),
        Cell::Time(time) => time.format("%H:%M").to_string(),
    }
}
