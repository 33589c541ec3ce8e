//! Where inputs start: every scenario, its climate, and the plan that the program makes of it;
//! and the file in which every key of a project stands.

use std::collections::BTreeMap;
use std::error::Error;
use std::path::Path;
use std::process::{Command, Stdio};

/// Names of the files of a start.
pub const GARDEN: &str = "garden.toml";
pub const CLIMATE: &str = "climate.toml";
pub const PLAN: &str = "plan.json";

/// The project of the start on which commands are tried that plan many times.
const SMALL: &str = "two-beds";

/// The files of one project.
pub struct Start {
    pub files: BTreeMap<String, Vec<u8>>,
    /// Planning it takes no time to speak of.
    pub is_small: bool,
}

/// All starts, in a fixed order. The plans are made in `scratch`.
pub fn starts(program: &Path, scratch: &Path) -> Result<Vec<Start>, Box<dyn Error>> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut folders: Vec<_> = std::fs::read_dir(root.join("scenarios"))?
        .map(|entry| entry.map(|e| e.path()))
        .collect::<Result<_, _>>()?;
    folders.sort();
    let mut starts = Vec::new();
    for folder in folders {
        let mut files = BTreeMap::new();
        for name in [GARDEN, CLIMATE, "weather.csv"] {
            // Not every scenario has generated weather.
            if let Ok(bytes) = std::fs::read(folder.join(name)) {
                files.insert(name.to_owned(), bytes);
            }
        }
        starts.push(Start {
            files,
            is_small: folder.ends_with(SMALL),
        });
    }
    let errors = root.join("tests/integration/project_errors");
    for project in ["full.toml", "minimal.toml"] {
        let files = [
            (GARDEN, std::fs::read(errors.join(project))?),
            (
                "weather.csv",
                std::fs::read(root.join("scenarios/soup-day/weather.csv"))?,
            ),
            ("autumn.csv", std::fs::read(errors.join("autumn.csv"))?),
        ];
        starts.push(Start {
            files: files.map(|(name, bytes)| (name.to_owned(), bytes)).into(),
            is_small: false,
        });
    }
    for (number, start) in starts.iter_mut().enumerate() {
        let folder = scratch.join(format!("start-{number}"));
        add_plan(program, &folder, start)?;
    }
    Ok(starts)
}

/// Adds the program's own plan, if there is one.
fn add_plan(program: &Path, folder: &Path, start: &mut Start) -> Result<(), Box<dyn Error>> {
    std::fs::create_dir_all(folder)?;
    for (name, bytes) in &start.files {
        std::fs::write(folder.join(name), bytes)?;
    }
    Command::new(program)
        .args(["plan", GARDEN, "--out", ".", "--time-limit", "3"])
        .current_dir(folder)
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()?;
    if let Ok(bytes) = std::fs::read(folder.join(PLAN)) {
        start.files.insert(PLAN.to_owned(), bytes);
    }
    Ok(())
}
