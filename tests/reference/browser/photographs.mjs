// Photographs of every page for people to look at: phone, laptop and paper, in colour and in grey.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { SIZES, tab } from './chromium.mjs';
import { pagesOf } from './folder.mjs';
import { print } from './sheets.mjs';

/**
 * @param {import('playwright-core').Browser} browser
 * @param {Record<string, string>} folders
 * @param {string} into
 */
export async function photograph(browser, folders, into) {
    const toPicture = spawnSync('pdftoppm', ['-v']).error === undefined;
    if (!toPicture) console.log('There is no pdftoppm (package poppler-utils): paper stays PDF.');
    for (const [name, folder] of Object.entries(folders)) {
        const album = join(into, name.replaceAll('/', '_'));
        mkdirSync(album, { recursive: true });
        for (const size of ['phone', 'laptop']) {
            const page = await tab(browser, { ...SIZES[size], deviceScaleFactor: size === 'phone' ? 2 : 1 }, []);
            for (const file of pagesOf(folder)) {
                const path = (kind) => join(album, `${file.replace(/\.html$/, '')}-${kind}`);
                await page.goto(pathToFileURL(join(folder, file)).href);
                await page.screenshot({ path: path(`${size}.png`), fullPage: true });
                if (size === 'phone') continue;
                await page.addStyleTag({ content: 'html { filter: grayscale(1) }' });
                await page.screenshot({ path: path(`${size}-grey.png`), fullPage: true });
                for (const format of ['A4', 'Letter']) {
                    const pdf = path(`${format}.pdf`);
                    await page.goto(pathToFileURL(join(folder, file)).href);
                    writeFileSync(pdf, await print(page, format));
                    if (!toPicture) continue;
                    execFileSync('pdftoppm', ['-png', '-r', '80', pdf, path(format)]);
                    execFileSync('pdftoppm', ['-png', '-gray', '-r', '80', pdf, path(`${format}-grey`)]);
                }
            }
            await page.context().close();
        }
    }
}
