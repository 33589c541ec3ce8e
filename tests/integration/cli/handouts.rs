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
