import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';

/** Nothing is asked of the command line while its help is read. */
const SILENT = { out: () => undefined, err: () => undefined };

/** Write the manual page of the command line, dist/quillpath.1. @returns whether it could be made */
export async function writeManual(options, root) {
  const outfile = join(root, 'dist/man/manual-page.mjs');
  const done = await build({
    ...options,
    entryPoints: ['src/cli/manual/manual-page.ts'],
    outdir: undefined,
    entryNames: undefined,
    outfile,
  }).then(
    () => true,
    () => false,
  );
  if (!done) return false;
  const { manualPage } = await import(pathToFileURL(outfile));
  writeFileSync(join(root, 'dist/quillpath.1'), await manualPage(SILENT));
  rmSync(join(root, 'dist/man'), { recursive: true });
  return true;
}
