// A sound page, and what breaks it: for each rule at least one change that it must see.

export const JSON_TEXT = JSON.stringify({
    project: { locale: 'en-GB' },
    feast: { day: '2027-10-08' },
    grades: [{ id: '2', name: 'Grade 2' }],
    plantings: [{ grades: ['2'] }],
    steps: [{ planting: 0, class: '2a', from: '2027-02-09', to: '2026-11-03' }],
});

const STYLE = `
@page { margin: 12mm }
body { margin: 1rem; font: 1rem/1.4 sans-serif; color: #111; background: #fff; overflow-wrap: anywhere }
a { display: inline-block; min-block-size: 24px }
.wide { overflow-x: auto }
svg { inline-size: 100%; max-inline-size: 440px; display: block }
.long { white-space: nowrap }
svg text { font: 18px sans-serif; fill: #111 }
table { border-collapse: collapse } th, td { border: 1px solid #555; padding: 2px 6px; text-align: left }
@media print { .wide { overflow: visible } tr, svg { break-inside: avoid } h1, h2 { break-after: avoid } }
`;

const PICTURE = `<div class="wide" role="region" aria-label="A long line" tabindex="0">
<p class="long">Every child comes to the table, and everybody has a bowl of the soup that grew.</p></div>
<svg viewBox="0 0 440 120" role="img"><title>Weeks</title><desc>The bed is full from February to October.</desc>
<defs><pattern id="dots" width="4" height="4" patternUnits="userSpaceOnUse"><circle cx="2" cy="2" r="1" fill="#bbb"/></pattern></defs>
<rect x="10" y="10" width="200" height="40" fill="#fff" stroke="#111"/>
<rect x="220" y="10" width="200" height="40" fill="url(#dots)" stroke="#111" stroke-dasharray="4 2"/>
<text x="20" y="35">potato</text><text x="230" y="35">kale</text>
</svg>`;

export const SOUND = `<!DOCTYPE html>
<html lang="en-GB"><head><meta charset="utf-8"><title>Sound page</title>
<meta name="viewport" content="width=device-width, initial-scale=1">
<style>${STYLE}</style></head>
<body><main><h1>Grade 2: our plan</h1>
<p>For <time datetime="2027-10-08">Fri 8 Oct</time>. <a href="index.html">To the start</a></p>
<h2>Steps</h2>
<table><caption>Who sows what</caption><thead><tr><th scope="col">Day</th><th scope="col">Crop</th></tr></thead>
<tbody><tr><td><time datetime="2027-02-09">Tue 9 Feb</time></td><td>potato</td></tr>
<tr><td><time datetime="2026-11-03">Tue 3 Nov 2026</time></td><td>kale</td></tr></tbody></table>
${PICTURE}
<p id="last">Wash hands.</p>
</main></body></html>`;

export const START = (pages) => SOUND.replace('<title>Sound', '<title>Start')
    .replace('<p id="last">Wash hands.</p>', `<p>${pages.map((page) => `<a href="${page}">${page}</a>`).join(' ')}</p>`);

const LAST = '<p id="last">Wash hands.</p>';
const LONG = Array.from({ length: 300 }, (_, at) => `<p>Line ${at}</p>`).join('');
const KALE = '<text x="230" y="35">kale</text>';
const RECT = '<rect x="10" y="10" width="200" height="40" fill="#fff" stroke="#111"/>';

/**
 * Each is seen on a laptop, and `on` what else; `rule` must find it and say `says` of it.
 * @type {Record<string, { rule: string, from: string, to: string, page?: string, says?: RegExp, on?: ('phone' | 'A4')[] }>}
 */
export const BREAKAGES = {
    'script': { rule: 'script', says: /<script> in/, from: LAST, to: '<script>document.title</script>' },
    'script-in-attribute': { rule: 'script', says: /attribute onclick/, from: '<p id="last">', to: '<p id="last" onclick="1">' },
    'console-error': { rule: 'console', says: /^a$/, from: LAST, to: '<script>console.warn("a")</script>' },
    'page-error': { rule: 'console', says: /Error: a/, from: LAST, to: '<script>throw new Error("a")</script>' },
    'loads-from-outside': { rule: 'request', says: /outside\.invalid/, from: LAST, to: '<img alt="a" src="https://outside.invalid/a.png">' },
    'loads-beside': { rule: 'request', says: /a\.png/, from: LAST, to: '<img alt="a" src="a.png">' },
    'outside-address': { rule: 'outside', says: /outside address/, from: LAST, to: '<p><a href="https://outside.invalid/">out</a></p>' },
    'style-from-outside': { rule: 'outside', says: /a style loads/, from: '@page', to: '@import "a.css"; @page' },
    'too-wide': { rule: 'wide', says: /the page is/, on: ['phone'], from: LAST, to: '<div style="width:500px">wide</div>' },
    'picture-moved-sideways': { rule: 'moved', on: ['phone'], says: /<svg/, from: 'max-inline-size: 440px', to: 'min-inline-size: 440px' },
    'table-moved-sideways': { rule: 'moved', on: ['phone'], says: /<table/, from: 'table { border-collapse: collapse }', to: 'table { border-collapse: collapse; inline-size: 500px }' },
    'region-without-key': { rule: 'region', on: ['phone'], says: /no key/, from: ' tabindex="0"', to: '' },
    'region-without-name': { rule: 'region', on: ['phone'], says: /no name/, from: ' aria-label="A long line"', to: '' },
    'cut-by-its-box': { rule: 'cut', says: /cuts off/, from: LAST, to: '<div style="overflow:hidden;white-space:nowrap;width:4em">Wash hands before you eat</div>' },
    'cut-on-paper': { rule: 'cut', says: /cuts off/, on: ['A4'], from: '.wide { overflow: visible }', to: '.wide { inline-size: 300px }' },
    'left-out-on-paper': { rule: 'cut', says: /not on paper/, on: ['A4'], from: LAST, to: '<p style="position:absolute;left:0;right:0;color:#111;clip-path:inset(100%)">Lost words</p>' },
    'wide-on-paper': { rule: 'wide', says: /reaches/, on: ['A4'], from: '@media print {', to: '@media print { h1 { inline-size: 1200px }' },
    'lost-on-a-phone': { rule: 'lost', on: ['phone'], from: '@media print {', to: '@media (width < 400px) { h2 { display: none } } @media print {' },
    'low-contrast': { rule: 'axe', says: /^color-contrast/, from: '<p id="last">', to: '<p id="last" style="color:#999">' },
    'low-contrast-out-of-sight': { rule: 'axe', says: /^undecided, color-contrast/, on: ['phone'], from: '<p class="long">', to: '<p style="inline-size:1800px;text-align:right"><span style="color:#999">far</span></p><p class="long">' },
    'small-target': { rule: 'axe', says: /^target-size/, from: LAST, to: '<p><button style="width:9px;height:9px;padding:0" aria-label="a"></button><button style="width:9px;height:9px;padding:0" aria-label="b"></button></p>' },
    'dark-on-dark': { rule: 'dark', says: /^color-contrast/, from: '@media print {', to: '@media (prefers-color-scheme: dark) { body { background: #222 } } @media print {' },
    'wrong-language': { rule: 'language', from: 'lang="en-GB"', to: 'lang="de"' },
    'heading-left-out': { rule: 'headings', says: /level 3 after level 1/, from: '<h2>Steps</h2>', to: '<h3>Steps</h3>' },
    'second-first-heading': { rule: 'headings', says: /2 headings/, from: '<h2>Steps</h2>', to: '<h1>Steps</h1>' },
    'no-viewport': { rule: 'frame', says: /viewport/, from: '<meta name="viewport" content="width=device-width, initial-scale=1">', to: '' },
    'no-main': { rule: 'frame', says: /main/, from: '<main><h1>', to: '<h1>' },
    'table-without-name': { rule: 'table', says: /without a name/, from: '<caption>Who sows what</caption>', to: '' },
    'picture-without-description': { rule: 'picture', says: /without a description/, from: '<desc>The bed is full from February to October.</desc>', to: '' },
    'picture-without-title': { rule: 'picture', says: /without a title/, from: '<title>Weeks</title>', to: '' },
    'text-only-in-picture': { rule: 'picture-text', from: KALE, to: '<text x="230" y="35">leek</text>' },
    'texts-overlap': { rule: 'legible', says: /runs into/, from: KALE, to: '<text x="40" y="38">kale</text>' },
    'text-leaves-picture': { rule: 'legible', says: /leaves the picture/, from: KALE, to: '<text x="630" y="35">kale</text>' },
    'text-too-small': { rule: 'legible', says: /is 6\.0 high/, from: KALE, to: '<text x="230" y="35" style="font-size:6px">kale</text>' },
    'text-on-dark': { rule: 'contrast', says: /has a contrast/, from: KALE, to: '<rect x="225" y="20" width="60" height="20" fill="#333"/><text x="230" y="35">kale</text>' },
    'text-on-dark-pattern': { rule: 'contrast', says: /has a contrast/, from: 'fill="#bbb"', to: 'fill="#333"' },
    'text-covered': { rule: 'contrast', says: /covered by/, from: KALE, to: `${KALE}<rect x="225" y="20" width="60" height="20" fill="#fff" stroke="#111"/>` },
    'colour-alone': { rule: 'grey', from: RECT, to: '<rect x="10" y="10" width="200" height="20" fill="#ffd0d0" stroke="#111"/><rect x="10" y="30" width="200" height="20" fill="#bfe3bf" stroke="#111"/>' },
    'faint-shape': { rule: 'faint', from: RECT, to: '<rect x="10" y="60" width="200" height="40" fill="#eee"/>' },
    'empty-picture': { rule: 'picture', says: /is empty/, from: '.long {', to: 'rect { display: none } .long {' },
    'row-torn': { rule: 'torn', says: /may be torn/, on: ['A4'], from: 'tr, svg { break-inside: avoid }', to: 'svg { break-inside: avoid }' },
    'row-on-two-sheets': { rule: 'torn', says: /row not on one sheet/, on: ['A4'], from: '<td>potato</td>', to: `<td>potato${'<br>and more'.repeat(90)}</td>` },
    'heading-alone': { rule: 'torn', says: /may stand alone/, on: ['A4'], from: ' h1, h2 { break-after: avoid }', to: '' },
    'picture-too-high': { rule: 'torn', says: /1500 high/, on: ['A4'], from: '.wide { overflow: visible }', to: '.wide { overflow: visible } svg { block-size: 1500px }' },
    'pale-on-paper': { rule: 'pale', on: ['A4'], from: '<p id="last">', to: '<p id="last" style="color:#fff;background:#111">' },
    'more-sheets-than-stated': { rule: 'sheets', says: /at most 2 /, on: ['A4'], from: LAST, to: LONG, page: 'principal' },
    'empty-sheet': { rule: 'sheets', says: /is empty/, on: ['A4'], from: LAST, to: `${LAST}<div style="break-before:page"></div>` },
    'all-but-empty-sheet': { rule: 'sheets', says: /ends at \d+ % of its height/, on: ['A4'], from: '<h2>Steps</h2>', to: '<div style="break-before:page"></div><h2>Steps</h2>' },
    'heading-left-behind': { rule: 'torn', says: /not on the sheet of what it heads/, on: ['A4'], from: '<h2>Steps</h2>', to: '<h2>Steps</h2><p style="break-before:page">One after the other.</p>' },
    'small-on-paper': { rule: 'small', says: /points on paper/, on: ['A4'], from: '@media print {', to: '@media print { h2 { font-size: 8px }' },
    'picture-cut-on-paper': { rule: 'cut', says: /not on paper: kale \(1 of 2/, on: ['A4'], from: KALE, to: '<text x="-50" y="35">kale</text>' },
    'letters-off-the-sheet': { rule: 'cut', says: /not on paper: Wash/, on: ['A4'], from: LAST, to: '<p style="position:relative;left:-66px">Wash hands.</p>' },
    'unknown-attribute': { rule: 'markup', says: /heigth/, from: 'height="40" fill="#fff"', to: 'heigth="40" fill="#fff"' },
    'too-heavy': { rule: 'size', from: LAST, to: `<!-- ${'a'.repeat(400_000)} -->` },
    'dead-link': { rule: 'link', says: /leads nowhere/, from: 'href="index.html"', to: 'href="gone.html"' },
    'dead-anchor': { rule: 'link', says: /no such place/, from: 'href="index.html"', to: 'href="plan.html#gone"' },
    'not-on-the-start-page': { rule: 'link', says: /does not lead here/, from: LAST, to: LAST },
    'date-of-a-class-missing': { rule: 'date', says: /Tue 9 Feb of .steps of Grade 2.*is not on the page/, page: 'grade-2', from: '<time datetime="2027-02-09">Tue 9 Feb</time>', to: 'soon' },
    'date-misread': { rule: 'date', says: /reads "Mon/, from: '>Tue 9 Feb<', to: '>Mon 9 Feb<' },
};
