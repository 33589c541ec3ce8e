//! Making a failing input small: fewer changes first, then fewer lines of each file.

use crate::bar::Fault;
use crate::case::{Case, Content};

/// So many smaller inputs are tried at most.
const MOST_TRIES: usize = 150;

/// The smallest part of a list with which `fails` still holds, as far as tries allow; halves are
/// left out first, then quarters, and so on.
fn smallest<T: Clone>(all: &[T], tries: &mut usize, fails: impl Fn(&[T]) -> bool) -> Vec<T> {
    let mut kept = all.to_vec();
    let mut part = kept.len();
    while part > 0 {
        let mut from = 0;
        while from < kept.len() && *tries > 0 {
            let to = kept.len().min(from + part);
            let less = [&kept[..from], &kept[to..]].concat();
            *tries -= 1;
            if fails(&less) {
                kept = less;
            } else {
                from = to;
            }
        }
        part /= 2;
    }
    kept
}

/// The smallest input found with the same fault. `make` makes an input of some of the `changes`.
pub fn shrink(
    changes: &[u64],
    fault: &Fault,
    make: impl Fn(&[u64]) -> Case,
    fault_of: impl Fn(&Case) -> Option<Fault>,
) -> Case {
    let mut tries = MOST_TRIES;
    let same = |case: &Case| fault_of(case).as_ref() == Some(fault);
    let changes = smallest(changes, &mut tries, |some| same(&make(some)));
    let mut case = make(&changes);
    for name in case.files.keys().cloned().collect::<Vec<_>>() {
        let mut without = case.clone();
        let Some(Content::Bytes(bytes)) = without.files.remove(&name) else {
            continue;
        };
        if same(&without) {
            case = without;
            continue;
        }
        let with = |lines: &[&[u8]]| {
            let mut case = case.clone();
            case.files
                .insert(name.clone(), Content::Bytes(lines.concat()));
            case
        };
        let lines: Vec<&[u8]> = bytes.split_inclusive(|byte| *byte == b'\n').collect();
        let mut tries = MOST_TRIES;
        let kept = smallest(&lines, &mut tries, |lines| same(&with(lines)));
        case = with(&kept);
    }
    case
}
