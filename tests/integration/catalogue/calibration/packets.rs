//! Packet ranges and usual seasons of all crops that are sown or planted. All are from memory:
//! published figures are given by kind, not by crop.

use tureen::garden::Crop;

use super::places::Place;

/// Set out as plants, or sown (or pieces planted) in the bed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    Planted,
    Sown,
}

impl Way {
    pub fn word(self) -> &'static str {
        match self {
            Way::Planted => "planting",
            Way::Sown => "sowing",
        }
    }
}

/// When a crop is usually set out or sown; weeks from the average last frost, first and last.
#[derive(Debug, Clone, Copy)]
pub enum Usual {
    /// In spring and summer.
    Spring(f64, f64),
    /// And again for autumn.
    WithAutumn(f64, f64),
    /// Warm crops: also not before the ground is warm.
    Warm(f64, f64),
    /// Two weeks after the average first frost of autumn.
    Overwintered,
}

use Usual::{Overwintered, Spring, Warm, WithAutumn};

/// One crop. A range of 0 to 0 is none: it is not grown so.
pub struct Packet {
    pub crop: &'static str,
    pub usual: Usual,
    planted: (u32, u32),
    sown: (u32, u32),
}

const NONE: (u32, u32) = (0, 0);

const fn packet(crop: &'static str, usual: Usual, planted: (u32, u32), sown: (u32, u32)) -> Packet {
    Packet {
        crop,
        usual,
        planted,
        sown,
    }
}

pub const PACKETS: &[Packet] = &[
    packet("tomato", Warm(0.0, 2.0), (60, 85), NONE),
    packet("sweet pepper", Warm(2.0, 3.0), (60, 90), NONE),
    packet("eggplant", Warm(2.0, 3.0), (60, 85), NONE),
    packet("cucumber", Warm(1.0, 3.0), (40, 55), (50, 65)),
    packet("summer squash", Warm(1.0, 3.0), (40, 50), (45, 60)),
    packet("winter squash", Warm(1.0, 3.0), (75, 100), (85, 115)),
    packet("pumpkin", Warm(1.0, 3.0), (85, 110), (95, 120)),
    packet("melon", Warm(2.0, 4.0), (65, 85), (75, 95)),
    packet("sweet corn", Warm(0.0, 4.0), NONE, (65, 95)),
    packet("okra", Warm(2.0, 4.0), (45, 60), (55, 70)),
    packet("potato", Spring(-4.0, 0.0), NONE, (70, 120)),
    packet("carrot", WithAutumn(-3.0, 8.0), NONE, (60, 80)),
    packet("beet", WithAutumn(-3.0, 8.0), NONE, (50, 70)),
    packet("radish", WithAutumn(-4.0, 8.0), NONE, (24, 35)),
    packet("turnip", WithAutumn(-4.0, 6.0), NONE, (40, 60)),
    packet("parsnip", Spring(-4.0, 3.0), NONE, (100, 130)),
    packet("sweet potato", Warm(2.0, 4.0), (90, 120), NONE),
    packet("onion (from seed)", Spring(-4.0, -2.0), (90, 120), NONE),
    packet("onion (from sets)", Spring(-6.0, -2.0), NONE, (85, 110)),
    packet("leek", Spring(-4.0, 0.0), (80, 120), NONE),
    packet("scallion", Spring(-4.0, 8.0), (45, 60), (60, 70)),
    packet("garlic", Overwintered, NONE, (240, 280)),
    packet("lettuce (leaf)", WithAutumn(-4.0, 8.0), (25, 40), (40, 60)),
    packet("lettuce (head)", Spring(-4.0, 6.0), (45, 65), NONE),
    packet("spinach", WithAutumn(-6.0, 0.0), NONE, (40, 50)),
    packet("chard", Spring(-3.0, 8.0), (30, 45), (50, 60)),
    packet("kale", WithAutumn(-5.0, 8.0), (40, 60), (55, 75)),
    packet("cabbage", WithAutumn(-5.0, 0.0), (60, 90), NONE),
    packet("broccoli", WithAutumn(-4.0, 0.0), (50, 70), NONE),
    packet("cauliflower", WithAutumn(-3.0, 0.0), (55, 80), NONE),
    packet("bok choy", WithAutumn(-3.0, 6.0), (25, 45), (40, 55)),
    packet("celery", Spring(0.0, 3.0), (85, 120), NONE),
    packet("bush bean", Warm(0.0, 4.0), NONE, (50, 60)),
    packet("pole bean", Warm(0.0, 3.0), NONE, (60, 70)),
    packet("dry bean", Warm(0.0, 3.0), NONE, (85, 110)),
    packet("shelling pea", Spring(-6.0, -2.0), NONE, (55, 75)),
    packet("snap pea", Spring(-6.0, -2.0), NONE, (58, 70)),
    packet("basil", Warm(2.0, 3.0), (30, 50), (50, 75)),
    packet("parsley", Spring(-4.0, 0.0), (65, 85), (75, 95)),
    packet("cilantro", Spring(-3.0, 4.0), NONE, (45, 70)),
    packet("dill", Spring(-3.0, 4.0), NONE, (40, 60)),
    packet("chives", Spring(-6.0, 0.0), (60, 80), NONE),
    packet("oregano", Warm(-2.0, 2.0), (60, 90), NONE),
    packet("thyme", Warm(-2.0, 2.0), (70, 95), NONE),
    packet("sage", Warm(-2.0, 2.0), (75, 100), NONE),
    packet("strawberry", Spring(-4.0, 2.0), (60, 90), NONE),
    packet("sunflower", Warm(0.0, 4.0), NONE, (70, 110)),
    packet("nasturtium", Warm(0.0, 3.0), NONE, (50, 65)),
    packet("calendula", Spring(-3.0, 2.0), (40, 55), (50, 65)),
    packet("watermelon", Warm(2.0, 4.0), (70, 90), NONE),
    packet("hot pepper", Warm(2.0, 3.0), (65, 95), NONE),
    packet("tomatillo", Warm(0.0, 2.0), (60, 80), NONE),
    packet("bottle gourd", Warm(1.0, 3.0), (55, 75), (65, 90)),
    packet("dry corn", Warm(0.0, 3.0), NONE, (90, 120)),
    packet("popcorn", Warm(0.0, 3.0), NONE, (90, 120)),
    packet("wheat", Spring(-6.0, -2.0), NONE, (90, 120)),
    packet("amaranth (grain)", Warm(0.0, 3.0), NONE, (90, 120)),
    packet("amaranth (leaf)", Warm(0.0, 4.0), NONE, (40, 55)),
    packet("collards", WithAutumn(-4.0, 4.0), (50, 70), (65, 85)),
    packet("mustard", WithAutumn(-4.0, 4.0), NONE, (35, 50)),
    packet("arugula", WithAutumn(-4.0, 4.0), NONE, (30, 45)),
    packet("brussels sprouts", Spring(-2.0, 4.0), (85, 120), NONE),
    packet("napa cabbage", WithAutumn(-3.0, 0.0), (45, 65), (60, 80)),
    packet("endive", WithAutumn(-4.0, 4.0), (45, 65), (65, 85)),
    packet("fennel", Spring(-2.0, 6.0), (60, 80), (75, 100)),
    packet("kohlrabi", WithAutumn(-4.0, 6.0), (35, 50), (45, 60)),
    packet("rutabaga", Spring(0.0, 8.0), NONE, (85, 110)),
    packet("celeriac", Spring(0.0, 3.0), (95, 125), NONE),
    packet("daikon", WithAutumn(-2.0, 8.0), NONE, (45, 65)),
    packet("shallot", Spring(-6.0, -2.0), NONE, (80, 110)),
    packet("runner bean", Warm(0.0, 3.0), NONE, (65, 80)),
    packet("broad bean", Spring(-6.0, -2.0), NONE, (75, 100)),
    packet("cowpea", Warm(2.0, 4.0), NONE, (80, 100)),
    packet("edamame", Warm(0.0, 3.0), NONE, (75, 95)),
    packet("peanut", Warm(2.0, 3.0), (100, 125), NONE),
    packet("lima bean", Warm(2.0, 4.0), NONE, (65, 85)),
    packet("chickpea", Spring(-3.0, 1.0), NONE, (90, 115)),
    packet("snow pea", Spring(-6.0, -2.0), NONE, (55, 70)),
    packet("mint", Spring(-3.0, 4.0), (45, 70), NONE),
    packet("rosemary", Warm(0.0, 2.0), (70, 100), NONE),
    packet("lemongrass", Warm(1.0, 3.0), (75, 110), NONE),
    packet("marigold", Warm(0.0, 4.0), (40, 55), (50, 65)),
    packet("borage", Spring(-2.0, 4.0), NONE, (50, 65)),
];

/// Days that an autumn sowing is begun earlier than packet days say, because days grow
/// shorter: a 65-day crop sown for autumn takes about 80 (VT-FALL).
const FALL_DAYS: f64 = 15.0;

impl Packet {
    /// The ways of growing it, each with its range of days.
    pub fn ways(&self) -> Vec<(Way, (u32, u32))> {
        [(Way::Planted, self.planted), (Way::Sown, self.sown)]
            .into_iter()
            .filter(|(_, range)| *range != NONE)
            .collect()
    }

    /// The usual days of setting out or sowing at a place, counted from 1 January: first,
    /// middle and last of the season, and one for autumn where that is usual.
    pub fn starts(&self, crop: &Crop, way: Way, place: &Place) -> Vec<usize> {
        let days = match way {
            Way::Planted => crop.ripening.days_from_planting,
            Way::Sown => crop.ripening.days_from_sowing,
        };
        let (first, last) = match self.usual {
            Spring(a, b) | WithAutumn(a, b) | Warm(a, b) => (a, b),
            Overwintered => return vec![place.first_frost + 14],
        };
        let spring = [first, (first + last) / 2.0, last].map(|weeks| {
            let day = place.last_frost as f64 + 7.0 * weeks;
            day.round().max(0.0) as usize
        });
        let autumn = matches!(self.usual, WithAutumn(..)).then(|| {
            let back = days.unwrap().round() + FALL_DAYS;
            place.season_end - back as usize
        });
        spring.into_iter().chain(autumn).collect()
    }

    /// True if it is only grown where summers are warm.
    pub fn is_warm(&self) -> bool {
        matches!(self.usual, Warm(..))
    }
}
