// The handouts in a real browser: every page of three scenarios, and of one whose names are meant
// to break pages, on a phone, a laptop and paper.
//   tests/reference/run.sh browser                      the checks, after their own test
//   tests/reference/run.sh browser --self-test          only: each check fails on a page that breaks it
//   tests/reference/run.sh browser --folder DIR         the checks on a folder that exists
//   tests/reference/run.sh browser --pictures DIR       photographs every page, for people to look at
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { start } from './browser/chromium.mjs';
import { inspect } from './browser/folder.mjs';
import { makeHandouts } from './browser/handouts.mjs';
import { openTabs } from './browser/page.mjs';
import { photograph } from './browser/photographs.mjs';
import { selfTest } from './browser/self_test.mjs';

const TEAMS = 2; // pages at once, one for each core of a small machine

const { values: asked } = parseArgs({
    options: { 'self-test': { type: 'boolean' }, folder: { type: 'string' }, pictures: { type: 'string' } },
});
const scratch = mkdtempSync(join(tmpdir(), 'handouts-'));
const browser = await start();
try {
    const teams = await Promise.all(Array.from({ length: TEAMS }, () => openTabs(browser)));
    const folders = () => (asked.folder ? { [asked.folder]: asked.folder } : makeHandouts(scratch));
    if (asked.pictures) {
        await photograph(browser, folders(), asked.pictures);
    } else {
        if (!asked.folder) await timed('self-test', () => selfTest(teams, scratch));
        if (!asked['self-test']) {
            for (const [name, folder] of Object.entries(folders())) await timed(name, () => check(teams, folder));
        }
    }
} finally {
    await browser.close();
    rmSync(scratch, { recursive: true, force: true });
}

/** @param {string} what @param {() => Promise<void>} work */
async function timed(what, work) {
    const from = performance.now();
    await work();
    console.log(`${what}: ${((performance.now() - from) / 1000).toFixed(1)} s`);
}

/** Prints a line for each page and each finding; any finding makes the whole run fail. */
async function check(teams, folder) {
    for (const [name, page] of await inspect(teams, folder)) {
        const sheets = Object.entries(page.sheets).map(([format, count]) => `${count} ${format}`).join(', ');
        console.log(`${page.found.length === 0 ? 'ok  ' : 'BAD '} ${name.padEnd(24)} ${sheets}`);
        for (const { rule, size, text } of page.found) console.log(`     ${rule} (${size}): ${text}`);
        if (page.found.length > 0) process.exitCode = 1;
    }
}
