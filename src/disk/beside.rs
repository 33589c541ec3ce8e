//! Names beside a place: what is being built there, what makes room for it, and which of them a
//! killed run left behind.

use std::ffi::{OsStr, OsString};
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

/// The endings of what is being built, and of what makes room for it.
pub const UNFINISHED: &str = ".unfinished";
pub const OLD: &str = ".old";

/// Letters and digits by chance before the ending: nobody can put something there beforehand.
const CHANCE: usize = 16;

/// The folder in which something stands; never empty.
pub fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// `NAME.` for what stands beside NAME.
fn opening(path: &Path) -> OsString {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".");
    name
}

/// Makes a new file beside a place, open to whom a usual new file is; it goes unless it is kept.
pub fn new_file(path: &Path) -> io::Result<tempfile::NamedTempFile> {
    let opening = opening(path);
    let mut builder = tempfile::Builder::new();
    builder
        .prefix(&opening)
        .suffix(UNFINISHED)
        .rand_bytes(CHANCE);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    builder.tempfile_in(folder_of(path))
}

/// Makes a new folder beside a place; it goes unless it is kept.
pub fn new_folder(path: &Path) -> io::Result<tempfile::TempDir> {
    let opening = opening(path);
    let mut builder = tempfile::Builder::new();
    builder
        .prefix(&opening)
        .suffix(UNFINISHED)
        .rand_bytes(CHANCE);
    builder.tempdir_in(folder_of(path))
}

/// What is being built, or was left behind, beside a place, in order of names.
pub fn of(path: &Path, ending: &str) -> io::Result<Vec<PathBuf>> {
    let folder = folder_of(path);
    let entries = match fs::read_dir(folder) {
        Ok(entries) => entries,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(Vec::new()),
        Err(error) => return Err(error),
    };
    let opening = opening(path);
    let mut found = Vec::new();
    for entry in entries {
        let name = entry?.file_name();
        if is_beside(&name, &opening, ending) {
            found.push(path.with_file_name(name));
        }
    }
    found.sort();
    Ok(found)
}

fn is_beside(name: &OsStr, opening: &OsStr, ending: &str) -> bool {
    let rest = name
        .as_encoded_bytes()
        .strip_prefix(opening.as_encoded_bytes());
    let chance = rest.and_then(|rest| rest.strip_suffix(ending.as_bytes()));
    chance.is_some_and(|c| c.len() == CHANCE && c.iter().all(u8::is_ascii_alphanumeric))
}

/// True while another run writes there: each holds a lock on what it writes, and the system takes
/// it back when the run ends, however it ends. What cannot be opened or asked is another's too.
pub fn is_in_use(file: &Path) -> bool {
    !File::open(file).is_ok_and(|file| file.try_lock().is_ok())
}

/// Has the disk take note of the names in a folder. Where a system cannot, it says so in its own
/// way, and nothing is lost but certainty.
pub fn sync_folder(folder: &Path) -> io::Result<()> {
    if !cfg!(unix) {
        return Ok(());
    }
    match File::open(folder).and_then(|folder| folder.sync_all()) {
        Err(error)
            if matches!(
                error.kind(),
                io::ErrorKind::InvalidInput | io::ErrorKind::Unsupported
            ) =>
        {
            Ok(())
        }
        other => other,
    }
}
