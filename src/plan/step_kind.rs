//! The kinds of steps, in one table: what is true of each kind, for every room of the program. A new kind
//! is a new entry here, and then whatever the compiler asks for.

use serde::{Deserialize, Serialize};

use crate::garden::Method;

/// Whose hands do a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hands {
    /// Children, in sessions of their class.
    Children,
    /// Families, on a day of a break in which they care.
    Families,
    /// An adult of the school.
    Adult,
    /// Whoever is there, day by day over a span.
    Anyone,
}

/// Where a step is done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Site {
    /// At the seedling shelf.
    Shelf,
    /// Outdoors, beside the shelf.
    BesideShelf,
    /// Where the planting stands.
    Bed,
    /// Where the harvest dries.
    DryingPlace,
}

/// Whether a planting comes to anything without a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Needed {
    /// Not without this one.
    Always,
    /// Not without one of its kind; there may be several.
    OneOfSeveral,
    /// A plan without it keeps the rules.
    Never,
}

/// The step to whose days a span of days is tied, wherever that step is moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TiedTo {
    /// The span ends on the day before it.
    Before(StepKind),
    /// The span begins on the day after the last of it.
    After(StepKind),
}

/// What is true of a kind of step.
pub struct Facts {
    /// Its name in saved plans, calendars and data; it never changes, whatever the step is called
    /// on paper.
    pub key: &'static str,
    /// The words with which a person begins who tells that it was done.
    pub told_by: &'static [&'static str],
    /// Whose hands may do it.
    pub hands: &'static [Hands],
    /// Where it is done, by the way of growing.
    pub site: fn(Method) -> Site,
    /// Whether the planting needs it.
    pub needed: Needed,
    /// True if it is the harvest.
    pub is_harvest: bool,
    /// True if it is one of the steps that bring plants up and into the bed.
    pub raises: bool,
    /// True if no day of it may lie in a gap, for it goes wrong where nobody looks after it.
    pub is_watched: bool,
    /// The step to whose days it is tied; only of what goes on day by day.
    pub tied_to: Option<TiedTo>,
    /// The step from whose days its own are counted: where that one moves, it is planned anew.
    pub counted_from: Option<StepKind>,
}

/// Makes the kinds, the list of all of them and their facts from one table, so that none of the
/// three can lack a kind.
macro_rules! step_kinds {
    ($($(#[$doc:meta])* $kind:ident => $facts:expr;)+) => {
        /// Something done to a planting, in the order in which a planting takes its steps.
        #[derive(
            Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize,
        )]
        #[serde(rename_all = "kebab-case")]
        pub enum StepKind {
            $($(#[$doc])* $kind,)+
        }

        impl StepKind {
            /// All kinds, in the order in which a planting takes them.
            pub const ALL: &[StepKind] = &[$(StepKind::$kind,)+];

            /// What is true of it.
            #[must_use]
            pub const fn facts(self) -> &'static Facts {
                match self {
                    $(StepKind::$kind => {
                        const FACTS: &Facts = &$facts;
                        FACTS
                    })+
                }
            }
        }
    };
}

step_kinds! {
    /// Seed, pieces, sets or cloves go into flats or into the bed.
    Sow => Facts {
        key: "sow",
        told_by: &["sowed", "sown", "sow"],
        hands: &[Hands::Children],
        site: |method| match method {
            Method::Indoor => Site::Shelf,
            Method::Direct
            | Method::Pieces
            | Method::Bought
            | Method::Seedlings
            | Method::Growing
            | Method::Patch => Site::Bed,
        },
        needed: Needed::Always,
        is_harvest: false,
        raises: true,
        is_watched: false,
        tied_to: None,
        counted_from: None,
    };
    /// Seedlings move from cells to pots.
    PotUp => Facts {
        key: "pot-up",
        told_by: &["potted", "repotted"],
        hands: &[Hands::Children],
        site: |_| Site::Shelf,
        needed: Needed::Always,
        is_harvest: false,
        raises: true,
        is_watched: false,
        tied_to: None,
        counted_from: None,
    };
    /// Seedlings learn the outdoors, day by day.
    Harden => Facts {
        key: "harden",
        told_by: &["hardened"],
        hands: &[Hands::Anyone],
        site: |_| Site::BesideShelf,
        needed: Needed::Always,
        is_harvest: false,
        raises: true,
        is_watched: true,
        tied_to: Some(TiedTo::Before(StepKind::PlantOut)),
        counted_from: None,
    };
    /// Plants go into the bed.
    PlantOut => Facts {
        key: "plant-out",
        told_by: &["planted", "transplanted"],
        hands: &[Hands::Children],
        site: |_| Site::Bed,
        needed: Needed::Always,
        is_harvest: false,
        raises: true,
        is_watched: false,
        tied_to: None,
        counted_from: None,
    };
    /// Surplus seedlings are taken out of the row.
    Thin => Facts {
        key: "thin",
        told_by: &["thinned"],
        hands: &[Hands::Children, Hands::Adult, Hands::Families],
        site: |_| Site::Bed,
        needed: Needed::Never,
        is_harvest: false,
        raises: false,
        is_watched: false,
        tied_to: None,
        counted_from: Some(StepKind::Sow),
    };
    /// The harvest, at the first of these steps at which it is ripe.
    Pick => Facts {
        key: "pick",
        told_by: &["picked", "harvested", "dug"],
        hands: &[Hands::Children, Hands::Families],
        site: |_| Site::Bed,
        needed: Needed::OneOfSeveral,
        is_harvest: true,
        raises: false,
        is_watched: false,
        tied_to: None,
        counted_from: None,
    };
    /// The harvest dries or cures.
    Cure => Facts {
        key: "cure",
        told_by: &["dried", "cured"],
        hands: &[Hands::Anyone],
        site: |_| Site::DryingPlace,
        needed: Needed::Always,
        is_harvest: false,
        raises: false,
        is_watched: false,
        tied_to: Some(TiedTo::After(StepKind::Pick)),
        counted_from: None,
    };
}

impl StepKind {
    /// The step that brings plants of a method into the bed; `None` for what stands there already.
    #[must_use]
    pub const fn into_bed(method: Method) -> Option<Self> {
        match method {
            Method::Direct | Method::Pieces => Some(Self::Sow),
            Method::Indoor | Method::Bought | Method::Seedlings => Some(Self::PlantOut),
            Method::Growing | Method::Patch => None,
        }
    }

    /// True if it is the harvest, of which a plan may have several days.
    #[must_use]
    pub const fn is_harvest(self) -> bool {
        self.facts().is_harvest
    }

    /// True if it goes on from day to day with a step that people do, and never by itself.
    #[must_use]
    pub const fn is_span(self) -> bool {
        self.facts().tied_to.is_some()
    }

    /// True if it goes on from the day after the harvest, and so begins earlier where that does.
    #[must_use]
    pub fn follows_harvest(self) -> bool {
        match self.facts().tied_to {
            Some(TiedTo::After(kind)) => kind.is_harvest(),
            Some(TiedTo::Before(_)) | None => false,
        }
    }

    /// True if its days are counted from those of another kind.
    #[must_use]
    pub fn is_counted_from(self, other: Self) -> bool {
        self.facts().counted_from == Some(other)
    }
}
