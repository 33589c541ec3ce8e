// Runs inside the page under test: its SVG pictures. Each function returns sentences on what is wrong.
globalThis.look = globalThis.look ?? {};

look.pictures = (() => {
    const SMALLEST_TEXT = 10; // CSS pixels on a screen
    const words = (node) => (node?.textContent ?? '').replace(/\s+/g, ' ').trim();
    const pictures = () => [...document.querySelectorAll('svg')]
        .filter((svg) => !svg.parentElement.closest('svg') && svg.checkVisibility());
    const shapes = (svg) => [...svg.querySelectorAll('rect, circle, ellipse, line, path, polygon, polyline, use')]
        .filter((shape) => !shape.closest('defs, pattern, clipPath, mask, marker, symbol'))
        // The paper under a word says nothing; a band without school is told by the lines at its ends and its name, the
        // tints of frost by the band under the rows; drawings of plants only repeat a name.
        .filter((shape) => !shape.matches('.plate, .closed .rest') && !shape.closest('.plant'));

    /** Texts as they are painted: a text, or its parts where it is set in parts. */
    function pieces(svg) {
        const all = [...svg.querySelectorAll('text, tspan')].filter((text) => !text.closest('defs, symbol'));
        return all.filter((text) => !text.querySelector('tspan') && words(text) !== '');
    }

    function name(svg) {
        const named = words(svg.querySelector(':scope > title')) || svg.getAttribute('aria-label')
            || words(document.getElementById(svg.getAttribute('aria-labelledby')?.split(' ')[0]));
        return named || '';
    }

    /** A picture has a role, a name, a longer description, and something in it. */
    function described() {
        const found = [];
        for (const svg of pictures()) {
            if (svg.getAttribute('aria-hidden') === 'true' && pieces(svg).length === 0) continue;
            const title = name(svg);
            const called = `picture "${title}"`;
            const id = svg.getAttribute('aria-describedby');
            const more = words(svg.querySelector(':scope > desc')) || words(id && document.getElementById(id));
            if (!title) found.push('a picture without a title');
            if (!more) found.push(`${called} without a description`);
            if (svg.getAttribute('role') !== 'img') found.push(`${called} has not the role of a picture`);
            const box = svg.getBoundingClientRect();
            if (box.width < 40 || box.height < 20) found.push(`${called} is ${box.width} by ${box.height}`);
            const drawn = shapes(svg).filter((shape) => shape.getBoundingClientRect().width + shape.getBoundingClientRect().height > 0);
            if (drawn.length === 0) found.push(`${called} is empty`);
        }
        return found;
    }

    const WORD = /\p{L}{3,}/gu;
    /** They mark the weeks at the edge; what falls into a week has its date in the table. */
    const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

    /** Every word in a picture stands outside it too, in a table, a list or a sentence. */
    function alsoInText() {
        const copy = document.body.cloneNode(true);
        copy.querySelectorAll('svg').forEach((svg) => svg.replaceWith(' '));
        const plain = (text) => text.toLowerCase().replace(/[\s\u00ad\u200b\u2066-\u2069]+/gu, '');
        const outside = plain(copy.textContent);
        const missing = [];
        for (const svg of pictures()) {
            const inside = [...svg.querySelectorAll('text')].filter((text) => !text.closest('defs')).flatMap((text) => words(text).match(WORD) ?? []);
            const told = outside + plain(words(svg.querySelector(':scope > desc')));
            missing.push(...[...new Set(inside)].filter((word) => !MONTHS.includes(word) && !told.includes(plain(word))));
        }
        return missing.length === 0 ? [] : [`only in a picture: ${missing.slice(0, 6).map((text) => `"${text}"`).join(', ')}`];
    }

    /** The box that a line of text fills, without the room above and below its letters. */
    function inked(text) {
        const box = text.getBoundingClientRect();
        const { a, b } = text.getScreenCTM();
        const upright = Math.abs(a) < Math.abs(b);
        const [trimX, trimY] = upright ? [box.width * 0.2, 0] : [0, box.height * 0.2];
        const slanted = Math.min(Math.abs(a), Math.abs(b)) > 0.05 * Math.max(Math.abs(a), Math.abs(b));
        return { left: box.left + trimX, right: box.right - trimX, top: box.top + trimY, bottom: box.bottom - trimY, slanted };
    }

    /** Texts that run into each other, that leave the picture, that are too small. */
    function legible(smallest = SMALLEST_TEXT) {
        const found = [];
        for (const svg of pictures()) {
            const frame = svg.getBoundingClientRect();
            const texts = pieces(svg).map((text) => ({ text, box: inked(text) }));
            texts.forEach(({ text, box }, at) => {
                const quoted = `"${words(text)}" in "${name(svg)}"`;
                if (box.left < frame.left - 1 || box.right > frame.right + 1
                    || box.top < frame.top - 1 || box.bottom > frame.bottom + 1) found.push(`${quoted} leaves the picture`);
                const matrix = text.getScreenCTM();
                const scale = Math.sqrt(Math.abs(matrix.a * matrix.d - matrix.b * matrix.c));
                const size = parseFloat(getComputedStyle(text).fontSize) * scale;
                if (size < smallest) found.push(`${quoted} is ${size.toFixed(1)} high, below ${smallest}`);
                for (const other of texts.slice(at + 1)) {
                    const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
                    const tall = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
                    if (wide > 1 && tall > 1 && !box.slanted && !other.box.slanted) found.push(`${quoted} runs into "${words(other.text)}"`);
                }
            });
        }
        return found;
    }

    const painted = (paint) => paint !== 'none' && paint !== '';

    /** The colours of a paint: one, or all that a pattern is made of. */
    function colours(paint, opacity, back) {
        const reference = /url\("?#([^")]+)"?\)/.exec(paint);
        if (!reference) {
            const [r, g, b, a] = look.colour.read(paint);
            return [look.colour.over([r, g, b, a * opacity], back)];
        }
        const parts = [...(document.getElementById(reference[1])?.querySelectorAll('*') ?? [])];
        return [back, ...parts.flatMap((part) => {
            const style = getComputedStyle(part);
            return [style.fill, style.stroke].filter(painted).flatMap((one) => colours(one, 1, back));
        })];
    }

    /** All colours that may lie behind a point of a text, and what covers it, if anything. */
    function behindPoint(text, svg, x, y) {
        const stack = document.elementsFromPoint(x, y);
        const at = stack.findIndex((element) => element === text || text.contains(element) || (element.contains(text) && element.localName === 'text'));
        if (at < 0) return { backs: [], cover: null };
        const isShape = (element) => element instanceof SVGGeometryElement;
        const cover = stack.slice(0, at).find((element) => !element.contains(text) && !/^(text|tspan)$/.test(element.localName)) ?? null;
        let backs = [look.colour.behind(svg)];
        for (const shape of stack.slice(at + 1).filter(isShape).reverse()) {
            const style = getComputedStyle(shape);
            const opacity = Number(style.opacity);
            const paint = painted(style.fill) ? style.fill : style.stroke;
            const part = opacity * Number(painted(style.fill) ? style.fillOpacity : style.strokeOpacity);
            backs = backs.flatMap((back) => colours(paint, part, back)).slice(0, 16);
        }
        return { backs, cover };
    }

    /** Texts that stand out too little from what lies behind them, or that something covers. */
    function contrast() {
        const found = [];
        for (const svg of pictures()) {
            for (const text of pieces(svg)) {
                const style = getComputedStyle(text);
                const size = parseFloat(style.fontSize);
                const need = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700) ? 3 : 4.5;
                const halo = painted(style.stroke) && /^stroke/.test(style.paintOrder) && parseFloat(style.strokeWidth) >= 2;
                text.scrollIntoView({ block: 'center', inline: 'center' });
                const box = text.getBoundingClientRect();
                for (const [across, down] of [[0.5, 0.5], [0.15, 0.5], [0.85, 0.5], [0.5, 0.3], [0.5, 0.7]]) {
                    const point = behindPoint(text, svg, box.left + box.width * across, box.top + box.height * down);
                    const backs = halo ? [look.colour.read(style.stroke)] : point.backs;
                    const ratio = Math.min(...backs.map((back) => look.colour.contrast(look.colour.over(look.colour.read(style.fill), back), back)));
                    const quoted = `"${words(text)}" in "${name(svg)}"`;
                    if (point.cover) found.push(`${quoted} is covered by <${point.cover.localName}>`);
                    if (ratio < need) found.push(`${quoted} has a contrast of ${ratio.toFixed(1)}, ${need} is needed`);
                    if (point.cover || ratio < need) break;
                }
            }
        }
        scrollTo(0, 0);
        return found;
    }

    /** The weave of a crop's cloth, by which it is known in grey too; nothing for what is no cloth. */
    function weaveOf(shape) {
        for (let group = shape; group && group.localName !== 'svg'; group = group.parentElement) {
            const hued = /(^| )c\d+( |$)/.test(group.getAttribute('class') ?? '');
            const weave = hued ? group.querySelector('[data-weave]') : null;
            if (weave) return weave.dataset.weave;
        }
        return '';
    }

    /** What a shape looks like, in colour and in what stays when the colours go. */
    function appearance(shape) {
        const style = getComputedStyle(shape);
        const opacity = Number(style.opacity);
        const white = [255, 255, 255, 1];
        const paint = (css, own, width) => {
            if (!painted(css) || width === 0 || opacity * own === 0) return { kind: 'none', colour: white };
            if (css.includes('url(')) return { kind: css, colour: white };
            return { kind: 'plain', colour: colours(css, opacity * own, white)[0] };
        };
        return {
            fill: paint(style.fill, Number(style.fillOpacity), 1),
            stroke: paint(style.stroke, Number(style.strokeOpacity), parseFloat(style.strokeWidth)),
            // Cloth is told by its weave, which lies over it, and by the words in the row.
            manner: `${style.strokeDasharray}/${style.strokeWidth}/${shape.localName}/${weaveOf(shape)}`,
        };
    }

    const asText = (look) => JSON.stringify(look);
    const apart = (one, other) => Math.abs(look.colour.lightness(one.colour) - look.colour.lightness(other.colour));

    /** Shapes of two looks that only their colour tells apart: the same once printed in grey. */
    function alikeInGrey() {
        const found = [];
        for (const svg of pictures()) {
            const kinds = [...new Map(shapes(svg).map(appearance).map((one) => [asText(one), one])).values()];
            kinds.forEach((one, at) => {
                for (const other of kinds.slice(at + 1)) {
                    const sameManner = one.manner === other.manner && one.fill.kind === other.fill.kind && one.stroke.kind === other.stroke.kind;
                    if (sameManner && apart(one.fill, other.fill) < 10 && apart(one.stroke, other.stroke) < 10) {
                        const named = (look) => `fill ${look.fill.colour.map(Math.round)}, line ${look.stroke.colour.map(Math.round)}`;
                        found.push(`in grey nothing tells (${named(one)}) from (${named(other)}) in "${name(svg)}"`);
                    }
                }
            });
        }
        return found;
    }

    /**
     * Shapes too pale to be seen: neither filled nor drawn with 3 to 1 against the page (WCAG 1.4.11).
     * The tints of frost behind the rows are left out: the band under the rows tells the same.
     */
    function faint() {
        const found = new Set();
        for (const svg of pictures()) {
            const back = look.colour.behind(svg);
            for (const shape of shapes(svg)) {
                const { fill, stroke } = appearance(shape);
                if (shape.closest('.frosty') || fill.kind.includes('url(') || (fill.kind === 'none' && stroke.kind === 'none')) continue;
                const best = Math.max(...[fill, stroke].filter((one) => one.kind !== 'none').map((one) => look.colour.contrast(one.colour, back)));
                if (best < 3) found.add(`a <${shape.localName} class="${shape.getAttribute('class') ?? ''}"> in "${name(svg)}" stands out by ${best.toFixed(1)}, 3 is needed`);
            }
        }
        return [...found];
    }

    return { described, alsoInText, legible, contrast, alikeInGrey, faint };
})();
