/**
 * esbuild splits a program into modules so that each command or page loads and evaluates what it needs, and only split leaves out
 * what is not used of a package that is loaded late. Here each becomes a function, as a classic script or a single file wants it.
 */
import { readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { build, transform } from 'esbuild';

/** So long is a line at most, in characters: what went wrong is then shown with a piece of the script, not with all of it. */
const LINE = 400;

/**
 * esbuild's modules by name, with what each loads at once and what only when it is asked for, and its own record of what went in.
 */
export async function modulesOf(options) {
  const { outputFiles, metafile } = await build({
    ...options,
    format: 'esm',
    bundle: true,
    minify: true,
    splitting: true,
    chunkNames: '[name]-[hash]',
    write: false,
    metafile: true,
  });
  const texts = new Map(
    outputFiles.map(({ path, text }) => [posix.basename(path.replaceAll('\\', '/')), text]),
  );
  const modules = Object.entries(metafile.outputs).map(([path, { imports, entryPoint }]) => {
    // Nothing of ours does anything when it is imported, so what is imported without a name is not needed.
    const text = texts.get(posix.basename(path)).replace(/\bimport"\.\/[^"]+";/g, '');
    const isNeeded = ({ name }) => text.includes(`"${name}"`);
    return {
      name: `./${posix.basename(path)}`,
      text,
      entryPoint: entryPoint ?? '',
      imports: imports
        .map(({ path: to, kind }) => ({ name: `./${posix.basename(to)}`, kind }))
        .filter(isNeeded),
    };
  });
  return { modules, metafile };
}

/**
 * A module as a property whose value is a function, in the way of CommonJS.
 * @param options of the transformation, and `more`: names that the function is given besides
 */
export async function wrapped({ name, text }, { more = [], ...options }) {
  const { code } = await transform(text.replace(/\bimport\("((?:\.\/|node:)[^"]+)"\)/g, 'later("$1")'), {
    format: 'cjs',
    minify: true,
    legalComments: 'none',
    lineLimit: LINE,
    ...options,
  });
  const given = ['exports', 'require', 'module', 'later', ...more];
  return `${JSON.stringify(name)}:function(${given}){${code.trim()}}`;
}

/** The function that starts the modules, from its file, to be written into a script. */
export async function bootText(file, target) {
  const { code } = await transform(readFileSync(file, 'utf8'), {
    loader: 'ts',
    minifySyntax: true,
    minifyWhitespace: true,
    target,
  });
  return code.replace('export function boot', 'function boot');
}
