//! The watering list in English.

use std::cmp::Ordering;

use crate::calendar::Date;
use crate::checker::{Seedbed, WaterNeed};
use crate::facts::water::{Asked, BreakPick, BreakWeek};
use crate::garden::{Bed, Break, Care, Garden};
use crate::units::Centimetres;
use crate::words::occasion::occasion;
use crate::words::places::beds;
use crate::words::view::View;
use crate::words::water::WaterMeasure;
use crate::words::{Words, list, sentence};

use super::speech::{Speech, Sums};

/// How thick mulch lies (common practice).
const MULCH: Centimetres = Centimetres(5.0);

/// Room for a name to be written by hand.
pub(super) const ROOM: &str = "____________________";

/// English, by the customs of the school.
pub(crate) struct English {
    words: Words,
    kind_of_years: &'static str,
}

impl English {
    pub fn of(view: &View<'_>) -> Self {
        Self {
            words: view.words,
            kind_of_years: view.kind_of_years(),
        }
    }

    /// `potato on Sat 28 Aug (bed 7)`.
    fn pick(&self, pick: &BreakPick<'_>) -> String {
        let (ingredient, day) = (pick.ingredient, self.words.day(pick.day));
        format!("{ingredient} on {day} ({})", beds(&pick.beds))
    }
}

impl Speech for English {
    fn measure(&self) -> WaterMeasure {
        self.words.water()
    }

    fn title(&self) -> String {
        "Watering list".to_owned()
    }

    fn note(&self) -> Option<String> {
        None
    }

    fn occasion(&self, garden: &Garden) -> String {
        occasion(garden)
    }

    fn asked(&self, asked: &Asked<'_>) -> String {
        let Break { name, from, to, .. } = asked.pause;
        let cans = asked.most.map(|need| match self.measure().cans(need.dry) {
            1.0 => ", up to 1 can".to_owned(),
            cans => format!(", up to {cans:.0} cans"),
        });
        let cans = cans.unwrap_or_default();
        let weeks = match (asked.weeks, asked.of) {
            (1, 1) => "a name for its week".to_owned(),
            (weeks, of) if weeks == of => format!("a name for each of its {weeks} weeks"),
            (weeks, of) => format!("a name for {weeks} of its {of} weeks"),
        };
        let thirstiest = match cans.is_empty() || asked.weeks == 1 {
            true => "",
            false => " in the thirstiest",
        };
        let names = format!("{weeks}{cans}{thirstiest}");
        let days = self.words.days(*from, *to);
        format!("Families, please water in {name} ({days}): {names}.")
    }

    fn for_each_week(&self) -> String {
        sentence(&format!("{} for each week", self.measure().unit))
    }

    fn legend(&self) -> String {
        let measure = self.measure();
        format!(
            "60-85 means: 60 {unit} in the whole week in an ordinary year, 85 in a dry one, beside \
             what rain brings. A can is {can} {unit}. A dot: nothing stands there. The line under a \
             week of a break tells who waters and what to pick, with room for a name.",
            unit = measure.unit,
            can = measure.can,
        )
    }

    fn heads(&self) -> [&'static str; 3] {
        ["Week of", "All beds", "Cans"]
    }

    fn bed(&self, bed: &Bed) -> String {
        format!("Bed {}", bed.id)
    }

    fn week(&self, monday: Date) -> String {
        self.words.short(monday)
    }

    fn until(&self, day: Date) -> String {
        let day = self.words.day(day);
        format!("So much at the most in each week until {day}.")
    }

    fn break_week(&self, week: &BreakWeek<'_>) -> String {
        let which = if week.of == 1 {
            week.pause.name.clone()
        } else {
            format!("{}, week {} of {}", week.pause.name, week.number, week.of)
        };
        let who = match week.pause.care {
            Care::Families => "families water",
            Care::Staff => "staff water",
            Care::Nobody => "NOBODY IS ON SITE, find someone",
        };
        let mut parts = vec![format!("{which}: {who}.")];
        if !week.picks.is_empty() {
            let picks: Vec<String> = week.picks.iter().map(|pick| self.pick(pick)).collect();
            parts.push(format!("Pick if ripe and still there: {}.", list(&picks)));
        }
        if !week.frozen.is_empty() {
            parts.push(format!(
                "Frozen on the same day: {}; ask the kitchen how, and who opens the freezer.",
                list(&week.frozen)
            ));
        }
        if !week.kept_picked.is_empty() {
            let kept = list(&week.kept_picked);
            parts.push(format!(
                "So that it goes on bearing, pick all that is ripe, to eat or to share: {kept}."
            ));
        }
        if !week.damp.is_empty() {
            let damp = list(&week.damp);
            parts.push(format!("Every day: a look at the seedbed of {damp}."));
        }
        if week.seedlings {
            parts.push("Every day: the seedlings on the shelf.".to_owned());
        }
        parts.push(format!("Name:\u{a0}{ROOM}"));
        parts.join(" ")
    }

    fn whole(&self, need: WaterNeed) -> String {
        let measure = self.measure();
        format!(
            "All weeks together: about {:.0} {} in an ordinary year, {:.0} in a dry one.",
            measure.tens(need.ordinary),
            measure.unit,
            measure.tens(need.dry)
        )
    }

    fn seedbeds(&self) -> &'static str {
        "Seedbeds: a look every day"
    }

    fn seedbed(&self, seedbed: &Seedbed, ids: &[&str]) -> String {
        let what = if seedbed.lies_deep {
            "look every day"
        } else {
            "a little every day"
        };
        format!(
            "{}, {}: {what} from {} until it is up, about {}.",
            sentence(&seedbed.ingredient),
            beds(ids),
            self.words.day(seedbed.from),
            self.words.day(seedbed.up)
        )
    }

    fn lies_shallow(&self) -> &'static str {
        "A little every day: only the top of the soil dries, but seed that dries once is lost. Use \
         a fine rose, and lay fleece or a board over it for weekends; look under it every day, \
         and leave it on a wet one."
    }

    fn lies_deep(&self) -> &'static str {
        "Look every day: large seed lies deep and rots in wet soil. Push a finger in as deep as \
         the seed, and water only where it is dry there (common practice)."
    }

    fn how(&self) -> &'static str {
        "How to water"
    }

    fn habits(&self) -> Vec<String> {
        vec![
            "Feel the soil first: push a finger in, all of it. If it is damp at the tip, leave it \
             for today. Where soil and list differ, the soil is right."
                .to_owned(),
            format!(
                "Give a week's {} in two or three goes, early in the day, slowly, on the soil and \
                 not on the leaves. Pots and sandy beds want more goes.",
                self.measure().unit
            ),
            "Newly set plants get a cup each at once, and again every second day of their first \
             week (common practice)."
                .to_owned(),
        ]
    }

    fn rain_gauge(&self, saved: &[(String, Vec<&str>)]) -> String {
        let measure = self.measure();
        let saved = saved.iter();
        let saved = saved.map(|(less, ids)| format!("{less} for {}", beds(ids)));
        format!(
            "Measured rain is better than any average. Hang up a rain gauge. In a week without rain \
             give a dry year's {unit}; for every {gauge} in the gauge give so many {unit} less: {}.",
            saved.collect::<Vec<_>>().join("; "),
            unit = measure.unit,
            gauge = measure.gauge,
        )
    }

    fn mulch(&self) -> String {
        format!(
            "Mulch of {} of straw or leaves on damp soil saves much of it (common practice).",
            self.words.short_length(MULCH)
        )
    }

    fn cover(&self, bed: &Bed, cover: &str) -> String {
        format!(
            "Bed {} has a cover ({cover}). If it keeps rain off, give that bed a dry year's {} in \
             every week.",
            bed.id,
            self.measure().unit
        )
    }

    fn caution(&self) -> String {
        format!(
            "Local rules come first: follow drought restrictions and hose bans, and ask the school \
             who may open the tap and which water may go on food. Water in the shade or in the cool, \
             with a hat and something to drink; small children carry a can half full, or {} in a \
             lighter one.",
            self.measure().small
        )
    }

    fn computed(&self) -> &'static str {
        "How it is computed"
    }

    fn how_computed(&self, sums: &Sums) -> String {
        let measure = self.measure();
        let beside = |weeks, whole| {
            let (weeks, whole) = (measure.tens(weeks), measure.tens(whole));
            match weeks.total_cmp(&whole) {
                Ordering::Less => format!("less ({weeks:.0})"),
                Ordering::Equal => "as much".to_owned(),
                Ordering::Greater => format!("more ({weeks:.0})"),
            }
        };
        format!(
            "For every day of {} {}: what well watered grass loses, from the day's lowest and highest \
             temperature and the sun (Hargreaves), times a figure for the crop and its age, less \
             rain. Rain so light that it dries off at once does not count, nor does rain beyond the \
             week's need. Ordinary is the middle one of those years, dry the one that only one in ten \
             passes; the weeks just before and after count as well. The line for all weeks together \
             is counted from whole years, not added up from the weeks: hardly a year is ordinary, or \
             dry, in every week. The ordinary weeks alone add up to {}, the dry weeks to {}. A crop \
             drinks until the last day set aside for picking. Wind, your own soil and shade are not \
             known: it is a first guess.",
            sums.years,
            self.kind_of_years,
            beside(sums.weeks.ordinary, sums.whole.ordinary),
            beside(sums.weeks.dry, sums.whole.dry),
        )
    }

    fn patches(&self) -> &'static str {
        "Patches outside the beds are not in the list."
    }
}
