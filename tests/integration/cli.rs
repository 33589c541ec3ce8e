//! The program as a user runs it: commands, exit codes, what goes where, colour and width.

mod answers;
mod arguments;
mod carry_over;
mod changed;
mod closed;
mod handouts;
mod ideas;
mod looks;
mod new;
mod note;
mod place;
mod programs;
mod put_by;
mod replacing;
mod shell;
mod steps;
mod terminal;
mod together;
pub mod trials;
mod unfolded;
mod weather;

use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;

/// The project file of these tests.
const GARDEN: &str = include_str!("cli/garden.toml");

/// A folder of its own for one test, with the project file in it.
pub struct Folder(PathBuf);

impl Folder {
    /// A fresh folder with the project file, changed by `change`.
    pub fn with(name: &str, change: impl Fn(&str) -> String) -> Self {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        if path.exists() {
            std::fs::remove_dir_all(&path).unwrap();
        }
        std::fs::create_dir_all(&path).unwrap();
        std::fs::write(path.join("garden.toml"), change(GARDEN)).unwrap();
        Self(path)
    }

    /// A fresh folder with the project file as it is.
    pub fn new(name: &str) -> Self {
        Self::with(name, str::to_owned)
    }

    pub fn path(&self, file: &str) -> PathBuf {
        self.0.join(file)
    }

    pub fn read(&self, file: &str) -> String {
        std::fs::read_to_string(self.path(file)).unwrap()
    }

    /// The program, about to run in this folder.
    pub fn tureen(&self, arguments: &[&str]) -> Command {
        let mut command = Command::cargo_bin("tureen").unwrap();
        command.current_dir(&self.0).args(arguments);
        for name in ["COLUMNS", "NO_COLOR", "CLICOLOR_FORCE", "CLICOLOR"] {
            command.env_remove(name);
        }
        command
    }

    /// What the program answers.
    pub fn run(&self, arguments: &[&str]) -> Output {
        self.tureen(arguments).output().unwrap()
    }

    /// The output of a run that must succeed.
    #[track_caller]
    pub fn answer(&self, arguments: &[&str]) -> String {
        let output = self.run(arguments);
        assert_eq!(output.status.code(), Some(0), "{}", text(&output.stderr));
        assert_eq!(text(&output.stderr), "", "nothing on the error output");
        text(&output.stdout)
    }
}

/// Bytes as text.
pub fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}
