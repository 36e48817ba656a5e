import { expect, it } from 'vitest';
import { dragCoefficient } from '../../../../src/arrow/drag/drag.ts';
import { builtUpDrag, constantDrag, tabulatedDrag } from '../../../../src/arrow/drag/drag-curve.ts';
import { NumericalError } from '../../../../src/numerics/numerical-error.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { ridgeCampParts } from '../ridge-camp-arrow.ts';

it('at rest the curve is the build-up at a Reynolds number of 150: rounded off, not without limit', () => {
  const { at } = builtUpDrag(ridgeCampParts, 'turbulent');
  expect(at(0)).toBe(dragCoefficient(ridgeCampParts, 'turbulent', 150));
  // At its places the table is met; 150 beside 60 000 is nothing: half its square, 3e-6 of the Reynolds number.
  expect(Math.abs(at(60_000) / dragCoefficient(ridgeCampParts, 'turbulent', 60_000) - 1)).toBeLessThan(
    1e-6 /* relative: a fifth of 3e-6 at most */,
  );
});

it('the curve is the build-up up to a Reynolds number of 100 000', () => {
  const { at } = builtUpDrag(ridgeCampParts, 'turbulent');
  for (const reynolds of [99_000, 99_750, 100_000])
    expect(Math.abs(at(reynolds) / dragCoefficient(ridgeCampParts, 'turbulent', reynolds) - 1)).toBeLessThan(
      1e-5 /* relative: the end interval of the table, which has no curvature at its end */,
    );
});

it.each(['laminar', 'transition', 'turbulent'] as const)(
  'a table four times as wide, of a %s layer',
  (layer) => {
    const [fine, wide] = [builtUpDrag(ridgeCampParts, layer), builtUpDrag(ridgeCampParts, layer, 2000)];
    // From 30 m/s to 110 m/s of a 6 mm shaft.
    for (let reynolds = 12_300; reynolds < 45_000; reynolds += 700)
      expect(Math.abs(wide.at(reynolds) / fine.at(reynolds) - 1)).toBeLessThan(
        1e-3 /* relative: as promised */,
      );
  },
);

it('coefficients are above 0 and below 20', () => {
  expect(constantDrag(19.999).at(1)).toBe(19.999);
  for (const coefficient of [-1, 0, 20, Number.POSITIVE_INFINITY])
    expect(() => constantDrag(coefficient)).toThrow(DomainError);
  const table = (coefficient: number) => [
    { reynolds: 1e4, coefficient: 2 },
    { reynolds: 2e4, coefficient },
  ];
  expect(() => tabulatedDrag(table(20))).toThrow(DomainError);
  expect(() => tabulatedDrag(table(0))).toThrow(DomainError);
});

it('a table without points is refused for that, and one whose Reynolds numbers fall too', () => {
  expect(() => tabulatedDrag([])).toThrow(/number of drag points/);
  expect(() =>
    tabulatedDrag([
      { reynolds: 2e4, coefficient: 2 },
      { reynolds: 1e4, coefficient: 2 },
    ]),
  ).toThrow(NumericalError);
});
