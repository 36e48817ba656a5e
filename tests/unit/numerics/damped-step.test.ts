import { describe, expect, it } from 'vitest';
import {
  acceleration,
  columnLengths,
  covarianceOf,
  dampedStep,
  linearise,
  predictedReduction,
  reducible,
  scaledLength,
  transposedTimes,
} from '../../../src/numerics/damped-step.ts';

const unbounded = (change: number): number => change;
const close = (found: readonly number[], expected: readonly number[]) => {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(
      1e-14 /* a few roundings of numbers near 1 */,
    );
};
/** Two parameters that pull on one another: r + J s is 0 at s = (2, 1). */
const tied = [
  [1, 1],
  [0, 1],
];
const away = [-3, -1];

describe('a damped step, by hand', () => {
  const apart = [
    [1, 0],
    [0, 2],
  ];

  it.each([
    [0, [1, 1], [1, 1]],
    // Each minimises (J s - b)^2 + damping (D s)^2: s = J b / (J^2 + damping D^2).
    [1, [1, 1], [1 / 2, 4 / 5]],
    [1, [2, 4], [1 / 5, 4 / 20]],
    [0.25, [2, 4], [1 / 2, 4 / 8]],
  ])('with a damping of %d and scales %j', (damping, scales, expected) => {
    const { step, moving } = dampedStep(linearise(apart, [-1, -2], scales, [0, 1]), damping, unbounded);
    close(step, expected);
    expect(moving).toEqual([0, 1]);
  });

  it.each([[[1, 1]], [[2, 3]], [[0.25, 8]]])(
    'that would pass a bound stops there, and the other parameter makes the best of it, with scales %j',
    (scales) => {
      const problem = linearise(tied, away, scales, [0, 1]);
      close(dampedStep(problem, 0, unbounded).step, [2, 1]);
      // With the second held at 1/2, the first takes all that is left of the first residual: 3 - 1/2.
      const held = dampedStep(problem, 0, (change, j) => (j === 1 ? Math.min(change, 0.5) : change));
      close(held.step, [2.5, 0.5]);
      expect(held.moving).toEqual([0]);
    },
  );

  it('of which every parameter meets a bound goes to all of them', () => {
    const { step, moving } = dampedStep(linearise(tied, away, [1, 1], [0, 1]), 0, () => 0.25);
    expect(step).toEqual([0.25, 0.25]);
    expect(moving).toEqual([]);
  });

  it('leaves a parameter that is not free where it is', () => {
    // The first alone: it takes away the first residual.
    const { step, moving } = dampedStep(linearise(tied, away, [1, 1], [0]), 0, unbounded);
    close(step, [3, 0]);
    expect(moving).toEqual([0]);
  });
});

describe('what a step is worth', () => {
  it('the part of (3, 4) that a column along the first axis can take away is 3^2', () =>
    expect(reducible(linearise([[1], [0]], [3, 4], [1], [0]))).toBeCloseTo(9, 12));

  it('a step of 1 that leaves 2 of 3 takes 9 - 4 away, whatever the scale', () => {
    for (const scale of [1, 5])
      expect(predictedReduction(linearise([[1], [0]], [-3, 4], [scale], [0]), [1])).toBeCloseTo(5, 12);
  });

  it('the length of (3, 4) in scales of 1 and 1/2 is that of (3, 2)', () =>
    expect(scaledLength(linearise(tied, away, [1, 0.5], [0, 1]), [3, 4])).toBeCloseTo(Math.hypot(3, 2), 14));
});

describe('the correction of a step', () => {
  it.each([[[1, 1]], [[2, 4]]])(
    'undoes the curvature as an undamped step undoes residuals, scales %j',
    (scales) => {
      const problem = linearise(tied, away, scales, [0, 1]);
      // J a = -c for c = (1, 2): a = (1, -2).
      close(acceleration(problem, dampedStep(problem, 0, unbounded), [1, 2]), [1, -2]);
    },
  );

  it('is damped as the step is: J c / (J^2 + damping), turned round', () => {
    const problem = linearise([[2]], [-1], [1], [0]);
    close(acceleration(problem, dampedStep(problem, 4, unbounded), [3]), [-6 / 8]);
  });

  it('leaves a parameter at its bound', () => {
    const problem = linearise(tied, away, [1, 1], [0, 1]);
    const held = dampedStep(problem, 0, (change, j) => (j === 1 ? Math.min(change, 0.5) : change));
    close(acceleration(problem, held, [1, 2]), [-1, 0]);
  });
});

describe('sums over columns', () => {
  const J = [
    [3, 1],
    [4, 2],
  ];
  it('lengths and products, by hand; none of no rows', () => {
    expect(columnLengths(J)).toEqual([5, Math.sqrt(5)]);
    expect(transposedTimes(J, [1, 2])).toEqual([11, 5]);
    expect([columnLengths([]), transposedTimes([], [])]).toEqual([[], []]);
  });

  it('the covariance of two parameters measured apart is 1 over the squares of their columns', () => {
    const C = covarianceOf(
      [
        [2, 0],
        [0, 4],
        [0, 0],
      ],
      1e-8,
    );
    close(C.flat(), [1 / 4, 0, 0, 1 / 16]);
  });

  it('and of two that are tied the inverse of J`J = [1 1; 1 2], which is [2 -1; -1 1]', () =>
    close(covarianceOf(tied, 1e-8).flat(), [2, -1, -1, 1]));

  it.each([
    [1e-6, true],
    [1e-8, false],
  ])(
    'a column that differs from another by 1e-6 is one of it where columns are known to %d: %j',
    (accuracy, same) => {
      const nearly = [
        [1, 1],
        [0, 1e-6],
      ];
      const found = () => covarianceOf(nearly, accuracy);
      if (same) expect(found).toThrow(expect.objectContaining({ code: 'singular' }));
      else expect((found()[1]?.[1] ?? 0) * 1e-12).toBeCloseTo(1, 9);
    },
  );
});
