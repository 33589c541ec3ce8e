//! Every folder's files give its message, word for word; every kind of problem has a folder.

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use tureen::diagnostic::{Code, Problems};
use tureen::project;

use super::{MINIMAL, catalogue, folder, load};

/// The folders, as `CODE` or `CODE.VARIANT`; `several.*` mix kinds.
fn folders() -> Vec<(String, PathBuf)> {
    let entries = fs::read_dir(folder()).expect("the folder exists");
    let mut folders: Vec<(String, PathBuf)> = entries
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_dir())
        .map(|path| {
            let name = path.file_name().expect("a name").to_string_lossy();
            let code = name.split('.').next().expect("a part").to_owned();
            (code, path)
        })
        .collect();
    folders.sort();
    folders
}

/// What is wrong with the project in a folder.
fn problems(folder: &Path) -> Problems {
    project::load(&folder.join("garden.toml"), catalogue())
        .err()
        .unwrap_or_else(|| panic!("{} loads", folder.display()))
}

/// The message without the way to the folder.
fn message(folder: &Path) -> String {
    let text = problems(folder).render(false, 100);
    text.replace(&format!("{}/", folder.display()), "")
}

#[test]
fn every_folder_gives_its_message_word_for_word() {
    for (code, path) in folders() {
        if code == Code::TooLarge.name() {
            continue; // Its weather file is made by a test of its own.
        }
        let expected = fs::read_to_string(path.join("expected.txt")).expect("expected.txt");
        assert_eq!(message(&path), expected, "{}", path.display());
    }
}

#[test]
fn a_fault_gives_problems_of_its_own_kind_only() {
    let one_kind = folders()
        .into_iter()
        .filter(|(code, _)| code != "several" && code != Code::TooLarge.name());
    for (code, path) in one_kind {
        let found: BTreeSet<&str> = problems(&path).codes().map(Code::name).collect();
        assert_eq!(found, BTreeSet::from([code.as_str()]), "{}", path.display());
    }
}

#[test]
fn every_kind_of_problem_has_a_folder() {
    let shown: BTreeSet<String> = folders().into_iter().map(|(code, _)| code).collect();
    // Those of a station's file are shown by `station::damaged`.
    let known = Code::ALL
        .iter()
        .filter(|code| **code != Code::NoSuchStation);
    let mut known: BTreeSet<String> = known.map(Code::to_string).collect();
    known.insert("several".to_owned());
    assert_eq!(shown, known);
}

#[test]
fn a_file_that_is_too_large_is_refused() {
    let here = folder().join(Code::TooLarge.name());
    let there = Path::new(env!("CARGO_TARGET_TMPDIR")).join(Code::TooLarge.name());
    fs::create_dir_all(&there).expect("a folder");
    fs::copy(here.join("garden.toml"), there.join("garden.toml")).expect("a copy");
    let weather = fs::File::create(there.join("weather.csv")).expect("a file");
    weather.set_len(21 << 20).expect("a long file");
    let expected = fs::read_to_string(here.join("expected.txt")).expect("expected.txt");
    assert_eq!(message(&there), expected);
    weather.set_len(0).expect("an empty file");
}

#[test]
fn all_faults_of_a_file_are_told_at_once() {
    // Each of these faults is known to be told alone; one file holds them all.
    let faults = [
        ("name = \"Carrot day\"", "name = 7", Code::WrongType),
        ("44.3", "443", Code::OutOfRange),
        ("2027-10-08", "2027-10-09", Code::NotASchoolDay),
        ("\"Tue\"", "\"Tu\"", Code::UnknownWord),
        ("\"carrot\"", "\"carot\"", Code::NoSuchCrop),
        (
            "grams_per_portion",
            "grade = \"two\"\ngrams_per_portion",
            Code::NoSuchGrade,
        ),
        ("width_m = 1.2", "widht_m = 1.2", Code::UnknownKey),
        ("2026-09-04,12.3", "2026-09-04,12,3", Code::WeatherColumns),
        ("2026-09-06,12.1", "2026-09-06,-99", Code::WeatherRange),
    ];
    let mut project = super::MINIMAL.to_owned();
    let mut weather = super::AUTUMN.to_owned();
    for (right, wrong, _) in faults {
        assert!(
            project.contains(right) || weather.contains(right),
            "{right}"
        );
        project = project.replacen(right, wrong, 1);
        weather = weather.replacen(right, wrong, 1);
    }
    let found = project::load_text("garden.toml", &project, Some(&weather), catalogue())
        .expect_err("nine faults");
    assert_eq!(found.len(), faults.len());
    let mut told: Vec<Code> = found.codes().collect();
    let mut expected: Vec<Code> = faults.iter().map(|(_, _, code)| *code).collect();
    told.sort();
    expected.sort();
    assert_eq!(told, expected);
}

#[test]
fn colour_changes_nothing_but_colour() {
    for (_, path) in folders().into_iter().filter(|(code, _)| code == "several") {
        let colored = problems(&path).render(true, 100);
        let plain = problems(&path).render(false, 100);
        assert!(colored.contains('\u{1b}'));
        assert!(!plain.contains('\u{1b}'));
        assert_eq!(without_escapes(&colored), plain);
    }
}

/// The text without `ESC [ ... m`.
fn without_escapes(text: &str) -> String {
    let mut parts = text.split('\u{1b}');
    let first = parts.next().unwrap_or_default().to_owned();
    parts.fold(first, |text, part| {
        let rest = part.split_once('m').map_or("", |(_, rest)| rest);
        text + rest
    })
}

#[test]
fn codes_are_kebab_case_words_and_each_has_a_sentence() {
    let mut names = BTreeSet::new();
    for code in Code::ALL {
        let name = code.name();
        assert!(
            name.chars()
                .all(|c| c.is_ascii_lowercase() || c == '-' || c == '8'),
            "{name}"
        );
        assert!(names.insert(name), "{name} stands twice");
        let sentence = code.sentence();
        let words = sentence.split(' ').count();
        assert!(sentence.ends_with('.') && words > 3, "{name}: {sentence}");
    }
}

/// A name that leaves out the first word or the last is near.
#[test]
fn a_part_of_a_crop_s_name_is_near_to_it() {
    for (written, meant) in [
        ("choy", Some("\"bok choy\"")),
        ("qqqq", None),
        ("carot", Some("\"carrot\"")),
    ] {
        let text = MINIMAL.replace("\"carrot\"", &format!("\"{written}\""));
        let told = load(&text).unwrap_err().to_string();
        let found = told.lines().find(|line| line.contains("did you mean"));
        match meant {
            Some(meant) => assert!(found.is_some_and(|line| line.contains(meant)), "{told}"),
            None => assert_eq!(found, None, "{told}"),
        }
    }
}
