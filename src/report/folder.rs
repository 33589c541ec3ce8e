//! What can happen to the folder of handouts, in words: why it is not written, what was kept of
//! what a person changed.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// Why a folder was not written. What stood there before is as it was.
#[derive(Debug)]
pub enum FolderError {
    /// It is a file, a link or something else that is no folder.
    NotAFolder(PathBuf),
    /// It has no name of its own (`.`, `..`), or the program was started in it.
    NoName(PathBuf),
    /// There is something in it, and no list of what the program wrote.
    NotOurs(PathBuf),
    /// Its list of what the program wrote cannot be read.
    BadList(PathBuf),
    /// Something in it, added by a person, stands where a file or a folder has to be.
    InTheWay(PathBuf),
    /// Two files of one name, or a name that leads out of the folder: a fault of the program.
    BadName(String),
    /// A file or folder that cannot be read or written.
    Failed(PathBuf, io::Error),
}

impl fmt::Display for FolderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAFolder(path) => write!(f, "{} is not a folder.", path.display()),
            Self::NoName(path) => write!(
                f,
                "The folder {} cannot be replaced as a whole while you stand in it.",
                path.display()
            ),
            Self::NotOurs(path) => write!(
                f,
                "The folder {} holds files, and none of them is a list of handouts that this \
                 program wrote.",
                path.display()
            ),
            Self::BadList(path) => write!(
                f,
                "The list of handouts {} cannot be read, so it is not known which files are yours.",
                path.display()
            ),
            Self::InTheWay(path) => {
                write!(f, "{} stands where a handout has to be.", path.display())
            }
            Self::BadName(name) => write!(f, "\"{name}\" cannot be the name of a handout."),
            Self::Failed(path, error) => write!(f, "Cannot write {}: {error}.", path.display()),
        }
    }
}

impl std::error::Error for FolderError {}

impl FolderError {
    /// What to do about it.
    #[must_use]
    pub fn remedy(&self) -> &'static str {
        match self {
            Self::NotAFolder(_) => "Name a folder that is not there yet.",
            Self::NoName(_) => "Name a folder below the one you are in.",
            Self::NotOurs(_) => {
                "Name a folder that is not there yet, an empty one, or one that handouts were \
                 written to before."
            }
            Self::BadList(_) => "Name a folder that is not there yet, or empty this one.",
            Self::InTheWay(_) => "Move it, or give it another name.",
            Self::BadName(_) => "This is a fault of the program. Please report it.",
            Self::Failed(..) => "Give a place where you may write and that has room.",
        }
    }
}

/// The name under which what a person changed is kept beside the new file: `plan.html` as
/// `plan.edited.html`, then `plan.edited-2.html`.
#[must_use]
pub fn kept_name(name: &str, time: usize) -> String {
    let which = match time {
        0 | 1 => "edited".to_owned(),
        n => format!("edited-{n}"),
    };
    match name.rsplit_once('.') {
        Some((stem, ending)) if !stem.is_empty() => format!("{stem}.{which}.{ending}"),
        _ => format!("{name}.{which}"),
    }
}

/// What `tureen handouts` says when the folder stands.
#[must_use]
pub fn written(dir: &Path, kept: &[(String, String)]) -> String {
    let start = dir.join("index.html");
    let mut lines = vec![format!("Written. Open {} to begin.", start.display())];
    lines.extend(kept_lines(dir, kept));
    lines.join("\n") + "\n"
}

/// One line for each file that a person changed and that was kept under another name.
fn kept_lines(dir: &Path, kept: &[(String, String)]) -> Vec<String> {
    let line = |(was, now): &(String, String)| {
        format!(
            "Your own {} is kept as {}.",
            dir.join(was).display(),
            dir.join(now).display()
        )
    };
    kept.iter().map(line).collect()
}
