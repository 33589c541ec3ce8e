// Runs inside the page under test: colours as they are computed, their contrast, and what lies
// behind an element. Contrast and luminance are those of WCAG 2.2 ("relative luminance").
globalThis.look = globalThis.look ?? {};

look.colour = (() => {
    const seen = new Map();
    const brush = document.createElement('canvas').getContext('2d', { willReadFrequently: true });

    /** Any CSS colour as red, green, blue (0 to 255) and opacity (0 to 1). */
    function read(css) {
        if (!seen.has(css)) {
            brush.clearRect(0, 0, 1, 1);
            brush.fillStyle = css;
            brush.fillRect(0, 0, 1, 1);
            const [r, g, b, a] = brush.getImageData(0, 0, 1, 1).data;
            seen.set(css, [r, g, b, a / 255]);
        }
        return seen.get(css);
    }

    /** `front` laid over an opaque `back`. */
    function over(front, back) {
        const mix = (i) => front[i] * front[3] + back[i] * (1 - front[3]);
        return [mix(0), mix(1), mix(2), 1];
    }

    function luminance([r, g, b]) {
        const linear = (part) => {
            const c = part / 255;
            return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
        };
        return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
    }

    function contrast(one, other) {
        const [dark, light] = [luminance(one), luminance(other)].sort((a, b) => a - b);
        return (light + 0.05) / (dark + 0.05);
    }

    /** How light a colour is to the eye, 0 to 100 (CIE L*): what is left of it in grey. */
    function lightness(colour) {
        const y = luminance(colour);
        return y > 0.008856 ? 116 * Math.cbrt(y) - 16 : 903.3 * y;
    }

    /** What is painted behind the text of an HTML element. */
    function behind(element) {
        const layers = [];
        for (let at = element; at; at = at.parentElement) {
            const paint = read(getComputedStyle(at).backgroundColor);
            layers.unshift(paint);
            if (paint[3] === 1) break;
        }
        return layers.reduce((back, front) => over(front, back), [255, 255, 255, 1]);
    }

    return { read, over, contrast, lightness, behind };
})();
