// Makes the handouts that are looked at: of three scenarios, and of a school whose names are made
// of markup, quotes, formulas, path pieces, right-to-left letters and signs, and who write as in the US.
import { execFileSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const SCENARIOS = ['soup-day', 'nine-grades', 'wrap-day'];

/** Names of the soup day's file, and what stands for them in the file meant to break pages. */
const HOSTILE = [
    ['name = "Soup day"', `name = "</title><script>alert(1)</script> & 'Soup'"`],
    ['[project]', '[project]\nlocale = "en-US"'],
    ['school = "Larch Hill School"', 'school = "=1+1 <img src=x onerror=alert(1)> \\"Larch\\" מחזור ב 🥕"'],
    ['name = "Spring"', 'name = "<!-- Spring"'],
    ['name = "Autumn"', 'name = "]]></style>"'],
    ['Autumn =', '"]]></style>" ='],
    ['name = "Winter break"', 'name = "</text></svg><h1>Winter & break"'],
    ['name = "Summer"', 'name = "Sommerferienverlaengerungswochenendausflugsvorbereitungszeit"'],
    ['name = "1a"', 'name = "../../1a"'],
    ['name = "1b"', 'name = "1b\\" onclick=\\"alert(1)"'],
    ['name = "2a"', 'name = "@כיתה ב2"'],
    ['name = "2b"', 'name = "-2b; DESCRIPTION:x, y"'],
    ['id = "3"', 'id = "<b>3</b>/../x"'],
    ['grade = "3"', 'grade = "<b>3</b>/../x"'],
    ['id = "4"', 'id = "+4 👩‍🌾 &amp; é"'],
    ['grade = "4"', 'grade = "+4 👩‍🌾 &amp; é"'],
];
/** Beds have ids like grades, so they are told apart by what follows. */
const HOSTILE_BEDS = [
    ['id = "1"\nlength_m', 'id = "<i>bed</i> \\"one\\" by the wall"\nlength_m'],
    ['id = "2"\nlength_m', 'id = "ערוגה 2"\nlength_m'],
];

/** @param {string} text @returns {string} */
function hostile(text) {
    const swap = (all, [from, to]) => {
        if (!all.includes(from)) throw new Error(`soup-day has no ${from} any more`);
        return all.replaceAll(from, () => to);
    };
    // Beds first: grades and beds both say `id = "3"`, and only grades shall be renamed by it.
    const [before, beds] = [text.slice(0, text.indexOf('[[bed]]')), text.slice(text.indexOf('[[bed]]'))];
    return HOSTILE.reduce(swap, before) + HOSTILE_BEDS.reduce(swap, beds);
}

/**
 * @param {string} scratch
 * @returns {Record<string, string>} the folder of handouts of each school, by its name
 */
export function makeHandouts(scratch) {
    const made = {};
    for (const name of [...SCENARIOS, 'hostile-names']) {
        const school = join(scratch, name);
        cpSync(join('scenarios', name === 'hostile-names' ? 'soup-day' : name), school, { recursive: true });
        const file = join(school, 'garden.toml');
        if (name === 'hostile-names') writeFileSync(file, hostile(readFileSync(file, 'utf8')));
        const plan = join(school, 'plan');
        mkdirSync(plan);
        run('plan', file, '--out', plan);
        made[name] = join(school, 'handouts');
        run('handouts', file, '--out', made[name], '--plan', join(plan, 'plan.json'));
    }
    return made;
}

/** @param {string[]} words */
function run(...words) {
    execFileSync(process.env.TUREEN, words, { stdio: ['ignore', 'ignore', 'inherit'] });
}
