import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filesIn } from './source-files.ts';

/** What an engine answers in the language of the machine, or by the tables of languages that it was built with. */
const LOCALE = /\.toLocale\w+\s*\(|\.localeCompare\s*\(|\bIntl\b/g;
/** What is answered in the time zone of the machine. */
const ZONE =
  /\.(?:get|set)(?:FullYear|Month|Date|Day|Hours|Minutes|TimezoneOffset)\s*\(|\.to(?:Date|Time)String\s*\(/g;
/** The clock, chance, and the machine. */
const HERE = /\bnew Date\(\s*\)|\bDate\.now\b|\bMath\.random\b|\bprocess\.env\b|\bavailableParallelism\b/g;

const found = (pattern: RegExp, isFree: (path: string) => boolean): readonly string[] =>
  filesIn('src')
    .filter((path) => !isFree(path))
    .flatMap((path) => [...readFileSync(path, 'utf8').matchAll(pattern)].map(([what]) => `${path}: ${what}`));

it('each rule knows what it forbids, and lets the like of it pass', () => {
  for (const line of [
    'n.toLocaleString()',
    's.toLocaleUpperCase()',
    'a.localeCompare(b)',
    'new Intl.Collator()',
  ])
    expect(line.match(LOCALE), line).toHaveLength(1);
  for (const line of ['d.getFullYear()', 'd.setHours(3)', 'd.getTimezoneOffset()', 'd.toDateString()'])
    expect(line.match(ZONE), line).toHaveLength(1);
  for (const line of ['new Date()', 'Date.now()', 'Math.random()', "process.env['TZ']"])
    expect(line.match(HERE), line).toHaveLength(1);
  expect('n.toFixed(2); s.toUpperCase(); PaintImage'.match(LOCALE)).toBeNull();
  expect('d.getTime(); d.getUTCDate(); d.toISOString(); map.get(day)'.match(ZONE)).toBeNull();
  expect('new Date(seconds); io.now(); random()'.match(HERE)).toBeNull();
});

it('nothing is written by the language of the machine', () => expect(found(LOCALE, () => false)).toEqual([]));

it('the time zone of the machine is asked for in one file only, for the day that an archer would write', () =>
  expect(found(ZONE, (path) => path === 'src/quantities/calendar-day.ts')).toEqual([]));

it('only the doors know the clock, chance and the machine', () =>
  expect(found(HERE, (path) => /^src\/(?:cli|page)\//.test(path))).toEqual([]));
