//! What is said of each kind of step, in one table: what it is called, what to bring, what stands over
//! its columns, how it is marked in pictures. What is true of it stands in `plan::StepKind`.

use crate::garden::Method;
use crate::plan::StepKind;

/// What is said of a kind of step; by the way of growing, where it hangs on that.
pub(crate) struct StepWords {
    /// `pot up`: the name whatever the way of growing.
    pub plain: &'static str,
    /// `potting up`.
    pub doing: &'static str,
    /// `Sow indoors`: the name over a line.
    pub name: fn(Method) -> &'static str,
    /// Other words by which a person asks for it.
    pub also: fn(Method) -> &'static [&'static str],
    /// What to have at hand (common practice); `None` where nothing is asked for beyond what is
    /// there every day.
    pub bring: fn(Method) -> Option<&'static str>,
    /// The head of its column of days in the overview, if it has one there.
    pub overview_head: Option<&'static str>,
    /// The same on a screen that has to be short.
    pub short_head: Option<&'static str>,
    /// The head of its column in the table of slack, if people do it.
    pub slack_head: Option<&'static str>,
    /// Its columns in the table of plantings, each with head and width.
    pub table_heads: &'static [(Edge, &'static str, u16)],
    /// True if its days stand on a plant's label.
    pub on_label: bool,
    /// Its mark in pictures, if it has one.
    pub mark: Option<Mark>,
    /// What of an ingredient needs daily care after it, raised on the shelf or not.
    pub tended: fn(&str, bool) -> String,
    /// Why it fails in the next round, if only it is moved.
    pub too_late: fn(Method) -> &'static str,
    /// What it means if it is missed, where the planting comes to something without it.
    pub left_out: Option<&'static str>,
}

/// Which day of a step a column tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Edge {
    /// The first.
    First,
    /// The last.
    Last,
}

/// The mark of a step in pictures.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Mark {
    /// Its place where several are of one day.
    pub order: u8,
    /// What is written there, by the way of growing.
    pub word: fn(Method) -> &'static str,
}

/// Why a step fails in the next round, where its day alone is the reason.
/// What becomes of what is not thinned in time.
pub(crate) const CROWDED: &str = "plants in a crowded row stay small (common practice)";

const TOO_LATE: &str = "the next round of sessions is too late";

/// The table.
pub(crate) fn of(kind: StepKind) -> StepWords {
    match kind {
        StepKind::Sow => sow(),
        StepKind::PotUp => pot_up(),
        StepKind::Harden => harden(),
        StepKind::PlantOut => plant_out(),
        StepKind::Thin => thin(),
        StepKind::Pick => pick(),
        StepKind::Cure => cure(),
    }
}

/// What a step is called, for the way in which the planting is grown.
pub(crate) fn name(method: Method, kind: StepKind) -> &'static str {
    (of(kind).name)(method)
}

fn sow() -> StepWords {
    StepWords {
        plain: "sow",
        doing: "sowing",
        name: |method| match method {
            Method::Indoor => "Sow indoors",
            Method::Pieces | Method::Bought => "Plant in bed",
            Method::Direct | Method::Seedlings | Method::Growing | Method::Patch => "Sow in bed",
        },
        also: |method| match method {
            Method::Pieces | Method::Bought => &["plant"],
            Method::Direct | Method::Indoor => &[],
            Method::Seedlings | Method::Growing | Method::Patch => &[],
        },
        bring: |method| {
            Some(match method {
                Method::Indoor => {
                    "the seed, flats, seed-raising mix, labels with pencils, a fine watering can"
                }
                Method::Pieces | Method::Bought => {
                    "what is planted, trowels, a string line, labels, watering cans"
                }
                Method::Direct | Method::Seedlings | Method::Growing | Method::Patch => {
                    "the seed, a string line, rakes, labels, a fine watering can"
                }
            })
        },
        overview_head: Some("Sow or plant"),
        short_head: Some("Sow or plant"),
        slack_head: Some("Sow or plant"),
        table_heads: &[(Edge::First, "Sow or plant from", 17)],
        on_label: true,
        mark: Some(Mark {
            order: 0,
            word: |method| match method {
                Method::Pieces | Method::Bought => "plant",
                Method::Direct | Method::Indoor | Method::Seedlings => "sow",
                Method::Growing | Method::Patch => "sow",
            },
        }),
        tended: |of, on_shelf| match on_shelf {
            true => format!("{of} seedlings on the shelf"),
            false => format!("the {of} seedbed"),
        },
        too_late: |method| match method {
            Method::Indoor => {
                "the next round of sessions is too late unless the steps after it move too"
            }
            Method::Direct | Method::Pieces | Method::Bought => TOO_LATE,
            Method::Seedlings | Method::Growing | Method::Patch => TOO_LATE,
        },
        left_out: None,
    }
}

fn pot_up() -> StepWords {
    StepWords {
        plain: "pot up",
        doing: "potting up",
        name: |_| "Pot up",
        also: |_| &[],
        bring: |_| Some("pots, potting mix, labels, a watering can"),
        overview_head: Some("Pot up"),
        short_head: None,
        slack_head: Some("Pot up"),
        table_heads: &[],
        on_label: false,
        mark: Some(Mark {
            order: 2,
            word: |_| "pot up",
        }),
        tended: |of, _| format!("potted {of} seedlings"),
        too_late: |_| "the next round of sessions is too late unless planting out moves too",
        left_out: None,
    }
}

fn harden() -> StepWords {
    StepWords {
        plain: "harden off",
        doing: "hardening off",
        name: |_| "Harden off",
        also: |_| &[],
        bring: |_| None,
        overview_head: None,
        short_head: None,
        slack_head: None,
        table_heads: &[],
        on_label: false,
        mark: None,
        tended: |of, _| format!("{of} plants that harden off"),
        too_late: |_| TOO_LATE,
        left_out: None,
    }
}

fn plant_out() -> StepWords {
    StepWords {
        plain: "plant out",
        doing: "planting out",
        name: |_| "Plant out",
        // Whoever asks for hardening off asks for the step that it hangs on.
        also: |method| match method {
            Method::Indoor | Method::Seedlings => &["plant", "harden off", "harden"],
            Method::Direct | Method::Pieces | Method::Bought => &["plant"],
            Method::Growing | Method::Patch => &["plant"],
        },
        bring: |_| Some("the plants, trowels, a string line, labels, watering cans"),
        overview_head: Some("Plant out"),
        short_head: Some("Plant out"),
        slack_head: Some("Plant out"),
        table_heads: &[(Edge::First, "Plant out from", 15)],
        on_label: true,
        mark: Some(Mark {
            order: 3,
            word: |_| "plant out",
        }),
        tended: |of, _| format!("newly planted {of}"),
        too_late: |_| TOO_LATE,
        left_out: None,
    }
}

fn thin() -> StepWords {
    StepWords {
        plain: "thin",
        doing: "thinning",
        name: |_| "Thin",
        also: |_| &[],
        bring: |_| Some("blunt scissors, a bowl for what comes out, a watering can"),
        overview_head: None,
        short_head: None,
        slack_head: Some("Thin"),
        table_heads: &[],
        on_label: false,
        mark: Some(Mark {
            order: 1,
            word: |_| "thin",
        }),
        tended: |of, _| format!("thinned {of}"),
        too_late: |_| TOO_LATE,
        left_out: Some(CROWDED),
    }
}

fn pick() -> StepWords {
    StepWords {
        plain: "pick",
        doing: "picking",
        name: |_| "Pick",
        also: |_| &["harvest"],
        bring: |_| Some("clean crates, a scale, clean hands; knives only for adults"),
        overview_head: Some("Pick between"),
        short_head: Some("Pick"),
        slack_head: Some("Pick"),
        table_heads: &[
            (Edge::First, "Pick from", 12),
            (Edge::Last, "Pick until", 12),
        ],
        on_label: true,
        mark: Some(Mark {
            order: 4,
            word: |_| "pick",
        }),
        tended: |of, _| format!("the {of} harvest"),
        too_late: |_| "there is only this session to pick",
        left_out: None,
    }
}

fn cure() -> StepWords {
    StepWords {
        plain: "dry or cure",
        doing: "drying or curing",
        name: |_| "Dry or cure",
        also: |_| &[],
        bring: |_| None,
        overview_head: None,
        short_head: None,
        slack_head: None,
        table_heads: &[],
        on_label: false,
        mark: None,
        tended: |of, _| format!("the {of} harvest"),
        too_late: |_| TOO_LATE,
        left_out: None,
    }
}
