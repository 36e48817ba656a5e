/**
 * Builds the command line: dist/cli/quillpath.js, all of it in one script that runs wherever it is copied to, and dist/main.js, which
 * starts that script with its code as it was compiled before.
 */
import { createHash } from 'node:crypto';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { keepCode } from './kept-code.mjs';
import { bootText, modulesOf, wrapped } from './modules.mjs';

/** What the functions of the script call the address of the file that was started. */
const HERE = 'here';

/** The first line of a script: a hash of the rest, by which kept code is known to be of this one. */
const identity = (text) => `// ${createHash('sha256').update(text).digest('hex').slice(0, 16)}\n`;

/**
 * The script is read as a module where the folder's package.json says so, loaded by the launcher, evaluated by it, or it is itself the
 * file that Node was started with.
 */
const BEGINNING = `"use strict";
((start) => {
  if (this === undefined) Promise.all([import("node:module"), import("node:url")]).then(([{ createRequire }, { pathToFileURL }]) => {
    const here = pathToFileURL(process.argv[1]).href;
    start(createRequire(here), here);
  });
  else if (typeof require !== "function") return start;
  else if (require.main !== module) module.exports = start;
  else start(require, require("node:url").pathToFileURL(__filename).href);
})`;

/**
 * The launcher reads the script as Latin 1, which is read faster than other text and is the same for ASCII. esbuild writes nothing else
 * but in regular expressions.
 */
const escaped = (text) =>
  text.replace(/[^\0-\x7f]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`);

/** What only a document on paper needs: the modules of these, and what no other module loads with its own. */
const PAPER = [
  'src/documents/render/pdf.ts',
  'src/cli/world/embedded-fonts.ts',
  'src/reports/tape/report.ts',
  'src/reports/card/report.ts',
];

/** The names of the modules that answers without paper do without. */
function paperOf(modules) {
  const byName = new Map(modules.map((module) => [module.name, module]));
  const reach = (found, { name, imports }) => {
    if (found.has(name)) return found;
    found.add(name);
    for (const { name: next, kind } of imports)
      if (kind === 'import-statement') reach(found, byName.get(next));
    return found;
  };
  const isPaper = ({ entryPoint }) => PAPER.includes(entryPoint);
  const entries = modules.filter(({ entryPoint }) => entryPoint !== '');
  const core = entries.filter((entry) => !isPaper(entry)).reduce(reach, new Set());
  return new Set([...entries.filter(isPaper).reduce(reach, new Set())].filter((name) => !core.has(name)));
}

/** All of the program as one script, and in the pieces that its code is kept of; with the bundler's record of what went in. */
async function program(options, root) {
  const { modules, metafile } = await modulesOf({
    ...options,
    entryPoints: [{ in: 'src/cli/start/role.ts', out: 'role' }],
    alias: { ...options.alias, 'node:child_process': './build/stand-ins/no-child-process.cjs' },
    define: { 'import.meta.url': HERE },
    loader: { '.ttf': 'binary' },
  });
  const given = { more: [HERE], target: options.target };
  const parts = await Promise.all(
    modules.map(async (module) => ({ name: module.name, text: escaped(await wrapped(module, given)) })),
  );
  const textOf = (chosen) => `{${chosen.map(({ text }) => text).join(',\n')}}`;
  // As an expression, it ends without a semicolon.
  const boot = (await bootText(join(root, 'src/cli/start/boot.ts'), options.target)).trim().replace(/;$/, '');
  const start = `((parts,boot)=>(ofNode,here)=>boot(parts,ofNode,here))(${textOf(parts)},${boot})`;
  const text = `${BEGINNING}(${start});\n`;
  const paper = paperOf(modules);
  const piece = (chosen) => {
    const own = `"use strict";(${textOf(chosen)});\n`;
    return `${identity(own)}${own}`;
  };
  const pieces = {
    core: piece(parts.filter(({ name }) => !paper.has(name))),
    paper: piece(parts.filter(({ name }) => paper.has(name))),
  };
  return { text: `#!/usr/bin/env node\n${identity(text)}${text}`, pieces, boot, metafile };
}

/** @returns the bundler's record of what went in, or nothing when it could not be built and the bundler has printed why */
export async function buildCommandLine(options, root) {
  const folder = join(root, 'dist', 'cli');
  try {
    const { text, pieces, boot, metafile } = await program(options, root);
    // Not before now: as long as it is being built, the program that was there can be run.
    rmSync(folder, { recursive: true, force: true });
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'quillpath.js'), text, { mode: 0o755 });
    await build({
      ...options,
      entryPoints: [{ in: 'src/cli/start/launcher.ts', out: 'main' }],
      format: 'cjs',
      minify: true,
      banner: { js: '#!/usr/bin/env node' },
    });
    keepCode(join(folder, 'kept'), { pieces, boot }, root);
    return metafile;
  } catch (error) {
    if (error.errors === undefined) throw error;
    return undefined;
  }
}
