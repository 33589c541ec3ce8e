//! Finds the places of a source file at which a mutant can live. Constants, types, patterns and
//! what stands in macros are left alone.

use std::ops::Range;

use syn::spanned::Spanned;
use syn::visit::{self, Visit};
use syn::{BinOp, Expr, Lit, ReturnType, Stmt, UnOp};

/// One mutant.
pub struct Point {
    /// The bytes of the source that it changes.
    pub at: Range<usize>,
    pub how: How,
}

/// What a mutant does with its bytes.
pub enum How {
    /// They are an expression; this one stands in their place.
    Instead(String),
    /// They are a statement, which is left out.
    Skip,
    /// They begin just after a function's opening brace; it gives this at once.
    Return(String),
}

impl Point {
    /// What it changes to what, in a few words.
    pub fn told(&self, text: &str) -> String {
        let short = |code: &str| {
            let words: Vec<&str> = code.split_whitespace().collect();
            words.join(" ").chars().take(90).collect::<String>()
        };
        let old = short(&text[self.at.clone()]);
        match &self.how {
            How::Instead(new) => format!("`{old}` is `{}`", short(new)),
            How::Skip => format!("`{old}` is left out"),
            How::Return(new) => {
                let before = text[..self.at.start].rfind("fn ").unwrap_or_default();
                let name = text[before..].split('(').next().unwrap_or_default();
                format!("`{name}` gives `{new}`")
            }
        }
    }
}

/// All mutants of a file, outer ones before inner ones.
pub fn points(text: &str) -> syn::Result<Vec<Point>> {
    let file = syn::parse_file(text)?;
    let mut finder = Finder {
        text,
        found: Vec::new(),
    };
    finder.visit_file(&file);
    Ok(finder.found)
}

/// Calls exchanged for each other.
const PAIRS: [(&str, &str); 10] = [
    ("min", "max"),
    ("min_by", "max_by"),
    ("min_by_key", "max_by_key"),
    ("any", "all"),
    ("first", "last"),
    ("floor", "ceil"),
    ("is_some", "is_none"),
    ("is_some_and", "is_none_or"),
    ("take_while", "skip_while"),
    ("saturating_sub", "saturating_add"),
];

/// Calls that take a condition as a closure, which is forced both ways.
const ASKING: [&str; 9] = [
    "filter",
    "find",
    "position",
    "any",
    "all",
    "retain",
    "take_while",
    "partition",
    "is_some_and",
];

/// Calls that do something, and whose statement is left out.
const DOING: [&str; 8] = [
    "push",
    "extend",
    "insert",
    "retain",
    "sort",
    "sort_by_key",
    "dedup",
    "remove",
];

struct Finder<'t> {
    text: &'t str,
    found: Vec<Point>,
}

impl Finder<'_> {
    fn raw(&self, of: &impl Spanned) -> &str {
        &self.text[of.span().byte_range()]
    }

    fn instead(&mut self, of: &impl Spanned, new: String) {
        self.found.push(Point {
            at: of.span().byte_range(),
            how: How::Instead(new),
        });
    }

    /// A condition, held true and held false. One that binds names cannot be.
    fn force(&mut self, condition: &Expr, both: bool, to: bool) {
        if !binds(condition) && !matches!(condition, Expr::Lit(_)) {
            self.instead(condition, to.to_string());
            if both {
                self.instead(condition, (!to).to_string());
            }
        }
    }

    fn binary(&mut self, node: &syn::ExprBinary) {
        let other = match node.op {
            BinOp::Lt(_) => "<=",
            BinOp::Le(_) => "<",
            BinOp::Gt(_) => ">=",
            BinOp::Ge(_) => ">",
            BinOp::Eq(_) => "!=",
            BinOp::Ne(_) => "==",
            BinOp::Add(_) => "-",
            BinOp::Sub(_) => "+",
            BinOp::Mul(_) | BinOp::Rem(_) => "/",
            BinOp::Div(_) => "*",
            BinOp::And(_) | BinOp::Or(_) => {
                let neutral = matches!(node.op, BinOp::And(_));
                for side in [&node.left, &node.right] {
                    self.force(side, false, neutral);
                }
                return;
            }
            _ => return,
        };
        let new = format!("{} {other} {}", self.raw(&node.left), self.raw(&node.right));
        self.instead(node, new);
    }

    fn literal(&mut self, node: &syn::ExprLit) {
        let new = match &node.lit {
            Lit::Int(int) => int
                .base10_parse::<u64>()
                .ok()
                .map(|n| format!("{}{}", n + 1, int.suffix())),
            Lit::Float(float) => float
                .base10_parse::<f64>()
                .ok()
                .map(|x| format!("{:?}{}", x + 1.0, float.suffix())),
            Lit::Bool(bool) => Some((!bool.value).to_string()),
            _ => None,
        };
        if let Some(new) = new {
            self.instead(node, new);
        }
    }

    fn call(&mut self, node: &syn::ExprMethodCall) {
        let name = node.method.to_string();
        let both_ways = PAIRS.iter().flat_map(|(a, b)| [(a, b), (b, a)]);
        let other = both_ways
            .into_iter()
            .find(|(this, _)| **this == name)
            .map(|(_, other)| other);
        let (whole, own) = (node.span().byte_range(), node.method.span().byte_range());
        if let Some(other) = other {
            let (before, after) = (whole.start..own.start, own.end..whole.end);
            let new = [&self.text[before], other, &self.text[after]].concat();
            self.instead(node, new);
        }
        if ASKING.contains(&name.as_str())
            && let Some(Expr::Closure(closure)) = node.args.first()
            && !matches!(*closure.body, Expr::Block(_) | Expr::Match(_))
        {
            self.force(&closure.body, true, true);
        }
    }

    /// What a function may give at once.
    fn body(&mut self, signature: &syn::Signature, body: &syn::Block) {
        let given = match &signature.output {
            ReturnType::Default => "()".to_owned(),
            ReturnType::Type(_, given) => self.raw(given).to_owned(),
        };
        let begins = |start: &str| given.starts_with(start);
        let new: &[&str] = match given.as_str() {
            "()" => &["()"],
            "bool" => &["true", "false"],
            "u8" | "u16" | "u32" | "u64" | "usize" | "i32" | "i64" => &["0", "1"],
            "f64" => &["0.0", "1.0"],
            "String" => &["String::new()"],
            _ if begins("Option<") => &["None"],
            _ if begins("Vec<") => &["Vec::new()"],
            _ if begins("Result<(),") => &["Ok(())"],
            _ => &[],
        };
        let after_brace = body.brace_token.span.open().byte_range().end;
        for new in new {
            self.found.push(Point {
                at: after_brace..after_brace,
                how: How::Return((*new).to_owned()),
            });
        }
    }
}

/// True if a condition has a `let`.
fn binds(condition: &Expr) -> bool {
    match condition {
        Expr::Let(_) => true,
        Expr::Binary(node) => binds(&node.left) || binds(&node.right),
        _ => false,
    }
}

/// True for a statement that changes something and gives nothing.
fn does(expression: &Expr) -> bool {
    match expression {
        Expr::MethodCall(call) => DOING.contains(&call.method.to_string().as_str()),
        Expr::Binary(node) => matches!(
            node.op,
            BinOp::AddAssign(_) | BinOp::SubAssign(_) | BinOp::MulAssign(_) | BinOp::BitOrAssign(_)
        ),
        _ => false,
    }
}

impl<'ast> Visit<'ast> for Finder<'_> {
    fn visit_item_fn(&mut self, node: &'ast syn::ItemFn) {
        if node.sig.constness.is_none() {
            self.body(&node.sig, &node.block);
            self.visit_block(&node.block);
        }
    }

    fn visit_impl_item_fn(&mut self, node: &'ast syn::ImplItemFn) {
        if node.sig.constness.is_none() {
            self.body(&node.sig, &node.block);
            self.visit_block(&node.block);
        }
    }

    fn visit_stmt(&mut self, node: &'ast Stmt) {
        if let Stmt::Expr(expression, Some(_)) = node
            && does(expression)
        {
            self.found.push(Point {
                at: node.span().byte_range(),
                how: How::Skip,
            });
        }
        visit::visit_stmt(self, node);
    }

    fn visit_expr(&mut self, node: &'ast Expr) {
        match node {
            Expr::Binary(node) => self.binary(node),
            Expr::Lit(node) => self.literal(node),
            Expr::MethodCall(node) => self.call(node),
            Expr::If(node) => self.force(&node.cond, true, true),
            Expr::Unary(unary) if matches!(unary.op, UnOp::Not(_) | UnOp::Neg(_)) => {
                self.instead(node, self.raw(&unary.expr).to_owned());
            }
            Expr::Call(call) if call.args.len() == 1 && self.raw(&call.func) == "Some" => {
                self.instead(node, "None".to_owned());
            }
            Expr::Range(range) => {
                if let Some(end) = &range.end {
                    let closed = matches!(range.limits, syn::RangeLimits::Closed(_));
                    let by = if closed { "- 1" } else { "+ 1" };
                    self.instead(end, format!("({}) {by}", self.raw(end)));
                }
            }
            _ => {}
        }
        visit::visit_expr(self, node);
    }

    fn visit_arm(&mut self, node: &'ast syn::Arm) {
        if let Some((_, guard)) = &node.guard {
            self.force(guard, true, true);
        }
        visit::visit_arm(self, node);
    }

    fn visit_expr_repeat(&mut self, node: &'ast syn::ExprRepeat) {
        self.visit_expr(&node.expr);
    }

    fn visit_item_const(&mut self, _: &'ast syn::ItemConst) {}
    fn visit_impl_item_const(&mut self, _: &'ast syn::ImplItemConst) {}
    fn visit_item_static(&mut self, _: &'ast syn::ItemStatic) {}
    fn visit_item_enum(&mut self, _: &'ast syn::ItemEnum) {}
    fn visit_expr_const(&mut self, _: &'ast syn::ExprConst) {}
    fn visit_attribute(&mut self, _: &'ast syn::Attribute) {}
    fn visit_pat(&mut self, _: &'ast syn::Pat) {}
    fn visit_type(&mut self, _: &'ast syn::Type) {}
    fn visit_generic_argument(&mut self, _: &'ast syn::GenericArgument) {}
}
