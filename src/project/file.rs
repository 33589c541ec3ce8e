//! Reads a text file: not too large, and in UTF-8.

use std::io::ErrorKind;
use std::path::Path;

use crate::diagnostic::{Code, Findings, Problem, Problems, Read, Source, Span};
use crate::disk;
use crate::harmless;

use super::change::{self, Change};

/// Largest project file, in bytes.
pub const PROJECT_LIMIT: u64 = 1 << 20;

/// Largest weather file, in bytes: room for a thousand years.
pub const WEATHER_LIMIT: u64 = 20 << 20;

/// Some programs write this before a text in UTF-8; it is no part of the text.
const BYTE_ORDER_MARK: &[u8] = b"\xEF\xBB\xBF";

/// A file before it is known to be text.
pub struct Raw {
    /// Its name, as printed.
    pub name: String,
    /// What it holds, or why it cannot be read.
    pub bytes: Result<Vec<u8>, Box<Problem>>,
}

impl Raw {
    /// The file at `path`, if it has at most `limit` bytes.
    pub fn read(path: &Path, limit: u64) -> Self {
        Self {
            name: harmless::path(path),
            bytes: bytes(path, limit),
        }
    }

    /// The file with changes made to it on trial; one that is no text stays as it is.
    ///
    /// # Errors
    /// Every change that cannot be made.
    pub fn changed(self, changes: &[Change]) -> Result<Self, Problems> {
        let text = self.bytes.as_deref().ok().and_then(|bytes| {
            let bytes = bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes);
            std::str::from_utf8(bytes).ok()
        });
        let Some(text) = text else {
            return Ok(self);
        };
        Ok(Self {
            bytes: Ok(change::changed(text, changes)?.into_bytes()),
            name: format!("{}, changed on trial", self.name),
        })
    }

    /// A file that is only a text in memory; none: it does not exist.
    pub fn of_text(name: &str, text: Option<&str>) -> Self {
        let missing = || Box::new(no_such_file());
        Self {
            name: name.to_owned(),
            bytes: text.map(|text| text.into()).ok_or_else(missing),
        }
    }
}

fn no_such_file() -> Problem {
    Problem::new(Code::NoSuchFile, "this file does not exist")
        .remedy("check the name and the folder")
}

fn bytes(path: &Path, limit: u64) -> Result<Vec<u8>, Box<Problem>> {
    disk::read(path, limit).map_err(|error| {
        Box::new(match error.kind() {
            ErrorKind::FileTooLarge => Problem::new(
                Code::TooLarge,
                format!("this file is larger than {} MB", limit >> 20),
            )
            .remedy("check that it is the right file"),
            _ => unreadable(&error),
        })
    })
}

/// The problem of a file that is not there or cannot be read.
pub fn unreadable(error: &std::io::Error) -> Problem {
    match error.kind() {
        ErrorKind::NotFound => no_such_file(),
        kind => Problem::new(
            Code::UnreadableFile,
            format!("this file cannot be read: {}", cause(error, kind)),
        )
        .remedy("check that it is a file, not a folder or a pipe, and that you may read it"),
    }
}

/// What an error says of itself, without the system's number.
fn cause(error: &std::io::Error, kind: ErrorKind) -> String {
    let own = error.get_ref().map(ToString::to_string);
    own.unwrap_or_else(|| kind.to_string())
}

/// How files of other kinds begin, and what they are.
const OTHER_KINDS: [(&[u8], &str); 6] = [
    (
        b"PK\x03\x04",
        "this is a document of an office program (docx, xlsx, odt) or an archive",
    ),
    (
        b"\xD0\xCF\x11\xE0",
        "this is a document of an office program (doc, xls)",
    ),
    (b"%PDF", "this is a PDF"),
    (b"{\\rtf", "this is a document of a word processor (rtf)"),
    (b"<!DOCTYPE", "this is a web page"),
    (b"<html", "this is a web page"),
];

/// What a file is that no editor shows as plain text in UTF-8, and what to do.
pub fn no_plain_text(bytes: &[u8]) -> Option<(&'static str, &'static str)> {
    let plain = "save what it holds as plain text in UTF-8; a table of weather as CSV";
    if bytes.starts_with(b"\x1F\x8B") {
        let unpack = "unpack it first, for example with gunzip, and give the file that is in it";
        return Some(("this is a compressed file", unpack));
    }
    let mut kinds = OTHER_KINDS.iter();
    if let Some((_, kind)) = kinds.find(|(start, _)| bytes.starts_with(start)) {
        return Some((kind, plain));
    }
    let marked = bytes.starts_with(b"\xFF\xFE") || bytes.starts_with(b"\xFE\xFF");
    // Every letter of this alphabet has a zero beside it in UTF-16.
    let zeros = bytes.iter().take(100).filter(|byte| **byte == 0).count();
    (marked || bytes.len() > 3 && zeros * 3 > bytes.len().min(100)).then_some((
        "this file is text in UTF-16",
        "save it again with the encoding UTF-8; editors ask for it under \"Save as\"",
    ))
}

/// The text of a file, without a byte order mark.
pub fn decode(name: String, bytes: Vec<u8>, found: &mut Findings) -> (Source, Read<()>) {
    let bytes = bytes
        .strip_prefix(BYTE_ORDER_MARK)
        .map(<[u8]>::to_vec)
        .unwrap_or(bytes);
    if let Some((cause, remedy)) = no_plain_text(&bytes) {
        let problem = Problem::new(Code::NotUtf8, cause).remedy(remedy);
        let reported = found.report(problem);
        return (Source::unread(name), Err(reported));
    }
    let (text, good) = match String::from_utf8(bytes) {
        Ok(text) => (text, Ok(())),
        Err(error) => {
            let start = error.utf8_error().valid_up_to();
            let problem = Problem::new(Code::NotUtf8, "this file is not text in UTF-8")
                .at(Span::from(start..start + 3), "the first letter that is not")
                .remedy("save it again with the encoding UTF-8");
            let text = String::from_utf8_lossy(error.as_bytes()).into_owned();
            (text, Err(found.report(problem)))
        }
    };
    (Source::whole(name, text), good)
}
