//! What can happen to the folder of handouts, in words: why it is not written, what was kept of
//! what a person changed.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use crate::disk::Failed;
use crate::harmless;

use super::saving::{cleared, kept};

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
    /// Another run is writing there.
    Busy(PathBuf),
    /// Two files of one name, or a name that leads out of the folder: a fault of the program.
    BadName(String),
    /// A file or folder that cannot be read or written.
    Failed(PathBuf, io::Error),
}

impl fmt::Display for FolderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAFolder(path) => write!(f, "{} is not a folder.", harmless::path(path)),
            Self::NoName(path) => write!(
                f,
                "The folder {} cannot be replaced as a whole while you stand in it.",
                harmless::path(path)
            ),
            Self::NotOurs(path) => write!(
                f,
                "The folder {} holds files, and none of them is a list of handouts that this \
                 program wrote.",
                harmless::path(path)
            ),
            Self::BadList(path) => write!(
                f,
                "The list of handouts {} cannot be read, so it is not known which files are yours.",
                harmless::path(path)
            ),
            Self::InTheWay(path) => {
                write!(
                    f,
                    "{} stands where a handout has to be.",
                    harmless::path(path)
                )
            }
            Self::Busy(path) => {
                write!(
                    f,
                    "Another run is writing {} just now.",
                    harmless::path(path)
                )
            }
            Self::BadName(name) => write!(f, "\"{name}\" cannot be the name of a handout."),
            Self::Failed(path, error) => {
                write!(f, "Cannot write {}: {error}.", harmless::path(path))
            }
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
            Self::Busy(_) => "Wait until it is done.",
            Self::BadName(_) => "This is a fault of the program. Please report it.",
            Self::Failed(..) => "Give a place where you may write and that has room.",
        }
    }
}

impl From<Failed> for FolderError {
    fn from(Failed { path, error }: Failed) -> Self {
        Self::Failed(path, error)
    }
}

/// What was done.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Written {
    /// How many files were written, the list of them not counted.
    pub files: usize,
    /// What a person had changed, and the name under which it is kept, in order.
    pub kept: Vec<(String, String)>,
    /// Files that the program had written before and that are no longer needed, in order.
    pub removed: Vec<String>,
    /// What was done about a run that was broken off.
    pub recovered: Recovered,
}

/// What was done about runs that were broken off.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Recovered {
    /// The old folder was put back to its place, with these files of a person in it.
    pub put_back: Option<Vec<String>>,
    /// Folders that were needed no longer and are gone.
    pub cleared: Vec<PathBuf>,
    /// Files that are nowhere else, and so stay where they are.
    pub left: Vec<PathBuf>,
}

/// What `tureen handouts` says when the folder stands.
#[must_use]
pub fn written(dir: &Path, written: &Written) -> String {
    let start = dir.join("index.html");
    let mut lines = recovered(dir, &written.recovered);
    lines.push(format!(
        "Written. Open {} to begin.",
        harmless::path(&start)
    ));
    let kept = |(was, now): &(String, String)| kept(&dir.join(was), &dir.join(now));
    lines.extend(written.kept.iter().map(kept));
    lines.join("\n") + "\n"
}

/// What is said of runs that were broken off.
fn recovered(dir: &Path, recovered: &Recovered) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(own) = &recovered.put_back {
        let dir = harmless::path(dir);
        let with = match own.as_slice() {
            [] => String::new(),
            own => format!(", with your own files in it: {}", own.join(", ")),
        };
        lines.push(format!(
            "A run that was broken off had taken {dir} from its place; it was put back{with}."
        ));
    }
    lines.extend(recovered.cleared.iter().map(|rest| cleared(rest)));
    lines.extend(recovered.left.iter().map(|file| {
        let file = harmless::path(file);
        format!("A run that was broken off left {file}, which is nowhere else. Move it to where you want it.")
    }));
    lines
}
