//! Every key of the project file: table by table, with meaning, what may stand there, and what holds
//! without it.

use crate::project::{Form, Key, Presence};

use crate::page::Page;

/// A table of the file with its keys.
struct Section<'k> {
    /// Its way through the file: `grade.classes`.
    way: String,
    /// How it is written.
    heading: String,
    meaning: &'static str,
    keys: &'k [Key],
}

/// The keys of all tables, or of one and those within it; `None` if there is no such table.
#[must_use]
pub fn keys(all: &[Key], table: Option<&str>) -> Option<Page> {
    let mut page = Page::new();
    page.title("The keys of a project file");
    page.paragraph(
        "A [table] stands once, a [[table]] as often as you like. Texts stand in quotes, dates are \
         year-month-day without quotes, a list stands in [brackets] with commas between.",
    );
    let sections = sections(all);
    let within =
        |way: &str| table.is_none_or(|table| way == table || way.starts_with(&format!("{table}.")));
    let mut chosen = sections
        .iter()
        .filter(|section| within(&section.way))
        .peekable();
    chosen.peek()?;
    for section in chosen {
        // No heading, which would turn the names of keys into capitals.
        page.gap();
        page.title(&format!("{}: {}", section.heading, section.meaning));
        let rows: Vec<Vec<String>> = section.keys.iter().map(row).collect();
        page.table(
            &["Key", "Meaning", "What may stand there", "Without it"],
            &rows,
            &[],
        );
    }
    Some(page)
}

/// The names of all tables.
#[must_use]
pub fn table_names(all: &[Key]) -> Vec<String> {
    sections(all)
        .into_iter()
        .map(|section| section.way)
        .collect()
}

/// All tables, each before those within it.
fn sections(all: &[Key]) -> Vec<Section<'_>> {
    let mut found = Vec::new();
    for key in all {
        gather(key, &key.form, None, &mut found);
    }
    found
}

/// The table that a key holds, if it holds one, and those within it; `around` is the table of the key.
fn gather<'k>(
    key: &'k Key,
    form: &'k Form,
    around: Option<(&str, &str)>,
    found: &mut Vec<Section<'k>>,
) {
    let name = key.name;
    let (way, inside) = match around {
        None => (name.to_owned(), String::new()),
        Some((way, heading)) => (format!("{way}.{name}"), format!(" in {heading}")),
    };
    let is_root = around.is_none();
    let (keys, heading) = match form {
        Form::Table(keys) if is_root => (keys, format!("[{name}]")),
        Form::Table(keys) => (keys, format!("{name} = {{ ... }}{inside}")),
        Form::List(of, ..) => match &**of {
            Form::Table(keys) if is_root => (keys, format!("[[{name}]]")),
            Form::Table(keys) if way == "dish.ingredient" => (keys, format!("[[{way}]]")),
            Form::Table(keys) => (keys, format!("{name} = [{{ ... }}]{inside}")),
            _ => return,
        },
        Form::Named(names, of) => match &**of {
            Form::Table(keys) if is_root => (keys, format!("[{name}.{names}]")),
            Form::Table(keys) => (keys, format!("{name} = {{ {names} = {{ ... }} }}{inside}")),
            _ => return,
        },
        Form::Either(one, other) => {
            gather(key, one, around, found);
            return gather(key, other, around, found);
        }
        _ => return,
    };
    // [dish] itself is never written: it only holds its ingredients.
    let only_holds = matches!(
        keys.as_slice(),
        [Key {
            name: "ingredient",
            ..
        }]
    );
    if !only_holds {
        let (way, heading) = (way.clone(), heading.clone());
        found.push(Section {
            way,
            heading,
            meaning: key.meaning,
            keys,
        });
    }
    for inner in keys {
        gather(inner, &inner.form, Some((&way, &heading)), found);
    }
}

fn row(key: &Key) -> Vec<String> {
    let figures = |form: &Form, name| {
        let unit = key.unit_of(name).map(|unit| format!(" {unit}"));
        format!("{}{}", self::form(form), unit.unwrap_or_default())
    };
    let mut names = key.name.to_owned();
    let mut may_stand = figures(&key.form, key.name);
    if let Some(other) = &key.instead {
        names += &format!(" or {}", other.key);
        may_stand += &format!(" or {}", figures(&key.form.in_unit(other), other.key));
    }
    let without = match &key.presence {
        Presence::Needed(_) => "needed".to_owned(),
        Presence::Otherwise(otherwise) => otherwise.clone(),
        Presence::BuiltIn(_) => "the catalogue's".to_owned(),
    };
    vec![names, key.meaning.to_owned(), may_stand, without]
}

/// What may stand there, in words.
fn form(form: &Form) -> String {
    match form {
        Form::Text => "text".to_owned(),
        Form::Flag => "true or false".to_owned(),
        Form::Date => "date".to_owned(),
        Form::DayOfYear => "a day in quotes, such as \"10 May\"".to_owned(),
        Form::Time => "hours and minutes, such as 10:15".to_owned(),
        Form::Number(least, most) => format!("{} to {}", limit(*least), limit(*most)),
        Form::Whole(0, u32::MAX) => "a whole number".to_owned(),
        Form::Whole(least, most) => format!("a whole number, {least} to {most}"),
        Form::Word(words) => {
            let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
            words.join(", ")
        }
        Form::List(of, least, Some(most)) if least == most => {
            format!("a list of {most}: {}", self::form(of))
        }
        Form::List(of, ..) => format!("a list: {}", self::form(of)),
        Form::Either(one, other) => format!("{}; or {}", self::form(one), self::form(other)),
        Form::Table(_) => "a table of its own".to_owned(),
        Form::Named(names, of) => format!("{{ {names} = {} }}", self::form(of)),
    }
}

/// A limit, rounded: one in another unit has many decimals.
fn limit(limit: f64) -> f64 {
    (limit * 100.0).round() / 100.0
}
