//! What a run that was broken off left beside the folder is set right: the old folder goes back to
//! its place if nothing stands there, and what is needed no longer is cleared. A person's file is
//! only removed where the same bytes stand in the folder.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use crate::checksum::checksum;
use crate::disk;
use crate::report::folder::{FolderError, Recovered};

use super::manifest::{MANIFEST, Manifest};
use super::people::{Found, all_in};

/// Sets right what runs that were broken off left beside a folder.
pub(super) fn recover(target: &Path) -> Result<Recovered, FolderError> {
    let busy = || FolderError::Busy(target.to_owned());
    let found = disk::interrupted(target, MANIFEST)?.ok_or_else(busy)?;
    let mut recovered = Recovered::default();
    for old in found.old {
        // One without its list was being removed, and nothing of value is left in it.
        let is_whole = old.join(MANIFEST).is_file();
        if is_whole && fs::symlink_metadata(target).is_err() {
            disk::put_back(&old, target)?;
            recovered.put_back = Some(a_persons(target)?);
        } else {
            let list = Manifest::read(&old.join(MANIFEST)).ok();
            let as_written = |path: &str, mark: Option<u128>| {
                let written = list.as_ref().and_then(|list| list.checksum(path));
                written.is_some() && written == mark.map(|mark| format!("{mark:032x}")).as_deref()
            };
            settle(&old, target, as_written, &mut recovered)?;
        }
    }
    for unfinished in found.unfinished {
        let list = Manifest::read(&unfinished.join(MANIFEST)).ok();
        let is_listed = |path: &str, _| list.as_ref().is_some_and(|l| l.checksum(path).is_some());
        settle(&unfinished, target, is_listed, &mut recovered)?;
    }
    Ok(recovered)
}

/// The files of a folder that are not as the program wrote them.
fn a_persons(folder: &Path) -> Result<Vec<String>, FolderError> {
    let list = Manifest::read(&folder.join(MANIFEST))?;
    let is_own = |path: &String| {
        let mark = mark(&folder.join(path)).map(|mark| format!("{mark:032x}"));
        path != MANIFEST && list.checksum(path) != mark.as_deref()
    };
    let files = all_in(folder)?
        .into_iter()
        .filter(|(_, is_folder)| !is_folder);
    Ok(files.map(|(path, _)| path).filter(is_own).collect())
}

/// Removes from a folder what is `ours` and what stands in the target too.
fn settle(
    folder: &Path,
    target: &Path,
    ours: impl Fn(&str, Option<u128>) -> bool,
    recovered: &mut Recovered,
) -> Result<(), FolderError> {
    let there = match target.is_dir() {
        true => all_in(target)?,
        false => Found::new(),
    };
    let there: BTreeSet<u128> = there
        .iter()
        .filter_map(|(path, is_folder)| mark(&target.join(path)).filter(|_| !is_folder))
        .collect();
    let known = |(path, is_folder): &(String, bool)| {
        let mark = mark(&folder.join(path)).filter(|_| !is_folder);
        !is_folder && (ours(path, mark) || mark.is_some_and(|mark| there.contains(&mark)))
    };
    let all = all_in(folder)?.into_iter().filter(known);
    let known: BTreeSet<String> = all.map(|(path, _)| path).collect();
    if remove(folder, &known, recovered) {
        recovered.cleared.push(folder.to_owned());
    }
    Ok(())
}

/// Removes from a folder the files that are `known`, and the folder if nothing else is in it; tells
/// whether it is gone. What cannot be removed now can be by the next run.
pub(super) fn remove(folder: &Path, known: &BTreeSet<String>, recovered: &mut Recovered) -> bool {
    let Ok(all) = all_in(folder) else {
        return false;
    };
    match disk::remove(folder, known, &all, MANIFEST) {
        Ok(left) if left.is_empty() => true,
        Ok(left) => {
            recovered.left.extend(left);
            false
        }
        Err(_) => false,
    }
}

/// The mark of a file's bytes, of a link the place to which it leads; `None` if it cannot be read.
fn mark(path: &Path) -> Option<u128> {
    let bytes = match fs::symlink_metadata(path).ok()? {
        found if found.is_symlink() => fs::read_link(path)
            .ok()?
            .into_os_string()
            .into_encoded_bytes(),
        found if found.is_file() => fs::read(path).ok()?,
        _ => return None,
    };
    Some(checksum(&bytes))
}
