// Runs inside the page under test: where things lie at the present size of the window, on the
// screen or (with print styles) on a sheet. Each function returns sentences on what is wrong.
globalThis.look = globalThis.look ?? {};

look.layout = (() => {
    const SLACK = 1; // CSS pixels, for rounding

    function shown(element) {
        const box = element.getBoundingClientRect();
        return box.width > 0 && box.height > 0
            && element.checkVisibility({ visibilityProperty: true, opacityProperty: true });
    }

    function named(element) {
        const text = (element.textContent ?? '').replace(/\s+/g, ' ').trim().slice(0, 40);
        const id = element.id ? `#${element.id}` : '';
        return `<${element.localName}${id}> "${text}"`;
    }

    const scrolls = (style) => /auto|scroll/.test(style.overflowX);
    const all = () => [...document.body.querySelectorAll('*')]
        .filter((element) => !element.closest('svg') || element.localName === 'svg');

    function inRegion(element) {
        for (let at = element.parentElement; at && at !== document.documentElement; at = at.parentElement) {
            if (at !== document.body && scrolls(getComputedStyle(at))) return true;
        }
        return false;
    }

    /** The page scrolls sideways, or something stands beyond the edge. */
    function sideways(width) {
        const found = [];
        const page = document.documentElement.scrollWidth;
        if (page > width) found.push(`the page is ${page} wide where ${width} is there`);
        for (const element of all().filter(shown)) {
            const box = element.getBoundingClientRect();
            const right = box.right + scrollX;
            const outside = right > width + SLACK || box.left + scrollX < -SLACK;
            if (outside && !inRegion(element)) {
                found.push(`${named(element)} reaches from ${Math.round(box.left)} to ${Math.round(right)} of ${width}`);
            }
        }
        return found.slice(0, 4);
    }

    /** What scrolls on its own can be reached by keyboard and says what it is. */
    function regions() {
        const found = [];
        for (const element of all().filter(shown)) {
            if (!scrolls(getComputedStyle(element)) || element.scrollWidth <= element.clientWidth + SLACK) continue;
            const label = element.getAttribute('aria-label')
                || document.getElementById(element.getAttribute('aria-labelledby'))?.textContent;
            if (element.tabIndex < 0) found.push(`${named(element)} scrolls, and no key reaches it`);
            if (!label || !/region|group/.test(element.getAttribute('role') ?? element.localName)) {
                found.push(`${named(element)} scrolls, and has no role or no name`);
            }
        }
        return found;
    }

    /** Tables and pictures lie within the window as they are: no answer has to be moved into sight. */
    function movedSideways() {
        const found = [];
        const width = document.documentElement.clientWidth;
        for (const element of document.querySelectorAll('table, svg, tr, td, th')) {
            if (!shown(element) || element.parentElement.closest('svg') || element.closest('thead')) continue;
            const box = element.getBoundingClientRect();
            if (box.right > width + SLACK || box.left < -SLACK) {
                found.push(`${named(element)} reaches from ${Math.round(box.left)} to ${Math.round(box.right)} of ${width}`);
            }
        }
        return found.slice(0, 4);
    }

    /** Text that its own box cuts off. Boxes of one pixel, for screen readers, are meant to. */
    function cut(onPaper) {
        const found = [];
        for (const element of all().filter(shown)) {
            const style = getComputedStyle(element);
            if (element.localName === 'svg' || element.clientWidth <= 1 || element.clientHeight <= 1) continue;
            const clips = (way) => /hidden|clip/.test(way) || (onPaper && /auto|scroll/.test(way));
            const wide = clips(style.overflowX) && element.scrollWidth > element.clientWidth + SLACK;
            const tall = clips(style.overflowY) && element.scrollHeight > element.clientHeight + SLACK;
            if (wide || tall) found.push(`${named(element)} cuts off what it holds`);
        }
        return found;
    }

    /** On paper: rows, pictures and headings must not be torn; a picture fits on the sheet. */
    function torn(sheetHeight) {
        const found = [];
        const whole = 'tr, svg, .labels > li';
        for (const element of document.body.querySelectorAll(whole)) {
            if (!shown(element) || element.parentElement.closest('svg')) continue;
            let kept = false;
            for (let at = element; at && at !== document.body; at = at.parentElement) {
                kept ||= /avoid/.test(getComputedStyle(at).breakInside);
                if (at.localName === 'table') break;
            }
            if (!kept) found.push(`${named(element)} may be torn between two sheets`);
            const height = element.getBoundingClientRect().height;
            if (height > sheetHeight) found.push(`${named(element)} is ${Math.round(height)} high, a sheet ${Math.round(sheetHeight)}`);
        }
        for (const heading of document.body.querySelectorAll('h2, h3, h4')) {
            if (shown(heading) && !/avoid/.test(getComputedStyle(heading).breakAfter)) {
                found.push(`${named(heading)} may stand alone at the foot of a sheet`);
            }
        }
        return found.slice(0, 4);
    }

    /** On paper backgrounds are not printed: text must be dark on white without them. */
    function pale() {
        const found = [];
        for (const element of all().filter(shown)) {
            const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== '');
            const style = getComputedStyle(element);
            if (!own || element.localName === 'svg' || style.printColorAdjust === 'exact') continue;
            const colour = look.colour.read(style.color);
            if (look.colour.contrast(colour, [255, 255, 255, 1]) < 4.5) found.push(`${named(element)} is too pale on paper`);
        }
        return found;
    }

    /**
     * Whether text stands out from the backgrounds that it lies on, all of them plain; for text in
     * pictures `look.pictures.contrast` says it.
     */
    function readable(selector) {
        const element = document.querySelector(selector);
        if (element.closest('svg')) return true;
        for (let at = element; at; at = at.parentElement) {
            const { backgroundImage, opacity } = getComputedStyle(at);
            if (backgroundImage !== 'none' || Number(opacity) < 1) return false;
        }
        const back = look.colour.behind(element);
        const ink = look.colour.over(look.colour.read(getComputedStyle(element).color), back);
        return look.colour.contrast(ink, back) >= 4.5;
    }

    const unfold = (open) => document.querySelectorAll('details').forEach((details) => { details.open = open; });

    /**
     * The text that is shown, without white space. Pictures are left out: a phone has them laid out anew, and every
     * word in them stands outside too.
     */
    function text() {
        const style = document.head.appendChild(document.createElement('style'));
        style.textContent = 'svg { display: none !important }';
        const shownText = document.body.innerText.replace(/\s+/gu, '');
        style.remove();
        return shownText;
    }

    /** The text of each row of a table or label to cut out, and of each paragraph, item, heading, cell and text in a picture. */
    const rows = () => [...document.querySelectorAll('tr, .labels > li')].filter(shown).map((row) => row.textContent);
    const blocks = () => [
        ...[...document.querySelectorAll(':is(header, main, footer) :is(p, li, td, th, h1, h2, h3, h4, dt, dd, caption, figcaption)')]
            .filter((block) => shown(block) && !block.querySelector('p, li, td, ul, ol, table, svg')).map((block) => block.innerText),
        ...[...document.querySelectorAll('svg text')].filter(shown).map((text) => text.textContent),
    ];

    /** Each heading with the first words after it, where these are no picture's. */
    function headings() {
        return [...document.querySelectorAll('h2, h3, h4')].filter(shown).flatMap((heading) => {
            const next = heading.nextElementSibling;
            if (!next || !shown(next) || next.querySelector('svg')) return [];
            return [`${heading.innerText} ${next.innerText.trim().split(/\s+/).slice(0, 2).join(' ')}`];
        });
    }

    /** The margins that the page's own print styles ask for, in CSS pixels, and whether it lies on its side. */
    function paper() {
        const asked = { left: 0, right: 0, top: 0, bottom: 0, landscape: false };
        const probe = document.body.appendChild(document.createElement('div'));
        for (const sheet of document.styleSheets) {
            const rules = [...sheet.cssRules].flatMap((rule) => (
                rule instanceof CSSMediaRule && matchMedia(rule.media.mediaText).matches ? [...rule.cssRules] : [rule]
            ));
            for (const rule of rules.filter((one) => one instanceof CSSPageRule)) {
                for (const side of ['left', 'right', 'top', 'bottom']) {
                    probe.style.cssText = `position:absolute;width:${rule.style.getPropertyValue(`margin-${side}`)}`;
                    if (rule.style.getPropertyValue(`margin-${side}`)) asked[side] = probe.getBoundingClientRect().width;
                }
                asked.landscape ||= /landscape/.test(rule.style.getPropertyValue('size'));
            }
        }
        probe.remove();
        return asked;
    }

    return { sideways, regions, movedSideways, cut, torn, pale, readable, unfold, text, rows, blocks, headings, paper };
})();
