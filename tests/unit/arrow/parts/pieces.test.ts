import { describe, expect, it } from 'vitest';
import { assumedParts } from '../../../../src/arrow/parts/assumed-arrow.ts';
import { massProperties } from '../../../../src/arrow/parts/mass-properties.ts';
import type { ArrowParts, Blades } from '../../../../src/arrow/parts/parts.ts';
import { nockLength, type Piece, piecesOf } from '../../../../src/arrow/parts/pieces.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, GRAIN, INCH, ridgeCampParts } from '../ridge-camp-arrow.ts';

const pieceOf = (parts: ArrowParts, name: string): Piece =>
  piecesOf(parts).find((piece) => piece.name === name) ?? expect.fail(`no ${name}`);
const near = (value: number, byHand: number, unit: number): void =>
  expect(Math.abs(value / unit / byHand - 1)).toBeLessThan(1e-9 /* relative: exact by hand, rounding */);

/** Radius of gyration squared in in2, and length in in. */
const expectSpread = ({ length, gyrationSquared }: Piece, inches: number, squareInches: number): void => {
  near(length, inches, INCH);
  near(gyrationSquared, squareInches, INCH ** 2);
};

describe('how far round the shaft and along it each piece spreads', () => {
  it('nock: a solid rod of the shaft, twice as long as its middle lies from the groove', () =>
    expectSpread(pieceOf(ridgeCampParts, 'nock'), 0.5, 0.123 ** 2 / 2));
  it('shaft: a tube, (ro^2 + ri^2)/2', () =>
    expectSpread(pieceOf(ridgeCampParts, 'shaft'), 28.5, (0.123 ** 2 + 0.083 ** 2) / 2));
  it('insert: a solid rod in the bore', () =>
    expectSpread(pieceOf(ridgeCampParts, 'insert'), 1, 0.083 ** 2 / 2));
  it('wrap: all of it on the skin, at one place', () => {
    const { length, gyrationSquared } = pieceOf(ridgeCampParts, 'wrap');
    expect(length).toBe(0);
    near(gyrationSquared, 0.123 ** 2, INCH ** 2);
  });
  it('point: 0.4 of its radius squared, between a cylinder 0.5 and a cone 0.3', () =>
    expectSpread(pieceOf(ridgeCampParts, 'point'), 1.3, 0.4 * 0.123 ** 2));
  it('vanes: the mean of r^2 over their area', () => {
    // Chord 2.1 at 0.123 in, 0.9 at 0.623 in: integral of c r^2 = 1.5 x 0.123^2 x 0.5 + 1.3 x 0.123 x 0.5^2 + 0.4 x 0.5^3
    // = 0.01134675 + 0.039975 + 0.05 = 0.10132175 in4, over 0.75 in2.
    expectSpread(pieceOf(ridgeCampParts, 'vanes'), 2.1, 0.10132175 / 0.75);
  });
  it('collar: a tube half a millimetre thick, or as described', () => {
    const collar = { mass: si<'kg'>(15 * GRAIN), length: si<'m'>(0.5 * INCH) };
    const [inner, outer] = [0.123 * 25.4, 0.123 * 25.4 + 0.5]; // mm
    const plain = pieceOf({ ...ridgeCampParts, collar }, 'collar');
    near(plain.gyrationSquared, (inner ** 2 + outer ** 2) / 2, 1e-6);
    const thick = pieceOf({ ...ridgeCampParts, collar: { ...collar, diameter: si(0.3 * INCH) } }, 'collar');
    expectSpread(thick, 0.5, (0.123 ** 2 + 0.15 ** 2) / 2);
    near(thick.place, 28.5, INCH);
  });
});

describe('blades', () => {
  const bladed = (thickness: number): ArrowParts => ({
    ...ridgeCampParts,
    point: { ...fieldPoint, shape: 'fixed_blade', blades: { ...usual, thickness: si(thickness * INCH) } },
  });
  const usual: Blades = {
    count: 3,
    length: si(1.1 * INCH),
    cuttingDiameter: si(1.125 * INCH),
    thickness: si(0.03 * INCH),
  };

  it('weigh as steel, a third of their length ahead of the shaft', () => {
    // 3 x 1.1 x 0.4395/2 in2 x 0.03 in = 0.02175525 in3 = 0.356505 cm3, of 7.85 g/cm3: 2.79856 g.
    const { mass, place } = pieceOf(bladed(0.03), 'blades');
    expect(Math.abs(mass - 2.79856e-3)).toBeLessThan(1e-8 /* kg: rounding by hand */);
    near(place, 28.75 + 1.1 / 3, INCH);
  });
  it('spread over their length, and round the shaft as their area does', () => {
    // Chord 1.1 at r = 0.123 falling to 0 at 0.5625, height 0.4395: mean of r^2 = r^2 + 2 r h/3 + h^2/6.
    const meanSquare = 0.123 ** 2 + (2 * 0.123 * 0.4395) / 3 + 0.4395 ** 2 / 6;
    expectSpread(pieceOf(bladed(0.03), 'blades'), 1.1, meanSquare);
  });
  it('leave the rest of the weight to the point, and never less than two fifths of it', () => {
    const rest = 125 * GRAIN - 2.79856e-3;
    expect(Math.abs(pieceOf(bladed(0.03), 'point').mass - rest)).toBeLessThan(
      1e-8 /* kg: rounding by hand */,
    );
    near(pieceOf(bladed(0.2), 'blades').mass, 0.6 * 125, GRAIN);
    near(pieceOf(bladed(0.2), 'point').mass, 0.4 * 125, GRAIN);
  });
});

describe('nocks', () => {
  it('are a quarter of an inch from groove to shaft unless measured', () => {
    near(nockLength({ mass: si(0.001) }), 0.25, INCH);
    expect(nockLength({ mass: si(0.001), length: si(0.004) })).toBe(0.004);
  });
});

describe('pieces of an arrow with little on it', () => {
  it('are nock, shaft and point', () => {
    const { shaft, nock, point } = ridgeCampParts;
    expect(piecesOf({ shaft, nock, point }).map(({ name }) => name)).toEqual(['nock', 'shaft', 'point']);
  });
});

describe('the plain hunting arrow that stands in', () => {
  it('is the example without its wrap, with a bore of 0.7 of the diameter', () => {
    // 8196.09 - 32 gr in over 446.75 gr; see the hand calculation of the example's mass and balance.
    const stand = assumedParts(si(0.006));
    const { mass, balance } = massProperties(piecesOf(stand));
    near(mass, 446.75, GRAIN);
    expect(Math.abs(balance / INCH - 8164.09 / 446.75)).toBeLessThan(
      1e-5 /* in: the sum was made to 0.005 */,
    );
    expect(stand.shaft.outerDiameter).toBe(0.006);
    near(stand.shaft.innerDiameter, 4.2, 1e-3);
    expect(stand.vanes?.angle).toBeCloseTo(0.05236, 5); // 3 x pi/180
  });
});
