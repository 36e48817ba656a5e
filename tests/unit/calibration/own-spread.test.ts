import { expect, it } from 'vitest';
import { arrowSd } from '../../../src/calibration/group.ts';
import { NOTICED_SHARE, ownSpread } from '../../../src/calibration/own-spread.ts';
import { si } from '../../../src/quantities/quantity.ts';

const shot = (range: number, arrows: number, group: number | null) => ({
  range: si<'m'>(range),
  arrows,
  group: group === null ? null : si<'m'>(group),
  arrowSdPerRange: 1e-3,
});

it('without a measured group it is the usual', () => {
  expect(ownSpread([], 1e-3)).toBe(1e-3);
  expect(ownSpread([shot(50, 6, null)], 1e-3)).toBe(1e-3);
});

it('one group gives its own arrow over its range', () =>
  expect(Math.abs(ownSpread([shot(50, 6, 0.2)], 1e-3) - arrowSd(shot(50, 6, 0.2)) / 50)).toBeLessThan(
    1e-15 /* rad, rounding */,
  ));

it('larger groups weigh more: 12 arrows at 1.5 and 3 at 0.5 of the usual give over 1.2 of it', () => {
  // Mean extreme spread of 12 arrows is 3.968 s, of 3 arrows 2.406 s.
  const many = shot(60, 12, 1.5 * 3.968 * 0.06);
  const few = shot(60, 3, 0.5 * 2.406 * 0.06);
  const pooled = ownSpread([many, few], 1e-3);
  expect(pooled).toBeGreaterThan(1.2e-3);
  expect(pooled).toBeLessThan(1.5e-3);
});

it('a shift of the noticed share of one arrow widens a group by 5 %', () =>
  // √(1 + 1/9) = 1.0541.
  expect(Math.hypot(1, NOTICED_SHARE)).toBeCloseTo(1.0541, 4));
