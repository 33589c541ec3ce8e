//! What is asked, one question after the other: each with an example, what holds where nothing is said, and
//! what the program makes of the answer.

use crate::catalogue::{Catalogue, Dish};
use crate::project::draft::Draft;

use super::super::answer::Trouble;
use super::super::talk::{BACK, Talk, Typed};
use super::question::{Known, Question};
use super::{dish, garden, school};

/// All questions in their order.
fn all() -> impl Iterator<Item = Question> {
    let groups = [school::place(), dish::all(), school::all(), garden::all()];
    groups.into_iter().flatten()
}

/// What came of a question.
enum Came {
    Answer,
    Back,
    End,
}

/// Asks everything. Where the input ends, defaults hold for the rest.
pub(super) fn ask_all(
    talk: &mut Talk,
    draft: &mut Draft,
    catalogue: &Catalogue,
    dishes: &[Dish],
) -> Result<(), Trouble> {
    let known = Known { catalogue, dishes };
    let questions: Vec<Question> = all().collect();
    talk.say(&format!(
        "A new project in {} questions. Enter takes what stands in [brackets]; {BACK} goes \
         back.\nAll of it can be changed later in the file.\n",
        questions.len()
    ))?;
    let mut at = 0;
    while let Some(question) = questions.get(at) {
        talk.say(&format!("\n{} of {}. ", at + 1, questions.len()))?;
        match ask(talk, draft, &known, question)? {
            Came::Answer => at += 1,
            Came::Back => at = at.saturating_sub(1),
            Came::End => {
                return talk
                    .say("\nNo more answers: for the rest, what stands in brackets holds.\n");
            }
        }
    }
    Ok(())
}

/// Asks one question until its answer can be read.
fn ask(
    talk: &mut Talk,
    draft: &mut Draft,
    known: &Known<'_>,
    question: &Question,
) -> Result<Came, Trouble> {
    talk.say(&format!("{}\n", (question.ask)(draft, known)))?;
    let mut lines = 0;
    loop {
        match lines {
            0 => talk.say(&format!("   [{}] ", (question.told)(draft)))?,
            _ => talk.say("   another, or Enter: ")?,
        }
        let line = match talk.line()? {
            Typed::Line(line) => line,
            Typed::Nothing => return Ok(Came::Answer),
            Typed::Back => return Ok(Came::Back),
            Typed::End => return Ok(Came::End),
        };
        // A first line takes the place of an earlier answer, if it can be read.
        let mut tried = draft.clone();
        if let (0, Some(forget)) = (lines, question.lines) {
            forget(&mut tried);
        }
        match (question.take)(&mut tried, known, &line) {
            Ok(()) => {
                *draft = tried;
                talk.say(&format!("   -> {}\n", (question.told)(draft)))?;
                lines += 1;
                if question.lines.is_none() {
                    return Ok(Came::Answer);
                }
            }
            Err(wrong) => talk.say(&format!("   This cannot be: {wrong}.\n"))?,
        }
    }
}
