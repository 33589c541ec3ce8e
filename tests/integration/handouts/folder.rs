//! The folder appears whole or not at all; only what is ours is replaced; what is a person's
//! stays. Failures are provoked with real files in the way.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use tureen::disk::kept_name;
use tureen::handouts::folder::{File, FolderPlace, MANIFEST, Written};
use tureen::report::folder::{FolderError, written as told};

/// A fresh empty place for one test.
fn place(name: &str) -> PathBuf {
    let path = Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("handouts-folder")
        .join(name);
    if path.exists() {
        fs::remove_dir_all(&path).unwrap();
    }
    fs::create_dir_all(&path).unwrap();
    path
}

/// Tries a place and writes the folder there.
pub fn write(dir: &Path, files: &[File]) -> Result<Written, FolderError> {
    FolderPlace::tried(dir)?.write(files)
}

pub fn files(texts: &[(&str, &str)]) -> Vec<File> {
    let file = |(path, text): &(&str, &str)| File {
        path: (*path).to_owned(),
        bytes: text.as_bytes().to_vec(),
    };
    texts.iter().map(file).collect()
}

/// Everything below a folder with its text; a folder is its name with `/` and no text.
pub fn all(dir: &Path) -> BTreeMap<String, String> {
    fn look(dir: &Path, below: &str, found: &mut BTreeMap<String, String>) {
        for entry in fs::read_dir(dir.join(below)).unwrap() {
            let entry = entry.unwrap();
            let path = format!("{below}{}", entry.file_name().to_str().unwrap());
            if entry.file_type().unwrap().is_dir() {
                found.insert(format!("{path}/"), String::new());
                look(dir, &format!("{path}/"), found);
            } else {
                let text = fs::read_to_string(entry.path());
                found.insert(path, text.unwrap_or_else(|_| "?".to_owned()));
            }
        }
    }
    let mut found = BTreeMap::new();
    look(dir, "", &mut found);
    found
}

/// The same without the list of files.
fn listed(dir: &Path) -> Vec<(String, String)> {
    let mut found = all(dir);
    found.remove(MANIFEST).expect("the list is there");
    found.into_iter().collect()
}

fn pairs(texts: &[(&str, &str)]) -> Vec<(String, String)> {
    let own = |(a, b): &(&str, &str)| ((*a).to_owned(), (*b).to_owned());
    texts.iter().map(own).collect()
}

const FIRST: [(&str, &str); 3] = [
    ("index.html", "start"),
    ("plan.html", "plan"),
    ("tables/steps.csv", "steps"),
];

/// A folder written once, in a place of its own.
pub fn once(name: &str) -> (PathBuf, PathBuf) {
    let place = place(name);
    let dir = place.join("out");
    write(&dir, &files(&FIRST)).unwrap();
    (place, dir)
}

/// That a second run fails, changes nothing and leaves nothing beside.
fn refused(place: &Path, dir: &Path) -> FolderError {
    let before = all(place);
    let error = write(dir, &files(&[("index.html", "new")])).unwrap_err();
    assert_eq!(all(place), before, "{error}");
    assert!(!error.remedy().is_empty());
    error
}

#[test]
fn a_new_folder_holds_the_files_and_nothing_stands_beside_it() {
    let (place, dir) = once("new");
    let expected = pairs(&[
        ("index.html", "start"),
        ("plan.html", "plan"),
        ("tables/", ""),
        ("tables/steps.csv", "steps"),
    ]);
    assert_eq!(listed(&dir), expected);
    assert_eq!(fs::read_dir(&place).unwrap().count(), 1);
}

#[test]
fn folders_on_the_way_are_made_and_an_empty_one_is_used() {
    let place = place("deep");
    let dir = place.join("a/b/out");
    write(&dir, &files(&FIRST)).unwrap();
    assert!(dir.join("index.html").is_file());
    let empty = place.join("empty");
    fs::create_dir(&empty).unwrap();
    write(&empty, &files(&FIRST)).unwrap();
    assert!(empty.join("index.html").is_file());
}

#[test]
fn the_same_files_give_the_same_folder() {
    let (_, dir) = once("same");
    let before = all(&dir);
    let written = write(&dir, &files(&FIRST)).unwrap();
    assert_eq!(all(&dir), before);
    let expected = Written {
        files: 3,
        ..Written::default()
    };
    assert_eq!(written, expected);
}

#[test]
fn new_files_come_and_stale_ones_go() {
    let (_, dir) = once("stale");
    let written = write(&dir, &files(&[("index.html", "new"), ("map.html", "m")])).unwrap();
    assert_eq!(
        listed(&dir),
        pairs(&[("index.html", "new"), ("map.html", "m")])
    );
    assert_eq!(written.removed, ["plan.html", "tables/steps.csv"]);
    assert!(written.kept.is_empty());
}

#[test]
fn what_a_person_added_stays_in_folders_too() {
    let (_, dir) = once("added");
    fs::write(dir.join("photo.txt"), "mine").unwrap();
    fs::write(dir.join("tables/own.csv"), "mine too").unwrap();
    fs::create_dir_all(dir.join("pictures/spring")).unwrap();
    fs::write(dir.join("pictures/bean.txt"), "bean").unwrap();
    for _ in 0..2 {
        write(&dir, &files(&[("index.html", "new")])).unwrap();
        let expected = pairs(&[
            ("index.html", "new"),
            ("photo.txt", "mine"),
            ("pictures/", ""),
            ("pictures/bean.txt", "bean"),
            ("pictures/spring/", ""),
            ("tables/", ""),
            ("tables/own.csv", "mine too"),
        ]);
        assert_eq!(listed(&dir), expected);
    }
}

#[test]
fn what_a_person_changed_is_kept_beside_the_new_one_and_told() {
    let (_, dir) = once("changed");
    fs::write(dir.join("index.html"), "my start").unwrap();
    fs::write(dir.join("tables/steps.csv"), "my steps").unwrap();
    let written = write(&dir, &files(&[("index.html", "new")])).unwrap();
    let kept = pairs(&[
        ("index.html", "index.edited.html"),
        ("tables/steps.csv", "tables/steps.edited.csv"),
    ]);
    assert_eq!(written.kept, kept);
    let lines = told(Path::new("out"), &written);
    assert!(lines.contains("index.edited.html"), "{lines}");
    fs::write(dir.join("index.html"), "my second start").unwrap();
    let written = write(&dir, &files(&[("index.html", "newer")])).unwrap();
    assert_eq!(
        written.kept,
        pairs(&[("index.html", "index.edited-2.html")])
    );
    let expected = pairs(&[
        ("index.edited-2.html", "my second start"),
        ("index.edited.html", "my start"),
        ("index.html", "newer"),
        ("tables/", ""),
        ("tables/steps.edited.csv", "my steps"),
    ]);
    assert_eq!(listed(&dir), expected);
}

#[test]
fn a_file_that_a_person_wrote_where_a_new_one_comes_is_kept_too() {
    let (_, dir) = once("same-name");
    fs::write(dir.join("Map.html"), "my map").unwrap();
    let written = write(&dir, &files(&[("map.html", "new")])).unwrap();
    assert_eq!(written.kept, pairs(&[("Map.html", "Map.edited.html")]));
    let expected = pairs(&[("Map.edited.html", "my map"), ("map.html", "new")]);
    assert_eq!(listed(&dir), expected);
}

#[test]
fn a_change_that_the_new_file_has_too_is_no_change() {
    let (_, dir) = once("agreed");
    fs::write(dir.join("index.html"), "new").unwrap();
    let written = write(&dir, &files(&[("index.html", "new")])).unwrap();
    assert!(written.kept.is_empty());
}

#[test]
fn a_folder_with_anything_else_is_refused() {
    let place = place("foreign");
    let dir = place.join("out");
    fs::create_dir(&dir).unwrap();
    fs::write(dir.join("garden.toml"), "text").unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::NotOurs(_)));
    fs::write(dir.join(MANIFEST), "{\"files\": {}}").unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::BadList(_)));
    fs::write(
        dir.join(MANIFEST),
        "{\"tureen_handouts\": 9, \"files\": {}}",
    )
    .unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::BadList(_)));
}

#[test]
fn a_file_or_the_folder_one_stands_in_is_refused() {
    let place = place("file");
    let dir = place.join("out");
    fs::write(&dir, "text").unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::NotAFolder(_)));
    let below = dir.join("deeper");
    assert!(matches!(refused(&place, &below), FolderError::Failed(..)));
    for here in [Path::new("."), Path::new("..")] {
        let error = write(here, &files(&FIRST)).unwrap_err();
        assert!(matches!(error, FolderError::NoName(_)), "{error}");
    }
}

#[cfg(unix)]
#[test]
fn a_link_is_refused_and_links_inside_are_not_followed() {
    use std::os::unix::fs::symlink;
    let place = place("link");
    let elsewhere = place.join("elsewhere");
    fs::create_dir(&elsewhere).unwrap();
    fs::write(elsewhere.join("precious.txt"), "precious").unwrap();
    let dir = place.join("out");
    symlink(&elsewhere, &dir).unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::NotAFolder(_)));
    fs::remove_file(&dir).unwrap();
    symlink(place.join("nowhere"), &dir).unwrap();
    assert!(matches!(refused(&place, &dir), FolderError::NotAFolder(_)));
    fs::remove_file(&dir).unwrap();
    write(&dir, &files(&FIRST)).unwrap();
    symlink(&elsewhere, dir.join("way")).unwrap();
    symlink(place.join("nowhere"), dir.join("dangling")).unwrap();
    write(&dir, &files(&FIRST)).unwrap();
    assert_eq!(fs::read_link(dir.join("way")).unwrap(), elsewhere);
    assert_eq!(
        fs::read_link(dir.join("dangling")).unwrap(),
        place.join("nowhere")
    );
    let precious = fs::read_to_string(elsewhere.join("precious.txt")).unwrap();
    assert_eq!(precious, "precious");
}

#[test]
fn a_person_in_the_way_stops_it_and_all_is_as_it_was() {
    // A person's folder stands where a file comes, a person's file where a folder comes.
    let (place, dir) = once("kinds");
    fs::create_dir(dir.join("map.html")).unwrap();
    let before = all(&place);
    let error = write(&dir, &files(&[("map.html", "new")])).unwrap_err();
    assert!(matches!(error, FolderError::InTheWay(_)));
    assert_eq!(all(&place), before);
    fs::write(dir.join("calendars"), "mine").unwrap();
    let before = all(&place);
    let error = write(&dir, &files(&[("calendars/all.ics", "new")])).unwrap_err();
    assert!(matches!(error, FolderError::InTheWay(_)));
    assert_eq!(all(&place), before);
}

#[test]
fn what_cannot_be_written_leaves_no_folders_on_the_way() {
    let place = place("long");
    // Longer than a file name may be on any system; the second file fails, the first is written.
    let long = format!("{}.html", "x".repeat(300));
    let texts = [("index.html", "start"), (long.as_str(), "never")];
    let error = write(&place.join("a/b/out"), &files(&texts)).unwrap_err();
    assert!(matches!(error, FolderError::Failed(..)), "{error}");
    assert!(all(&place).is_empty());
}

#[test]
fn names_that_lead_out_or_stand_twice_are_refused() {
    let place = place("names");
    for path in [
        "",
        "../x",
        "/x",
        "a/../../x",
        "a\\b",
        ".",
        "./../x",
        MANIFEST,
    ] {
        let error = write(&place.join("out"), &files(&[(path, "text")])).unwrap_err();
        assert!(matches!(error, FolderError::BadName(_)), "{path}: {error}");
    }
    let twice = files(&[("a.html", "1"), ("A.html", "2")]);
    assert!(write(&place.join("out"), &twice).is_err());
    assert!(all(&place).is_empty());
}

#[test]
fn a_list_with_names_that_lead_out_removes_nothing_there() {
    let (place, dir) = once("evil-list");
    fs::write(place.join("precious.txt"), "precious").unwrap();
    let list = "{\"tureen_handouts\": 1, \"files\": {\"../precious.txt\": \"0\"}}";
    fs::write(dir.join(MANIFEST), list).unwrap();
    write(&dir, &files(&[("index.html", "new")])).unwrap();
    assert_eq!(
        fs::read_to_string(place.join("precious.txt")).unwrap(),
        "precious"
    );
    // Files that the list no longer knows are taken for a person's.
    assert_eq!(fs::read_to_string(dir.join("plan.html")).unwrap(), "plan");
    assert_eq!(
        fs::read_to_string(dir.join("index.edited.html")).unwrap(),
        "start"
    );
}

#[test]
fn kept_names_are_told_apart() {
    assert_eq!(kept_name("plan.html", 1), "plan.edited.html");
    assert_eq!(kept_name("plan.html", 3), "plan.edited-3.html");
    assert_eq!(kept_name("notes", 1), "notes.edited");
    assert_eq!(kept_name(".hidden", 2), ".hidden.edited-2");
}
