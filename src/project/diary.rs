//! The diary of a project: what happened in the garden, day by day. It stands beside the project file, one
//! section an entry, and only grows; what is taken back is taken back by an entry of its own.

mod contradictions;
mod entry;
mod phrase;
mod reader;
mod told;
mod what;

pub use entry::{Entry, Happened, Names};
pub use phrase::phrase;
pub use reader::{Diary, read};
pub use told::{Turn, Turns};

/// Its name, in the folder of the project file.
pub const DIARY_FILE: &str = "diary.toml";

/// The first lines of a new one.
pub const OPENING: &str = "# The diary of the garden, written by `tureen note`. You may correct an entry; the program reads it again.\n";

/// A larger file is no diary.
pub const LIMIT: u64 = 4 << 20;
