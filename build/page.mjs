/**
 * Builds the page into dist/page/: files that open from a disk by a double click, work under any static host and in any folder of
 * it, and are kept for the time without a network; and quillpath.html, which is all of it in one file.
 *
 * esbuild splits the program into modules; a page from a disk may load none, so each becomes a function in a classic script. `app.js`
 * holds the page and the reader of the setup, `core.js` what the first screens ask, `more.js` the other questions, `pdf.js` the writer of
 * PDF documents with its typeface.
 */
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { transform } from 'esbuild';
import { bootText, modulesOf, wrapped } from './modules.mjs';

/** The scripts, in the order in which they are needed; what several of them need is in the first of those. */
const PACKS = ['app', 'core', 'more', 'pdf'];
/** What the first screens ask is in the second script; the other questions come when one is asked, or when nothing else is to do. */
const FIRST = [
  'src/page/answers/answer.ts',
  'src/page/screen/areas.ts',
  ...['marks', 'fit', 'tape', 'check', 'standing'].map((name) => `src/reports/${name}/`),
];
/** Browsers of 2022 and later. */
const TARGET = 'es2022';
const COPIED = ['manifest.webmanifest', 'icon.svg', 'icon-192.png', 'icon-512.png'];

/** What a page may do: nothing but its own files, no script in the text, no request to anywhere else. */
export const policy = (script, style) =>
  `default-src 'none'; script-src ${script}; style-src ${style}; img-src 'self' blob: data:; connect-src 'self'; ` +
  `manifest-src 'self'; worker-src 'self' blob:; base-uri 'none'; form-action 'none'`;
export const PAGE_POLICY = policy("'self'", "'self'");

const hashOf = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
/** A script inside a page must not hold the sign for its own end, nor that for a comment. */
const embedded = (script) => script.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');

/** What esbuild is asked for the page. */
const ofPage = (options) => ({
  ...options,
  entryPoints: [
    { in: 'src/page/main.ts', out: 'main' },
    { in: 'src/page/answers/thread.ts', out: 'thread' },
  ],
  outdir: 'dist/page',
  platform: 'browser',
  mainFields: ['module', 'main'],
  conditions: ['import'],
  target: TARGET,
  define: { 'import.meta.url': '"file:///"' },
  loader: { '.ttf': 'binary', '.yaml': 'text' },
});

/** The names of the modules that are loaded with those of `roots`. */
function closure(modules, roots) {
  const reached = new Set();
  const visit = (name) => {
    if (reached.has(name)) return;
    reached.add(name);
    const found = modules.find((module) => module.name === name);
    for (const { name: next, kind } of found?.imports ?? []) if (kind !== 'dynamic-import') visit(next);
  };
  for (const name of roots) visit(name);
  return reached;
}

/** The pack that a module which is loaded by name belongs to. */
function packOfEntry({ name, entryPoint }) {
  if (name === './main.js') return 'app';
  if (FIRST.some((start) => entryPoint.startsWith(start))) return 'core';
  return entryPoint.startsWith('src/page/keep/pdf') ? 'pdf' : 'more';
}

/** Which pack each module belongs to: the first one that needs it. */
function packsOf(modules) {
  const entries = modules.filter(({ entryPoint }) => entryPoint !== '');
  const reached = PACKS.map((pack) => {
    const roots = entries.filter((module) => packOfEntry(module) === pack);
    return {
      pack,
      names: closure(
        modules,
        roots.map(({ name }) => name),
      ),
    };
  });
  return new Map(
    modules.map(({ name }) => [name, reached.find(({ names }) => names.has(name))?.pack ?? 'more']),
  );
}

/** @returns whether it could be built; the bundler has printed why not */
export async function buildPage(shared, root) {
  const out = join(root, 'dist', 'page');
  const source = (name) => readFileSync(join(root, 'src', 'page', 'screen', name), 'utf8');
  try {
    const { modules } = await modulesOf(ofPage(shared));
    const packs = packsOf(modules);
    const inPack = async (pack) =>
      (
        await Promise.all(
          modules
            .filter(({ name }) => packs.get(name) === pack)
            .map((module) => wrapped(module, { target: TARGET })),
        )
      ).join(',\n');
    const boot = await bootText(join(root, 'src/page/packs/boot.ts'), TARGET);
    const packOf = Object.fromEntries([...packs].filter(([, pack]) => pack !== 'app'));
    const scripts = Object.fromEntries(
      await Promise.all(
        PACKS.slice(1).map(async (pack) => [pack, `quillpathPacks.add({${await inPack(pack)}});\n`]),
      ),
    );
    scripts.app =
      `"use strict";(()=>{${boot}\n` +
      `boot({${await inPack('app')}},${JSON.stringify(packOf)},"./main.js")})();\n`;
    const style = (await transform(source('style.css'), { loader: 'css', minify: true })).code;
    const html = source('page.html');
    const withPolicy = (text, value) => text.replace('POLICY', value);
    mkdirSync(out, { recursive: true });
    for (const [name, text] of Object.entries(scripts)) writeFileSync(join(out, `${name}.js`), text);
    writeFileSync(join(out, 'style.css'), style);
    writeFileSync(join(out, 'index.html'), withPolicy(html, PAGE_POLICY));
    for (const name of COPIED) cpSync(join(root, 'src', 'page', 'screen', name), join(out, name));
    const files = ['./', ...PACKS.map((pack) => `${pack}.js`), 'style.css', ...COPIED];
    const name = createHash('sha256')
      .update(Object.values(scripts).join('') + style + html)
      .digest('hex')
      .slice(0, 12);
    const worker = source('sw.js')
      .replace("'NAME'", `'quillpath-${name}'`)
      .replace("['FILES']", JSON.stringify(files));
    writeFileSync(join(out, 'sw.js'), worker);
    writeFileSync(join(out, 'quillpath.html'), singleFile(html, style, scripts));
    return true;
  } catch (error) {
    if (error.errors === undefined) throw error;
    return false;
  }
}

function singleFile(html, style, { app, ...others }) {
  const script = embedded(app);
  const inert = Object.entries(others).map(
    ([name, text]) => `<script type="text/plain" id="pack-${name}">${embedded(text)}</script>`,
  );
  // A function as the replacement, so that no dollar sign of the scripts is read as one of its patterns.
  return html
    .replace('POLICY', () => policy(`${hashOf(script)} blob:`, hashOf(style)))
    .replace(/<link rel="manifest"[^>]*>\s*/, '')
    .replace(/<link rel="icon"[^>]*>\s*/, '')
    .replace(/<link rel="stylesheet"[^>]*>/, () => `<style>${style}</style>`)
    .replace(/<script src="app.js"[^>]*><\/script>/, () => `${inert.join('\n')}\n<script>${script}</script>`);
}
