//! `completions` and `manual`: the scripts are run by a real shell, the pages name every option.

use std::process::Command;

use super::{Folder, text};

/// The names of all commands, as the help lists them, without `help` itself.
fn commands(folder: &Folder) -> Vec<String> {
    let help = folder.answer(&["--help"]);
    let (_, list) = help.split_once("Commands:\n").unwrap();
    let (list, _) = list.split_once("\n\n").unwrap();
    let names = list.lines().filter_map(|line| {
        let name = line.strip_prefix("  ").filter(|l| !l.starts_with(' '))?;
        name.split_whitespace().next()
    });
    names
        .filter(|name| *name != "help")
        .map(str::to_owned)
        .collect()
}

/// The long options of a help text.
fn options(help: &str) -> Vec<String> {
    let words = help.split(|c: char| c.is_whitespace() || matches!(c, ',' | '[' | ']' | '`' | '.'));
    let mut all: Vec<String> = words
        .filter(|word| word.starts_with("--") && word.len() > 2)
        .map(str::to_owned)
        .collect();
    all.sort();
    all.dedup();
    all
}

#[test]
fn every_shell_gets_a_script_that_names_every_command() {
    let folder = Folder::new("completions");
    let commands = commands(&folder);
    assert!(commands.len() > 12, "{commands:?}");
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = folder.answer(&["completions", shell]);
        for command in &commands {
            assert!(script.contains(command.as_str()), "{shell}: {command}");
        }
    }
    let unknown = folder.run(&["completions", "abacus"]);
    assert_eq!(unknown.status.code(), Some(2));
    assert!(
        text(&unknown.stderr).contains("bash"),
        "the shells are named"
    );
}

/// What bash itself would offer.
#[test]
fn bash_completes_commands_and_options() {
    let folder = Folder::new("completions-in-bash");
    std::fs::write(
        folder.path("script"),
        folder.answer(&["completions", "bash"]),
    )
    .unwrap();
    let offered = |words: &str, at: usize| {
        let line = format!(
            "source {}; COMP_WORDS=({words}); COMP_CWORD={at}; \
             _tureen tureen \"${{COMP_WORDS[{at}]}}\" \"${{COMP_WORDS[{}]}}\"; echo \"${{COMPREPLY[@]}}\"",
            folder.path("script").display(),
            at - 1
        );
        let said = Command::new("bash").args(["-c", &line]).output().unwrap();
        assert_eq!(text(&said.stderr), "", "{line}");
        text(&said.stdout).trim().to_owned()
    };
    assert_eq!(offered("tureen hand", 1), "handouts");
    assert_eq!(offered("tureen handouts --le", 2), "--least-space");
}

#[test]
fn every_command_has_a_manual_page_with_all_its_options() {
    let folder = Folder::new("manual");
    let whole = folder.answer(&["manual"]);
    assert!(whole.contains(".TH tureen 1"), "{whole}");
    for command in commands(&folder) {
        let in_roff = command.replace('-', "\\-");
        assert!(whole.contains(&format!("tureen\\-{in_roff}(1)")), "{whole}");
        let page = folder.answer(&["manual", &command]);
        assert!(page.contains(&format!("tureen-{command} 1")), "{page}");
        for option in options(&folder.answer(&[&command, "--help"])) {
            let in_roff = option.replace('-', "\\-");
            assert!(page.contains(&in_roff), "{command}: {option}\n{page}");
        }
    }
    let unknown = folder.run(&["manual", "orchard"]);
    assert_eq!(unknown.status.code(), Some(2));
    assert!(
        text(&unknown.stderr).contains("check, plan"),
        "all are named"
    );
}
