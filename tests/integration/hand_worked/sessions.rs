//! Step 1 of the solution by hand: when the classes meet, and when nobody is there.

use tureen::garden::{ClassAt, Gap, GradeAt};

use super::{day, garden};

fn class_of_grade(grade: usize) -> ClassAt {
    ClassAt {
        grade: GradeAt(grade),
        class: 0,
    }
}

#[test]
fn class_1a_meets_on_six_tuesdays() {
    let sessions = garden().sessions(class_of_grade(0));
    let tuesdays = [(4, 13), (4, 27), (5, 11), (5, 25), (6, 8), (6, 22)];
    assert_eq!(sessions, tuesdays.map(|(month, d)| day(month, d)));
}

#[test]
fn class_2a_meets_on_six_thursdays() {
    let sessions = garden().sessions(class_of_grade(1));
    let thursdays = [(4, 15), (4, 29), (5, 13), (5, 27), (6, 10), (6, 24)];
    assert_eq!(sessions, thursdays.map(|(month, d)| day(month, d)));
}

/// Saturday 1 May to Sunday 9 May: nine days, of which plants bear a weekend's two.
#[test]
fn nobody_comes_for_nine_days() {
    let gaps = garden().gaps();
    assert_eq!(
        gaps,
        [Gap {
            from: day(5, 1),
            to: day(5, 9)
        }]
    );
    assert_eq!(gaps[0].unattended_days(), 7);
}
