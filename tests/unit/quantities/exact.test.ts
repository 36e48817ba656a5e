import { expect, it } from 'vitest';
import { DEGREE, GRAIN, INCH, POUND_FORCE, STANDARD_GRAVITY, YARD } from '../../../src/quantities/exact.ts';

// NIST Special Publication 811 (2008), appendix B.8: the factors that it prints in bold are exact.
it.each([
  ['inch', INCH, 2.54e-2],
  ['yard', YARD, 9.144e-1],
  ['grain', GRAIN, 6.479_891e-5],
  ['acceleration of free fall, standard', STANDARD_GRAVITY, 9.806_65],
])('%s is the factor as printed', (_name, value, printed) => expect(value).toBe(printed));

it('follows from the definitions of one another to the last bits', () => {
  const near = (value: number, other: number) =>
    expect(Math.abs(value / other - 1)).toBeLessThan(4 * Number.EPSILON); // rounding of one product
  near(36 * INCH, YARD);
  near(7000 * GRAIN * STANDARD_GRAVITY, POUND_FORCE);
  near(360 * DEGREE, 2 * Math.PI);
});
