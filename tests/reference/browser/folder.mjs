// A folder of handouts: every page, and what only the folder as a whole can show (links, titles,
// sizes of files, the dates of the JSON in the pages).
import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { datesIn, written } from './dates.mjs';
import { validate } from './markup.mjs';
import { EVERYWHERE, look } from './page.mjs';

const LARGEST = 400_000;

/** @param {string} folder @returns {string[]} */
export const pagesOf = (folder) => readdirSync(folder).filter((name) => name.endsWith('.html')).sort();

/**
 * @param {object[]} teams tabs, a set for each page that is looked at at once
 * @param {string} folder
 * @param {(name: string) => typeof EVERYWHERE} where
 * @returns {Promise<Map<string, import('./page.mjs').Seen>>} by page
 */
export async function inspect(teams, folder, where = () => EVERYWHERE) {
    const json = JSON.parse(readFileSync(join(folder, 'plan-data.json'), 'utf8'));
    if (!json.project.locale) throw new Error('plan-data.json has no project.locale');
    const names = pagesOf(folder);
    const seen = new Map(names.map((name) => [name, null]));
    const waiting = [...names];
    await Promise.all(teams.map(async (tabs) => {
        for (let name = waiting.shift(); name; name = waiting.shift()) {
            seen.set(name, await look(tabs, join(folder, name), json.project.locale, where(name)));
        }
    }));
    const add = (name, rule, text) => seen.get(name).found.push({ rule, size: 'any', text });
    for (const [file, found] of validate(names.map((name) => join(resolve(folder), name)))) {
        for (const { rule, text } of found) add(relative(resolve(folder), file), rule, text);
    }
    for (const name of names) {
        const bytes = statSync(join(folder, name)).size;
        if (bytes >= LARGEST) add(name, 'size', `${bytes} bytes, ${LARGEST} is the limit`);
        const twin = names.find((other) => other < name && seen.get(other).title === seen.get(name).title);
        if (twin) add(name, 'frame', `has the title of ${twin}`);
    }
    links(folder, seen, add);
    dates(json, seen, add);
    return seen;
}

/** Links lead to a file of the folder, and to a place that is there. Every page can be reached from the start. */
function links(folder, seen, add) {
    const reached = new Set(['index.html']);
    for (const [name, page] of seen) {
        for (const link of page.links.filter((one) => !/^(data|mailto):/.test(one))) {
            const [path, anchor] = link.split('#').map(decodeURIComponent);
            const target = path === '' ? join(folder, name) : resolve(folder, path);
            const inside = relative(resolve(folder), resolve(target));
            if (inside.startsWith('..') || !existsSync(target)) add(name, 'link', `${link} leads nowhere`);
            else if (anchor && !seen.get(inside)?.ids.includes(anchor)) add(name, 'link', `${link}: no such place there`);
            if (name === 'index.html') reached.add(inside);
        }
    }
    for (const name of seen.keys()) if (!reached.has(name)) add(name, 'link', 'the start page does not lead here');
}

/** The page of a grade: its file is named safely, so it is known by its first heading. */
function pageOf(grade, seen) {
    const own = [...seen].filter(([name, page]) => name.startsWith('grade-') && page.heading.startsWith(grade.name));
    // "Grade 10" begins with "Grade 1".
    const [first] = own.sort(([, one], [, other]) => one.heading.length - other.heading.length);
    if (!first) throw new Error(`there is no page of ${grade.name}`);
    return first[0];
}

/** Dates read as the locale has them; none of the JSON is missing in the plan, none of a class on its grade's page. */
function dates(json, seen, add) {
    const { locale } = json.project;
    const year = Number(json.feast.day.slice(0, 4));
    const asRead = (iso) => written(iso, locale, year);
    for (const [name, page] of seen) {
        for (const { datetime, text } of page.times) {
            if (/^\d{4}-\d{2}-\d{2}$/.test(datetime) && text !== asRead(datetime)) add(name, 'date', `${datetime} reads "${text}", not "${asRead(datetime)}"`);
        }
    }
    const holds = (name, all) => {
        const { text } = seen.get(name);
        // A date with its year is never wrong.
        const missing = all.filter(({ iso }) => !text.includes(asRead(iso)) && !text.includes(written(iso, locale, NaN)));
        for (const iso of new Set(missing.map((one) => one.iso))) {
            add(name, 'date', `${asRead(iso)} of ${missing.find((one) => one.iso === iso).way} is not on the page`);
        }
    };
    holds('plan.html', datesIn(json));
    for (const grade of json.grades) {
        const own = json.steps.filter((step) => step.class !== null && json.plantings[step.planting].grades.includes(grade.id));
        holds(pageOf(grade, seen), datesIn(own, `/steps of ${grade.name}`));
    }
}
