//! Random school years, grades and classes.

use chrono::{NaiveDate, Weekday};
use tureen::calendar::{Date, plus_days};
use tureen::garden::{
    Break, Care, Class, Feast, Grade, GradeAt, HandOver, HarvestDay, SchoolYear, Slot, Term,
};
use tureen::units::Minutes;

use super::dice::Dice;

/// A feast some weeks after the first day on which anyone may sow.
pub fn feast(dice: &mut Dice, south: bool, weeks: u32) -> (Date, Feast) {
    let spring = if south { (2026, 8, 10) } else { (2026, 2, 23) };
    let (year, month, day) = spring;
    let earliest = NaiveDate::from_ymd_opt(year, month, day).unwrap();
    let start = plus_days(earliest, i64::from(dice.int(0, 110)));
    let monday = tureen::calendar::monday_of(plus_days(start, i64::from(weeks) * 7 - 7));
    let day = plus_days(monday, i64::from(dice.int(1, 4)));
    let feast = Feast {
        day,
        rain_date: dice.chance(0.3).then(|| plus_days(day, 7)),
        deliver_by: plus_days(day, -i64::from(dice.int(0, 3))),
        portions: dice.int(20, 90),
    };
    (start, feast)
}

/// A school year that holds the span: sometimes with moving up and a break before it.
pub fn school_year(dice: &mut Dice, start: Date, last: Date) -> SchoolYear {
    let days = (last - start).num_days();
    let within = |share: f64| plus_days(start, (days as f64 * share) as i64);
    let moves_up = dice.chance(0.4).then(|| within(dice.real(0.35, 0.85)));
    let from = plus_days(start, -10);
    let to = plus_days(last, 30);
    let term = |name: &str, from, to| Term {
        name: name.into(),
        from,
        to,
    };
    let terms = match moves_up {
        Some(up) => vec![
            term("first", from, plus_days(up, -1)),
            term("second", up, to),
        ],
        None => vec![term("only", from, to)],
    };
    let mut breaks = Vec::new();
    if dice.chance(0.7) {
        let length = i64::from(dice.int(3, 24));
        let from = match moves_up {
            Some(up) if dice.chance(0.6) => plus_days(up, -length),
            _ => within(dice.real(0.1, 0.8)),
        };
        breaks.push(Break {
            name: "break".into(),
            from,
            to: plus_days(from, length - 1),
            care: dice.one(&[Care::Nobody, Care::Staff, Care::Families, Care::Families]),
        });
    }
    let mut days_off: Vec<Date> = (0..dice.int(0, 4))
        .map(|_| within(dice.real(0.0, 1.0)))
        .collect();
    days_off.sort();
    let mut year = SchoolYear {
        start,
        moves_up,
        terms,
        breaks,
        days_off,
        harvest_days: Vec::new(),
    };
    year.harvest_days = harvest_days(&year, days, last);
    year
}

/// In a third of all schools, by their days and not by a die of its own, one of the last school days.
fn harvest_days(year: &SchoolYear, days: i64, last: Date) -> Vec<HarvestDay> {
    let day = year.school_day_until(plus_days(last, -3));
    let harvest = HarvestDay {
        day,
        minutes: Minutes(45.0),
    };
    let there = days % 3 == 0 && year.school_is_in(day);
    there.then_some(harvest).into_iter().collect()
}

/// Some grades of one or two classes; where the children move up, the plantings are handed
/// on in one of the three ways.
pub fn grades(dice: &mut Dice, year: &SchoolYear, count: usize) -> Vec<Grade> {
    let hurried = dice.chance(0.4);
    let mut grades: Vec<Grade> = (0..count)
        .map(|k| Grade {
            id: k.to_string(),
            name: format!("Grade {k}"),
            age: None,
            classes: (0..dice.int(1, 2))
                .map(|c| class(dice, year, k, c, hurried))
                .collect(),
            hand_over: dice.one(&[HandOver::SameChildren, HandOver::SameGrade]),
        })
        .collect();
    if count > 1 && dice.chance(0.5) {
        let adopter = GradeAt(dice.below(count - 1));
        grades[count - 1].hand_over = HandOver::Leaves { adopter };
    }
    grades
}

fn class(dice: &mut Dice, year: &SchoolYear, grade: usize, class: u32, hurried: bool) -> Class {
    let minutes = if hurried {
        &[16.0, 20.0, 24.0]
    } else {
        &[25.0, 35.0, 50.0]
    };
    let mut slot = Slot {
        day: weekday(dice),
        every_weeks: dice.one(&[1, 1, 2]),
        from: plus_days(year.start, i64::from(dice.int(0, 14)) - 4),
        minutes: Minutes(dice.one(minutes)),
        at: None,
    };
    let slots = year.terms.iter().map(|_| {
        let same = slot;
        if dice.chance(0.3) {
            slot.day = weekday(dice);
            slot.minutes = Minutes(dice.one(minutes));
        }
        same
    });
    let slots = slots.collect();
    Class {
        name: format!("{grade}{}", ["a", "b"][class as usize]),
        children: dice.int(3, 12),
        slots,
        falls_out: Vec::new(),
    }
}

fn weekday(dice: &mut Dice) -> Weekday {
    use Weekday::{Fri, Mon, Thu, Tue, Wed};
    dice.one(&[Mon, Tue, Wed, Thu, Fri])
}
