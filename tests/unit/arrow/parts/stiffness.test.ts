import { expect, it } from 'vitest';
import { bendingStiffness, SPINE_TEST } from '../../../../src/arrow/parts/stiffness.ts';
import { massPerDraw, RATING_MASS_PER_DRAW } from '../../../../src/bow/mass-per-draw.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { GRAIN, INCH } from '../ridge-camp-arrow.ts';

it('a 400 spine has the stiffness of the hand calculation', () => {
  // 0.88 x 9.80665 x 0.7112^3 / (48 x 0.01016) = 8.62985 x 0.359731 / 0.48768 = 6.3657 N m2
  expect(bendingStiffness(si(0.4 * INCH))).toBeCloseTo(6.3657, 3);
});

it('a shaft of that stiffness sags by 0.4 in under the load of the test: F L^3/(48 EI)', () => {
  const sag = (0.88 * 9.80665 * 0.7112 ** 3) / (48 * bendingStiffness(si(0.4 * INCH)));
  expect(Math.abs(sag - 0.01016)).toBeLessThan(1e-15 /* m */);
});

it('another test of the same shaft, with twice the load on half the span, sags by a quarter', () => {
  const half = { span: si<'m'>(SPINE_TEST.span / 2), load: 2 * SPINE_TEST.load };
  const ratio = bendingStiffness(si(0.01 / 4), half) / bendingStiffness(si(0.01));
  expect(Math.abs(ratio - 1)).toBeLessThan(1e-15 /* relative: rounding */);
});

it('a 452 gr arrow from 68 lb has 6.65 gr per pound', () => {
  const draw = si<'N'>(68 * 4.4482216152605);
  expect((5 * massPerDraw(si(452 * GRAIN), draw)) / RATING_MASS_PER_DRAW).toBeCloseTo(452 / 68, 9);
});

it.each([
  ['a shaft that does not sag', () => bendingStiffness(si(0))],
  ['a shaft that lifts', () => bendingStiffness(si(-0.01))],
  ['a shaft of unknown sag', () => bendingStiffness(si(Number.NaN))],
  ['no draw weight', () => massPerDraw(si(0.03), si(0))],
])('%s throws', (_, run) => expect(run).toThrow(DomainError));
