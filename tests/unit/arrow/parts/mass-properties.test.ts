import { expect, it } from 'vitest';
import { frontOfCentre } from '../../../../src/arrow/parts/front-of-centre.ts';
import { massProperties } from '../../../../src/arrow/parts/mass-properties.ts';
import { arrowLength, piecesOf } from '../../../../src/arrow/parts/pieces.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, GRAIN, INCH, ridgeCampParts } from '../ridge-camp-arrow.ts';

const inches = (metres: number) => metres / INCH;
const grains = (kilograms: number) => kilograms / GRAIN;

/*
 * By hand, in grains and inches from the groove; the shaft starts at 0.25 and ends at 28.75.
 *   nock    10      at  0.125               1.25
 *   shaft  270.75   at 14.5              3925.875
 *   vanes   21      at  1 + 2.1 - 1.31     37.59     (centroid 1.31 behind the front: [1.2 (2.1 + 1.8) + 7.11] / 9)
 *   insert  20      at 28.25              565
 *   point  125      at 28.75 + 1.3/4     3634.375
 *   wrap     8      at  4                  32
 *   sum    454.75                        8196.09     balance 18.0233
 */
it('mass and balance are those of the hand calculation', () => {
  const whole = massProperties(piecesOf(ridgeCampParts));
  expect(grains(whole.mass)).toBeCloseTo(454.75, 9);
  expect(inches(whole.balance)).toBeCloseTo(8196.09 / 454.75, 6);
});

it('the pieces lie where the hand calculation puts them', () => {
  const places = piecesOf(ridgeCampParts).map(({ name, mass, place }) => [
    name,
    Number(grains(mass).toFixed(4)),
    Number(inches(place).toFixed(4)),
  ]);
  expect(places).toEqual([
    ['nock', 10, 0.125],
    ['shaft', 270.75, 14.5],
    ['vanes', 21, 1.79],
    ['insert', 20, 28.25],
    ['point', 125, 29.075],
    ['wrap', 8, 4],
  ]);
});

it('front-of-centre is counted on groove to shaft end', () => {
  // (18.0233 - 28.75/2) / 28.75 = 12.69 %
  const balance = massProperties(piecesOf(ridgeCampParts)).balance;
  expect(arrowLength(ridgeCampParts) / INCH).toBeCloseTo(28.75, 12);
  expect(100 * frontOfCentre(balance, arrowLength(ridgeCampParts))).toBeCloseTo(12.69, 2);
});

it('a dumb-bell has the inertia of two masses on a line', () => {
  const end = (place: number) => ({
    name: 'end',
    mass: si<'kg'>(0.01),
    place: si<'m'>(place),
    length: si<'m'>(0),
    gyrationSquared: 4e-6,
  });
  const whole = massProperties([end(0.1), end(0.5)]);
  expect(whole.balance).toBeCloseTo(0.3, 15);
  expect(whole.axialInertia).toBeCloseTo(2 * 0.01 * 4e-6, 18);
  // m d^2/2 + m k^2 / 2 each: 2 x 0.01 x (0.2^2 + 2e-6)
  expect(whole.transverseInertia).toBeCloseTo(0.02 * (0.04 + 2e-6), 15);
});

it('a tube alone has the inertia of the handbook', () => {
  const [, shaft] = piecesOf(ridgeCampParts);
  if (shaft === undefined) throw new Error('no shaft');
  const whole = massProperties([shaft]);
  const [ro, ri, L] = [0.123 * INCH, 0.083 * INCH, 28.5 * INCH];
  expect(whole.axialInertia / ((shaft.mass * (ro ** 2 + ri ** 2)) / 2)).toBeCloseTo(1, 12);
  expect(whole.transverseInertia / ((shaft.mass * (3 * (ro ** 2 + ri ** 2) + L ** 2)) / 12)).toBeCloseTo(
    1,
    12,
  );
});

it('blades take their steel from the head and spread it outward', () => {
  const plain = massProperties(piecesOf(ridgeCampParts));
  const bladed = massProperties(
    piecesOf({ ...ridgeCampParts, point: { ...fieldPoint, shape: 'fixed_blade' } }),
  );
  expect(bladed.mass).toBeCloseTo(plain.mass, 15);
  expect(bladed.axialInertia).toBeGreaterThan(plain.axialInertia);
});

it('a collar sits on the front end', () => {
  const pieces = piecesOf({ ...ridgeCampParts, collar: { mass: si(15 * GRAIN), length: si(0.5 * INCH) } });
  const collar = pieces.find(({ name }) => name === 'collar');
  expect(inches(collar?.place ?? Number.NaN)).toBeCloseTo(28.5, 9);
});

it('frontOfCentre of an arrow without length throws', () => {
  expect(() => frontOfCentre(si(0.45), si(0))).toThrow(DomainError);
});
