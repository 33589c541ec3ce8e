//! A new kind of step is found by the compiler: nothing in `src` asks for kinds in a way that would
//! stay silent. `plan::StepKind` is asked for its facts, or by a `match` that names all kinds.

use proc_macro2::{TokenStream, TokenTree};
use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{BinOp, Expr, Pat, UseTree};

use super::source::{SourceFile, rust_files};

/// Where the table stands: there the kinds are made and listed.
const TABLE: &str = "src/plan/step_kind.rs";

/// The type, as it stands before the name of a kind.
const TYPE: &str = "StepKind";

/// Counts the kinds that are named in a piece of code, macros included.
#[derive(Default)]
struct Named(usize);

impl<'ast> Visit<'ast> for Named {
    fn visit_path(&mut self, path: &'ast syn::Path) {
        let names: Vec<String> = path.segments.iter().map(|s| s.ident.to_string()).collect();
        self.0 += names.windows(2).filter(|pair| is_kind(pair)).count();
        visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, makro: &'ast syn::Macro) {
        self.0 += in_tokens(makro.tokens.clone());
    }
}

/// True for `StepKind` and the name of a kind after it, not of `ALL` or of a function.
fn is_kind(pair: &[String]) -> bool {
    let mut letters = pair[1].chars();
    pair[0] == TYPE
        && letters.next().is_some_and(char::is_uppercase)
        && letters.any(char::is_lowercase)
}

fn in_tokens(tokens: TokenStream) -> usize {
    let trees: Vec<TokenTree> = tokens.into_iter().collect();
    let words: Vec<String> = trees.iter().map(ToString::to_string).collect();
    let here = words
        .windows(4)
        .filter(|w| w[1] == ":" && w[2] == ":" && is_kind(&[w[0].clone(), w[3].clone()]));
    let below = trees.iter().map(|tree| match tree {
        TokenTree::Group(group) => in_tokens(group.stream()),
        _ => 0,
    });
    here.count() + below.sum::<usize>()
}

fn in_pattern(pattern: &Pat) -> usize {
    let mut named = Named::default();
    named.visit_pat(pattern);
    named.0
}

/// True if the value is a kind, or holds one: not where a kind is only handed to a function.
fn is_value(value: &Expr) -> bool {
    match value {
        Expr::Path(path) => {
            let mut named = Named::default();
            named.visit_path(&path.path);
            named.0 > 0
        }
        Expr::Reference(inner) => is_value(&inner.expr),
        Expr::Paren(inner) => is_value(&inner.expr),
        Expr::Tuple(tuple) => tuple.elems.iter().any(is_value),
        Expr::Call(call) => {
            let wraps = matches!(&*call.func, Expr::Path(path) if path.path.is_ident("Some"));
            wraps && call.args.iter().any(is_value)
        }
        _ => false,
    }
}

/// The places of a file at which a new kind would be silent.
struct Silent<'a> {
    path: &'a str,
    found: Vec<String>,
}

impl Silent<'_> {
    fn tell(&mut self, at: &impl Spanned, what: &str) {
        let line = at.span().start().line;
        self.found.push(format!("{}:{line}: {what}", self.path));
    }
}

impl<'ast> Visit<'ast> for Silent<'_> {
    fn visit_expr_match(&mut self, asked: &'ast syn::ExprMatch) {
        let named = |arm: &syn::Arm| in_pattern(&arm.pat) > 0;
        if asked.arms.iter().any(named) {
            for arm in asked.arms.iter().filter(|arm| !named(arm)) {
                self.tell(
                    &arm.pat,
                    "an arm without the name of a kind takes new ones too",
                );
            }
        }
        visit::visit_expr_match(self, asked);
    }

    fn visit_expr_let(&mut self, asked: &'ast syn::ExprLet) {
        if in_pattern(&asked.pat) > 0 {
            self.tell(asked, "`let` asks for one kind, and a new one is none");
        }
        visit::visit_expr_let(self, asked);
    }

    fn visit_local(&mut self, local: &'ast syn::Local) {
        if in_pattern(&local.pat) > 0 {
            self.tell(local, "`let` asks for one kind, and a new one is none");
        }
        visit::visit_local(self, local);
    }

    fn visit_expr_binary(&mut self, compared: &'ast syn::ExprBinary) {
        let compares = matches!(
            compared.op,
            BinOp::Eq(_) | BinOp::Ne(_) | BinOp::Lt(_) | BinOp::Le(_) | BinOp::Gt(_) | BinOp::Ge(_)
        );
        if compares && (is_value(&compared.left) || is_value(&compared.right)) {
            self.tell(compared, "compared with a kind, of which a new one is none");
        }
        visit::visit_expr_binary(self, compared);
    }

    fn visit_expr_array(&mut self, list: &'ast syn::ExprArray) {
        let mut named = Named::default();
        named.visit_expr_array(list);
        if named.0 > 1 {
            self.tell(list, "a list of kinds, in which a new one is missing");
        }
        visit::visit_expr_array(self, list);
    }

    fn visit_macro(&mut self, makro: &'ast syn::Macro) {
        if in_tokens(makro.tokens.clone()) > 0 {
            self.tell(
                makro,
                "a kind in a macro, where this test does not see what is asked",
            );
        }
    }

    fn visit_use_tree(&mut self, tree: &'ast UseTree) {
        match tree {
            UseTree::Path(path) if path.ident == TYPE => {
                self.tell(path, "kinds without their type")
            }
            UseTree::Rename(name) if name.ident == TYPE => self.tell(name, "another name"),
            _ => visit::visit_use_tree(self, tree),
        }
    }

    fn visit_item_impl(&mut self, methods: &'ast syn::ItemImpl) {
        if matches!(&*methods.self_ty, syn::Type::Path(of) if of.path.is_ident(TYPE)) {
            self.tell(methods, "facts of kinds beside their table");
        }
        visit::visit_item_impl(self, methods);
    }
}

fn silent(file: &SourceFile) -> Vec<String> {
    let mut silent = Silent {
        path: &file.path,
        found: Vec::new(),
    };
    let parsed = syn::parse_file(&file.text).expect("the source is Rust");
    silent.visit_file(&parsed);
    silent.found
}

#[test]
fn a_new_kind_of_step_is_silent_nowhere() {
    let files = rust_files("src").iter().filter(|file| file.path != TABLE);
    let found: Vec<String> = files.flat_map(silent).collect();
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

#[test]
fn every_way_of_being_silent_is_seen() {
    let ways = [
        "match kind { StepKind::Sow => 1, _ => 2 }",
        "match kind { StepKind::Sow => 1, other => g(other) }",
        "match (a, kind) { (true, StepKind::Sow) => 1, (true, StepKind::Pick) => 2, (false, ..) => 3 }",
        "match x { Some(StepKind::Sow) => 1, None | Some(_) => 2 }",
        "match 1 { _ if kind == StepKind::Pick => 1, _ => 2 }",
        "if kind != StepKind::Harden { 1 } else { 2 }",
        "if Some(StepKind::Sow) == first { 1 } else { 2 }",
        "if (a, &StepKind::Sow) == pair { 1 } else { 2 }",
        "if kind <= crate::plan::StepKind::PlantOut { 1 } else { 2 }",
        "if let StepKind::Sow = kind { 1 } else { 2 }",
        "{ let StepKind::Sow = kind else { return 2 }; 1 }",
        "while let Some(StepKind::Sow) = next() { }",
        "matches!(kind, StepKind::Thin | StepKind::Pick)",
        "[StepKind::Sow, StepKind::Pick].contains(&kind)",
        "vec![(StepKind::Sow, \"sow\"), (StepKind::Pick, \"pick\")].len()",
        "html! { @match kind { StepKind::Sow => p {} } }",
    ];
    for way in ways {
        let text = format!("fn f(kind: StepKind) -> u8 {{ {way} }}");
        assert_eq!(silent(&SourceFile::new("a.rs", &text)).len(), 1, "{way}");
    }
    for item in [
        "use a::StepKind::{Sow, Pick};",
        "use a::StepKind as Step;",
        "impl StepKind {}",
    ] {
        assert_eq!(silent(&SourceFile::new("a.rs", item)).len(), 1, "{item}");
    }
    let good = "use a::{StepKind, When}; fn f(kind: StepKind) { match kind { StepKind::Sow if a() => b(), \
                StepKind::Sow | StepKind::Pick => c(), } match (kind, m) { (StepKind::Sow, M::A) => \
                d(), (StepKind::Pick, _) => e() } planting.step(StepKind::Sow); if span(p, \
                StepKind::Pick) == None {} StepKind::ALL.iter(); [g(StepKind::Sow), 1]; \
                if StepKind::into_bed(m) != Some(kind) {} match m { M::A => 1, _ => 2 } }";
    assert_eq!(silent(&SourceFile::new("a.rs", good)), Vec::<String>::new());
}
