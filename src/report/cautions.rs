//! The cautions as they stand on a page.

use crate::facts::cautions::{self, Caution, of_the_plan};
use crate::garden::Garden;

use crate::page::Page;
use crate::words::cautions::text;

/// Writes every caution that applies to the whole plan.
pub(super) fn write(garden: &Garden, page: &mut Page) {
    section(garden, &of_the_plan(garden), page);
}

/// Writes what a school decides, in short.
pub(super) fn for_the_school(garden: &Garden, page: &mut Page) {
    section(garden, &cautions::for_the_school(garden), page);
}

fn section(garden: &Garden, all: &[Caution<'_>], page: &mut Page) {
    page.heading("Take care");
    for caution in all {
        page.item(&text(garden, caution));
    }
}
