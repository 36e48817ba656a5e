import { expect, it } from 'vitest';
import { buildArrow } from '../../../src/arrow/build.ts';
import type { Attitude } from '../../../src/arrow/flying-arrow.ts';
import { withBalance, withMass } from '../../../src/arrow/varied-arrow.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from '../flight/hunting-arrow.ts';
import { pointArrow } from '../flight/point-arrow.ts';

const nominal = huntingArrow({ choices: { liftLossesCounted: true } });
const rebuilt = (totals: { mass?: number; balance?: number }): Attitude => {
  const { parts, flying } = nominal;
  const built = buildArrow({
    parts: parts ?? expect.fail(),
    totals: {
      mass: si(totals.mass ?? flying.mass),
      balance: si(totals.balance ?? flying.balance),
      dragCoefficient: 2.5,
    },
  });
  return built.flying.attitude ?? expect.fail('no attitude');
};

function expectAlike(a: Attitude | null, b: Attitude): void {
  if (a === null) expect.fail('no attitude');
  for (const key of [
    'axialInertia',
    'transverseInertia',
    'spinPerMetre',
    'spinUp',
    'normalSlope',
    'firstMoment',
    'secondMoment',
  ] as const)
    expect(Math.abs(a[key] / b[key] - 1)).toBeLessThan(1e-12 /* relative, rounding */);
  for (const [k, moment] of a.shaftMoments.entries())
    expect(Math.abs(moment - (b.shaftMoments[k] ?? 0))).toBeLessThan(1e-14 /* rounding */);
}

it('withMass is the arrow built with that mass measured', () => {
  const heavier = withMass(nominal.flying, si(0.031));
  expect(heavier.mass).toBe(0.031);
  expectAlike(heavier.attitude, rebuilt({ mass: 0.031 }));
});

it('withBalance is the arrow built with that balance measured', () => {
  const moved = withBalance(nominal.flying, si(0.47));
  expect(moved.balance).toBe(0.47);
  expectAlike(moved.attitude, rebuilt({ balance: 0.47 }));
});

it('an arrow that flies as a point only takes the number', () => {
  const point = pointArrow(0.03, 0.006, 2);
  expect(withMass(point, si(0.02))).toEqual({ ...point, mass: 0.02 });
  expect(withBalance(point, si(0.5))).toEqual({ ...point, balance: 0.5 });
});
