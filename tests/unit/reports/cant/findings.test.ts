import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { toSi } from '../../../../src/quantities/format.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { cantFindings } from '../../../../src/reports/cant/findings.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const asked = {
  ranges: [20, 60, 100].map((yards) => si<'m'>(toSi(yards, 'yd'))),
  cants: [-2, 0, 2].map((degrees) => toSi(degrees, 'deg')),
};
const hunt = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');

describe('cantFindings', () => {
  const found = cantFindings(openSetup(hunt, 'hunt.yaml'), asked);

  it('has one row for every range, each with its own place before and after the lean', () => {
    expect(found.drift.map(({ range }) => range)).toEqual(asked.ranges);
    expect(found.drift.map(({ measured }) => measured?.range)).toEqual(asked.ranges);
    expect(found.drift.map(({ now }) => now)).toEqual(found.lean.now);
    expect(found.drift.map(({ left }) => left)).toEqual(found.lean.left);
    for (const { cant, costs } of found.effects)
      expect(costs.map((cost) => [cost.cant, cost.miss.range, cost.rezeroed.range])).toEqual(
        asked.ranges.map((range) => [cant, range, range]),
      );
  });

  it('turns the travel and the level that the file leaves to their defaults, 3 in and 1 in', () => {
    // An arc is its angle times its radius; the tangent is longer by a third of the angle squared, under 3e-5 of itself
    // below half a degree.
    const [inch, arc] = [0.0254, 3e-5];
    expect(found.sightTurn.length).toBeCloseTo(3 * inch, 12 /* digits of a metre: rounding */);
    expect(found.levelTurn.length).toBeCloseTo(inch, 12 /* digits of a metre: rounding */);
    expect(Math.abs(found.lean.turn)).toBeLessThan(toSi(0.5, 'deg'));
    expect(Math.abs(found.sightTurn.offset / (3 * inch * Math.abs(found.lean.turn)) - 1)).toBeLessThan(arc);
    expect(Math.abs(found.levelTurn.offset / (inch * Math.abs(found.lean.bowLean)) - 1)).toBeLessThan(arc);
  });

  it('finds no curve where nothing turns the arrow, no group says its left and right, and the place is not known', () => {
    const plain = hunt
      .replace(/ {2}parts:\n(?: {4}.*\n| {13}.*\n)+/, '')
      .replace(/latitude:.*\n/, '')
      .replaceAll(/, lateral: [-\d.]+ in/g, '');
    const straight = cantFindings(openSetup(plain, 'plain.yaml'), asked);
    expect(straight.isCurved).toBe(false);
    expect(straight.verdict.measured).toBe(false);
    expect(straight.lean.closedForm).toBeNull();
    expect(straight.drift.map(({ measured, coriolis }) => [measured, coriolis])).toEqual(
      asked.ranges.map(() => [null, null]),
    );
  });
});
