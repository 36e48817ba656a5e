import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filesIn } from './source-files.ts';

/** An option as it is typed at a terminal. */
const TYPED = /(?<![-\w])--[a-z][a-z-]*/g;
/**
 * Where a terminal alone is meant: the help and the examples of a question, a whole command line to type, and what is said where
 * no document was drawn, which a page always does.
 */
const AT_A_TERMINAL = [
  /^src\/reports\/\w+\/question\.ts$/,
  /^src\/reports\/wind\/words\.ts$/,
  /^src\/reports\/tape\/words\.ts$/,
];
const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '');

it('reports are read on a page too, so their sentences name no option by its dashes', () => {
  const found = filesIn('src/reports')
    .filter((path) => !AT_A_TERMINAL.some((allowed) => allowed.test(path)))
    .flatMap((path) =>
      [...withoutComments(readFileSync(path, 'utf8')).matchAll(TYPED)].map(
        ([option]) => `${path}: ${option}`,
      ),
    );
  expect(found).toEqual([]);
  expect('`{from}`, or --nock-travel'.match(TYPED)).toEqual(['--nock-travel']);
});
