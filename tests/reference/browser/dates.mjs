// Dates as a reader of the project's locale expects them, written anew here from the JSON alone:
// "Tue 9 Feb" (en-GB) or "Tue Feb 9" (en-US); "Tue 9 Feb 2026" or "Tue, Feb 9, 2026" where the year is
// not the shared day's.
const DAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const ISO = /^(\d{4})-(\d{2})-(\d{2})$/;

/**
 * @param {string} iso
 * @param {string} locale
 * @param {number} feastYear
 * @returns {string}
 */
export function written(iso, locale, feastYear) {
    const [year, month, day] = ISO.exec(iso).slice(1).map(Number);
    const weekday = DAYS[new Date(Date.UTC(year, month - 1, day)).getUTCDay()];
    const american = locale === 'en-US';
    const within = american ? `${MONTHS[month - 1]} ${day}` : `${day} ${MONTHS[month - 1]}`;
    if (year === feastYear) return `${weekday} ${within}`;
    return american ? `${weekday}, ${within}, ${year}` : `${weekday} ${within} ${year}`;
}

/**
 * All ISO dates in a JSON value, each with the way to it.
 * @param {unknown} value
 * @param {string} way
 * @returns {{ iso: string, way: string }[]}
 */
export function datesIn(value, way = '') {
    if (typeof value === 'string') return ISO.test(value) ? [{ iso: value, way }] : [];
    if (value === null || typeof value !== 'object') return [];
    return Object.entries(value).flatMap(([key, inner]) => datesIn(inner, `${way}/${key}`));
}
