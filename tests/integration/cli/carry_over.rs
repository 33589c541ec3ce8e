//! The project of the next year, made of that of this year, its plan and its diary.

use std::fs;
use std::path::Path;

use super::{Folder, text};

/// A day after every feast of the scenarios.
const AFTERWARDS: &str = "2028-01-02";

/// The lines that a text has and another one has not, in order.
fn lines_not_in(text: &str, other: &str) -> String {
    let others: Vec<&str> = other.lines().collect();
    let lines = text.lines().filter(|line| !others.contains(line));
    lines.map(|line| format!("{line}\n")).collect()
}

/// A school that writes its file in every way that TOML has.
const ODD: &str = include_str!("carry_over.toml");

#[test]
fn the_text_stays_and_what_a_year_changes_is_changed_in_it() {
    let folder = Folder::with("carry-over-odd", |_| ODD.to_owned());
    fs::create_dir(folder.path("far")).unwrap();
    let record = include_str!("../../../scenarios/two-beds/weather.csv");
    fs::write(folder.path("far/days.csv"), record).unwrap();
    let told = folder.answer(&[
        "carry-over",
        "garden.toml",
        "--out",
        "next",
        "--on",
        "2027-07-01",
    ]);
    let next = folder.read("next/garden.toml");
    insta::assert_snapshot!("carried-over-told", told);
    insta::assert_snapshot!("carried-over-gone", lines_not_in(ODD, &next));
    insta::assert_snapshot!("carried-over-new", lines_not_in(&next, ODD));
    assert_eq!(folder.read("next/days.csv"), record);
    folder.answer(&["check", "next/garden.toml"]);
    // A year later the remarks of this one go, and nothing else of what people wrote.
    folder.answer(&[
        "carry-over",
        "next/garden.toml",
        "--out",
        "later",
        "--on",
        "2028-07-01",
    ]);
    let later = folder.read("later/garden.toml");
    assert!(later.starts_with(
        "#:schema ./garden.schema.json\n# carried over: from the file of Feast 2028,"
    ));
    assert_eq!(later.matches("# carried over: from").count(), 1, "{later}");
    assert!(later.contains("name = \"Feast 2029\""), "{later}");
    for remark in ODD.lines().filter(|line| line.starts_with("# ")) {
        assert!(later.contains(remark), "{remark}\n{later}");
    }
}

#[test]
fn what_really_stood_goes_into_the_histories() {
    let folder = Folder::new("carry-over-diary");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let history = |on: &str, out: &str| {
        let told = folder.answer(&["carry-over", "garden.toml", "--out", out, "--on", on]);
        let next = folder.read(&format!("{out}/garden.toml"));
        folder.answer(&["check", &format!("{out}/garden.toml")]);
        let grew = next.lines().filter(|line| line.starts_with("grew"));
        (told, grew.map(str::to_owned).collect::<Vec<_>>())
    };
    let (told, planned) = history("2027-06-30", "as-planned");
    assert!(!told.contains("is not over"), "{told}");
    let with = |crop: &str| planned.iter().filter(|line| line.contains(crop)).count();
    assert!(with("radish") >= 1 && with("spinach") >= 1, "{planned:?}");
    // Before the feast it is told that the season goes on, and the plan is believed.
    let (told, early) = history("2027-05-10", "early");
    assert!(
        told.starts_with("The season is not over before Fri 18 Jun 2027"),
        "{told}"
    );
    assert_eq!(early, planned);
    // What was lost after it had stood in its bed is there, what was sown in its place as well.
    let lost =
        "[[entry]]\non = 2027-04-27\nlost = 1.0\ningredient = \"spinach\"\ncause = \"snails\"\n";
    fs::write(folder.path("diary.toml"), lost).unwrap();
    folder.answer(&["plan", "garden.toml", "--on", "2027-04-28", "--out", "."]);
    let (_, really) = history("2027-06-30", "really");
    let plan = folder.read("plan.json");
    let plan: serde_json::Value = serde_json::from_str(&plan).unwrap();
    let beds = |list: &serde_json::Value| -> Vec<String> {
        let places = list
            .as_array()
            .unwrap()
            .iter()
            .flat_map(|p| p["places"].as_array().unwrap());
        places
            .map(|place| place["bed"].as_str().unwrap().to_owned())
            .collect()
    };
    let gone = &plan["season"]["gone"][0]["what"];
    assert_eq!(gone["ingredient"], "spinach");
    let gone = beds(&serde_json::json!([gone]));
    assert!(!gone.is_empty());
    let next = folder.read("really/garden.toml");
    for bed in gone {
        let of_bed = next
            .split("[[bed]]")
            .find(|part| part.contains(&format!("id = \"{bed}\"")));
        assert!(of_bed.unwrap().contains("spinach"), "{really:?}");
    }
}

/// Histories as people write them, and a bed in braces.
#[test]
fn a_history_goes_on_in_the_form_that_it_has() {
    let folder = Folder::new("carry-over-forms");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let garden = folder.read("garden.toml");
    let (before, beds) = garden.split_once("[[bed]]").unwrap();
    let shelf = beds.split_once("[shelf]").unwrap().1;
    let with =
        |history: &str| garden.replace("sun = \"full\"\n", &format!("sun = \"full\"\n{history}"));
    let in_braces = |bed: &str| format!("{{ id = \"{bed}\", length_m = 2.4, width_m = 1.2 }}");
    let in_braces = format!("bed = [{}, {}]", in_braces("A"), in_braces("B"));
    let forms = [
        garden.clone(),
        with("grew = { 2026 = [\"leek\"], 2025 = [\"kale\"] } # by the gate\n"),
        with("grew.2026 = [\"leek\"] # by the gate\ngrew.2011 = [\"kale\"]\n"),
        with("[bed.grew] # by the gate\n2026 = [\"leek\"]\n\n2027 = [\"pea\", \"radish\"]\n"),
        format!("{in_braces}\n{before}[shelf]{shelf}"),
    ];
    let mut all = String::new();
    for (number, form) in forms.iter().enumerate() {
        fs::write(folder.path("garden.toml"), form).unwrap();
        let out = format!("next-{number}");
        folder.answer(&[
            "carry-over",
            "garden.toml",
            "--out",
            &out,
            "--on",
            "2027-07-01",
        ]);
        let next = folder.read(&format!("{out}/garden.toml"));
        folder.answer(&["check", &format!("{out}/garden.toml")]);
        let history = next.lines().filter(|line| !line.starts_with('#'));
        let history = history.filter(|line| {
            ["id =", "grew", "2025 =", "2026 =", "2027 ="]
                .iter()
                .any(|key| line.contains(key))
        });
        let history: Vec<&str> = history.filter(|line| !line.contains("name =")).collect();
        all += &format!("{}\n\n", history.join("\n"));
    }
    insta::assert_snapshot!("carried-over-histories", all);
}

#[test]
fn nothing_is_replaced() {
    let folder = Folder::new("carry-over-twice");
    let command = [
        "carry-over",
        "garden.toml",
        "--out",
        "next",
        "--on",
        "2027-07-01",
    ];
    folder.answer(&command);
    let first = folder.read("next/garden.toml");
    let own = folder.read("garden.toml");
    for out in ["next", "."] {
        let again = folder.run(&["carry-over", "garden.toml", "--out", out]);
        assert_eq!(again.status.code(), Some(2));
        let error = text(&again.stderr);
        assert!(error.contains("Give another folder"), "{error}");
        assert!(!error.contains("--replace"), "{error}");
        assert_eq!(text(&again.stdout), "");
    }
    assert_eq!(folder.read("next/garden.toml"), first);
    assert_eq!(folder.read("garden.toml"), own);
    // Without a plan the history is not made up.
    let told = folder.answer(&[
        "carry-over",
        "garden.toml",
        "--out",
        "other",
        "--on",
        "2027-07-01",
    ]);
    assert!(told.contains("There is no plan.json beside"), "{told}");
    assert!(!first.contains("grew ="), "{first}");
    // Where the weather's place is taken nothing is written at all.
    let folder = Folder::with("carry-over-weather", |_| ODD.to_owned());
    fs::create_dir(folder.path("far")).unwrap();
    fs::create_dir(folder.path("next")).unwrap();
    let record = include_str!("../../../scenarios/two-beds/weather.csv");
    fs::write(folder.path("far/days.csv"), record).unwrap();
    fs::write(folder.path("next/days.csv"), "mine").unwrap();
    let refused = folder.run(&command);
    assert_eq!(refused.status.code(), Some(2), "{}", text(&refused.stderr));
    assert_eq!(folder.read("next/days.csv"), "mine");
    assert!(!folder.path("next/garden.toml").exists());
}

/// A bundled project, and the ingredient for which rotation leaves no bed in the next year.
const SCENARIOS: [(&str, Option<&str>); 7] = [
    ("autumn-down-under", Some("tomato")),
    ("nine-grades", None),
    ("soup-day", Some("tomato")),
    ("soup-day-as-a-cook-would", None),
    ("turned-over", None),
    ("two-beds", Some("radish")),
    ("wrap-day", Some("snap pea")),
];

/// Every bundled project is carried over, and its next year passes `check`. It can be planned, but for crops whose
/// family stood in all beds that suit it: those are told, and with their rotation set aside there is a plan.
#[test]
fn every_scenario_has_a_next_year() {
    let scenarios = Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    let all = fs::read_dir(&scenarios)
        .unwrap()
        .map(|entry| entry.unwrap().file_name());
    let mut all: Vec<String> = all.map(|name| name.into_string().unwrap()).collect();
    all.sort();
    assert_eq!(all, SCENARIOS.map(|(name, _)| name));
    let folder = Folder::new("carry-over-scenarios");
    for name in &all {
        fs::create_dir(folder.path(name)).unwrap();
        for file in ["garden.toml", "weather.csv"] {
            let from = scenarios.join(name).join(file);
            if from.exists() {
                fs::copy(from, folder.path(name).join(file)).unwrap();
            }
        }
    }
    for (name, tired) in SCENARIOS {
        let (old, new) = (
            format!("{name}/garden.toml"),
            format!("next/{name}/garden.toml"),
        );
        let planned = folder.run(&["plan", &old, "--out", name, "--time-limit", "60"]);
        let had_a_plan = planned.status.code() == Some(0);
        assert_eq!(had_a_plan, name != "soup-day-as-a-cook-would", "{name}");
        let out = format!("next/{name}");
        let told = folder.answer(&["carry-over", &old, "--out", &out, "--on", AFTERWARDS]);
        assert!(told.lines().count() <= 40, "{told}");
        folder.answer(&["check", &new]);
        let without = told.matches("No bed is left for").count();
        assert_eq!(without, usize::from(tired.is_some()), "{told}");
        assert_eq!(told.contains("tureen why"), tired.is_some(), "{told}");
        if let Some(crop) = tired {
            assert!(
                told.contains(&format!("No bed is left for {crop}:")),
                "{told}"
            );
        }
        if had_a_plan {
            plans(&folder, &new, tired);
        }
    }
}

/// That a next year can be planned, where need be with rotation set aside for tired crops.
fn plans(folder: &Folder, file: &str, tired: Option<&str>) {
    let code = |output: &std::process::Output| output.status.code();
    let plan = folder.run(&["plan", file, "--time-limit", "60"]);
    let said = text(&plan.stdout);
    // In this garden tomatoes have a bed left that is too small for them.
    let tired = tired.or(file.contains("nine-grades").then_some("tomato"));
    let Some(crop) = tired else {
        assert_eq!(code(&plan), Some(0), "{said}");
        return;
    };
    assert_eq!(code(&plan), Some(4), "{said}");
    assert!(
        said.contains(&format!("- {crop}: nothing that was tried works")),
        "{said}"
    );
    let set_aside = format!("\n[crop.\"{crop}\"]\nrotation_years = 0\n");
    let next = folder.read(file);
    let key = [format!("[crop.{crop}]\n"), format!("[crop.\"{crop}\"]\n")];
    let changed = match key.iter().find(|key| next.contains(*key)) {
        Some(key) => next.replace(key, &format!("{key}rotation_years = 0\n")),
        None => next + &set_aside,
    };
    fs::write(folder.path(file), changed).unwrap();
    let plan = folder.run(&["plan", file, "--time-limit", "60"]);
    assert_eq!(code(&plan), Some(0), "{file}\n{}", text(&plan.stdout));
}

/// Where there is no diary the new file does not claim one.
#[test]
fn a_plan_without_a_diary_is_believed_as_a_plan() {
    let folder = Folder::new("carry-over-plan-alone");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    folder.answer(&[
        "carry-over",
        "garden.toml",
        "--out",
        "next",
        "--on",
        "2027-07-01",
    ]);
    let next = folder.read("next/garden.toml");
    assert!(
        next.contains("what grew in the beds is as it was planned"),
        "{next}"
    );
    assert!(!next.contains("diary"), "{next}");
}
