//! A crop that two grades grow together, as everybody reads of it.

use super::Folder;

/// Both grades grow the radish, and grade 2 spinach besides.
fn shared(name: &str) -> Folder {
    Folder::with(name, |file| {
        file.replace(
            "grade = \"1\"\n",
            "grade = [\"1\", \"2\"]\ntogether = true\n",
        )
    })
}

/// Words with one space between them.
fn plain(said: &str) -> String {
    let said = said.replace('\u{a0}', " ");
    said.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_grade_reads_of_its_part_and_the_kitchen_of_one_crop() {
    let folder = shared("together");
    let understood = plain(&folder.answer(&["check", "garden.toml"]));
    assert!(
        understood.contains("radish Grade 1 and Grade 2 10 g"),
        "{understood}"
    );
    let plan = plain(&folder.answer(&["plan", "garden.toml", "--out", "."]));
    assert_eq!(
        plan.matches("Grade 1 and Grade 2 radish").count(),
        1,
        "{plan}"
    );
    folder.answer(&["verify", "garden.toml", "plan.json"]);
    let saved = folder.read("plan.json");
    assert!(
        plain(&saved).contains("\"grade\": [ \"1\", \"2\" ]"),
        "{saved}"
    );
    for (grade, others) in [("1", "Grade 2 (2a)"), ("2", "Grade 1 (1a and 1b)")] {
        let page = plain(&folder.answer(&["show", "garden.toml", "--grade", grade]));
        let told = format!(
            "We grow radish together with {others}: one crop, and every class of each grade has its part in every step."
        );
        assert_eq!(page.matches(&told).count(), 1, "{page}");
        // 153 seeds for the 35 children of three classes.
        assert!(
            page.contains("4 radish seeds for every child, and 13 more"),
            "{page}"
        );
    }
    folder.answer(&["handouts", "garden.toml", "--out", "out"]);
    let page = |name: &str| plain(&folder.read(&format!("out/{name}.html")));
    for (grade, others) in [("1", "Grade 2"), ("2", "Grade 1")] {
        let children = page(&format!("children-{grade}"));
        assert!(
            children.contains(&format!("We grow radish together with {others}.")),
            "{children}"
        );
    }
    assert_eq!(page("shopping").matches("Grade 1 and Grade 2").count(), 1);
    let calendar = folder
        .read("out/calendars/class-2a.ics")
        .replace("\r\n ", "");
    assert!(calendar.contains("Together with Grade 1."), "{calendar}");
    let data = plain(&folder.read("out/plan-data.json"));
    assert!(data.contains("\"grades\": [ \"1\", \"2\" ]"), "{data}");
}

#[test]
fn a_class_that_missed_its_lesson_makes_up_for_it_as_in_one_grade() {
    let folder = shared("together-missed");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let why = plain(&folder.answer(&["why", "garden.toml", "radish", "sow"]));
    assert!(why.contains("2a") && why.contains("1b"), "{why}");
}

/// Where they grow it together, one of them alone is a way out, and it is another line of the file.
#[test]
fn one_grade_alone_is_tried_like_any_change() {
    let folder = shared("together-alone");
    let change = [
        "try",
        "garden.toml",
        "--set",
        "dish.ingredient.radish.together=",
        "--set",
    ];
    let alone = folder.answer(&[&change[..], &["dish.ingredient.radish.grade=\"1\""]].concat());
    assert!(
        plain(&alone).contains("grown by Grade 1 instead of Grade 1 and Grade 2"),
        "{alone}"
    );
    folder.answer(&["carry-over", "garden.toml", "--out", "next"]);
    let next = folder.read("next/garden.toml");
    assert!(
        next.contains("grade = [\"1\", \"2\"]\ntogether = true"),
        "{next}"
    );
}
