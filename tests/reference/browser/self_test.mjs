// The test of the checks: a sound page must pass, and each page broken on purpose must be found
// out by the rule that its breakage is for.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { inspect } from './folder.mjs';
import { EVERYWHERE } from './page.mjs';
import { BREAKAGES, JSON_TEXT, SOUND, START } from './samples.mjs';

/** @param {object[]} teams @param {string} scratch */
export async function selfTest(teams, scratch) {
    const folder = join(scratch, 'samples');
    mkdirSync(folder);
    const write = (name, text) => writeFileSync(join(folder, name), text);
    write('plan-data.json', JSON_TEXT);
    write('plan.html', SOUND.replace('<title>Sound', '<title>Plan'));
    const broken = Object.entries(BREAKAGES).map(([name, { rule, from, to, page = name, says = /./, on = [] }]) => {
        const own = SOUND.replace('<title>Sound', `<title>${name}`);
        if (own.split(from).length !== 2) throw new Error(`${name}: "${from}" must stand once in the sound page`);
        write(`${page}.html`, own.replace(from, () => to));
        return { name, rule, says, on, file: `${page}.html` };
    });
    const linked = broken.filter(({ rule }) => rule !== 'link').map(({ file }) => file);
    write('index.html', START(['plan.html', ...linked]));
    const on = new Map(broken.map((one) => [one.file, one.on]));
    const seen = await inspect(teams, folder, (name) => (on.has(name) ? {
        sizes: on.get(name).includes('phone') ? ['phone', 'laptop'] : ['laptop'],
        paper: on.get(name).filter((one) => one === 'A4'),
    } : EVERYWHERE));
    const wrong = [];
    for (const name of ['index.html', 'plan.html']) {
        for (const { rule, size, text } of seen.get(name).found) wrong.push(`the sound ${name}: ${rule} (${size}): ${text}`);
    }
    for (const { name, rule, says, file } of broken) {
        const { found } = seen.get(file);
        if (found.some((one) => one.rule === rule && says.test(one.text))) continue;
        wrong.push(`${name}: "${rule}" did not see it, only: ${found.map((one) => `${one.rule}: ${one.text}`).join('; ') || 'nothing'}`);
    }
    for (const line of wrong) console.log(`     ${line}`);
    if (wrong.length > 0) throw new Error(`${wrong.length} checks do not check`);
    console.log(`self-test: ${broken.length} broken pages, each found out by its rule; the sound ones pass`);
}
