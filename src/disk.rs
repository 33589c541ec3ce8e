//! Files as they may be: read up to a limit and never without an end, and written so that nothing is
//! lost. A file or a folder is built beside its place, under a name that
//! nobody can guess, and takes the place only when it is whole and on the disk. What the program
//! did not write stays; what a killed run left behind is cleared by the next.

mod append;
mod beside;
mod failed;
mod file;
mod folder;
mod kept;
mod parents;
mod read;

pub use append::append;
pub use failed::Failed;
pub use file::{Author, FilePlace, Refused, Saved};
pub use folder::{Building, Lock, Retired, interrupted, put_back, remove, try_beside};
pub use kept::kept_name;
pub use parents::Parents;
pub use read::{open, read, read_text};
