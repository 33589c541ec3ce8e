//! One file of the folder.

/// A file before it is written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct File {
    /// Its path below the folder, with `/`.
    pub path: String,
    /// What is in it.
    pub bytes: Vec<u8>,
}
