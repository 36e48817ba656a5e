import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { allClaims } from './all-claims.ts';
import { cell, printed, tableOf, tablesRead } from './table.ts';

const files = readdirSync('reference', { encoding: 'utf8', recursive: true })
  .filter((name) => name.endsWith('.csv'))
  .map((name) => join('reference', name));

describe('printed', () => {
  it.each([
    ['1.2250', 1.225, 5e-5],
    ['42', 42, 0.5],
    ['-0.647', -0.647, 5e-4],
    ['1.7894e-5', 1.7894e-5, 5e-10],
    ['1.2e4', 12_000, 500],
  ])('%s is %d to half of its last digit', (text, value, half) => {
    expect(printed(text).value).toBe(value);
    expect(Math.abs(printed(text).half / half - 1)).toBeLessThan(1e-12 /* rounding */);
  });
});

it('an empty cell and a word are no numbers', () => {
  expect(printed('').value).toBeNaN();
  expect(printed('left').value).toBeNaN();
});

describe('tableOf', () => {
  const columns = ['height_m', 'pressure_Pa'];
  const table = (text: string) => tableOf(text, 'file.csv', columns);

  it('reads rows by column', () => {
    const [first] = table('height_m,pressure_Pa\n500,95461.3\n');
    expect(cell(first ?? {}, 'pressure_Pa').value).toBe(95_461.3);
  });
  it.each([
    ['nothing', ''],
    ['white space', '\n \n'],
    ['a header alone', 'height_m,pressure_Pa\n'],
    ['another header', 'pressure_Pa,height_m\n1,2\n'],
    ['no header', '500,95461.3\n'],
    ['a row that is cut off', 'height_m,pressure_Pa\n500\n'],
    ['an empty row between', 'height_m,pressure_Pa\n\n500,95461.3\n'],
  ])('refuses %s', (_, text) => expect(() => table(text)).toThrow(/file\.csv/));
  it('refuses a column that is not there', () =>
    expect(() => cell(table('height_m,pressure_Pa\n500,95461.3\n')[0] ?? {}, 'density')).toThrow(/density/));
});

describe.each(files)('%s', (path) => {
  const text = readFileSync(path, 'utf8');
  const columns = (text.split('\n')[0] ?? '').split(',');

  it('reads, and fails when its rows or all of it are gone', () => {
    expect(tableOf(text, path, columns).length).toBeGreaterThan(0);
    expect(() => tableOf(`${columns.join(',')}\n`, path, columns)).toThrow(/no rows/);
    expect(() => tableOf('', path, columns)).toThrow(/header/);
  });
});

it('the claims read every file, so that none lies there unused', async () => {
  await allClaims();
  expect(files.filter((path) => !tablesRead.has(path))).toEqual([]);
});
