import { describe, expect, it } from 'vitest';
import { linearise } from '../../../src/numerics/damped-step.ts';
import { changeAllowed, descend } from '../../../src/numerics/descent.ts';
import type { Residuals } from '../../../src/numerics/difference-jacobian.ts';
import type { ParameterSpace } from '../../../src/numerics/parameter-space.ts';
import { recorded } from './recorded.ts';

interface Start {
  readonly x?: number;
  readonly damping?: number;
  readonly stepTolerance?: number;
  readonly space?: ParameterSpace;
}

/** One descent in one parameter from x = 0, where the last residual has a slope of 1 and the others none. */
function descent(f: Residuals, { x = 0, damping = 1e-3, stepTolerance = 1e-12, space = {} }: Start = {}) {
  const here = f([x]);
  const problem = linearise(
    here.map((_, i) => [i === here.length - 1 ? 1 : 0]),
    here,
    [1],
    [0],
  );
  const from = { parameters: [x], residuals: here, sumOfSquares: here.reduce((sum, r) => sum + r * r, 0) };
  const { asked, call } = recorded(f);
  const found = descend(problem, from, call, { space, stepTolerance, damping });
  return { asked: asked.map(([place = Number.NaN]) => place), found };
}
const close = (found: readonly number[], expected: readonly number[]) => {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(
      1e-9 /* rounding, of curvatures from differences */,
    );
};

describe('a descent, by hand', () => {
  it('of a straight line looks at a tenth of its step, then at the step, and eases its damping to a tenth', () => {
    // s = 2/(1 + damping); it reduces by just what was predicted.
    const step = 2 / 1.001;
    const { asked, found } = descent(([x = 0]) => [x - 2]);
    close(asked, [step / 10, step]);
    expect(found).toMatchObject({ ended: false, flat: false });
    if (!found.ended) {
      expect(found.damping).toBeCloseTo(1e-4, 15);
      close(found.place.parameters, [step]);
      close(found.place.residuals, [step - 2]);
    }
  });

  it('does not look for a bend where less than a thousandth of the residuals can go', () => {
    const { asked } = descent(([x = 0]) => [1000, x - 0.5]);
    close(asked, [0.5 / 1.001]);
    // Just above it does.
    expect(descent(([x = 0]) => [1000, x - 1.001]).asked).toHaveLength(2);
  });

  it('bends by half the second derivative: x + x^2/10 - 1 comes to 1 - 0.1', () => {
    const { asked } = descent(([x = 0]) => [x + (x * x) / 10 - 1], { damping: 1e-20 });
    close(asked, [0.1, 0.9]);
  });

  it('shortens a step that would bend by more than half of itself', () => {
    // x + 3 x^2 - 1 with a damping of 1: a step of 1/2, its curvature 6/4, the bend 6/4 / 2 / 2 = 3/8. With a damping of 2: a
    // step
    // of 1/3, curvature 6/9, bend 6/9 / 3 / 2 = 1/9.
    const { asked, found } = descent(([x = 0]) => [x + 3 * x * x - 1], { damping: 1 });
    close(asked, [1 / 20, 1 / 30, 1 / 3 - 1 / 9]);
    expect(found.ended).toBe(false);
  });

  it('takes a bend of just half the step', () => {
    // x + 2 x^2 - 1 with a damping of 1: a step of 1/2, its curvature 1, the bend 1/4.
    close(descent(([x = 0]) => [x + 2 * x * x - 1], { damping: 1 }).asked, [1 / 20, 1 / 4]);
  });

  it('damps ever more, by 2, 4, 8 and so on, until no parameter changes by more than ten times its size', () => {
    // From 1 to 101; dampings 1, 2 and 8 leave steps of 50, 33 and 11, and the next, 64, one of 100/65.
    const { asked } = descent(([x = 0]) => [x - 101], { x: 1, damping: 1, space: { typical: [1] } });
    close(asked, [1 + 10 / 65, 1 + 100 / 65]);
  });

  it('takes a step of exactly ten sizes', () => {
    const { asked } = descent(([x = 0]) => [x - 20], { damping: 1, space: { typical: [1] } });
    close(asked, [1, 10]);
  });

  it('damps more where a step leads uphill', () => {
    // Beyond 0.3 it is worse: dampings 1 and 2 of a residual of -1 leave steps of 1/2 and 1/3, and 8 leaves 1/9.
    const { asked, found } = descent(([x = 0]) => [2000, x > 0.3 ? 2 : x - 1], { damping: 1 });
    close(asked, [1 / 2, 1 / 3, 1 / 9]);
    // As good as predicted: 1 - 1 = 0, so a tenth of 8.
    if (!found.ended) expect(found.damping).toBeCloseTo(0.8, 12);
    expect(found.ended).toBe(false);
  });

  it('eases by how good the step was: half of what was predicted leaves the damping', () => {
    // With a damping of 1 the step of a residual of -1 is 1/2, predicted to take 1 - 1/4 away. It takes half of that: (2/2 -
    // 1)^3 = 0.
    const left = Math.sqrt(1 - 0.75 / 2);
    const { found } = descent(([x = 0]) => [2000, x === 0 ? -1 : left], { damping: 1 });
    if (!found.ended) expect(found.damping).toBeCloseTo(1, 6);
    expect(found.ended).toBe(false);
  });

  it('raises its damping where a step was worth far less than predicted: by 1 - (2 gain - 1)^3', () => {
    // A tenth of 3/4: 1 + 0.8^3.
    const left = Math.sqrt(1 - 0.075);
    const { found } = descent(([x = 0]) => [2000, x === 0 ? -1 : left], { damping: 1 });
    if (!found.ended) expect(found.damping).toBeCloseTo(1.512, 5);
    expect(found.ended).toBe(false);
  });

  it('never eases below 1e-20', () => {
    const { found } = descent(([x = 0]) => [x - 2], { damping: 1e-20 });
    if (!found.ended) expect(found.damping).toBe(1e-20);
    expect(found.ended).toBe(false);
  });

  it('is at its end where a step is negligible, without a call', () => {
    const nearly = { x: 1 - 1e-4, stepTolerance: 1e-3, space: { typical: [1] } };
    expect(descent(([x = 0]) => [x - 1], nearly)).toEqual({ asked: [], found: { ended: 'step' } });
    expect(descent(([x = 0]) => [x - 1], { ...nearly, stepTolerance: 1e-5 }).found.ended).toBe(false);
  });

  it('is at its end where steps lead nowhere until they are negligible', () => {
    const { asked, found } = descent(([x = 0]) => [2000, x === 0 ? -1 : 1], { stepTolerance: 1e-3 });
    expect(found).toEqual({ ended: 'step' });
    expect(asked.length).toBeGreaterThan(3);
  });

  it('is at its end where what could be gained is below the rounding of the sum, and is not gained', () =>
    expect(descent(([x = 0]) => [1e9, x === 0 ? -1 : 1])).toMatchObject({
      found: { ended: 'reduction' },
      asked: { length: 1 },
    }));

  it('stops at a bound', () => {
    const { asked } = descent(([x = 0]) => [2000, x - 1], { space: { upper: [0.25] } });
    close(asked, [0.25]);
  });
});

describe('changeAllowed', () => {
  const allowed = changeAllowed({ lower: [-1], upper: [2] }, [0.1]);
  it('hands on a change within the bounds to the last bit', () => expect(allowed(0.2, 0)).toBe(0.2));
  it('ends at a bound', () => {
    expect(allowed(5, 0)).toBe(1.9);
    expect(allowed(-5, 0)).toBe(-1.1);
  });
});
