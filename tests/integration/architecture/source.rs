//! The project's own source as tokens: comments are gone, a string is one token, and every
//! token knows its line. The scanners look for short runs of tokens.

use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use proc_macro2::{Delimiter, TokenStream, TokenTree};

/// One source file.
pub struct SourceFile {
    /// Its path below the repository, with `/`.
    pub path: String,
    /// Its text.
    pub text: String,
    /// Its tokens.
    pub tokens: Vec<Token>,
}

/// An identifier, a lifetime with its quote, a literal as written, one sign or one bracket.
pub struct Token {
    /// As written.
    pub text: String,
    /// Its line, counted from 1.
    pub line: usize,
    /// True for identifiers and keywords.
    pub is_word: bool,
}

impl SourceFile {
    /// A file from its text.
    pub fn new(path: &str, text: &str) -> Self {
        let stream: TokenStream = text.parse().unwrap_or_else(|e| panic!("{path}: {e}"));
        let mut tokens = Vec::new();
        flatten(stream, &mut tokens);
        Self {
            path: path.to_owned(),
            text: text.to_owned(),
            tokens,
        }
    }

    /// The lines at which a run of tokens begins.
    pub fn lines_with(&self, run: &[&str]) -> Vec<usize> {
        self.tokens
            .windows(run.len())
            .filter(|w| w.iter().zip(run).all(|(token, text)| token.text == *text))
            .map(|w| w[0].line)
            .collect()
    }
}

fn flatten(stream: TokenStream, tokens: &mut Vec<Token>) {
    let mut quote = "";
    for tree in stream {
        let line = tree.span().start().line;
        let mut push = |text: String, line, is_word| {
            tokens.push(Token {
                text,
                line,
                is_word,
            });
        };
        match tree {
            TokenTree::Group(group) => {
                let (open, close) = match group.delimiter() {
                    Delimiter::Parenthesis => ("(", ")"),
                    Delimiter::Brace => ("{", "}"),
                    Delimiter::Bracket => ("[", "]"),
                    Delimiter::None => ("", ""),
                };
                push(open.to_owned(), line, false);
                flatten(group.stream(), tokens);
                tokens.push(Token {
                    text: close.to_owned(),
                    line: group.span_close().start().line,
                    is_word: false,
                });
            }
            TokenTree::Punct(sign) if sign.as_char() == '\'' => quote = "'",
            TokenTree::Punct(sign) => push(sign.to_string(), line, false),
            TokenTree::Ident(name) => {
                push(format!("{quote}{name}"), line, quote.is_empty());
                quote = "";
            }
            TokenTree::Literal(literal) => push(literal.to_string(), line, false),
        }
    }
}

/// Files of a small crate, written as path and text.
pub fn crate_of(files: &[(&str, &str)]) -> Vec<SourceFile> {
    files
        .iter()
        .map(|(path, text)| SourceFile::new(path, text))
        .collect()
}

/// The repository.
pub fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// All Rust files below `src` or `tests`, by path; read once for all tests.
pub fn rust_files(folder: &str) -> &'static [SourceFile] {
    static SRC: LazyLock<Vec<SourceFile>> = LazyLock::new(|| read("src"));
    static TESTS: LazyLock<Vec<SourceFile>> = LazyLock::new(|| read("tests"));
    match folder {
        "src" => &SRC,
        "tests" => &TESTS,
        _ => panic!("{folder} holds no Rust files"),
    }
}

fn read(folder: &str) -> Vec<SourceFile> {
    let mut paths = Vec::new();
    collect(&root().join(folder), &mut paths);
    paths.sort();
    paths
        .iter()
        .map(|path| {
            let text = std::fs::read_to_string(path).expect("a source file can be read");
            SourceFile::new(&below_root(path), &text)
        })
        .collect()
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("a source folder can be read") {
        let path = entry.expect("its entries too").path();
        if path.is_dir() {
            collect(&path, paths);
        } else if path.extension().is_some_and(|e| e == "rs") {
            paths.push(path);
        }
    }
}

fn below_root(path: &Path) -> String {
    let below = path.strip_prefix(root()).expect("below the repository");
    let parts: Vec<_> = below.iter().map(|part| part.to_string_lossy()).collect();
    parts.join("/")
}
