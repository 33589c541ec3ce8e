//! The principal's page: beds and shelf over the weeks against what there is, how little of them
//! would do, lesson time per class, and the days on which people must be found.

use crate::checker::CheckedPlan;
use crate::explain::LeastSpace;
use crate::facts::Facts;
use crate::garden::Garden;

use super::{care, least_space, lessons, rotation, space};
use crate::page::Page;
use crate::words::occasion::occasion;
use crate::words::promise;
use crate::words::view::View;

/// What `tureen show --space` prints.
#[must_use]
pub fn principal(garden: &Garden, checked: &CheckedPlan, least: &LeastSpace) -> Page {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let mut page = Page::new();
    page.title(&occasion(garden));
    page.paragraph(&promise::sentence(&view));
    space::write(&view, &mut page);
    least_space::write(&view, least, &mut page);
    rotation::turned_over(&view, &mut page);
    lessons::write(&view, &mut page);
    care::gaps(&view, &mut page);
    care::other_hands(&view, &mut page);
    page
}
