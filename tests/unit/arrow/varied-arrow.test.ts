import { expect, it } from 'vitest';
import { buildArrow } from '../../../src/arrow/build.ts';
import type { Attitude, Fins, FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { AS_COUNTED, withBalance, withLift, withMass } from '../../../src/arrow/varied-arrow.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from '../flight/hunting-arrow.ts';
import { pointArrow, spinningArrow } from '../flight/point-arrow.ts';

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
  for (const [k, moment] of b.shaftMoments.entries())
    expect(Math.abs((a.shaftMoments[k] ?? Number.NaN) - moment)).toBeLessThan(1e-14 /* rounding */);
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

/** Nose 2 at 0.3 m, blades 8 at 0.25 m, vanes 20 at -0.4 m with a wake that takes 5 more of them: sums 30, -5.4, 3.88. */
const fins: Fins = {
  vanes: { slope: 20, place: si(-0.4), count: 3 },
  blades: { slope: 8, place: si(0.25), count: 4 },
  wake: { slope: 5, halfAngle: si(0.016) },
  uncertainty: { vanes: 0.1, blades: 0.2, wake: 0.35 },
};
const lifting = (change: Partial<Attitude> = {}): FlyingArrow => ({
  ...spinningArrow,
  attitude: {
    ...(spinningArrow.attitude ?? expect.fail('no attitude')),
    normalSlope: 30,
    firstMoment: si(-5.4),
    secondMoment: si(3.88),
    fins,
    ...change,
  },
});
const attitudeOf = ({ attitude }: FlyingArrow): Attitude => attitude ?? expect.fail('no attitude');
const close = (value: number | undefined, byHand: number): void =>
  expect(Math.abs((value ?? Number.NaN) - byHand)).toBeLessThan(1e-13 /* rounding */);

it('withLift by hand: vanes a tenth more, blades half, the wake twice', () => {
  // Whole vanes 25 x 1.1 = 27.5, of which the wake takes 5 x 1.1 x 2 = 11: 16.5 are left, 3.5 fewer at -0.4 m. Blades 4 fewer
  // at 0.25 m. Sums: 30 - 3.5 - 4; -5.4 + 1.4 - 1; 3.88 - 3.5 x 0.16 - 4 x 0.0625.
  const arrow = withLift(lifting(), { vanes: 1.1, blades: 0.5, wake: 2 });
  const { normalSlope, firstMoment, secondMoment, fins: now, spinPerMetre } = attitudeOf(arrow);
  close(normalSlope, 22.5);
  close(firstMoment, -5);
  close(secondMoment, 3.07);
  close(now?.vanes?.slope, 16.5);
  close(now?.blades?.slope, 4);
  close(now?.wake?.slope, 11);
  expect([now?.vanes?.place, now?.blades?.count, now?.wake?.halfAngle]).toEqual([-0.4, 4, 0.016]);
  expect(spinPerMetre).toBe(attitudeOf(lifting()).spinPerMetre);
});

it('withLift as counted changes nothing', () =>
  expect(attitudeOf(withLift(lifting(), AS_COUNTED))).toEqual(attitudeOf(lifting())));

it('withLift changes what is there alone', () => {
  const onlyVanes = withLift(lifting({ fins: { ...fins, blades: null, wake: null } }), {
    vanes: 1.1,
    blades: 3,
    wake: 3,
  });
  close(attitudeOf(onlyVanes).normalSlope, 32);
  expect(attitudeOf(onlyVanes).fins).toMatchObject({ blades: null, wake: null });
  const onlyBlades = withLift(lifting({ fins: { ...fins, vanes: null, wake: null } }), {
    vanes: 3,
    blades: 1.5,
    wake: 3,
  });
  close(attitudeOf(onlyBlades).normalSlope, 34);
  expect(attitudeOf(onlyBlades).fins).toMatchObject({ vanes: null, wake: null });
});

it('withLift leaves an arrow as it is of whose fins nothing is known', () => {
  const sums = lifting({ fins: undefined });
  expect(withLift(sums, { ...AS_COUNTED, vanes: 2 })).toBe(sums);
  const point = pointArrow(0.03, 0.006, 2);
  expect(withLift(point, { ...AS_COUNTED, vanes: 2 })).toBe(point);
});

it('withBalance by hand: 10 mm forward, every fin stands 10 mm farther back', () => {
  const base = lifting();
  const moved = attitudeOf(withBalance(base, si(base.balance + 0.01)));
  close(moved.fins?.vanes?.place, -0.41);
  close(moved.fins?.blades?.place, 0.24);
  expect(moved.fins?.wake).toEqual(fins.wake);
  // -5.4 - 0.3; 3.88 + 2 x 0.01 x 5.4 + 30e-4
  close(moved.firstMoment, -5.7);
  close(moved.secondMoment, 3.991);
  const without = lifting({ fins: { ...fins, vanes: null, blades: null } });
  expect(attitudeOf(withBalance(without, si(0.5))).fins).toMatchObject({ vanes: null, blades: null });
  expect(attitudeOf(withBalance(lifting({ fins: undefined }), si(0.5))).fins).toBeUndefined();
});
