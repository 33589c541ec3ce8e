//! A saved plan after the project or the file was changed: what is printed, and how it ends.

use super::{Folder, GARDEN, text};

const HEAD: &str =
    "The project has changed since this plan was made: plan again, or see what still holds.";

/// A folder with a plan, after which the project file is changed.
fn changed(name: &str, from: &str, to: &str) -> Folder {
    let folder = Folder::new(name);
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    assert!(GARDEN.contains(from), "{from}");
    std::fs::write(folder.path("garden.toml"), GARDEN.replacen(from, to, 1)).unwrap();
    folder
}

/// Text on one line.
fn line(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn one_child_more_is_told_and_the_plan_is_shown_with_its_new_figures() {
    let folder = changed("changed-child", "children = 10", "children = 11");
    for command in [
        &["show", "garden.toml"][..],
        &["show", "garden.toml", "--grade", "1"],
        &["show", "garden.toml", "--space"],
        &["show", "garden.toml", "--water"],
        &["show", "garden.toml", "--slack"],
    ] {
        let shown = line(&folder.answer(command));
        assert!(shown.starts_with(HEAD), "{command:?}: {shown}");
        assert!(shown.contains(" -> "), "{command:?}: {shown}");
        assert!(!shown.contains("; proved best"), "{shown}");
    }
    let verified = line(&folder.answer(&["verify", "garden.toml", "plan.json"]));
    assert!(
        verified.contains(HEAD) && !verified.contains("proved"),
        "{verified}"
    );
}

#[test]
fn every_page_of_the_handouts_opens_with_it() {
    let folder = changed("changed-handouts", "children = 10", "children = 11");
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let mut pages = 0;
    for file in std::fs::read_dir(folder.path("out")).unwrap() {
        let path = file.unwrap().path();
        if path.extension().is_some_and(|ending| ending == "html") {
            let page = line(&std::fs::read_to_string(&path).unwrap());
            let notice = page
                .find(HEAD)
                .unwrap_or_else(|| panic!("{}", path.display()));
            let table = page.find("<table").unwrap_or(usize::MAX);
            assert!(notice < table, "{}", path.display());
            assert!(!page.contains("proved best"), "{}", path.display());
            pages += 1;
        }
    }
    // Nine, two of children, the poster.
    assert_eq!(pages, 12);
    assert_eq!(standing_in_data(&folder), "project-changed");
}

/// What the data file says that the plan is worth.
fn standing_in_data(folder: &Folder) -> String {
    let data = std::fs::read_to_string(folder.path("out/plan-data.json")).unwrap();
    let data: serde_json::Value = serde_json::from_str(&data).unwrap();
    data["standing"].as_str().unwrap().to_owned()
}

/// A plan as it was saved, and the same after an edit that breaks no rule.
#[test]
fn the_data_file_tells_that_a_plan_was_edited() {
    let folder = Folder::new("changed-data-edited");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    assert_eq!(standing_in_data(&folder), "as-planned");
    let plan = std::fs::read_to_string(folder.path("plan.json")).unwrap();
    let edited = plan.replacen("\"bound\": ", "\"bound\": 9", 1);
    assert_ne!(plan, edited);
    std::fs::write(folder.path("plan.json"), edited).unwrap();
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    assert_eq!(standing_in_data(&folder), "edited");
}

#[test]
fn what_no_longer_fits_ends_with_6() {
    let folder = changed("changed-minutes", "minutes = 40", "minutes = 12");
    for command in ["show", "handouts"] {
        let out: &[&str] = match command {
            "show" => &["show", "garden.toml"],
            _ => &["handouts", "garden.toml", "--out", "out"],
        };
        let refused = folder.run(out);
        assert_eq!(refused.status.code(), Some(6));
        let said = line(&text(&refused.stderr));
        assert!(said.starts_with(HEAD), "{said}");
        assert!(said.contains("in a session of 12 min"), "{said}");
    }
    assert!(!folder.path("out").exists());
}

#[test]
fn a_class_that_is_gone_is_named() {
    let folder = changed("changed-class", "name = \"1b\"", "name = \"1c\"");
    let refused = folder.run(&["verify", "garden.toml", "plan.json"]);
    assert_eq!(refused.status.code(), Some(6));
    let said = line(&text(&refused.stdout));
    assert!(
        said.starts_with(HEAD) && said.contains("class \"1b\"."),
        "{said}"
    );
}

#[test]
fn an_edited_plan_claims_nothing_and_a_wrong_figure_in_it_comes_with_a_remedy() {
    let folder = Folder::new("edited-claims");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let plan = folder.read("plan.json");
    // A bound that could be true, and no word of years that are given back.
    let at = plan.rfind("\"bound\": ").unwrap() + "\"bound\": ".len();
    let edited = format!("{}0{}", &plan[..at], &plan[at + 1..]);
    assert_ne!(edited, plan);
    let saved = line(&folder.answer(&["verify", "garden.toml", "plan.json"]));
    assert!(saved.contains("proved best when"), "{saved}");
    std::fs::write(folder.path("plan.json"), edited).unwrap();
    let verified = line(&folder.answer(&["verify", "garden.toml", "plan.json"]));
    assert!(
        verified.contains("This plan was edited since it was made."),
        "{verified}"
    );
    for claim in ["proved", "given up", "possible when"] {
        assert!(!verified.contains(claim), "{verified}");
    }
    let figure = plan.replacen("\"seeds\": ", "\"seeds\": 1", 1);
    std::fs::write(folder.path("plan.json"), figure).unwrap();
    let refused = folder.run(&["show", "garden.toml"]);
    assert_eq!(refused.status.code(), Some(6));
    let said = line(&text(&refused.stderr));
    assert!(said.contains("write the right one into the file"), "{said}");
}
