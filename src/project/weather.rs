//! The weather file: comments, the header `date,tmin_c,tmax_c,rain_mm`, then one day a line.

mod cells;
mod gaps;
mod header;
mod row;
mod told;

use crate::calendar::Date;
use crate::diagnostic::{Code, Findings, Problem, Read, Source, Span};
use crate::weather::{Daily, Record};

use cells::{COMMENT, HEADER, lines};
use gaps::Gaps;
use row::{Row, row};

pub use gaps::LONGEST_FILLED;
pub use row::{RAINS, TEMPERATURES};
pub use told::{FROSTS, NAMES};

/// How the first line begins where no thermometer saw the days, as `tureen weather` writes it.
pub const GENERATED: &str = "# generated";

/// A record, and the days that it lacked and that were filled: the first and the last of each gap.
pub struct Filled {
    /// The record.
    pub record: Record,
    /// The gaps that were filled.
    pub gaps: Gaps,
}

/// Reads the whole file.
pub fn read(source: &Source, findings: &mut Findings) -> Read<Filled> {
    let generated = source.text.starts_with(GENERATED);
    let mut lines = lines(&source.text)
        .filter(|(text, _)| !text.trim().is_empty())
        .skip_while(|(text, _)| text.starts_with(COMMENT));
    let Some((header, span)) = lines.next() else {
        let problem = Problem::new(Code::EmptyFile, "this file holds no weather");
        return Err(findings.report(problem.remedy(format!(
            "its first line is `{}`, then one line per day",
            HEADER.join(",")
        ))));
    };
    header::check(header, span, findings)?;
    let rows: Vec<Read<Row>> = lines
        .map(|(text, span)| row(text, span, findings))
        .collect();
    let mut rows: Vec<Row> = rows.into_iter().collect::<Read<_>>()?;
    check_order(&mut rows, findings)?;
    let first = rows.first().map(|row| row.date).ok_or_else(|| {
        let cause = "this file has a header, but no days";
        findings.report(Problem::new(Code::EmptyFile, cause).at(span, ""))
    })?;
    let means = generated.then(|| told::means(&source.text)).flatten();
    let whole = filled(first, &rows, generated, findings)?;
    Ok(Filled {
        record: whole.record.from_means(means),
        ..whole
    })
}

/// A record of days in order, none twice; `None` if there are none, or gaps that are not filled.
pub fn of_days(days: &[(Date, Daily)]) -> Option<Filled> {
    let row = |(date, daily): &(Date, Daily)| Row {
        date: *date,
        span: Span::default(),
        daily: Ok(*daily),
    };
    let rows: Vec<Row> = days.iter().map(row).collect();
    filled(rows.first()?.date, &rows, false, &mut Findings::default()).ok()
}

fn filled(first: Date, rows: &[Row], generated: bool, findings: &mut Findings) -> Read<Filled> {
    let whole = gaps::fill(rows, findings)?;
    let record = Record::new(first, whole.days, generated).leaving_out(whole.left_out);
    let gaps = whole.filled;
    Ok(Filled { record, gaps })
}

/// Days in order, none twice.
fn check_order(rows: &mut [Row], findings: &mut Findings) -> Read<()> {
    let mut result = Ok(());
    let pairs = || (1..rows.len()).filter_map(|n| rows.get(n - 1).zip(rows.get(n)));
    if let Some((first, second)) = pairs().find(|(first, second)| second.date < first.date) {
        let cause = format!("{} stands after {}", second.date, first.date);
        result = Err(findings.report(
            Problem::new(Code::WeatherOrder, cause)
                .at(second.span, "an earlier day from here on")
                .remedy("sort the lines by date"),
        ));
    }
    rows.sort_by_key(|row| row.date);
    for pair in rows.windows(2) {
        let [first, second] = pair else { continue };
        if first.date == second.date {
            let cause = format!("{} stands twice", second.date);
            let problem = Problem::new(Code::WeatherDuplicate, cause)
                .at(second.span, "the second")
                .also(first.span, "the first")
                .remedy("remove one of the two lines");
            result = Err(findings.report(problem.of_many_lines()));
        }
    }
    result
}
