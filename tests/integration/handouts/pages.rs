//! The pages: one for each reader, self-contained, each text of its report on it and escaped. What
//! they look like, a real browser holds (`tests/reference/browser`).

use std::collections::BTreeSet;
use std::time::SystemTime;

use chrono::Weekday;
use tureen::checker::CheckedPlan;
use tureen::explain;
use tureen::facts::Facts;
use tureen::garden::{Garden, GradeAt};
use tureen::handouts::calendar::Stamp;
use tureen::handouts::folder::File;
use tureen::handouts::{Readers, all};
use tureen::page::Block;
use tureen::page::Look;
use tureen::report;
use tureen::report::handouts::{Handout, Reader};
use tureen::words::view::View;

use super::pictures::planned;
use crate::support::gardens::{class, grade, tiny_garden};
use crate::support::plans::{tiny_bean, tiny_plan};

/// The most bytes of a page.
const MOST: usize = 400_000;

fn checked(garden: &Garden) -> CheckedPlan {
    tureen::checker::check(garden, tiny_plan(garden)).unwrap()
}

fn files(garden: &Garden, checked: &CheckedPlan) -> Vec<File> {
    all(
        garden,
        checked,
        Stamp::from(SystemTime::UNIX_EPOCH),
        None,
        Readers::All,
    )
    .unwrap()
}

fn pages(files: &[File]) -> Vec<(&str, String)> {
    files
        .iter()
        .filter(|file| file.path.ends_with(".html"))
        .map(|file| {
            let text = String::from_utf8(file.bytes.clone()).unwrap();
            (file.path.as_str(), text)
        })
        .collect()
}

fn handouts(view: &View<'_>, checked: &CheckedPlan) -> Vec<Handout> {
    let slack = explain::slack(view.garden, checked);
    report::handouts::all(view, &slack, None)
}

/// The text of a page as a reader sees it, on one line.
fn read(page: &str) -> String {
    let body = page.split_once("<main>").unwrap().1;
    let mut text = String::new();
    for part in body.split('<') {
        let (tag, rest) = part.split_once('>').unwrap_or(("", part));
        if !tag.starts_with("wbr") {
            text.push(' ');
        }
        text.push_str(rest);
    }
    let signs = [
        ("&lt;", "<"),
        ("&gt;", ">"),
        ("&quot;", "\""),
        ("&amp;", "&"),
    ];
    let text = signs
        .iter()
        .fold(text, |text, (code, sign)| text.replace(code, sign));
    let text = text.replace(['\u{200e}', '\u{a0}'], " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// All texts of a block.
fn texts(block: &Block) -> Vec<String> {
    match block {
        Block::Title(text)
        | Block::Heading(text)
        | Block::Paragraph(text)
        | Block::Line(text)
        | Block::Item(text) => vec![text.clone()],
        Block::Entry { label, text, .. } => vec![label.clone(), text.clone()],
        Block::Table(table) => table.rows.concat(),
        Block::Grid(grid) => {
            let cells = |row: &tureen::page::GridRow| {
                let first = [row.label.clone()].into_iter();
                first.chain(row.cells.clone()).chain(row.under.clone())
            };
            grid.rows.iter().flat_map(cells).collect()
        }
        Block::Agendas(agendas) => {
            let told = |entry: &tureen::page::AgendaEntry| {
                let what = [entry.what.clone()].into_iter();
                let lines = entry.when.iter().chain(&entry.more).chain(&entry.fields);
                what.chain(lines.cloned()).collect::<Vec<_>>()
            };
            let of = |agenda: &tureen::page::Agenda| {
                let head = [agenda.head.clone()].into_iter();
                head.chain(agenda.entries.iter().flat_map(told))
                    .collect::<Vec<_>>()
            };
            agendas.iter().flat_map(of).collect()
        }
        Block::Gap | Block::Drawing(_) | Block::Picture(_) => Vec::new(),
    }
}

fn plain(text: &str) -> String {
    let text = text.replace(['\u{a0}', '\n'], " ");
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[test]
fn every_reader_has_a_page_and_the_start_page_leads_to_all_files() {
    let garden = tiny_garden();
    let checked = checked(&garden);
    let files = files(&garden, &checked);
    let names: BTreeSet<&str> = files.iter().map(|file| file.path.as_str()).collect();
    let expected = [
        "index.html",
        "plan.html",
        "grade-1.html",
        "grade-2.html",
        "children-1.html",
        "children-2.html",
        "poster.html",
        "principal.html",
        "kitchen.html",
        "summer.html",
        "map.html",
        "shopping.html",
    ];
    for name in expected {
        assert!(names.contains(name), "{name} is missing in {names:?}");
    }
    let start = &pages(&files)[0];
    assert_eq!(start.0, "index.html");
    for name in names.iter().filter(|name| **name != "index.html") {
        assert!(start.1.contains(&format!("href=\"{name}\"")), "{name}");
    }
}

#[test]
fn pages_need_nothing_beside_them_and_are_small() {
    let garden = tiny_garden();
    let checked = checked(&garden);
    for (name, page) in pages(&files(&garden, &checked)) {
        assert!(page.len() < MOST, "{name}: {} bytes", page.len());
        assert!(page.starts_with("<!DOCTYPE html><html"), "{name}");
        for outside in [
            "<script", "<link", "http:", "https:", "@import", "url(", "src=",
        ] {
            assert!(!page.contains(outside), "{name} has {outside}");
        }
    }
}

#[test]
fn every_text_of_a_report_is_on_its_page() {
    let garden = tiny_garden();
    let checked = checked(&garden);
    let facts = Facts::new(&garden, &checked);
    let view = View::of(&facts);
    let files = files(&garden, &checked);
    let pages = pages(&files);
    let handouts = handouts(&view, &checked);
    assert_eq!(pages.len(), handouts.len() + 1);
    for (handout, (name, page)) in handouts.iter().zip(&pages[1..]) {
        let page = read(page);
        let texts: Vec<String> = handout.page.blocks().iter().flat_map(texts).collect();
        // The poster and the children's page are pictures in the main.
        let least = match handout.reader {
            Reader::Wall | Reader::Children(_) => 1,
            _ => 6,
        };
        assert!(texts.len() >= least, "{name}");
        for text in texts {
            assert!(page.contains(&plain(&text)), "{name} lacks \"{text}\"");
        }
    }
}

#[test]
fn names_with_markup_are_text() {
    let mut garden = tiny_garden();
    let bad = "<img src=x onerror=a()>&\"'";
    garden.school = Some(bad.to_owned());
    garden.grades[0].name = bad.to_owned();
    let checked = checked(&garden);
    for (name, page) in pages(&files(&garden, &checked)) {
        assert!(!page.contains("<img"), "{name}");
        assert!(
            page.contains("&lt;img src=x onerror=a()&gt;&amp;&quot;"),
            "{name}"
        );
    }
}

/// The page of one reader, as words.
fn page_of(garden: &Garden, checked: &CheckedPlan, reader: Reader) -> String {
    let facts = Facts::new(garden, checked);
    let view = View::of(&facts);
    let all = handouts(&view, checked);
    let page = all.iter().find(|h| h.reader == reader).unwrap();
    let look = Look {
        width: 100,
        color: false,
    };
    let text = format!("{}\n{}", page.title, page.page.text(look));
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Three grades of which the first grows the bean; why the others do not depends on who may.
#[test]
fn of_a_grade_that_grows_nothing_every_reader_is_told_why() {
    let mut garden = tiny_garden().with_ingredients(|at| at.0 == 0);
    let from = garden.school_year.start;
    garden
        .grades
        .push(grade("3", vec![class("3a", 10, Weekday::Fri, 1, from)]));
    let others = "the file gives every ingredient to another grade";
    let young = "no ingredient, and those whose grade it leaves open are for older children";
    let few = "there are more grades than ingredients for them";
    let cases = [
        (vec![0], [(others, "given-to-others"); 2]),
        (vec![0, 1, 2], [(few, "too-few-ingredients"); 2]),
        (
            vec![0, 2],
            [(young, "too-young"), (few, "too-few-ingredients")],
        ),
    ];
    for (may, expected) in cases {
        garden.ingredients[0].teams = may.into_iter().map(|grade| GradeAt(grade).into()).collect();
        let checked = planned(&garden, vec![tiny_bean()]);
        let data = files(&garden, &checked);
        let data = data.iter().find(|f| f.path == "plan-data.json").unwrap();
        let data: serde_json::Value = serde_json::from_slice(&data.bytes).unwrap();
        let because = |at: usize| &data["grades"][at]["grows_nothing_because"];
        assert!(because(0).is_null());
        for (at, (why, key)) in expected.into_iter().enumerate() {
            let name = format!("Grade {}", at + 2);
            for reader in [Reader::Coordinator, Reader::Principal] {
                let text = page_of(&garden, &checked, reader);
                let sentences = text.split(". ");
                let told =
                    |s: &str| s.contains(&name) && s.contains("nothing of") && s.contains(why);
                assert!(sentences.into_iter().any(told), "{name}, {why}: {text}");
            }
            let own = page_of(&garden, &checked, Reader::Grade(GradeAt(at + 1)));
            assert!(
                own.contains("grows nothing of its own") && own.contains(why),
                "{own}"
            );
            assert!(own.contains("We can mulch, weed and water"), "{own}");
            assert_eq!(because(at + 1), key);
        }
        let own = page_of(&garden, &checked, Reader::Grade(GradeAt(0)));
        assert!(!own.contains("nothing of our own"), "{own}");
    }
}
