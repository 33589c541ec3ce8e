//! Names on the map: each at the first place at which it lies on nothing else. What finds none
//! stands in the table only.

use maud::{Markup, html};

use super::super::lettering::{BOLD, LINE, SIZE, bold_width, shorten, width, wrap};
use super::super::sheet::{Anchor, Area, bold, plate, text};
use super::cells::Cell;

/// Between a text and the edge of its box.
const INNER: f64 = 2.0;

/// Between a bed and the name over it: a trellis stands there.
const OUTER: f64 = 8.0;

/// The names so far, and what they must not lie on.
pub struct Naming {
    solid: Vec<Area>,
    taken: Vec<Area>,
    edge: Area,
}

impl Naming {
    /// No name yet.
    pub fn new(solid: Vec<Area>, edge: Area) -> Self {
        Self {
            solid,
            taken: Vec::new(),
            edge,
        }
    }

    /// Keeps a line of text free.
    pub fn reserve(&mut self, x: f64, y: f64, words: &str) {
        let (w, h) = (width(words), LINE);
        self.taken.push(Area { x, y, w, h });
    }

    /// True if a text may stand in a box: within the paper and on no other text; outside
    /// `home`, also on no bed, patch or area.
    fn free(&self, area: Area, home: Option<Area>) -> bool {
        let inside = |outer: Area| {
            area.x >= outer.x
                && area.right() <= outer.right()
                && area.y >= outer.y
                && area.bottom() <= outer.bottom()
        };
        let on_ground = match home {
            Some(home) => !inside(home),
            None => self.solid.iter().any(|other| other.meets(area)),
        };
        inside(self.edge) && !on_ground && !self.taken.iter().any(|other| other.meets(area))
    }

    /// The name of a bed: over it, under it, or within it; the longest that fits there.
    pub fn caption(&mut self, bed: Area, names: &[String]) -> Markup {
        let places = [
            (bed.x, bed.y - LINE - OUTER + 1.0, None),
            (bed.x, bed.bottom() + OUTER - 3.0, None),
            (bed.x + INNER, bed.y + INNER, Some(bed)),
        ];
        let all = places
            .iter()
            .flat_map(|place| names.iter().map(move |name| (place, name)));
        for ((x, y, home), name) in all {
            let (x, y, w, h) = (*x, *y, bold_width(name), LINE);
            let area = Area { x, y, w, h };
            if self.free(area, *home) {
                self.taken.push(area);
                return bold(x, y + SIZE, Anchor::Start, name);
            }
        }
        // Cut, it fits into any bed that is as high as a line.
        let name = names.last().map_or("", String::as_str);
        let w = bed.w - 2.0 * INNER;
        let (x, y, h) = (bed.x + INNER, bed.y + INNER, LINE);
        self.taken.push(Area { x, y, w, h });
        bold(x, y + SIZE, Anchor::Start, &shorten(name, w / BOLD))
    }

    /// What stands in a cell: name and days, the name, or the number of the table.
    pub fn planted(&mut self, cell: &Cell<'_>) -> Markup {
        let words = cell.words;
        let room = cell.area.w - 2.0 * INNER;
        let most = ((cell.area.h - 1.0) / LINE).floor().max(0.0) as usize;
        let name = wrap(&words.name, room, most);
        let days = wrap(&words.dates, room, 2);
        let both = name
            .clone()
            .zip(days)
            .map(|(name, days)| [name, days].concat());
        let tries = [both, name, Some(vec![words.number.clone()])];
        for lines in tries.into_iter().flatten() {
            if let Some(drawn) = self.centred(cell.area, &lines) {
                return drawn;
            }
        }
        html! {}
    }

    /// The name of a patch or area: within it, else beside it.
    pub fn ground(&mut self, area: Area, name: &str) -> Markup {
        let lines = wrap(name, area.w - 2.0 * INNER, usize::MAX);
        if let Some(drawn) = lines.and_then(|lines| self.centred(area, &lines)) {
            return drawn;
        }
        let name = shorten(name, 120.0);
        let (w, h) = (width(&name), LINE);
        let beside = area.y + area.h / 2.0 - h / 2.0;
        let places = [
            (area.x + area.w / 2.0 - w / 2.0, area.y - h - 1.0),
            (area.x + area.w / 2.0 - w / 2.0, area.bottom() + 1.0),
            (area.right() + 3.0, beside),
            (area.x - w - 3.0, beside),
            (area.right() - w, area.y - h - 1.0),
            (area.right() - w, area.bottom() + 1.0),
        ];
        let found = places.iter().map(|(x, y)| Area { x: *x, y: *y, w, h });
        let mut found = found.filter(|area| self.free(*area, None));
        let Some(place) = found.next() else {
            return html! {};
        };
        drop(found);
        self.taken.push(place);
        text(place.x, place.y + SIZE, Anchor::Start, &name)
    }

    /// Lines in the middle of a box, if they fit and the place is free.
    fn centred(&mut self, area: Area, lines: &[String]) -> Option<Markup> {
        let w = lines.iter().map(|line| width(line)).fold(0.0, f64::max);
        let h = LINE * lines.len() as f64;
        let (x, y) = (area.x + area.w / 2.0, area.y + area.h / 2.0 - h / 2.0);
        let place = Area {
            x: x - w / 2.0,
            y,
            w,
            h,
        };
        if !self.free(place, Some(area)) {
            return None;
        }
        self.taken.push(place);
        let base = |at: usize| y + SIZE + LINE * at as f64;
        Some(html! {
            @for (at, line) in lines.iter().enumerate() {
                (plate(x - width(line) / 2.0 - 1.0, base(at), width(line)))
                (text(x, base(at), Anchor::Middle, line))
            }
        })
    }
}
