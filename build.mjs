#!/usr/bin/env node
/**
 * Builds what its arguments name, into dist/:
 *
 *   node build.mjs cli        the command line: main.js and its thread, worker.js
 *   node build.mjs library    the public entry: quillpath.js, which needs neither Node nor a page
 *   node build.mjs page       the page: a folder for a browser, and quillpath.html, all of it in one file
 *   node build.mjs types      the declarations of the public entry: types/quillpath.d.ts
 *   node build.mjs man        the manual page of the command line: quillpath.1
 *   node build.mjs cli library bill    what is inside of these: sbom.json
 *   node build.mjs accuracy   what `npm run accuracy` runs
 *   node build.mjs fuzz       what `npm run fuzz` runs
 *   node build.mjs bench      what `npm run bench` runs
 *
 * Without arguments it builds what the package offers: all of these but the page and what only npm runs.
 */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { writeBill } from './build/bill.mjs';
import { writeManual } from './build/manual.mjs';
import { foldersIn, writeNotices } from './build/notices.mjs';
import { buildPage } from './build/page.mjs';
import { writeTypes } from './build/types.mjs';
import { versionAlone } from './build/version-alone.mjs';

const root = fileURLToPath(new URL('.', import.meta.url));

const shared = {
  absWorkingDir: root,
  bundle: true,
  format: 'esm',
  target: 'node20',
  entryNames: '[name]',
  outdir: 'dist',
  logLevel: 'warning',
  plugins: [versionAlone(root)],
  alias: {
    // The `yaml` package's browser build is the same code as modules, so that the bundler leaves out what is not used.
    yaml: './node_modules/yaml/browser/index.js',
    // The fonts are not WOFF2 files, and the decoder of that format is larger than the program.
    'brotli/decompress.js': './build/stand-ins/no-woff2.cjs',
    // Documents are not encrypted, and we break lines ourselves.
    '@noble/ciphers/aes': './build/stand-ins/no-ciphers.mjs',
    linebreak: './build/stand-ins/no-linebreak.mjs',
  },
};
/** pdfkit asks for Node's modules by `require`, which a module does not have of itself. */
const node = {
  ...shared,
  platform: 'node',
  alias: { ...shared.alias, 'tiny-inflate': './build/stand-ins/inflate-by-zlib.cjs' },
  banner: {
    js: 'import{createRequire as nodeRequire}from"node:module";const require=nodeRequire(import.meta.url);',
  },
};
/** With this platform the bundler knows no module of Node, so one that is asked for fails the build. */
const neutral = { ...shared, platform: 'neutral', mainFields: ['module', 'main'], conditions: ['import'] };

/** Each entry stands in dist/, and the parts that it shares with others or loads on demand in a folder of their own. */
const targets = {
  cli: {
    ...node,
    entryPoints: ['src/cli/main.ts', 'src/cli/world/worker.ts'],
    chunkNames: 'cli/[name]-[hash]',
    splitting: true,
    minify: true,
  },
  library: {
    ...neutral,
    entryPoints: ['src/quillpath.ts'],
    chunkNames: 'library/[name]-[hash]',
    splitting: true,
    minify: true,
  },
  accuracy: {
    ...node,
    entryPoints: ['tests/reference/accuracy.ts'],
    outdir: 'dist/accuracy',
    logLevel: 'error',
  },
  fuzz: { ...node, entryPoints: ['tests/fuzz/fuzz.ts'], outdir: 'dist/fuzz' },
  bench: { ...node, entryPoints: ['tests/bench/bench.ts'], outdir: 'dist/bench' },
};

/** What is offered to others, and the folders of the packages that went into it. */
const packaged = ['cli', 'library'];
const bundled = [];

/** @returns whether it could be built; the bundler or the compiler has printed why not */
async function make(name) {
  rmSync(join(root, 'dist', name), { recursive: true, force: true });
  if (name === 'types') return writeTypes(root);
  if (name === 'bill') return writeBill(root, bundled);
  if (name === 'man') return writeManual(node, root);
  if (name === 'page') return buildPage(shared, root);
  return build({ ...targets[name], metafile: true }).then(
    ({ metafile }) => {
      if (packaged.includes(name)) bundled.push(...foldersIn(metafile));
      return true;
    },
    () => false,
  );
}

const known = [...Object.keys(targets), 'page', 'types', 'man', 'bill'];
const named = process.argv.slice(2);
for (const name of named.length === 0 ? ['cli', 'library', 'types', 'man', 'bill'] : named) {
  if (!known.includes(name)) {
    process.stderr.write(`build.mjs: there is no target "${name}". Write one of: ${known.join(', ')}.\n`);
    process.exit(2);
  }
  if (!(await make(name))) process.exit(1);
}
if (bundled.length > 0) writeNotices(root, bundled);
