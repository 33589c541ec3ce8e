// One page, held to every rule: opened at each size, read by axe-core, laid out on paper.
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { SIZES, open, tab } from './chromium.mjs';
import { packages } from './packages.mjs';
import { onPaper } from './sheets.mjs';

const SCRIPTS = join(import.meta.dirname, 'in_page');
const WITH_AXE = ['phone', 'laptop'];
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22a', 'wcag22aa'];
/** WCAG 1.4.12: a reader may set text this wide, and nothing may get lost. */
const SPACED = `* { line-height: 1.5 !important; letter-spacing: 0.12em !important; word-spacing: 0.16em !important }
    p { margin-block-end: 2em !important } svg * { letter-spacing: normal !important; word-spacing: normal !important }`;

/**
 * Sheets that a page may take, on both kinds of paper; every other page is one sheet. The sheet of a grade and the
 * principal's are both sides of one. Letters are 10 points at least, so lists are longer than when 7 were allowed.
 */
const SHEETS = { 'index.html': 3, 'plan.html': 13, 'summer.html': 4, 'map.html': 7, 'kitchen.html': 3, 'shopping.html': 2, 'principal.html': 2 };
const sheetsOf = (name) => SHEETS[name] ?? (/^grade-/.test(name) ? 2 : 1);

/** @typedef {import('./chromium.mjs').Finding & { size: string }} PageFinding */

/**
 * @typedef {object} Seen what the checks of the whole folder need of a page
 * @property {PageFinding[]} found
 * @property {string} title
 * @property {string} heading
 * @property {string[]} links
 * @property {string[]} ids
 * @property {{ datetime: string, text: string }[]} times
 * @property {string} text
 * @property {Record<string, number>} sheets
 */

/** One tab for each size, used for one page after another. */
export async function openTabs(browser) {
    const ours = readdirSync(SCRIPTS).map((file) => join(SCRIPTS, file));
    const tabs = {};
    for (const [name, size] of Object.entries(SIZES)) {
        const scripts = WITH_AXE.includes(name) ? [...ours, packages.file('axe-core', 'axe.min.js')] : ours;
        tabs[name] = await tab(browser, size, scripts);
    }
    return tabs;
}

/**
 * What axe-core finds, and what it could not decide, which counts too: nobody else looks. Contrast
 * that it does not decide is decided here: of text in pictures, and of text scrolled out of sight.
 */
async function accessible(page, options) {
    const { violations, incomplete } = await page.evaluate(async (how) => {
        const { violations, incomplete } = await axe.run(document, { ...how, resultTypes: ['violations', 'incomplete'] });
        return { violations, incomplete };
    }, options);
    const told = (kind, result, nodes) => nodes.slice(0, 3)
        .map((node) => `${kind}${result.id}: ${result.help}: ${node.html.slice(0, 120)}`);
    const found = violations.flatMap((one) => told('', one, one.nodes));
    for (const one of incomplete) {
        const open = one.id === 'color-contrast'
            ? await page.evaluate((nodes) => nodes.filter((node) => !look.layout.readable(node.target[0])), one.nodes)
            : one.nodes;
        found.push(...told('undecided, ', one, open));
    }
    return found;
}

/** Where pages are looked at: in which windows, on which paper. The test of the checks takes less. */
export const EVERYWHERE = { sizes: Object.keys(SIZES), paper: ['A4', 'Letter'] };

/**
 * @param {Record<string, import('playwright-core').Page>} tabs
 * @param {string} file
 * @param {string} locale
 * @param {typeof EVERYWHERE} where the laptop must be among the sizes
 * @returns {Promise<Seen>}
 */
export async function look(tabs, file, locale, where) {
    /** @type {PageFinding[]} */
    const found = [];
    const url = pathToFileURL(file).href;
    const texts = {};
    const ask = async (page, size, rule, question) => {
        for (const text of await page.evaluate(question)) found.push({ rule, size, text });
    };
    const wcag = { runOnly: WCAG, rules: { 'target-size': { enabled: true } } };
    for (const size of where.sizes) {
        const page = tabs[size];
        await page.emulateMedia({ media: 'screen', colorScheme: 'light' });
        await page.setViewportSize(SIZES[size].viewport);
        const events = await open(page, url);
        // What a reader can unfold is looked at unfolded; on paper it stays as it is.
        await page.evaluate(() => look.layout.unfold(true));
        await ask(page, size, 'wide', `look.layout.sideways(${SIZES[size].viewport.width})`);
        await ask(page, size, 'region', 'look.layout.regions()');
        await ask(page, size, 'moved', 'look.layout.movedSideways()');
        await ask(page, size, 'cut', 'look.layout.cut(false)');
        texts[size] = await page.evaluate(() => look.layout.text());
        if (WITH_AXE.includes(size)) {
            found.push(...(await accessible(page, wcag)).map((text) => ({ rule: 'axe', size, text })));
            await ask(page, size, 'legible', 'look.pictures.legible()');
        } else {
            await page.addStyleTag({ content: SPACED });
            await ask(page, `${size}, spaced`, 'wide', `look.layout.sideways(${SIZES[size].viewport.width})`);
            await ask(page, `${size}, spaced`, 'cut', 'look.layout.cut(false)');
        }
        if (texts[size] !== texts[where.sizes[0]]) found.push({ rule: 'lost', size, text: `shows another text than a ${where.sizes[0]}` });
        found.push(...events.map((event) => ({ ...event, size })));
    }
    const { laptop } = tabs;
    const seen = await structure(laptop, ask, locale);
    await dark(laptop, found);
    const sheets = {};
    await laptop.evaluate(() => look.layout.unfold(false));
    for (const format of where.paper) {
        const printed = await onPaper(laptop, format, sheetsOf(basename(file)));
        found.push(...printed.found.map((one) => ({ ...one, size: 'print' })));
        sheets[format] = printed.sheets;
    }
    return { ...seen, found, sheets };
}

/** What does not depend on the size of the window. */
async function structure(page, ask, locale) {
    await ask(page, 'any', 'script', 'look.structure.scripts()');
    await ask(page, 'any', 'outside', 'look.structure.outside()');
    await ask(page, 'any', 'language', `look.structure.language(${JSON.stringify(locale)})`);
    await ask(page, 'any', 'headings', 'look.structure.headings()');
    await ask(page, 'any', 'frame', 'look.structure.frame()');
    await ask(page, 'any', 'table', 'look.structure.tables()');
    await ask(page, 'any', 'picture', 'look.pictures.described()');
    await ask(page, 'any', 'picture-text', 'look.pictures.alsoInText()');
    await ask(page, 'any', 'contrast', 'look.pictures.contrast()');
    await ask(page, 'any', 'grey', 'look.pictures.alikeInGrey()');
    await ask(page, 'any', 'faint', 'look.pictures.faint()');
    return page.evaluate(() => ({
        title: look.structure.title(),
        links: look.structure.links(),
        ids: look.structure.ids(),
        times: look.structure.times(),
        heading: look.structure.heading(),
        text: document.body.innerText.replace(/\s+/g, ' '),
    }));
}

/** Contrast again for readers whose screen is set dark, where the page does anything for them. */
async function dark(page, found) {
    if (!(await page.content()).includes('color-scheme')) return;
    await page.emulateMedia({ colorScheme: 'dark' });
    const texts = [...await accessible(page, { runOnly: { type: 'rule', values: ['color-contrast'] } }),
        ...await page.evaluate(() => look.pictures.contrast())];
    found.push(...texts.map((text) => ({ rule: 'dark', size: 'laptop', text })));
    await page.emulateMedia({ colorScheme: 'light' });
}
