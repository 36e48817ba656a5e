#!/usr/bin/env node
/**
 * Builds what its arguments name, into dist/:
 *
 *   node build.mjs cli        the command line: cli/quillpath.js, all of it in one file, and main.js, which starts that
 *   node build.mjs library    the public entry: library/quillpath.js, which needs neither Node nor a page
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
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { writeBill } from './build/bill.mjs';
import { buildCommandLine } from './build/command-line.mjs';
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
    // The tables of scripts that our texts have nothing of stay packed.
    'unicode-trie': './build/stand-ins/lazy-unicode-trie.cjs',
  },
};
const node = {
  ...shared,
  platform: 'node',
  alias: { ...shared.alias, 'tiny-inflate': './build/stand-ins/inflate-by-zlib.cjs' },
};
/** pdfkit asks for Node's modules by `require`, which a module does not have of itself. */
const nodeModules = {
  ...node,
  banner: {
    js: 'import{createRequire as nodeRequire}from"node:module";const require=nodeRequire(import.meta.url);',
  },
};
/** With this platform the bundler knows no module of Node, so one that is asked for fails the build. */
const neutral = { ...shared, platform: 'neutral', mainFields: ['module', 'main'], conditions: ['import'] };

/** What is built as modules, each in a folder of its own. */
const targets = {
  library: {
    ...neutral,
    entryPoints: ['src/quillpath.ts'],
    outdir: 'dist/library',
    chunkNames: 'parts/[name]-[hash]',
    splitting: true,
    minify: true,
  },
  accuracy: {
    ...nodeModules,
    entryPoints: ['tests/reference/accuracy.ts'],
    outdir: 'dist/accuracy',
    logLevel: 'error',
  },
  fuzz: { ...nodeModules, entryPoints: ['tests/fuzz/fuzz.ts'], outdir: 'dist/fuzz' },
  bench: { ...nodeModules, entryPoints: ['tests/bench/bench.ts'], outdir: 'dist/bench' },
};

/**
 * How Node reads the scripts of a folder, of those that hold any. The command line is no module: Node takes a tenth of its own start to
 * begin with one.
 */
const KINDS = {
  cli: ['.', 'commonjs'],
  ...Object.fromEntries([...Object.keys(targets), 'types'].map((name) => [name, [name, 'module']])),
};

function writeKind(name) {
  if (KINDS[name] === undefined) return;
  const [folder, type] = KINDS[name];
  writeFileSync(join(root, 'dist', folder, 'package.json'), `${JSON.stringify({ type })}\n`);
}

/** What is offered to others, and the folders of the packages that went into it. */
const packaged = ['cli', 'library'];
const bundled = [];

/** @returns whether it could be built; the bundler or the compiler has printed why not */
async function make(name) {
  if (name !== 'cli') rmSync(join(root, 'dist', name), { recursive: true, force: true });
  if (name === 'types') return writeTypes(root);
  if (name === 'bill') return writeBill(root, bundled);
  if (name === 'man') return writeManual(nodeModules, root);
  if (name === 'page') return buildPage(shared, root);
  const metafile =
    name === 'cli'
      ? await buildCommandLine(node, root)
      : await build({ ...targets[name], metafile: true }).then(
          (built) => built.metafile,
          () => undefined,
        );
  if (metafile === undefined) return false;
  if (packaged.includes(name)) bundled.push(...foldersIn(metafile));
  return true;
}

const known = ['cli', ...Object.keys(targets), 'page', 'types', 'man', 'bill'];
const named = process.argv.slice(2);
for (const name of named.length === 0 ? ['cli', 'library', 'types', 'man', 'bill'] : named) {
  if (!known.includes(name)) {
    process.stderr.write(`build.mjs: there is no target "${name}". Write one of: ${known.join(', ')}.\n`);
    process.exit(2);
  }
  if (!(await make(name))) process.exit(1);
  writeKind(name);
}
if (bundled.length > 0) writeNotices(root, bundled);
