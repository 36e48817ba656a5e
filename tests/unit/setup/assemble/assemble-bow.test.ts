import { expect, it } from 'vitest';
import { assembleBow, bowWithBuilds } from '../../../../src/setup/assemble/assemble-bow.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from '../example-text.ts';

const bowOf = (text: string) => assembleBow(readSetup(text, 'setup.yaml'));

it('has the draw weight and the power stroke of the file: 68 lb, and 29 - 1.75 - 6.5 = 20.75 in', () => {
  const bow = bowOf(EXAMPLE);
  expect(bow.peakDraw).toBeCloseTo(68 * 4.4482216152605, 10);
  expect(bow.powerStroke).toBeCloseTo(20.75 * 0.0254, 14);
  expect(bow.rated).toBe(false);
  expect(bow.otherShots).toEqual([]);
});

it('has no draw weight where the file names none', () => expect(bowOf(SMALLEST).peakDraw).toBeNull());

it('is one bow in two files that describe it in the same words, and another when they differ', () => {
  expect(bowOf(EXAMPLE.replace('title: ', 'title: Other, ')).identity).toBe(bowOf(EXAMPLE).identity);
  expect(bowOf(EXAMPLE.replace('68 lbf', '67 lbf')).identity).not.toBe(bowOf(EXAMPLE).identity);
});

it('goes with the builds that the file lists', () => {
  const builds = `builds:\n  - name: heavy point\n    arrow: { parts: { point: { mass: 150 gr } } }\n`;
  const { name, arrow, candidates } = bowWithBuilds(openSetup(EXAMPLE + builds, 'setup.yaml'));
  expect(name).toBe('Ridge camp, 452 grain build');
  const [heavy, ...others] = candidates;
  expect(others).toEqual([]);
  expect(heavy?.name).toBe('heavy point');
  // 150 gr in place of 125 gr.
  expect((heavy?.arrow.flying.mass ?? Number.NaN) - arrow.flying.mass).toBeCloseTo(25 * 64.79891e-6, 12);
});
