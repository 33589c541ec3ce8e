//! Breaks, gaps, decisions and cautions, in the form of the data file.

use crate::facts::breaks::within;
use crate::facts::gaps::OpenGap;
use crate::facts::{cautions as found, decisions as decided};
use crate::garden::{self, Garden};
use crate::harmless::plain;
use crate::report::decision;
use crate::words::cautions;
use crate::words::view::View;

use super::super::shape::{
    Allergen, Break, Care, Caution, CautionKind, Decision, Gap, Need, Topic, TopicKind,
};
use super::doing::{kind, thing};
use super::time::day;

/// The breaks within the time of the plan.
pub fn breaks(garden: &Garden) -> Vec<Break> {
    let told = |pause: &garden::Break| Break {
        name: plain(&pause.name),
        from: day(pause.from),
        to: day(pause.to),
        care: match pause.care {
            garden::Care::Nobody => Care::Nobody,
            garden::Care::Staff => Care::Staff,
            garden::Care::Families => Care::Families,
        },
    };
    let breaks = within(garden).into_iter();
    breaks.map(|b| told(b.pause)).collect()
}

/// Days for which somebody must be found.
pub fn gap(gap: &OpenGap<'_>) -> Gap {
    let need = |need: &crate::facts::gaps::Need<'_>| Need {
        ingredient: plain(need.ingredient),
        after: kind(need.after),
        on_shelf: need.on_shelf,
    };
    Gap {
        from: day(gap.from),
        to: day(gap.to),
        unattended_days: gap.unattended_days,
        needs: gap.needs.iter().map(need).collect(),
    }
}

/// What to decide by when.
pub fn decisions(view: &View<'_>) -> Vec<Decision> {
    let told = |decided: &decided::Decision<'_>| Decision {
        by: day(decided.by),
        topic: topic(&decided.topic),
        what: plain(&decision(view, &decided.topic)),
    };
    view.decisions.iter().map(told).collect()
}

fn topic(topic: &decided::Topic<'_>) -> Topic {
    let bare = |kind| Topic {
        kind,
        ingredient: None,
        count: None,
        thing: None,
        needed: None,
        gap: None,
        pause: None,
        cost: None,
    };
    match topic {
        decided::Topic::Nurse => bare(TopicKind::Nurse),
        decided::Topic::Kitchen => bare(TopicKind::Kitchen),
        decided::Topic::Order(order) => Topic {
            ingredient: Some(plain(&order.ingredient.name)),
            count: Some(order.count),
            thing: Some(thing(order.thing)),
            needed: Some(day(order.needed)),
            ..bare(TopicKind::Order)
        },
        decided::Topic::Gap(gap) => Topic {
            gap: Some(gap.number),
            ..bare(TopicKind::Gap)
        },
        decided::Topic::Break(pause) => Topic {
            pause: Some(plain(&pause.name)),
            ..bare(TopicKind::Break)
        },
        decided::Topic::Buy { ingredient, cost } => Topic {
            ingredient: Some(plain(&ingredient.name)),
            cost: *cost,
            ..bare(TopicKind::Buy)
        },
    }
}

/// What to take care of.
pub fn cautions(garden: &Garden) -> Vec<Caution> {
    let all = found::of_the_plan(garden);
    all.iter().map(|caution| one(garden, caution)).collect()
}

fn one(garden: &Garden, caution: &found::Caution<'_>) -> Caution {
    let bare = |kind| Caution {
        kind,
        ingredient: None,
        grades: Vec::new(),
        allergens: Vec::new(),
        text: plain(&cautions::text(garden, caution)),
    };
    match caution {
        found::Caution::Allergies(allergens) => Caution {
            allergens: allergens.iter().map(allergen).collect(),
            ..bare(CautionKind::Allergies)
        },
        found::Caution::Own(ingredient) => Caution {
            ingredient: Some(plain(&ingredient.name)),
            ..bare(CautionKind::Ingredient)
        },
        found::Caution::Young(young) => Caution {
            ingredient: Some(plain(&young.ingredient.name)),
            grades: young
                .grades
                .iter()
                .map(|at| plain(&garden[*at].id))
                .collect(),
            ..bare(CautionKind::Young)
        },
        found::Caution::Hands => bare(CautionKind::Hands),
        found::Caution::Seed => bare(CautionKind::Seed),
        found::Caution::Soil => bare(CautionKind::Soil),
        found::Caution::Outdoors => bare(CautionKind::Outdoors),
        found::Caution::Heat => bare(CautionKind::Heat),
        found::Caution::Tools => bare(CautionKind::Tools),
        found::Caution::FoodService => bare(CautionKind::FoodService),
        found::Caution::Trades => bare(CautionKind::Trades),
        found::Caution::HeatMat => bare(CautionKind::HeatMat),
        found::Caution::Compost => bare(CautionKind::Compost),
    }
}

fn allergen(allergen: &found::Allergen<'_>) -> Allergen {
    let names = allergen.carried_by.iter();
    Allergen {
        name: plain(allergen.name),
        ingredients: names.map(|name| plain(name)).collect(),
    }
}
