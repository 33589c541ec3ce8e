//! Reads a text file: not too large, and in UTF-8.

use std::fs::File;
use std::io::{ErrorKind, Read as _};
use std::path::Path;

use crate::diagnostic::{Code, Findings, Problem, Read, Source, Span};

/// Largest project file, in bytes.
pub const PROJECT_LIMIT: u64 = 1 << 20;

/// Largest weather file, in bytes: room for a thousand years.
pub const WEATHER_LIMIT: u64 = 20 << 20;

/// Reads the file named `name` at `path`. The source is empty if it cannot be read.
pub fn read(path: &Path, name: String, limit: u64, found: &mut Findings) -> (Source, Read<()>) {
    match bytes(path, limit) {
        Ok(bytes) => decode(name, bytes, found),
        Err(problem) => {
            let text = String::new();
            (Source { name, text }, Err(found.report(*problem)))
        }
    }
}

fn bytes(path: &Path, limit: u64) -> Result<Vec<u8>, Box<Problem>> {
    let unreadable = |error: std::io::Error| {
        Box::new(match error.kind() {
            ErrorKind::NotFound => Problem::new(Code::NoSuchFile, "this file does not exist")
                .remedy("check the name and the folder"),
            _ => Problem::new(
                Code::UnreadableFile,
                format!("this file cannot be read: {}", error.kind()),
            )
            .remedy("check that it is a file, not a folder, and that you may read it"),
        })
    };
    let file = File::open(path).map_err(unreadable)?;
    let is_dir = file.metadata().map_err(unreadable)?.is_dir();
    if is_dir {
        return Err(unreadable(ErrorKind::IsADirectory.into()));
    }
    let mut bytes = Vec::new();
    file.take(limit + 1)
        .read_to_end(&mut bytes)
        .map_err(unreadable)?;
    if bytes.len() as u64 > limit {
        let cause = format!("this file is larger than {} MB", limit >> 20);
        return Err(Box::new(
            Problem::new(Code::TooLarge, cause).remedy("check that it is the right file"),
        ));
    }
    Ok(bytes)
}

fn decode(name: String, bytes: Vec<u8>, found: &mut Findings) -> (Source, Read<()>) {
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
    // A byte order mark is no part of the text.
    match text.strip_prefix('\u{feff}') {
        Some(rest) if good.is_ok() => (
            Source {
                name,
                text: rest.to_owned(),
            },
            good,
        ),
        _ => (Source { name, text }, good),
    }
}
