//! The tables as a workbook: a sheet each, with real days, times and numbers. What reads like a
//! formula is written as the text that it is.

use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};

use crate::harmless::plain;
use crate::report::tables::{Cell, Table};

/// The name of the workbook.
pub const WORKBOOK: &str = "plan.xlsx";

/// The most letters that a cell may have.
const MOST_LETTERS: usize = 32_767;

/// How cells look.
struct Looks {
    head: Format,
    day: Format,
    time: Format,
}

/// The tables as one workbook. It carries no moment of its making, so the same tables give the
/// same bytes.
///
/// # Errors
/// Those of the writer: a table with too many columns or rows.
pub fn workbook(tables: &[Table]) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    let made = ExcelDateTime::from_ymd(2020, 1, 1)?;
    book.set_properties(&DocProperties::new().set_creation_datetime(&made));
    let looks = Looks {
        head: Format::new().set_bold().set_text_wrap(),
        day: Format::new().set_num_format("yyyy-mm-dd"),
        time: Format::new().set_num_format("hh:mm"),
    };
    for table in tables {
        fill(book.add_worksheet(), table, &looks)?;
    }
    book.save_to_buffer()
}

fn fill(sheet: &mut Worksheet, table: &Table, looks: &Looks) -> Result<(), XlsxError> {
    sheet.set_name(table.name)?;
    sheet.set_freeze_panes(1, 0)?;
    for (column, head) in (0..).zip(&table.columns) {
        sheet.set_column_width(column, f64::from(head.width))?;
        sheet.write_string_with_format(0, column, text(&head.head), &looks.head)?;
    }
    for (row, cells) in (1..).zip(&table.rows) {
        for (column, cell) in (0..).zip(cells) {
            write(sheet, (row, column), cell, looks)?;
        }
    }
    Ok(())
}

fn write(
    sheet: &mut Worksheet,
    (row, column): (u32, u16),
    cell: &Cell,
    looks: &Looks,
) -> Result<(), XlsxError> {
    match cell {
        Cell::Empty => {}
        Cell::Text(words) => {
            sheet.write_string(row, column, text(words))?;
        }
        Cell::Number(number) => {
            sheet.write_number(row, column, *number)?;
        }
        Cell::Day(day) => {
            let day = ExcelDateTime::parse_from_str(&day.format("%Y-%m-%d").to_string())?;
            sheet.write_datetime_with_format(row, column, &day, &looks.day)?;
        }
        Cell::Time(time) => {
            let time = ExcelDateTime::parse_from_str(&time.format("%H:%M").to_string())?;
            sheet.write_datetime_with_format(row, column, &time, &looks.time)?;
        }
    }
    Ok(())
}

fn text(words: &str) -> String {
    plain(words).chars().take(MOST_LETTERS).collect()
}
