//! One input: files in a folder, and a command line that is run there.

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs::File;
use std::io::{BufWriter, Write};
use std::path::Path;
use std::process::Command;
use std::time::Duration;

use crate::bar::{Fault, Run};
use crate::start::PLAN;

/// Bytes of the largest file.
const LARGE: usize = 70_000_000;

/// What stands under a name.
#[derive(Clone)]
pub enum Content {
    Bytes(Vec<u8>),
    /// These bytes again and again, to more than any reader should take. They are not held as they
    /// are written: what the driver holds counts in the memory of each program that it begins.
    Large(Vec<u8>),
    /// A folder in place of a file.
    Folder,
    /// A pipe with a name that nobody writes to.
    Pipe,
}

/// Files, arguments and the terminal.
#[derive(Clone)]
pub struct Case {
    pub files: BTreeMap<String, Content>,
    pub arguments: Vec<OsString>,
    pub columns: Option<String>,
    pub color: bool,
}

impl Case {
    /// Makes the folder anew and writes the files.
    pub fn write(&self, folder: &Path) -> std::io::Result<()> {
        if folder.exists() {
            std::fs::remove_dir_all(folder)?;
        }
        std::fs::create_dir_all(folder)?;
        for (name, content) in &self.files {
            let path = folder.join(name);
            match content {
                Content::Bytes(bytes) => std::fs::write(path, bytes)?,
                Content::Large(piece) => {
                    let mut file = BufWriter::new(File::create(path)?);
                    for _ in 0..LARGE / piece.len() + 1 {
                        file.write_all(piece)?;
                    }
                    file.flush()?;
                }
                Content::Folder => std::fs::create_dir(path)?,
                Content::Pipe => {
                    Command::new("mkfifo").arg(path).status()?;
                }
            }
        }
        Ok(())
    }

    /// Runs the program on it in a folder made for it.
    pub fn fault(
        &self,
        program: &Path,
        folder: &Path,
        longest: Duration,
    ) -> std::io::Result<Option<Fault>> {
        self.write(folder)?;
        let run = Run {
            program,
            folder,
            arguments: &self.arguments,
            columns: self.columns.as_deref(),
            color: self.color,
            longest,
        };
        // The plan is looked for where no argument names it, also if it is not there.
        let names = self.files.keys().map(String::as_str).chain([PLAN]);
        run.fault(&names.map(str::to_owned).collect::<Vec<_>>())
    }

    /// The command line, as a person would type it.
    pub fn command_line(&self) -> String {
        let mut words = Vec::new();
        words.extend(self.columns.iter().map(|c| format!("COLUMNS={c:?}")));
        words.push(
            if self.color {
                "CLICOLOR_FORCE=1"
            } else {
                "NO_COLOR=1"
            }
            .to_owned(),
        );
        words.push("tureen".to_owned());
        let quoted = |word: &OsString| match word.to_str() {
            Some(plain) if !plain.is_empty() && plain.chars().all(is_plain) => plain.to_owned(),
            // As the shell bash reads it back.
            _ => format!("$'{}'", word.as_encoded_bytes().escape_ascii()),
        };
        words.extend(self.arguments.iter().map(quoted));
        words.join(" ")
    }
}

fn is_plain(c: char) -> bool {
    c.is_ascii_alphanumeric() || "-_./=".contains(c)
}
