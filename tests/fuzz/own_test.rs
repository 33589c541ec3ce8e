//! The bar's own test: programs that are broken on purpose, each in one way, and one that is not.

use std::error::Error;
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use std::time::Duration;

use crate::bar::{LONGEST, Run};

/// What a program does, with and without colour, and the rule that it breaks.
const BROKEN: [(&str, bool, Option<&str>); 19] = [
    ("echo fine", false, None),
    ("echo wrong: garden.toml:3 >&2; exit 3", false, None),
    ("printf '\\033[1;31mred\\033[0m'; exit 6", true, None),
    (
        "echo \"thread 'main' panicked at src/a.rs:1:1:\" >&2; exit 101",
        false,
        Some("panics"),
    ),
    ("kill -SEGV $$", false, Some("ends by a signal")),
    ("echo no; exit 1", false, Some("ends with another code")),
    ("echo no; exit 42", false, Some("ends with another code")),
    ("exit 2", false, Some("says nothing")),
    (
        "echo something is wrong; exit 3",
        false,
        Some("names no place"),
    ),
    ("exec sleep 60", false, Some("hangs")),
    ("while :; do :; done", false, Some("hangs")),
    (
        "head -c 300M /dev/zero | tail -n 1 > /dev/null",
        false,
        Some("takes too much memory"),
    ),
    ("printf '\\033[31m'", false, Some("prints a control sign")),
    ("printf '\\033[2J'", true, Some("prints a control sign")),
    (
        "printf '\\033]0;x\\007'",
        true,
        Some("prints a control sign"),
    ),
    (
        "printf '\\302\\2332J'",
        false,
        Some("prints a control sign"),
    ),
    (
        "printf '\\342\\200\\256'",
        true,
        Some("prints a control sign"),
    ),
    ("printf '\\377'", true, Some("prints a control sign")),
    ("printf 'a\\r' >&2", false, Some("prints a control sign")),
];

/// Nobody waits a minute for a program that is known to hang.
const KNOWN_TO_HANG: Duration = Duration::from_secs(2);

/// Holds that each broken program is noticed by its own rule, and sound ones pass.
pub fn broken_programs_are_noticed(scratch: &Path) -> Result<(), Box<dyn Error>> {
    let folder = scratch.join("own-test");
    std::fs::create_dir_all(&folder)?;
    for (number, (does, color, rule)) in BROKEN.into_iter().enumerate() {
        let program = scratch.join(format!("broken-{number}"));
        std::fs::write(&program, format!("#!/bin/sh\n{does}\n"))?;
        std::fs::set_permissions(&program, PermissionsExt::from_mode(0o755))?;
        let run = Run {
            program: &program,
            folder: &folder,
            arguments: &[],
            columns: None,
            color,
            longest: match rule {
                Some("hangs") => KNOWN_TO_HANG,
                _ => LONGEST,
            },
        };
        let fault = run.fault(&["garden.toml".to_owned()])?;
        let noticed = fault.as_ref().map(|fault| fault.rule);
        if noticed != rule {
            return Err(format!("the bar says {fault:?} of {does:?}").into());
        }
    }
    Ok(())
}
