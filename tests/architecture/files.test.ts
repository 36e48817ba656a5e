import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filesIn } from './source-files.ts';

const MOST_LINES = 300;
const MOST_CHARACTERS = 130;

const [source, tests] = [filesIn('src'), filesIn('tests')];
const files = [...source, ...tests];
const linesOf = (path: string): readonly string[] =>
  readFileSync(path, 'utf8').replace(/\n$/, '').split('\n');

/** Long lines in each room that are not mended yet: so many at most. A room without any is taken off the list. */
const longLinesPending: Readonly<Record<string, number>> = {};

it('no file is longer than a reader keeps in mind', () => {
  const offences = files
    .map((path) => ({ path, lines: linesOf(path).length }))
    .filter(({ lines }) => lines > MOST_LINES);
  expect(offences).toEqual([]);
});

it('every file has a name that says what it holds', () => {
  const named = /\/[a-z0-9]+(-[a-z0-9]+)*(\.test|\.config)?\.ts$/;
  const empty = /\/(utils?|helpers?|common|types|index|misc)\.ts$/;
  expect(files.filter((path) => !named.test(path) || empty.test(path))).toEqual([]);
});

it('no line is longer than a screen is wide', () => {
  const long = files.flatMap((path) =>
    linesOf(path).flatMap((line, i) =>
      line.length > MOST_CHARACTERS
        ? [{ room: path.split('/').slice(0, 2).join('/'), place: `${path}:${i + 1}` }]
        : [],
    ),
  );
  const rooms = [...new Set([...long.map(({ room }) => room), ...Object.keys(longLinesPending)])];
  const offences = rooms.flatMap((room) => {
    const found = long.filter((line) => line.room === room).map(({ place }) => place);
    const allowed = longLinesPending[room];
    if (found.length > (allowed ?? 0)) return [`${room}: ${allowed ?? 0} allowed, ${found.join(', ')}`];
    return found.length === 0 && allowed !== undefined ? [`${room}: mended, take it off the list`] : [];
  });
  expect(offences).toEqual([]);
});
