//! The watering list in Spanish. Nobody of a school has checked its sentences yet, and the list says
//! so at its head. Names of days and months come from `chrono`, plurals and lists follow the
//! two rules that the list needs.

use std::cmp::Ordering;

use chrono::Datelike;

use crate::calendar::Date;
use crate::checker::{Seedbed, WaterNeed};
use crate::facts::water::{Asked, BreakPick, BreakWeek};
use crate::garden::{Bed, Break, Care, Garden, Locale};
use crate::words::occasion::whose;
use crate::words::sentence;
use crate::words::view::View;
use crate::words::water::WaterMeasure;

use super::english::ROOM;
use super::speech::{Speech, Sums};

/// Spanish, with the units of the school.
pub(crate) struct Spanish {
    units: Locale,
    measure: WaterMeasure,
    /// The year that goes without saying.
    year: i32,
    generated: bool,
}

impl Spanish {
    pub fn of(view: &View<'_>) -> Self {
        let units = view.garden.locale;
        let (unit, small, gauge) = match units {
            Locale::British => ("litros", "dos litros", "milímetro"),
            Locale::American => ("galones", "medio galón", "décimo de pulgada"),
        };
        Self {
            units,
            measure: view.words.water().called(unit, small, gauge),
            year: view.garden.feast.day.year(),
            generated: view.garden.weather.is_generated(),
        }
    }

    /// `miércoles 29 de septiembre`, with its year if that does not go without saying.
    fn day(&self, day: Date) -> String {
        let pattern = match day.year() == self.year {
            true => "%A\u{a0}%-d de\u{a0}%B",
            false => "%A\u{a0}%-d de\u{a0}%B de\u{a0}%Y",
        };
        written(day, pattern)
    }

    /// `garlic el sábado 17 de julio (bancal 14)`.
    fn pick(&self, pick: &BreakPick<'_>) -> String {
        let (ingredient, day) = (pick.ingredient, self.day(pick.day));
        format!("{ingredient} el {day} ({})", beds(&pick.beds))
    }
}

fn written(day: Date, pattern: &str) -> String {
    let text = day.format_localized(pattern, chrono::Locale::es_ES);
    text.to_string()
}

/// `bancal 2`, `bancales 7 y 8`.
fn beds(ids: &[&str]) -> String {
    let word = if ids.len() == 1 { "bancal" } else { "bancales" };
    format!("{word} {}", list(ids))
}

/// `a`, `a y b`, `a, b y c`; before the sound of an i it is `e`.
fn list<S: AsRef<str>>(items: &[S]) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_owned(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            let (head, last) = (head.join(", "), last.as_ref());
            format!("{head} {} {last}", and(last))
        }
    }
}

/// The `and` before a word.
fn and(next: &str) -> &'static str {
    let next = next.to_lowercase();
    let silent = next.strip_prefix('h').unwrap_or(&next);
    let is_i = silent.starts_with(['i', 'í'])
        && !["ia", "ie", "io", "iu"]
            .iter()
            .any(|d| silent.starts_with(d));
    if is_i { "e" } else { "y" }
}

impl Speech for Spanish {
    fn measure(&self) -> WaterMeasure {
        self.measure
    }

    fn title(&self) -> String {
        "Lista de riego".to_owned()
    }

    fn note(&self) -> Option<String> {
        let text = "Traducción sin revisar: antes de repartirla la lee alguien de la escuela que \
                    hable español. Los nombres de plantas, bancales y vacaciones son los del plan.";
        Some(text.to_owned())
    }

    fn occasion(&self, garden: &Garden) -> String {
        let feast = garden.feast;
        let portions = match feast.portions {
            1 => "1 ración".to_owned(),
            n => format!("{n} raciones"),
        };
        format!(
            "{}: {} de\u{a0}{}, {portions}; todo está en la cocina a más tardar el {}.",
            whose(garden),
            self.day(feast.day),
            feast.day.year(),
            self.day(feast.deliver_by)
        )
    }

    fn asked(&self, asked: &Asked<'_>) -> String {
        let Break { name, from, to, .. } = asked.pause;
        let cans = asked.most.map(|need| match self.measure.cans(need.dry) {
            1.0 => ", hasta 1 regadera".to_owned(),
            cans => format!(", hasta {cans:.0} regaderas"),
        });
        let cans = cans.unwrap_or_default();
        let weeks = match (asked.weeks, asked.of) {
            (1, 1) => "un nombre para su semana".to_owned(),
            (weeks, of) if weeks == of => format!("un nombre para cada una de sus {weeks} semanas"),
            (weeks, of) => format!("un nombre para {weeks} de sus {of} semanas"),
        };
        let thirstiest = match cans.is_empty() || asked.weeks == 1 {
            true => "",
            false => " en la más seca",
        };
        let names = format!("{weeks}{cans}{thirstiest}");
        let (from, to) = (self.day(*from), self.day(*to));
        format!("Familias, por favor: riego en {name} (del {from} al {to}), {names}.")
    }

    fn for_each_week(&self) -> String {
        sentence(&format!("{} por semana", self.measure.unit))
    }

    fn legend(&self) -> String {
        format!(
            "60-85 quiere decir: 60 {unit} en toda la semana en un año normal y 85 en un año seco, \
             además de lo que traiga la lluvia. En una regadera caben {can} {unit}. Un punto: ahí no \
             hay nada plantado. La línea debajo de una semana de vacaciones dice quién riega y qué se \
             recoge, con espacio para un nombre.",
            unit = self.measure.unit,
            can = self.measure.can,
        )
    }

    fn heads(&self) -> [&'static str; 3] {
        ["Semana del", "En total", "Regaderas"]
    }

    fn bed(&self, bed: &Bed) -> String {
        format!("Bancal {}", bed.id)
    }

    fn week(&self, monday: Date) -> String {
        let pattern = match monday.year() == self.year {
            true => "%-d\u{a0}%b",
            false => "%-d\u{a0}%b\u{a0}%Y",
        };
        written(monday, pattern)
    }

    fn until(&self, day: Date) -> String {
        let day = self.day(day);
        format!("Como mucho esta cantidad cada semana hasta el {day}.")
    }

    fn break_week(&self, week: &BreakWeek<'_>) -> String {
        let which = if week.of == 1 {
            week.pause.name.clone()
        } else {
            format!("{}, semana {} de {}", week.pause.name, week.number, week.of)
        };
        let who = match week.pause.care {
            Care::Families => "riegan las familias",
            Care::Staff => "riega el personal de la escuela",
            Care::Nobody => "NO HAY NADIE, hay que buscar a alguien",
        };
        let mut parts = vec![format!("{which}: {who}.")];
        if !week.picks.is_empty() {
            let picks: Vec<String> = week.picks.iter().map(|pick| self.pick(pick)).collect();
            let picks = list(&picks);
            parts.push(format!("Recoger, si ya maduró y todavía queda: {picks}."));
        }
        if !week.frozen.is_empty() {
            parts.push(format!(
                "Congelar el mismo día: {}; preguntar en la cocina cómo, y quién abre el congelador.",
                list(&week.frozen)
            ));
        }
        if !week.kept_picked.is_empty() {
            let kept = list(&week.kept_picked);
            parts.push(format!(
                "Para que siga dando, recoger todo lo maduro, para comer o repartir: {kept}."
            ));
        }
        if !week.damp.is_empty() {
            let damp = list(&week.damp);
            parts.push(format!("Cada día: mirar la siembra de {damp}."));
        }
        if week.seedlings {
            parts.push("Cada día: las plantitas del estante.".to_owned());
        }
        parts.push(format!("Nombre:\u{a0}{ROOM}"));
        parts.join(" ")
    }

    fn whole(&self, need: WaterNeed) -> String {
        format!(
            "Todas las semanas juntas: unos {:.0} {} en un año normal, {:.0} en un año seco.",
            self.measure.tens(need.ordinary),
            self.measure.unit,
            self.measure.tens(need.dry)
        )
    }

    fn seedbeds(&self) -> &'static str {
        "Siembras: mirarlas cada día"
    }

    fn seedbed(&self, seedbed: &Seedbed, ids: &[&str]) -> String {
        let what = if seedbed.lies_deep {
            "mirar cada día"
        } else {
            "un poco cada día"
        };
        format!(
            "{}, {}: {what} desde el {} hasta que brote, hacia el {}.",
            sentence(&seedbed.ingredient),
            beds(ids),
            self.day(seedbed.from),
            self.day(seedbed.up)
        )
    }

    fn lies_shallow(&self) -> &'static str {
        "Un poco cada día: solo se seca la capa de arriba, pero la semilla que se seca una vez se \
         pierde. Usar una roseta fina y, los fines de semana, cubrir la siembra con un velo de \
         cultivo o una tabla; mirar debajo cada día y, si la tierra está mojada, no regar."
    }

    fn lies_deep(&self) -> &'static str {
        "Mirar cada día: la semilla grande está honda y se pudre en tierra mojada. Meter un dedo \
         hasta donde está la semilla y regar solo si ahí está seca (práctica común)."
    }

    fn how(&self) -> &'static str {
        "Cómo regar"
    }

    fn habits(&self) -> Vec<String> {
        vec![
            "Primero tocar la tierra: meter un dedo entero. Si la punta sale húmeda, hoy no se \
             riega. Si la tierra y la lista no coinciden, tiene razón la tierra."
                .to_owned(),
            format!(
                "Dar los {} de la semana en dos o tres veces, temprano, despacio, en la tierra y no \
                 en las hojas. Las macetas y los bancales de arena necesitan más veces.",
                self.measure.unit
            ),
            "Las plantas recién puestas reciben enseguida una taza cada una, y otra cada dos días \
             durante la primera semana (práctica común)."
                .to_owned(),
        ]
    }

    fn rain_gauge(&self, saved: &[(String, Vec<&str>)]) -> String {
        let saved = saved.iter();
        let saved = saved.map(|(less, ids)| match ids.len() {
            1 => format!("{less} en el {}", beds(ids)),
            _ => format!("{less} en los {}", beds(ids)),
        });
        format!(
            "La lluvia medida vale más que cualquier promedio. Colgar un pluviómetro. En una semana \
             sin lluvia, dar los {unit} de un año seco; por cada {gauge} del pluviómetro, dar estos \
             {unit} menos: {}.",
            saved.collect::<Vec<_>>().join("; "),
            unit = self.measure.unit,
            gauge = self.measure.gauge,
        )
    }

    fn mulch(&self) -> String {
        let depth = match self.units {
            Locale::British => "5\u{a0}cm",
            Locale::American => "2\u{a0}pulgadas",
        };
        format!(
            "Una capa de {depth} de paja u hojas sobre la tierra húmeda ahorra mucha agua (práctica \
             común)."
        )
    }

    fn cover(&self, bed: &Bed, cover: &str) -> String {
        format!(
            "El bancal {} tiene una cubierta ({cover}). Si no deja pasar la lluvia, darle cada semana \
             los {} de un año seco.",
            bed.id, self.measure.unit
        )
    }

    fn caution(&self) -> String {
        format!(
            "Las normas locales van primero: respetar las restricciones por sequía y las \
             prohibiciones de regar con manguera, y preguntar en la escuela quién puede abrir la \
             llave del agua y qué agua se puede usar con alimentos. Regar a la sombra o con la \
             fresca, con sombrero y algo de beber; los niños pequeños llevan media regadera, o {} en \
             una más ligera.",
            self.measure.small
        )
    }

    fn computed(&self) -> &'static str {
        "Cómo se calcula"
    }

    fn how_computed(&self, sums: &Sums) -> String {
        let years = match self.generated {
            true => "años de tiempo simulado",
            false => "años pasados",
        };
        let beside = |weeks, whole| {
            let (weeks, whole) = (self.measure.tens(weeks), self.measure.tens(whole));
            match weeks.total_cmp(&whole) {
                Ordering::Less => format!("menos ({weeks:.0})"),
                Ordering::Equal => "lo mismo".to_owned(),
                Ordering::Greater => format!("más ({weeks:.0})"),
            }
        };
        format!(
            "Para cada día de {} {years}: lo que pierde un césped bien regado, según la temperatura \
             más baja y más alta del día y el sol (Hargreaves), por una cifra del cultivo y de su \
             edad, menos la lluvia. No cuenta la lluvia tan ligera que se seca enseguida, ni la que \
             pasa de lo que hace falta en la semana. Normal es el año de en medio; seco, el que solo \
             uno de cada diez supera; las semanas de antes y de después también cuentan. La línea de \
             todas las semanas juntas se cuenta por años enteros: casi ningún año es normal, o seco, \
             en todas sus semanas. Las semanas normales solas suman {}, las secas {}. Un cultivo bebe \
             hasta el último día previsto para recogerlo. El viento, la tierra propia y la sombra no \
             se conocen: es una primera estimación.",
            sums.years,
            beside(sums.weeks.ordinary, sums.whole.ordinary),
            beside(sums.weeks.dry, sums.whole.dry),
        )
    }

    fn patches(&self) -> &'static str {
        "Los cultivos fuera de los bancales no están en la lista."
    }
}
