// Runs inside the page under test: how it is built. Each function returns sentences on what is wrong.
globalThis.look = globalThis.look ?? {};

look.structure = (() => {
    /** Text on one line, without the signs that keep a name's direction of writing to itself. */
    const words = (node) => (node?.textContent ?? '').replace(/[\u2066-\u2069]/g, '').replace(/\s+/g, ' ').trim();

    /** No script in any form: the pages are read where scripts are turned off. */
    function scripts() {
        const found = [...document.querySelectorAll('script, iframe, object, embed, base')]
            .map((element) => `<${element.localName}> in the page`);
        for (const element of document.querySelectorAll('*')) {
            for (const { name, value } of element.attributes) {
                if (/^on/i.test(name)) found.push(`attribute ${name} on <${element.localName}>`);
                if (/^\s*(javascript|vbscript):/i.test(value)) found.push(`${name}="${value}"`);
            }
        }
        return found;
    }

    /** Everything the page needs is in it: nothing loaded, nothing named by an outside address. */
    function outside() {
        const found = [...document.querySelectorAll('link[rel~=stylesheet], link[rel~=preload], [src], [srcset]')]
            .map((element) => `<${element.localName}> loads something`);
        for (const element of document.querySelectorAll('[href]')) {
            const target = element.getAttribute('href');
            if (/^(https?:|ftp:|\/\/)/i.test(target)) found.push(`outside address ${target}`);
        }
        for (const style of document.querySelectorAll('style, [style]')) {
            const css = style.localName === 'style' ? style.textContent : style.getAttribute('style');
            if (/@import|url\(\s*["']?(?!#|data:)/i.test(css)) found.push('a style loads something');
        }
        return found;
    }

    function language(expected) {
        const lang = document.documentElement.lang;
        return lang === expected ? [] : [`lang is "${lang}", the project's locale is "${expected}"`];
    }

    /** One h1, and no level left out on the way down. */
    function headings() {
        const found = [];
        const all = [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')];
        const first = all.filter((heading) => heading.localName === 'h1').length;
        if (first !== 1) found.push(`${first} headings of the first level`);
        let before = 0;
        for (const heading of all) {
            const level = Number(heading.localName[1]);
            if (level > before + 1) found.push(`"${words(heading)}" is level ${level} after level ${before}`);
            if (words(heading) === '') found.push(`empty heading of level ${level}`);
            before = level;
        }
        return found;
    }

    function frame() {
        const found = [];
        if (words(document.querySelector('title')) === '') found.push('no title');
        if (document.querySelectorAll('main').length !== 1) found.push('not one <main>');
        if (document.characterSet !== 'UTF-8') found.push(`characters are ${document.characterSet}`);
        const viewport = document.querySelector('meta[name=viewport]')?.content ?? '';
        if (!/width=device-width/.test(viewport)) found.push('no viewport of the width of the device');
        if (/user-scalable|maximum-scale/.test(viewport)) found.push('zoom is restricted');
        return found;
    }

    /** Tables say what their columns or rows are, and are named. */
    function tables() {
        const found = [];
        for (const table of document.querySelectorAll('table')) {
            const name = words(table.caption) || table.getAttribute('aria-label')
                || words(document.getElementById(table.getAttribute('aria-labelledby')))
                || table.closest('[role=region]')?.getAttribute('aria-label');
            if (!name) found.push(`a table without a name: "${words(table).slice(0, 40)}"`);
            if (!table.querySelector('th')) found.push(`a table without headers: "${words(table).slice(0, 40)}"`);
            if (!table.querySelector('td')) found.push(`an empty table: "${words(table).slice(0, 40)}"`);
        }
        return found;
    }

    const title = () => words(document.querySelector('title'));
    const heading = () => words(document.querySelector('h1'));
    const links = () => [...document.querySelectorAll('a[href], link[href]')]
        .map((link) => link.getAttribute('href'));
    const ids = () => [...document.querySelectorAll('[id]')].map((element) => element.id);
    const times = () => [...document.querySelectorAll('time')].map((time) => ({
        datetime: time.getAttribute('datetime') ?? words(time),
        text: words(time),
    }));

    return { scripts, outside, language, headings, frame, tables, title, heading, links, ids, times };
})();
