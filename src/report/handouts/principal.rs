//! The principal's sheet: the day, who does what, space against what there is, lesson time,
//! people to find, cost, cautions, what to decide by when.

use crate::explain::LeastSpace;
use crate::report::page::{Page, Picture};
use crate::report::screen::occasion;
use crate::report::view::View;
use crate::report::{care, cautions, decisions, least_space, lessons, space, verdict};

/// Writes the sheet.
pub fn write(view: &View<'_>, least: Option<&LeastSpace>, page: &mut Page) {
    page.paragraph(&occasion(view.garden));
    page.title(&verdict::sentence(view));
    if let Some(text) = verdict::rain_date(view) {
        page.paragraph(&text);
    }
    page.picture(Picture::Timeline(None));
    page.heading("Space");
    space::peaks(view, &space::shelf_rows(view), &space::all_beds(view), page);
    match least {
        Some(least) => least_space::items(view, least, page),
        None => page.line("How little space would do: tureen show FILE --space."),
    }
    lessons::by_grade(view, page);
    care::gaps(view, page);
    decisions::write(view, page);
    cautions::write(view.garden, page);
}
