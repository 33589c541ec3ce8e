// Pages printed to PDF on A4 and US Letter, read back: how many sheets, what is on them, none all but empty
// before the last, no heading without what it heads, nothing cut, no row torn, no letter too small.
import { packages } from './packages.mjs';

const pdfjs = await quietly(() => import(packages.file('pdfjs-dist', 'legacy', 'build', 'pdf.mjs')));

/** Width and height in CSS pixels, 96 to the inch. */
const PAPER = { A4: [210 / 25.4 * 96, 297 / 25.4 * 96], Letter: [816, 1056] };
const SMALLEST_POINTS = 10;
/** The part of a sheet, from above, that text reaches at least where another sheet follows. */
const FILLED = 0.4;

/** @typedef {import('./chromium.mjs').Finding} Finding */

/** The library warns on loading that it cannot draw; it is only asked to read. */
async function quietly(load) {
    const { log, warn } = console;
    console.log = console.warn = () => {};
    try {
        return await load();
    } finally {
        Object.assign(console, { log, warn });
    }
}

/** Letters and digits that every font writes alike: ligatures, marks and directions left out. */
const plain = (text) => text.normalize('NFKD').replace(/[^A-Za-z0-9]/g, '');

/**
 * @param {Uint8Array} bytes
 * @returns {Promise<{ text: string, pieces: { str: string, size: number }[], filled: number }[]>} `filled`: how far down text reaches
 */
async function read(bytes) {
    const file = await pdfjs.getDocument({ data: new Uint8Array(bytes), verbosity: 0 }).promise;
    const sheets = [];
    for (let number = 1; number <= file.numPages; number += 1) {
        const sheet = await file.getPage(number);
        const { items } = await sheet.getTextContent();
        const pieces = items.filter(({ str }) => str.trim() !== '')
            .map(({ str, transform: [a, b, , , , foot] }) => ({ str, size: Math.hypot(a, b), foot }));
        const [, bottom, , top] = sheet.view;
        const filled = (top - Math.min(top, ...pieces.map(({ foot }) => foot))) / (top - bottom);
        sheets.push({ text: plain(items.map(({ str }) => str).join('')), pieces, filled });
    }
    await file.destroy();
    return sheets;
}

/**
 * @param {import('playwright-core').Page} page
 * @param {keyof typeof PAPER} format
 * @returns {Promise<Uint8Array>}
 */
export const print = (page, format) => page.pdf({ format, preferCSSPageSize: true });

/**
 * Lays the page out as on a sheet, then prints it and reads it back.
 * @param {import('playwright-core').Page} page
 * @param {keyof typeof PAPER} format
 * @param {number} limit sheets that it may take
 * @returns {Promise<{ found: Finding[], sheets: number }>}
 */
export async function onPaper(page, format, limit) {
    const found = [];
    const add = (rule, texts) => found.push(...texts.map((text) => ({ rule, text: `${format}: ${text}` })));
    await page.emulateMedia({ media: 'print' });
    const asked = await page.evaluate(() => look.layout.paper());
    const [across, down] = asked.landscape ? [...PAPER[format]].reverse() : PAPER[format];
    const width = Math.floor(across - asked.left - asked.right);
    const height = down - asked.top - asked.bottom;
    await page.setViewportSize({ width, height: Math.floor(height) });
    add('wide', await page.evaluate((w) => look.layout.sideways(w), width));
    add('cut', await page.evaluate(() => look.layout.cut(true)));
    add('torn', await page.evaluate((h) => look.layout.torn(h), height));
    add('pale', await page.evaluate(() => look.layout.pale()));
    add('legible', await page.evaluate(() => look.pictures.legible()));
    const rows = await page.evaluate(() => look.layout.rows());
    const blocks = await page.evaluate(() => look.layout.blocks());
    const headings = await page.evaluate(() => look.layout.headings());
    const sheets = await read(await print(page, format));
    if (sheets.length > limit) add('sheets', [`${sheets.length} sheets, at most ${limit} are stated`]);
    add('sheets', sheets.flatMap((sheet, at) => (sheet.text === '' ? [`sheet ${at + 1} is empty`] : [])));
    for (const [at, { filled }] of sheets.slice(0, -1).entries()) {
        if (filled < FILLED) add('sheets', [`sheet ${at + 1} ends at ${Math.round(filled * 100)} % of its height, and another follows`]);
    }
    const alone = headings.filter((both) => !sheets.some((sheet) => sheet.text.includes(plain(both))));
    add('torn', alone.map((both) => `a heading is not on the sheet of what it heads: ${both.slice(0, 60)}`));
    add('torn', rows.map(plain).filter((row) => !sheets.some((sheet) => sheet.text.includes(row))).map((row) => `row not on one sheet: ${row.slice(0, 60)}`));
    // Chromium leaves out letters beyond the edge, so what is cut off is missing here.
    const whole = sheets.map((sheet) => sheet.text).join('');
    const wanted = blocks.map(plain).filter((block) => block !== '');
    for (const block of new Set(wanted)) {
        const [times, there] = [wanted.filter((one) => one === block).length, whole.split(block).length - 1];
        if (there < times) add('cut', [`not on paper: ${block.slice(0, 60)} (${there} of ${times})`]);
    }
    const small = sheets.flatMap(({ pieces }) => pieces).filter(({ size }) => size < SMALLEST_POINTS - 0.05);
    add('small', small.slice(0, 4).map(({ str, size }) => `"${str}" is ${size.toFixed(1)} points on paper, below ${SMALLEST_POINTS}`));
    return { found, sheets: sheets.length };
}
