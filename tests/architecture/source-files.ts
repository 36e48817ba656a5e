import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';

/** Every TypeScript file below `folder` but the declarations of packages, as paths from the top of the repository. */
export const filesIn = (folder: string): readonly string[] =>
  readdirSync(folder, { encoding: 'utf8', recursive: true })
    .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts') && !path.includes('node_modules/'))
    .map((path) => join(folder, path))
    .toSorted();

/** The room of a file in `src/`, or of a file that stands in no room the file itself. */
export const roomOf = (path: string): string => path.split('/')[1] ?? path;

/**
 * What a file imports, its types and what it loads on demand included: paths from the top of the repository for files, names for
 * packages.
 */
export const importsOf = (path: string): readonly string[] =>
  ts
    .preProcessFile(readFileSync(path, 'utf8'))
    .importedFiles.map(({ fileName }) =>
      fileName.startsWith('.') ? normalize(join(dirname(path), fileName)) : packageOf(fileName),
    );

/** `zod` for `zod/mini`, but `node:fs` as it is. */
const packageOf = (name: string): string => (name.startsWith('node:') ? name : name.replace(/\/.*/, ''));
