import { describe, expect, it } from 'vitest';
import {
  differenceJacobian,
  jacobianAccuracy,
  residualsAt,
} from '../../../src/numerics/difference-jacobian.ts';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import { recorded } from './recorded.ts';

const model = ([a = 0, b = 0]: readonly number[]) => [Math.exp(a * b), a - b ** 2, 3];
const derivatives = ([a = 0, b = 0]: readonly number[]) => [
  [b * Math.exp(a * b), a * Math.exp(a * b)],
  [1, -2 * b],
  [0, 0],
];
const place = [0.7, -1.3];
const error = (found: readonly (readonly number[])[], at = place) =>
  Math.max(
    ...derivatives(at).flatMap((row, i) =>
      row.map((value, j) => Math.abs(value - (found[i]?.[j] ?? Number.NaN))),
    ),
  );

describe('differenceJacobian', () => {
  it('has a row for every residual and a column for every parameter, to 1e-10 by central differences', () =>
    expect(error(differenceJacobian(model, place, model(place)))).toBeLessThan(1e-10 /* relative */));
  it('comes to 1e-7 by forward differences, in half the calls', () => {
    const { asked, call } = recorded(model);
    expect(error(differenceJacobian(call, place, model(place), { differences: 'forward' }))).toBeLessThan(
      1e-7 /* relative */,
    );
    expect(asked.length).toBe(2);
  });
  it('steps wide enough for residuals that are only good to their stated precision', () => {
    const rough = (p: readonly number[]) => model(p).map((value) => Math.round(value * 1e8) / 1e8);
    expect(error(differenceJacobian(rough, place, rough(place)))).toBeGreaterThan(1e-4);
    expect(error(differenceJacobian(rough, place, rough(place), { precision: 1e-8 }))).toBeLessThan(
      1e-4 /* relative: the noise of 1e-8 over the step */,
    );
  });
  it('steps by the typical change, so that a parameter at 0 in small units is not overshot', () => {
    const wiggle = ([x = 0]: readonly number[]) => [Math.sin(1e6 * x)];
    const slope = (typical: number) =>
      differenceJacobian(wiggle, [0], [0], { typical: [typical] })[0]?.[0] ?? 0;
    expect(Math.abs(slope(1e-6) / 1e6 - 1)).toBeLessThan(1e-9 /* relative: 1e-10 by central differences */);
    expect(Math.abs(slope(1) / 1e6 - 1)).toBeGreaterThan(0.1);
  });
  it.each(['central', 'forward'] as const)('asks for nothing outside the bounds (%s)', (differences) => {
    const bounds = { lower: [0.7, -2], upper: [1, -1.3] };
    const { asked, call } = recorded(model);
    const found = differenceJacobian(call, place, model(place), {
      ...bounds,
      differences,
    });
    expect(asked.every(([a = 0, b = 0]) => a >= 0.7 && b <= -1.3)).toBe(true);
    expect(error(found)).toBeLessThan(1e-4 /* one-sided: the step, 1e-5, times half the bend */);
  });
  it('steps to the other side where the residuals cannot be had', () => {
    const half = ([x = 0]: readonly number[]) => {
      if (x > 1) throw new NumericalError('non-finite', 'beyond 1');
      return [x ** 2];
    };
    expect(Math.abs((differenceJacobian(half, [1], [1])[0]?.[0] ?? 0) - 2)).toBeLessThan(
      1e-4 /* one-sided differences */,
    );
  });
  it('throws where neither side can be had', () =>
    expect(() => differenceJacobian(([x = 0]) => [x === 1 ? 1 : Number.NaN], [1], [1])).toThrow(
      expect.objectContaining({ code: 'non-finite' }),
    ));
});

describe('residualsAt', () => {
  it('is null for a NumericalError and for what is not finite', () => {
    expect(residualsAt(() => [1, Infinity], [])).toBe(null);
    expect(
      residualsAt(() => {
        throw new NumericalError('not-bracketed', 'no hit');
      }, []),
    ).toBe(null);
  });
  it('lets other errors pass', () =>
    expect(() =>
      residualsAt(() => {
        throw new RangeError('a slip');
      }, []),
    ).toThrow(RangeError));
});

it('jacobianAccuracy follows precision and formula', () => {
  expect(jacobianAccuracy({ jacobian: () => [] })).toBe(2 ** -52);
  expect(Math.abs(jacobianAccuracy({ precision: 1e-9 }) - 1e-6)).toBeLessThan(1e-18 /* rounding */);
  expect(Math.abs(jacobianAccuracy({ precision: 1e-8, differences: 'forward' }) - 1e-4)).toBeLessThan(
    1e-18 /* rounding */,
  );
});
