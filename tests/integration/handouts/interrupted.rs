//! What a run that was broken off left beside the folder of handouts: the next one puts the old
//! folder back or clears what is needed no longer, and never a person's only copy. The states are
//! made by hand here; `tests/reference/saves.py` reaches them by real kills.

use std::fs;
use std::path::{Path, PathBuf};

use tureen::handouts::folder::{FolderPlace, MANIFEST};
use tureen::report::folder::{FolderError, Recovered, written as told};

use super::folder::{all, files, once, write};

const CHANCE: &str = "0123456789abcdef";

/// A folder that was written once, with a person's photo and a changed page in it.
fn with_a_persons(name: &str) -> (PathBuf, PathBuf) {
    let (place, dir) = once(name);
    fs::create_dir(dir.join("photos")).unwrap();
    fs::write(dir.join("photos/bean.txt"), "my bean").unwrap();
    fs::write(dir.join("plan.html"), "my plan").unwrap();
    (place, dir)
}

fn beside(dir: &Path, ending: &str) -> PathBuf {
    let name = dir.file_name().unwrap().to_str().unwrap();
    dir.with_file_name(format!("{name}.{CHANCE}.{ending}"))
}

/// A copy of a folder and all below.
fn copy(from: &Path, to: &Path) {
    fs::create_dir(to).unwrap();
    for (path, text) in all(from) {
        match path.strip_suffix('/') {
            Some(path) => fs::create_dir(to.join(path)).unwrap(),
            None => fs::write(to.join(path), text).unwrap(),
        }
    }
}

/// Writes again, holds that only the folder stands there, and gives what was recovered.
fn again(place: &Path, dir: &Path) -> Recovered {
    let written = write(dir, &files(&[("index.html", "new")])).unwrap();
    assert_eq!(fs::read_dir(place).unwrap().count(), 1);
    let now = all(dir);
    assert_eq!(now["index.html"], "new");
    assert_eq!(now["photos/bean.txt"], "my bean");
    assert_eq!(now["plan.edited.html"], "my plan");
    written.recovered
}

#[test]
fn an_old_folder_without_a_successor_is_put_back_with_a_persons_files() {
    for finished in [false, true] {
        let (place, dir) = with_a_persons("interrupted-between");
        if finished {
            copy(&dir, &beside(&dir, "unfinished"));
        }
        fs::rename(&dir, beside(&dir, "old")).unwrap();
        let recovered = again(&place, &dir);
        let own = ["photos/bean.txt", "plan.html"].map(str::to_owned);
        assert_eq!(recovered.put_back, Some(own.to_vec()));
        assert_eq!(recovered.cleared.len(), usize::from(finished));
        assert!(recovered.left.is_empty());
        let written = tureen::handouts::folder::Written {
            recovered,
            ..Default::default()
        };
        let told = told(Path::new("out"), &written);
        assert!(
            told.contains("put back") && told.contains("photos/bean.txt"),
            "{told}"
        );
    }
}

#[test]
fn a_new_folder_at_any_stage_is_cleared() {
    let (place, dir) = with_a_persons("interrupted-building");
    let unfinished = beside(&dir, "unfinished");
    fs::create_dir(&unfinished).unwrap();
    assert_eq!(
        again(&place, &dir).cleared,
        std::slice::from_ref(&unfinished)
    );
    fs::create_dir(&unfinished).unwrap();
    fs::write(unfinished.join(MANIFEST), "").unwrap();
    assert_eq!(
        again(&place, &dir).cleared,
        std::slice::from_ref(&unfinished)
    );
    copy(&dir, &unfinished);
    fs::write(unfinished.join("index.html"), "ne").unwrap();
    assert_eq!(
        again(&place, &dir).cleared,
        std::slice::from_ref(&unfinished)
    );
}

#[test]
fn an_old_folder_beside_its_successor_goes_at_any_stage_of_its_removal() {
    let (place, dir) = with_a_persons("interrupted-removing");
    let before = place.with_file_name("interrupted-removing-before");
    let _ = fs::remove_dir_all(&before);
    copy(&dir, &before);
    write(&dir, &files(&[("index.html", "new")])).unwrap();
    let old = beside(&dir, "old");
    let stages: [&[&str]; 3] = [
        &[],
        &["index.html", "photos/bean.txt"],
        &[
            "index.html",
            "photos/bean.txt",
            "plan.html",
            "tables/steps.csv",
            MANIFEST,
        ],
    ];
    for removed in stages {
        copy(&before, &old);
        for path in removed {
            fs::remove_file(old.join(path)).unwrap();
        }
        let recovered = again(&place, &dir);
        assert_eq!(
            (recovered.cleared, recovered.left),
            (vec![old.clone()], vec![])
        );
    }
}

#[test]
fn a_persons_only_copy_stays_and_is_named() {
    let (_, dir) = with_a_persons("interrupted-only-copy");
    let old = beside(&dir, "old");
    fs::rename(&dir, &old).unwrap();
    // The person has begun anew meanwhile.
    fs::create_dir(&dir).unwrap();
    for _ in 0..2 {
        let written = write(&dir, &files(&[("index.html", "new")])).unwrap();
        let left = ["photos/bean.txt", "plan.html"].map(|path| old.join(path));
        assert_eq!(written.recovered.left, left);
        let told = told(&dir, &written);
        assert!(told.contains("bean.txt, which is nowhere else"), "{told}");
        assert_eq!(fs::read_to_string(&left[0]).unwrap(), "my bean");
        assert_eq!(fs::read_to_string(&left[1]).unwrap(), "my plan");
    }
}

#[test]
fn a_run_that_goes_on_is_not_taken_for_a_broken_one() {
    let (_, dir) = once("interrupted-busy");
    let held = FolderPlace::tried(&dir).unwrap();
    assert!(matches!(
        FolderPlace::tried(&dir),
        Err(FolderError::Busy(_))
    ));
    held.write(&files(&[("index.html", "new")])).unwrap();
    let unfinished = beside(&dir, "unfinished");
    copy(&dir, &unfinished);
    let lock = fs::File::open(unfinished.join(MANIFEST)).unwrap();
    lock.lock().unwrap();
    assert!(matches!(
        FolderPlace::tried(&dir),
        Err(FolderError::Busy(_))
    ));
    assert!(unfinished.join("index.html").is_file());
    drop(lock);
    FolderPlace::tried(&dir).unwrap();
    assert!(!unfinished.exists());
}

#[test]
fn names_that_only_look_like_ours_stay() {
    let (place, dir) = once("interrupted-alike");
    for name in [
        "out.old",
        "out.0123456789abcde.old",
        "out.unfinished",
        "in.0123456789abcdef.old",
    ] {
        copy(&dir, &place.join(name));
    }
    fs::write(beside(&dir, "old"), "a file").unwrap();
    write(&dir, &files(&[("index.html", "new")])).unwrap();
    assert_eq!(fs::read_dir(&place).unwrap().count(), 6);
}
