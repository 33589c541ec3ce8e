//! The bar: what no input may bring the program to. It runs the program as a user does, in a
//! folder of its own, and looks at how it ends, what it took and what it printed.

use std::ffi::OsString;
use std::fs::File;
use std::io::Read;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use wait4::{ResUse, Wait4};

/// Most resident memory, in bytes.
pub const MOST_MEMORY: u64 = 200_000_000;

/// Most CPU time. No command of the driver may search for longer than two seconds.
pub const MOST_CPU: Duration = Duration::from_secs(30);

/// Longest time from start to end. It is long because the machine may be busy.
pub const LONGEST: Duration = Duration::from_secs(60);

/// No process gets more than this many kilobytes of addresses, so that one that eats memory
/// is noticed and does not eat the machine's.
const ADDRESSES: u64 = 4_000_000;

/// So much of an output is looked at, in bytes.
const READ: u64 = 8_000_000;

/// How a command is run.
pub struct Run<'a> {
    pub program: &'a Path,
    pub folder: &'a Path,
    pub arguments: &'a [OsString],
    /// What COLUMNS says, if it says anything.
    pub columns: Option<&'a str>,
    /// Colour is forced; else it is off.
    pub color: bool,
    /// Longest time from start to end.
    pub longest: Duration,
}

/// How a run fell short.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fault {
    /// The rule that it breaks.
    pub rule: &'static str,
    /// More about it, alike for all faults of one cause where that can be told.
    pub detail: String,
}

/// How a run ended and what it printed.
struct Ended {
    used: ResUse,
    hung: bool,
    /// Both outputs.
    printed: Vec<u8>,
}

impl Run<'_> {
    /// Runs the command; the first rule of the bar that it breaks. `names` are the files that
    /// the input is made of.
    pub fn fault(&self, names: &[String]) -> std::io::Result<Option<Fault>> {
        let ended = self.end()?;
        Ok(judge(&ended, self.color, &self.named(names)))
    }

    /// What counts as naming a place. An argument that is made harmless is named otherwise, so
    /// with one of those anything counts.
    fn named(&self, names: &[String]) -> Vec<String> {
        fn harmless(a: &OsString) -> Option<&str> {
            a.to_str().filter(|a| !a.contains(is_control))
        }
        let arguments = self.arguments.iter().map(|a| harmless(a).unwrap_or(""));
        let paths = arguments.filter(|a| !a.starts_with("--"));
        paths.map(str::to_owned).chain(names.to_vec()).collect()
    }

    fn end(&self) -> std::io::Result<Ended> {
        // Files, not pipes: a pipe that nobody reads would stop the program.
        let outputs = ["printed.out", "printed.err"].map(|name| self.folder.with_extension(name));
        let mut command = Command::new("sh");
        command
            .args(["-c", &format!("ulimit -v {ADDRESSES}; exec \"$0\" \"$@\"")])
            .arg(self.program)
            .args(self.arguments)
            .current_dir(self.folder)
            .env_remove("COLUMNS")
            .env_remove("RUST_BACKTRACE")
            .env(
                if self.color {
                    "CLICOLOR_FORCE"
                } else {
                    "NO_COLOR"
                },
                "1",
            )
            .stdin(Stdio::null())
            .stdout(File::create(&outputs[0])?)
            .stderr(File::create(&outputs[1])?);
        if let Some(columns) = self.columns {
            command.env("COLUMNS", columns);
        }
        let (used, hung) = wait(command.spawn()?, self.longest)?;
        let mut printed = Vec::new();
        for path in &outputs {
            File::open(path)?.take(READ).read_to_end(&mut printed)?;
        }
        Ok(Ended {
            used,
            hung,
            printed,
        })
    }
}

/// Waits for the end, and brings it about after the longest time.
fn wait(mut child: Child, longest: Duration) -> std::io::Result<(ResUse, bool)> {
    let begun = Instant::now();
    let mut pause = Duration::from_micros(500);
    while begun.elapsed() < longest {
        if let Some(used) = child.try_wait4()? {
            return Ok((used, false));
        }
        std::thread::sleep(pause);
        pause = (pause * 5 / 4).min(Duration::from_millis(20));
    }
    child.kill()?;
    Ok((child.wait4()?, true))
}

fn judge(ended: &Ended, color: bool, named: &[String]) -> Option<Fault> {
    let fault = |rule, detail: String| Some(Fault { rule, detail });
    let (status, used) = (ended.used.status, ended.used.rusage);
    if ended.hung {
        return fault("hangs", String::new());
    }
    let text = String::from_utf8_lossy(&ended.printed);
    if let Some(at) = text.find("panicked at ") {
        let place = text[at..].lines().take(2).collect::<Vec<_>>().join(" ");
        return fault("panics", place);
    }
    if used.maxrss > MOST_MEMORY {
        let eighth = used.maxrss / 25_000_000 * 25;
        return fault("takes too much memory", format!("over {eighth} MB"));
    }
    if let Some(signal) = status.signal() {
        return fault("ends by a signal", signal.to_string());
    }
    if used.utime + used.stime > MOST_CPU {
        return fault("takes too long", String::new());
    }
    if let Some(sign) = control(&ended.printed, color) {
        return fault("prints a control sign", sign);
    }
    match status.code() {
        Some(0) => None,
        Some(2..=6) if ended.printed.is_empty() => fault("says nothing", String::new()),
        Some(3)
            if !named
                .iter()
                .any(|name| letters(&text).contains(&letters(name))) =>
        {
            fault("names no place", first_line(&text))
        }
        Some(2..=6) => None,
        _ => fault(
            "ends with another code",
            format!("{status}: {}", first_line(&text)),
        ),
    }
}

/// Letters and figures alone: a narrow screen breaks names, and signs in them are made harmless.
fn letters(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).collect()
}

/// The first line, without figures and colours, so that faults of one cause are alike.
fn first_line(text: &str) -> String {
    let line = text.lines().next().unwrap_or_default();
    line.chars()
        .filter(|c| !c.is_ascii_digit() && !c.is_control())
        .take(100)
        .collect()
}

/// The first sign that a terminal would obey, or that turns the direction of text. The
/// program's own colours pass where they were asked for.
fn control(printed: &[u8], color: bool) -> Option<String> {
    let printed = match std::str::from_utf8(printed) {
        Ok(text) => text,
        // The end may be cut off within a letter.
        Err(error) if error.error_len().is_none() => {
            std::str::from_utf8(&printed[..error.valid_up_to()]).unwrap_or_default()
        }
        Err(_) => return Some("no UTF-8".to_owned()),
    };
    let mut rest = printed;
    while let Some(at) = rest.find(is_control) {
        rest = &rest[at..];
        let own = if color { own_color(rest) } else { 0 };
        if own == 0 {
            return rest
                .chars()
                .next()
                .map(|c| format!("U+{:04X}", u32::from(c)));
        }
        rest = &rest[own..];
    }
    None
}

fn is_control(c: char) -> bool {
    (c.is_control() && !matches!(c, '\n' | '\t'))
        || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// The length of a colour at the start of a text, else 0.
fn own_color(text: &str) -> usize {
    let Some(code) = text.strip_prefix("\u{1b}[") else {
        return 0;
    };
    let digits = code.trim_start_matches(|c: char| c.is_ascii_digit() || c == ';');
    let end = text.len() - digits.len();
    if digits.starts_with('m') { end + 1 } else { 0 }
}
