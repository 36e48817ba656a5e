import { describe, expect, it } from 'vitest';
import {
  cause,
  combined,
  covariance,
  mainCause,
  standardError,
} from '../../../../src/advice/builds/error-form.ts';

const chronograph = cause('chronograph', 0.4);
const own = cause('own', 0.3);

describe('error forms', () => {
  it('independent causes add in squares: 3, 4, 5', () =>
    expect(
      Math.abs(
        standardError(
          combined([
            [1, chronograph],
            [1, own],
          ]),
        ) - 0.5,
      ),
    ).toBeLessThan(1e-15 /* rounding */));
  it('a shared cause leaves the difference', () => {
    const [a, b] = [
      combined([
        [1, chronograph],
        [1, own],
      ]),
      chronograph,
    ];
    expect(
      Math.abs(
        standardError(
          combined([
            [1, a],
            [-1, b],
          ]),
        ) - 0.3,
      ),
    ).toBeLessThan(1e-15 /* rounding */);
    expect(
      standardError(
        combined([
          [1, b],
          [-1, b],
        ]),
      ),
    ).toBe(0);
  });
  it('covariance is that of the shared causes alone', () => {
    expect(
      Math.abs(
        covariance(
          combined([
            [2, chronograph],
            [1, own],
          ]),
          chronograph,
        ) - 0.32,
      ),
    ).toBeLessThan(1e-15 /* rounding */);
    expect(covariance(chronograph, own)).toBe(0);
  });
  it('counts causes of one kind together', () => {
    const main = mainCause(
      combined([
        [3, cause('law:a', 1)],
        [3, cause('law:b', 1)],
        [4, cause('shots:x', 1)],
      ]),
    );
    expect(main?.kind).toBe('law');
    expect(Math.abs((main?.share ?? 0) - 18 / 34)).toBeLessThan(1e-15 /* rounding */);
  });
  it('names the cause that weighs most, by its share of the variance', () => {
    const main = mainCause(
      combined([
        [1, chronograph],
        [-1, own],
      ]),
    );
    expect(main?.kind).toBe('chronograph');
    expect(Math.abs((main?.share ?? 0) - 0.64)).toBeLessThan(1e-15 /* rounding */);
    expect(mainCause(new Map())).toBeNull();
    expect(mainCause(cause('nothing', 0))).toBeNull();
  });
});
