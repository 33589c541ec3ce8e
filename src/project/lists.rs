//! Lists of values: any number, at least one, exactly so many, or one without brackets.

use std::rc::Rc;

use toml::de::DeValue;

use crate::diagnostic::{Code, Findings, Given, Problem, Read};

use super::form::Form;
use super::kind::Kind;
use super::names::{code, quote};
use super::value::Value;

/// A list of values of one kind.
pub fn list<'a, T: 'a>(kind: Kind<'a, T>) -> Kind<'a, Vec<Given<T>>> {
    of_length(kind, 0)
}

/// A list that holds at least one value.
pub fn some<'a, T: 'a>(kind: Kind<'a, T>) -> Kind<'a, Vec<Given<T>>> {
    of_length(kind, 1)
}

fn of_length<'a, T: 'a>(kind: Kind<'a, T>, least: usize) -> Kind<'a, Vec<Given<T>>> {
    let kind = Rc::new(kind);
    let of = Rc::clone(&kind);
    Kind::new(
        move || Form::List(Box::new(of.form()), least, None),
        move |value, findings| read_list(&kind, least, value, findings),
    )
}

fn read_list<T>(
    kind: &Kind<'_, T>,
    least: usize,
    value: &Value<'_>,
    findings: &mut Findings,
) -> Read<Vec<Given<T>>> {
    let DeValue::Array(items) = value.value else {
        let problem = value.wrong_type("a list, in square brackets");
        let form = match value.value {
            DeValue::Table(_) => "{ ... }".to_owned(),
            DeValue::String(text) => quote(text),
            _ => value.plain().unwrap_or_else(|| "...".to_owned()),
        };
        let remedy = format!("write {} = [{form}]", value.key);
        return Err(findings.report(problem.remedy(remedy)));
    };
    if items.len() < least {
        let cause = format!("{} must hold at least one", code(value.key));
        let problem = Problem::new(Code::EmptyList, cause).at(value.span, "");
        return Err(findings.report(problem.remedy("put it between the brackets")));
    }
    let read: Vec<Read<Given<T>>> = items
        .iter()
        .map(|item| {
            let item = Value::new(value.key, item);
            let span = item.span;
            kind.read(&item, findings)
                .map(|value| Given { value, span })
        })
        .collect();
    read.into_iter().collect()
}

/// One value, or a list that holds at least one.
pub fn one_or_some<'a, T: 'a>(kind: Kind<'a, T>) -> Kind<'a, Vec<Given<T>>> {
    let kind = Rc::new(kind);
    let of = Rc::clone(&kind);
    Kind::new(
        move || {
            let some = Form::List(Box::new(of.form()), 1, None);
            Form::Either(Box::new(of.form()), Box::new(some))
        },
        move |value, findings| match value.value {
            DeValue::Array(_) => read_list(&kind, 1, value, findings),
            _ => {
                let span = value.span;
                kind.read(value, findings)
                    .map(|value| vec![Given { value, span }])
            }
        },
    )
}

/// Exactly `N` numbers of one kind.
pub fn exactly<'a, const N: usize>(kind: Kind<'a, f64>, meaning: &'a str) -> Kind<'a, [f64; N]> {
    let kind = Rc::new(kind);
    let of = Rc::clone(&kind);
    Kind::new(
        move || Form::List(Box::new(of.form()), N, Some(N)),
        move |value, findings| {
            let items = read_list(&kind, 0, value, findings)?;
            let numbers: Vec<f64> = items.iter().map(|given| given.value).collect();
            <[f64; N]>::try_from(numbers).map_err(|numbers| {
                let cause = format!("{} should hold {N} numbers, {meaning}", code(value.key));
                let label = format!("these are {}", numbers.len());
                findings.report(Problem::new(Code::WrongLength, cause).at(value.span, label))
            })
        },
    )
}
