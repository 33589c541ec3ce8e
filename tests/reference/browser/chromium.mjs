// The browser: found or installed from the distribution, started without network, and watched:
// whatever a page logs, asks for or pops up is kept as a finding.
import { execFileSync, spawnSync } from 'node:child_process';
import { packages } from './packages.mjs';

const { chromium } = packages.require('playwright-core');

/** @typedef {{ rule: string, text: string }} Finding */

/** Windows in which pages are opened, in CSS pixels. */
export const SIZES = {
    phone: { viewport: { width: 360, height: 780 }, isMobile: true, hasTouch: true },
    laptop: { viewport: { width: 1366, height: 768 } },
    // 200 % of zoom on the laptop, and WCAG 1.4.10: 1280 at 400 %.
    zoomed: { viewport: { width: 683, height: 384 } },
    narrow: { viewport: { width: 320, height: 256 } },
};

/** @returns {string} where the distribution's Chromium is */
function find() {
    const found = spawnSync('sh', ['-c', 'command -v chromium || command -v chromium-browser'], { encoding: 'utf8' });
    return found.stdout.trim();
}

/** @returns {string} where Chromium is; installs it where that is possible */
function findOrInstall() {
    if (find()) return find();
    if (process.getuid?.() !== 0 || !spawnSync('apt-get', ['--version']).stdout) {
        throw new Error('These checks need Chromium: install the package "chromium" of this system.');
    }
    const apt = (...words) => execFileSync('apt-get', ['-qq', '-o', 'DPkg::Lock::Timeout=300', ...words], {
        stdio: ['ignore', 'ignore', 'inherit'],
        env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
    });
    apt('update');
    apt('install', '--yes', '--no-install-recommends', 'chromium', 'fonts-dejavu-core');
    return find();
}

/** Starts Chromium with a new, empty folder for its data (playwright makes it and removes it). */
export async function start() {
    return chromium.launch({
        executablePath: findOrInstall(),
        args: ['--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
            '--disable-background-networking', '--disable-component-update', '--disable-sync'],
    });
}

/**
 * A tab of one size, cut off from the network, with the functions of `in_page` in it.
 * @param {import('playwright-core').Browser} browser
 * @param {object} size one of SIZES
 * @param {string[]} scripts files to have in every page
 */
export async function tab(browser, size, scripts) {
    const context = await browser.newContext({ ...size, offline: true });
    for (const path of scripts) await context.addInitScript({ path });
    return context.newPage();
}

/**
 * Opens a page and keeps what it does that a handout must not do.
 * @param {import('playwright-core').Page} page
 * @param {string} url
 * @returns {Promise<Finding[]>} filled further while the page is open
 */
export async function open(page, url) {
    /** @type {Finding[]} */
    const found = [];
    page.removeAllListeners();
    page.on('console', (message) => {
        if (/error|warning/.test(message.type())) found.push({ rule: 'console', text: message.text() });
    });
    page.on('pageerror', (error) => found.push({ rule: 'console', text: String(error) }));
    page.on('dialog', (dialog) => {
        found.push({ rule: 'console', text: `a dialog: ${dialog.message()}` });
        dialog.dismiss().catch(() => {});
    });
    page.on('request', (request) => {
        const asked = request.url();
        const itself = asked.split('#')[0] === url && request.isNavigationRequest();
        if (!itself && !asked.startsWith('data:')) found.push({ rule: 'request', text: `asks for ${asked}` });
    });
    await page.goto(url);
    return found;
}
