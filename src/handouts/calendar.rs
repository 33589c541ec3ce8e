//! Calendar files (RFC 5545). Events are told apart by what they are about, never by their day,
//! so that a new plan takes the place of the old one. Times are those of the clock on the wall.

mod lines;

use std::time::SystemTime;

use chrono::{DateTime, TimeDelta, Utc};

use crate::calendar::{Date, plus_days};
use crate::checksum::checksum;
use crate::facts::entries::Span;
use crate::harmless::plain;
use crate::report::entries::Entry;
use crate::units::Minutes;

use lines::Lines;

/// When the plan was saved. Every event is of that moment, so of two plans the newer one counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp(DateTime<Utc>);

/// From here numbers of revisions are counted: 2020-01-01, in seconds since 1970. Counted from
/// 1970 they would pass the greatest number that RFC 5545 allows in 2038, so in 2088.
const FIRST_REVISION: i64 = 1_577_836_800;

impl From<SystemTime> for Stamp {
    /// To the second; a time before 1970 counts as 1970.
    fn from(saved: SystemTime) -> Self {
        let since = saved
            .duration_since(SystemTime::UNIX_EPOCH)
            .unwrap_or_default();
        let seconds = i64::try_from(since.as_secs()).unwrap_or(0);
        Self(DateTime::from_timestamp(seconds, 0).unwrap_or_default())
    }
}

impl Stamp {
    /// `20270311T081500Z`.
    fn utc(self) -> String {
        self.0.format("%Y%m%dT%H%M%SZ").to_string()
    }

    /// The number of the revision: it grows by one each second.
    fn revision(self) -> i64 {
        let seconds = self.0.timestamp() - FIRST_REVISION;
        seconds.clamp(0, i64::from(i32::MAX))
    }
}

/// A calendar with a name. `project` tells its events from those of other projects.
#[must_use]
pub fn calendar<'a>(
    name: &str,
    project: &str,
    entries: impl IntoIterator<Item = &'a Entry<'a>>,
    saved: Stamp,
) -> Vec<u8> {
    let mut lines = Lines::default();
    let name = plain(name);
    lines.add("BEGIN", "VCALENDAR");
    lines.add("VERSION", "2.0");
    lines.add("PRODID", "-//tureen//handouts//EN");
    lines.add("CALSCALE", "GREGORIAN");
    lines.add_text("NAME", &name);
    lines.add_text("X-WR-CALNAME", &name);
    for entry in entries {
        event(&mut lines, project, entry, saved);
    }
    lines.add("END", "VCALENDAR");
    lines.into_bytes()
}

fn event(lines: &mut Lines, project: &str, entry: &Entry<'_>, saved: Stamp) {
    let moment = saved.utc();
    lines.add("BEGIN", "VEVENT");
    lines.add("UID", &uid(project, &entry.entry.key));
    lines.add("DTSTAMP", &moment);
    lines.add("LAST-MODIFIED", &moment);
    lines.add("SEQUENCE", &saved.revision().to_string());
    match entry.entry.span {
        Span::Days(from, to) => {
            lines.add("DTSTART;VALUE=DATE", &day(from));
            // The end is the first day that no longer belongs to it.
            lines.add("DTEND;VALUE=DATE", &day(plus_days(to, 1)));
            lines.add("TRANSP", "TRANSPARENT");
        }
        Span::Lesson(on, begins, Minutes(long)) => {
            let begins = on.and_time(begins);
            let ends = begins + TimeDelta::minutes(long.ceil() as i64);
            let local = "%Y%m%dT%H%M%S";
            lines.add("DTSTART", &begins.format(local).to_string());
            lines.add("DTEND", &ends.format(local).to_string());
        }
    }
    lines.add_text("SUMMARY", &plain(&entry.title));
    if !entry.place.is_empty() {
        lines.add_text("LOCATION", &plain(&entry.place));
    }
    let text: Vec<String> = entry.lines.iter().map(|line| plain(line)).collect();
    if !text.is_empty() {
        lines.add_text("DESCRIPTION", &text.join("\n"));
    }
    lines.add("END", "VEVENT");
}

fn day(day: Date) -> String {
    day.format("%Y%m%d").to_string()
}

/// What an event is called among all events of the world: a UUID of version 8 (RFC 9562), made
/// of the project's name and the event's key. RFC 7986 asks for a name that tells of no person
/// and no machine.
fn uid(project: &str, key: &[String]) -> String {
    let parts = [project].into_iter().chain(key.iter().map(String::as_str));
    // With its length before each part, no two keys run together to the same text.
    let text: String = parts.map(|part| format!("{}:{part}", part.len())).collect();
    let mark = checksum(text.as_bytes());
    let version = (mark & !(0xf << 76)) | (0x8 << 76);
    let variant = (version & !(0x3 << 62)) | (0x2 << 62);
    let digits = format!("{variant:032x}");
    let parts = [0..8, 8..12, 12..16, 16..20, 20..32];
    let parts = parts.map(|part| digits.get(part).unwrap_or_default());
    parts.join("-")
}
