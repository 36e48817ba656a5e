import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { YARD } from '../../../../src/quantities/exact.ts';
import { ask } from '../../../../src/reports/ask.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const path = 'examples/mountain-hunt/setup.yaml';
const setup = openSetup(readFileSync(path, 'utf8'), path);

const yardsOf = async (given: Readonly<Record<string, string>>): Promise<readonly number[]> => {
  const { data } = await ask('marks', setup, given);
  const { rows } = data as { readonly rows: readonly { readonly range_m: number }[] };
  return rows.map(({ range_m }) => Math.round((range_m / YARD) * 1e6) / 1e6);
};

it('rows that nobody began stand at multiples of the step', async () => {
  expect(await yardsOf({ every: '20 yd' })).toEqual([20, 40, 60, 80, 100]);
  expect((await yardsOf({ every: '3 yd' }))[0]).toBe(12);
  expect((await yardsOf({ every: '5 yd' }))[0]).toBe(10);
});
it('a beginning that was named stays', async () => {
  expect(await yardsOf({ from: '15 yd', every: '20 yd' })).toEqual([15, 35, 55, 75, 95]);
});
