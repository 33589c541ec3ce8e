//! Why a step is when it is, and what can wait, on the smallest scenario.

use super::text;
use super::trials::{as_it_is, two_beds};

#[test]
fn a_step_is_explained() {
    let answer = as_it_is("why-step").answer(&["why", "garden.toml", "lettuce", "plant out"]);
    for part in [
        "Lettuce, plant out: 1a Tue 25 May",
        "  - Before it: harden off, every day from Tue 18 May to Mon 24 May.",
        "  - After it: pick, 1a Tue 22 Jun.",
        "  - Its seedlings are planted out 4 to 6 weeks after sowing; here it is 6 weeks.",
        "  - 2 weeks earlier (1a Tue 11 May): the seedlings harden off while nobody is on site (Sat 1 May to\n    \
         Sun 9 May).",
        "  - 2 weeks later (1a Tue 8 Jun): the seedlings are 8 weeks old when they are planted out, \
         at most\n    6; it is ready in 0 of 5 weather years, and what is ready in fewer than 1 is not \
         sown.",
        "  - No plan in the 3 rounds that are earlier.\n  - No plan in the 2 rounds that are later.",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
}

#[test]
fn a_step_that_is_not_there_is_told_with_the_steps_that_are() {
    let folder = as_it_is("why-no-step");
    for (asked, wanted) in [
        (
            "letuce sow",
            "The plan has no step \"letuce sow\".\nDid you mean \"lettuce sow\"? Its steps are \
             lettuce sow, lettuce plant out, lettuce pick, radish sow, radish thin and radish pick.\n",
        ),
        (
            "radish pot up",
            "The plan has no step \"radish pot up\".\nIts steps are radish sow, radish thin and \
             radish pick.\n",
        ),
        (
            "harvest",
            "The plan has no step \"harvest\".\nIts steps are lettuce sow, lettuce plant out, \
             lettuce pick, radish sow, radish thin and radish pick.\n",
        ),
    ] {
        let output = folder.run(&["why", "garden.toml", asked]);
        assert_eq!(output.status.code(), Some(2), "{asked}");
        assert_eq!(text(&output.stderr), wanted);
    }
}

/// So much radish that it must stand in the open and under fleece: two sowings.
#[test]
fn of_several_sowings_one_must_be_named() {
    let folder = two_beds("why-which", |text| {
        let (few, many) = (
            "grade = \"2\"\ngrams_per_portion = 30\nleast_share = 0.3",
            "max_sowings = 2\ngrade = \"2\"\ngrams_per_portion = 110\nleast_share = 0.95",
        );
        let bed =
            "[[bed]]\nid = \"C\"\nlength_m = 1.2\nwidth_m = 1.2\ncover = \"fleece\"\n\n[shelf]";
        text.replace(few, many).replace("[shelf]", bed)
    });
    let output = folder.run(&["why", "garden.toml", "radish", "sow"]);
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(
        text(&output.stderr),
        "There are several steps \"radish sow\".\nSay which: radish 1 sow and radish 2 sow.\n"
    );
    let answer = folder.answer(&["why", "garden.toml", "radish", "2", "sow"]);
    assert!(answer.contains("Radish, sow in bed: "), "{answer}");
}

#[test]
fn a_step_may_be_called_as_on_the_screen() {
    let folder = as_it_is("why-screen-words");
    for (asked, title) in [
        ("lettuce harden off", "Lettuce, plant out: "),
        ("lettuce harvest", "Lettuce, pick: "),
    ] {
        let answer = folder.answer(&["why", "garden.toml", asked]);
        assert!(answer.contains(title), "{answer}");
    }
}

#[test]
fn what_can_wait_is_listed_step_by_step() {
    let folder = as_it_is("show-slack");
    folder.answer(&["plan", "garden.toml", "--out", "."]);
    let answer = folder.answer(&["show", "garden.toml", "--slack"]);
    for part in [
        "What can wait, and what to do when a step fails",
        "  Plant out     1a Tue 25 May. It can be moved to no other week. No slack: the next round of\n",
        "missed: this planting is lost, 1.5 to 2.3 kg of lettuce;",
        "IF IT FAILS",
        "then buy it",
    ] {
        assert!(answer.contains(part), "\"{part}\" is missing in\n{answer}");
    }
}
