import { describe, expect, it } from 'vitest';
import { immersion } from '../../../../src/arrow/drag/boundary-layer.ts';
import { dragTerms } from '../../../../src/arrow/drag/drag.ts';
import { longBody } from '../../../../src/arrow/drag/long-body.ts';
import type { ArrowParts, Blades, PointShape } from '../../../../src/arrow/parts/parts.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, INCH, ridgeCampParts, ridgeCampVanes } from '../ridge-camp-arrow.ts';

/*
 * Every term of one arrow by hand, in inches: shaft 0.246 across, so a section of 0.0475292 in2; 30.05 from tip to groove; vanes
 * 2.1 and 0.9 long, 0.5 high, 0.03 thick, so 0.75 in2 each on a mean chord of 1.5.
 */
const REYNOLDS = 36_640;
const termsOf = (parts: ArrowParts, reynolds = REYNOLDS) =>
  new Map(dragTerms(parts, 'transition', reynolds).map((term) => [term.name, term]));
const example = termsOf(ridgeCampParts);
const named = (terms: ReturnType<typeof termsOf>, name: Parameters<typeof terms.get>[0]) =>
  terms.get(name) ?? expect.fail(`no ${name}`);

const usualBlades: Blades = {
  count: 3,
  length: si(1.1 * INCH),
  cuttingDiameter: si(1.125 * INCH),
  thickness: si(0.03 * INCH),
};
const bladed: ArrowParts = {
  ...ridgeCampParts,
  point: { ...fieldPoint, shape: 'fixed_blade', blades: usualBlades },
};

/** What the example's vanes feel of the dynamic pressure; the test of the layer sums it up by strips. */
const felt = immersion(longBody(ridgeCampParts), 'transition', REYNOLDS, 26.95 * INCH, 0.5 * INCH);

const expectTerm = (
  { coefficient, reynolds, area }: ReturnType<typeof named>,
  byHand: { coefficient: number; reynolds: number; squareInches: number },
): void => {
  expect(Math.abs(coefficient / byHand.coefficient - 1)).toBeLessThan(2e-5 /* relative: hand figures */);
  expect(Math.abs(reynolds / byHand.reynolds - 1)).toBeLessThan(2e-5 /* relative: hand figures */);
  expect(Math.abs(area / INCH ** 2 / byHand.squareInches - 1)).toBeLessThan(
    2e-5 /* relative: hand figures */,
  );
};

describe('dragTerms by hand', () => {
  it('friction of the shaft: 0.0034932 (see its layer) on pi 0.246 (30.05 - 0.4 x 1.3) = 22.8217 in2', () =>
    expectTerm(named(example, 'shaft-friction'), {
      coefficient: (0.0034932 * 22.8217) / 0.0475292,
      reynolds: 4_475_740,
      squareInches: 22.8217,
    }));

  it('friction of the vanes: 2 x 0.074 x 223 415^(-1/5) (1 + 2 x 0.03/1.5) x 3 x 0.75 in2, of which the layer leaves some', () =>
    expectTerm(named(example, 'vane-friction'), {
      // 223 415^(-1/5) = 0.0851486
      coefficient: (felt * (2 * 0.074 * 0.0851486 * 1.04 * 2.25)) / 0.0475292,
      reynolds: 223_415,
      squareInches: 4.5,
    }));

  it('edges of the vanes, round in front and square behind: 0.12 x 3 x 0.03 x 0.5 in2', () =>
    expectTerm(named(example, 'vane-edges'), {
      coefficient: (felt * 0.12 * 0.045) / 0.0475292,
      reynolds: (REYNOLDS * 0.03) / 0.246,
      squareInches: 0.045,
    }));

  it('a square front edge adds 0.85 cos2 of its sweep: 0.5 over hypot(0.5, 1.2), so 0.85 x 0.25/1.69', () => {
    const square = termsOf({ ...ridgeCampParts, vanes: { ...ridgeCampVanes, leadingEdge: 'square' } });
    const ratio = named(square, 'vane-edges').coefficient / named(example, 'vane-edges').coefficient;
    expect(Math.abs(ratio - (0.85 * (0.25 / 1.69) + 0.12) / 0.12)).toBeLessThan(1e-12 /* rounding */);
  });

  it('the helical is counted on the vanes, on their mean chord', () => {
    const { reynolds, area } = named(example, 'helical');
    expect(Math.abs(reynolds / 223_415 - 1)).toBeLessThan(2e-5 /* relative: hand figures */);
    expect(Math.abs(area / INCH ** 2 - 2.25)).toBeLessThan(1e-12 /* in2, rounding */);
  });

  it('the base: 0.12 on the section', () =>
    expectTerm(named(example, 'base'), { coefficient: 0.12, reynolds: REYNOLDS, squareInches: 0.0475292 }));

  // Of a cone 0.8 sin2 of its half angle: the field point's over 0.4 x 1.3 = 0.52 in, 0.8 x 0.015129/(0.015129 + 0.2704); the
  // stem's over 1.3 in, 0.8 x 0.015129/(0.015129 + 1.69). The others as Hoerner has them.
  it.each<[PointShape, number]>([
    ['field', 0.0423887],
    ['fixed_blade', 0.0070981],
    ['bullet', 0.01],
    ['mechanical', 0.2],
    ['blunt', 0.85],
  ])('a %s point costs %d on the section', (shape, coefficient) =>
    expectTerm(named(termsOf({ ...ridgeCampParts, point: { ...fieldPoint, shape } }), 'point'), {
      coefficient,
      reynolds: REYNOLDS,
      squareInches: 0.0475292,
    }),
  );

  it('blades: triangles 1.1 long and 0.4395 high, 0.725175 in2 of them, and 3 x 0.03 x 0.4395 in2 of rear edge', () => {
    // Mean chord 0.55 in: R = 36 640 x 0.55/0.246 = 81 918.7, R^(-1/5) = 0.1040695; 1 + 2 x 0.03/0.55 = 1.109091.
    const friction = 2 * 0.074 * 0.1040695 * 1.109091 * 0.725175;
    expectTerm(named(termsOf(bladed), 'blades'), {
      coefficient: (friction + 0.12 * 0.039555) / 0.0475292,
      reynolds: 81_918.7,
      squareInches: 1.45035,
    });
  });

  it('blades that are not described are three of 1.1 in by 1.125 in and 0.03 in thick', () => {
    const undescribed = termsOf({ ...ridgeCampParts, point: { ...fieldPoint, shape: 'fixed_blade' } });
    expect(named(undescribed, 'blades').coefficient).toBe(named(termsOf(bladed), 'blades').coefficient);
  });

  it('a collar is half a millimetre thick all round unless described: 0.32 ((7.2484/6.2484)^2 - 1) = 0.110622', () => {
    const collar = { mass: si<'kg'>(0.001), length: si<'m'>(0.0127) };
    const term = named(termsOf({ ...ridgeCampParts, collar }), 'collar');
    expectTerm(term, {
      coefficient: 0.1106224,
      reynolds: (REYNOLDS * 7.2484) / 6.2484,
      squareInches: 10.60036 / 25.4 ** 2,
    });
  });

  it('a collar thinner than the shaft costs nothing, and takes nothing off', () => {
    const collar = { mass: si<'kg'>(0.001), length: si<'m'>(0.0127), diameter: si<'m'>(0.005) };
    expect(named(termsOf({ ...ridgeCampParts, collar }), 'collar').coefficient).toBe(0);
  });

  it('only what is there has a term, from tip to base', () => {
    const names = (parts: ArrowParts) => [...termsOf(parts).keys()];
    const shaft = ['shaft-friction', 'vane-friction', 'vane-edges', 'helical', 'point'];
    expect(names(ridgeCampParts)).toEqual([...shaft, 'base']);
    expect(names(bladed)).toEqual([...shaft, 'blades', 'base']);
  });

  it('asks for a Reynolds number above 0', () =>
    expect(() => dragTerms(ridgeCampParts, 'transition', -1)).toThrow(DomainError));
});

describe('longBody', () => {
  it('runs from the tip to the groove, and its laminar layer to the front of the vanes', () => {
    // 1.3 + 28.5 + 0.25 in; vanes begin 1 + 2.1 in ahead of the groove.
    const { length, diameter, trip } = longBody(ridgeCampParts);
    expect(Math.abs(length / INCH - 30.05)).toBeLessThan(1e-12 /* in, rounding */);
    expect(Math.abs(trip / INCH - 26.95)).toBeLessThan(1e-12 /* in, rounding */);
    expect(diameter).toBe(ridgeCampParts.shaft.outerDiameter);
  });

  it('of a bare shaft is laminar to its end', () => {
    const { length, trip } = longBody({ ...ridgeCampParts, vanes: undefined });
    expect(trip).toBe(length);
  });
});
