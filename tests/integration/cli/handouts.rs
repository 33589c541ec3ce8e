//! `handouts`: a folder from a saved plan, written whole, never over what is not ours.

use super::{Folder, text};

#[test]
fn the_folder_is_written_and_a_persons_file_stays_in_it() {
    let folder = Folder::new("handouts");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let told = folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    assert!(told.starts_with("Written. Open "), "{told}");
    let start = folder.read("out/index.html");
    assert!(start.contains("All handouts"), "{start}");
    std::fs::write(folder.path("out/notes.txt"), "mine").unwrap();
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    assert_eq!(folder.read("out/notes.txt"), "mine");
    assert_eq!(folder.read("out/index.html"), start);
}

#[test]
fn how_little_space_would_do_is_on_the_principals_page_if_asked_for() {
    let folder = Folder::new("handouts-space");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    assert!(
        !folder
            .read("out/principal.html")
            .contains("strips are there")
    );
    folder.answer(&["handouts", "garden.toml", "--out", "out", "--least-space"]);
    let page = folder.read("out/principal.html");
    assert!(page.contains("strips are there"), "{page}");
}

#[test]
fn a_folder_with_other_files_and_a_missing_plan_are_refused() {
    let folder = Folder::new("handouts-refused");
    let missing = folder.run(&["handouts", "garden.toml", "--out", "out"]);
    assert_eq!(missing.status.code(), Some(3));
    assert!(text(&missing.stderr).contains("plan.json"));
    assert!(!folder.path("out").exists());
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    std::fs::create_dir(folder.path("photos")).unwrap();
    std::fs::write(folder.path("photos/a.txt"), "a").unwrap();
    let refused = folder.run(&["handouts", "garden.toml", "--out", "photos"]);
    assert_eq!(refused.status.code(), Some(2));
    let said = text(&refused.stderr);
    assert!(
        said.contains("holds files") && said.contains("Name a folder"),
        "{said}"
    );
    let left: Vec<_> = std::fs::read_dir(folder.path("photos")).unwrap().collect();
    assert_eq!(left.len(), 1);
}

/// All files below a folder, in order.
fn files(folder: &std::path::Path) -> Vec<String> {
    let mut found = Vec::new();
    let mut waiting = vec![folder.to_owned()];
    while let Some(at) = waiting.pop() {
        for entry in std::fs::read_dir(at).unwrap() {
            let path = entry.unwrap().path();
            match path.is_dir() {
                true => waiting.push(path),
                false => found.push(path.strip_prefix(folder).unwrap().display().to_string()),
            }
        }
    }
    found.sort();
    found
}

#[test]
fn one_class_gets_its_pages_and_its_calendar() {
    let folder = Folder::new("handouts-for");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "all"]);
    let all = files(&folder.path("all"));
    folder.answer(&["handouts", "garden.toml", "--out", "class", "--for", "1A"]);
    let own = files(&folder.path("class"));
    let pages = [
        "calendars/class-1a.ics",
        "children-1.html",
        "grade-1.html",
        "index.html",
    ];
    let ours: Vec<&str> = own
        .iter()
        .map(String::as_str)
        .filter(|f| f.ends_with("html") || f.ends_with("ics"))
        .collect();
    assert_eq!(ours, pages);
    assert!(own.len() < all.len(), "{own:?}");
    // They are those of the whole folder; the sheet of the grade leads to the calendar of this class alone.
    for page in &pages[..2] {
        assert_eq!(
            folder.read(&format!("class/{page}")),
            folder.read(&format!("all/{page}"))
        );
    }
    let [sheet, whole] = ["class", "all"].map(|of| folder.read(&format!("{of}/grade-1.html")));
    let (before, _) = sheet.split_once("<p class=\"calendars\">").unwrap();
    assert!(whole.starts_with(before), "{sheet}");
    for class in ["1a", "1b"] {
        let link = format!("<a href=\"calendars/class-{class}.ics\">");
        assert_eq!(whole.matches(&link).count(), 1, "{class}");
        assert_eq!(sheet.contains(&link), class == "1a");
    }
    folder.answer(&[
        "handouts",
        "garden.toml",
        "--out",
        "grade",
        "--for",
        "Grade 1",
    ]);
    assert!(folder.path("grade/grade-1.html").exists());
    let nobody = folder.run(&["handouts", "garden.toml", "--out", "none", "--for", "9z"]);
    assert_eq!(nobody.status.code(), Some(2));
    let said = text(&nobody.stderr);
    assert!(
        said.contains("no class or grade \"9z\"") && said.contains("1a"),
        "{said}"
    );
    assert!(!folder.path("none").exists());
    // The folder of the school is not thinned out to one class.
    let wider = folder.run(&["handouts", "garden.toml", "--out", "all", "--for", "1a"]);
    assert_eq!(wider.status.code(), Some(2));
    assert!(text(&wider.stderr).contains("holds the handouts of the whole school"));
    assert_eq!(files(&folder.path("all")), all);
}
