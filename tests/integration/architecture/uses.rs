//! Which file uses which: every path in a file is followed to the file that defines what it
//! names, through `crate`, `super`, imports and re-exports. The crate's root counts for none.

use std::collections::{BTreeMap, BTreeSet};

use super::source::{SourceFile, Token};

/// A module of the crate, as the words of its path; a file each.
pub type Module = Vec<String>;

/// A path in a file, after `crate`, `super` and imports are put in full.
enum Target {
    /// Something of this crate.
    Inside(Vec<String>),
    /// Something of another crate, by that crate's name.
    Outside(String),
}

/// One file that uses another.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Use {
    /// The file that uses.
    pub from: Module,
    /// The file that is used.
    pub to: Module,
    /// What of it is named; nothing where it is the file itself.
    pub item: Option<String>,
    /// Where.
    pub line: usize,
}

/// All uses among the files of one crate.
pub struct Uses {
    /// Within the crate.
    pub inside: Vec<Use>,
    /// Of other crates: who, which crate, at which line.
    pub outside: Vec<(Module, String, usize)>,
}

/// The module that a file below `src` holds; the root's is empty.
pub fn module_of(path: &str) -> Module {
    let below = path.strip_prefix("src/").unwrap_or(path);
    let name = below.strip_suffix(".rs").unwrap_or(below);
    match name {
        "lib" => Module::new(),
        _ => name.split('/').map(str::to_owned).collect(),
    }
}

/// A module as it is written in a path.
pub fn shown(module: &Module) -> String {
    module.join("::")
}

/// A path as written; `name` is what an import makes of it.
struct Written {
    words: Vec<String>,
    name: Option<String>,
    line: usize,
}

/// Reads all files.
pub fn uses(files: &[SourceFile]) -> Uses {
    let modules: BTreeSet<Module> = files.iter().map(|f| module_of(&f.path)).collect();
    let written: Vec<(Module, Vec<Written>)> = files
        .iter()
        .map(|f| (module_of(&f.path), written(&f.tokens)))
        .collect();
    let mut names: BTreeMap<Module, BTreeMap<String, Vec<String>>> = BTreeMap::new();
    for (module, paths) in &written {
        // An import may start at a name that another import made.
        for path in paths {
            let known = names.entry(module.clone()).or_default();
            if let (Some(name), Target::Inside(full)) =
                (&path.name, in_full(module, &path.words, &modules, known))
            {
                known.insert(name.clone(), full);
            }
        }
    }
    let mut found = Uses {
        inside: Vec::new(),
        outside: Vec::new(),
    };
    for (from, paths) in &written {
        for Written { words, line, .. } in paths {
            match in_full(from, words, &modules, &names[from]) {
                Target::Inside(full) => {
                    let (to, item) = defined_in(full, &modules, &names);
                    if !to.is_empty() && to != *from {
                        let (from, line) = (from.clone(), *line);
                        found.inside.push(Use {
                            from,
                            to,
                            item,
                            line,
                        });
                    }
                }
                Target::Outside(name) => found.outside.push((from.clone(), name, *line)),
            }
        }
    }
    found
}

fn in_full(
    module: &Module,
    words: &[String],
    modules: &BTreeSet<Module>,
    names: &BTreeMap<String, Vec<String>>,
) -> Target {
    let first = words[0].as_str();
    let base = match first {
        "crate" => Module::new(),
        "self" => module.clone(),
        "super" => {
            let ups = words.iter().take_while(|w| *w == "super").count();
            let up = &module[..module.len().saturating_sub(ups)];
            return Target::Inside([up, &words[ups..]].concat());
        }
        _ if modules.contains(&child(module, first)) => child(module, first),
        _ => match names.get(first) {
            Some(full) => full.clone(),
            None => return Target::Outside(first.to_owned()),
        },
    };
    Target::Inside([&base, &words[1..]].concat())
}

fn child(module: &Module, name: &str) -> Module {
    [module.as_slice(), &[name.to_owned()]].concat()
}

/// The file that defines what a full path names, and what it names there.
fn defined_in(
    mut path: Vec<String>,
    modules: &BTreeSet<Module>,
    names: &BTreeMap<Module, BTreeMap<String, Vec<String>>>,
) -> (Module, Option<String>) {
    let mut at = Module::new();
    let mut next = 0;
    while let Some(word) = path.get(next) {
        let below = child(&at, word);
        let named = names.get(&at).and_then(|known| known.get(word));
        if modules.contains(&below) {
            at = below;
            next += 1;
        } else if let Some(full) = named {
            path = [full, &path[next + 1..]].concat();
            at = Module::new();
            next = 0;
        } else {
            break;
        }
    }
    (at, path.get(next).cloned())
}

/// All imports, and all other paths of at least two words.
fn written(tokens: &[Token]) -> Vec<Written> {
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        let follows_colons = matches!(&tokens[..at], [.., a, b] if a.text == ":" && b.text == ":");
        if token.text == "use" && tokens.get(at + 1).is_some_and(|t| t.text != "<") {
            at = imports(tokens, at + 1, &[], &mut found);
        } else if token.is_word && !follows_colons {
            let (words, next) = words(tokens, at);
            if words.len() > 1 {
                found.push(Written {
                    words,
                    name: None,
                    line: token.line,
                });
            }
            at = next;
        } else {
            at += 1;
        }
    }
    found
}

/// The words of a path from a place on, and the place after them.
fn words(tokens: &[Token], mut at: usize) -> (Vec<String>, usize) {
    let mut words = vec![tokens[at].text.clone()];
    while let [_, a, b, word, ..] = &tokens[at..]
        && a.text == ":"
        && b.text == ":"
        && word.is_word
    {
        words.push(word.text.clone());
        at += 3;
    }
    (words, at + 1)
}

/// Reads one tree of imports below a prefix; gives the place after it.
fn imports(tokens: &[Token], mut at: usize, prefix: &[String], found: &mut Vec<Written>) -> usize {
    let mut path = prefix.to_vec();
    loop {
        let token = &tokens[at];
        match token.text.as_str() {
            ":" => at += 1,
            "{" => {
                at += 1;
                while tokens[at].text != "}" {
                    at = imports(tokens, at, &path, found);
                    if tokens[at].text == "," {
                        at += 1;
                    }
                }
                return at + 1;
            }
            "*" => {
                found.push(Written {
                    words: path,
                    name: None,
                    line: token.line,
                });
                return at + 1;
            }
            _ => {
                path.push(token.text.clone());
                at += 1;
                if tokens[at].text == ":" {
                    continue;
                }
                if path.len() > 1 && token.text == "self" {
                    path.pop();
                }
                let renamed = tokens[at].text == "as";
                let name = if renamed {
                    tokens[at + 1].text.clone()
                } else {
                    path[path.len() - 1].clone()
                };
                found.push(Written {
                    words: path,
                    name: Some(name),
                    line: token.line,
                });
                return if renamed { at + 2 } else { at };
            }
        }
    }
}
