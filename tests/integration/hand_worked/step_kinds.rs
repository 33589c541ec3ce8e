//! The table of step kinds: its own columns agree with one another and with the saved plan.

use std::collections::BTreeSet;

use tureen::plan::{Hands, Needed, StepKind, TiedTo};

#[test]
fn the_key_of_a_kind_is_its_saved_name_and_its_own() {
    for kind in StepKind::ALL {
        let saved = serde_json::to_string(kind).unwrap();
        assert_eq!(saved, format!("\"{}\"", kind.facts().key));
    }
    let keys: BTreeSet<&str> = StepKind::ALL.iter().map(|kind| kind.facts().key).collect();
    assert_eq!(keys.len(), StepKind::ALL.len());
}

#[test]
fn what_goes_on_day_by_day_is_tied_to_a_step_of_people() {
    for kind in StepKind::ALL {
        let daily = kind.facts().hands == [Hands::Anyone];
        assert_eq!(daily, kind.is_span(), "{kind:?}");
        assert!(
            daily || !kind.facts().hands.contains(&Hands::Anyone),
            "{kind:?}"
        );
        if let Some(TiedTo::Before(other) | TiedTo::After(other)) = kind.facts().tied_to {
            assert!(!other.is_span(), "{kind:?}");
        }
    }
}

#[test]
fn kinds_stand_in_the_order_of_a_planting() {
    assert!(StepKind::ALL.is_sorted());
    for kind in StepKind::ALL {
        match kind.facts().tied_to {
            Some(TiedTo::Before(other)) => assert!(*kind < other, "{kind:?}"),
            Some(TiedTo::After(other)) => assert!(*kind > other, "{kind:?}"),
            None => {}
        }
        if let Some(first) = kind.facts().counted_from {
            assert!(*kind > first, "{kind:?}");
        }
    }
}

#[test]
fn only_the_harvest_has_several_days_of_which_one_is_enough() {
    for kind in StepKind::ALL {
        let several = kind.facts().needed == Needed::OneOfSeveral;
        assert_eq!(several, kind.is_harvest(), "{kind:?}");
    }
}
