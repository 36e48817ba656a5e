import fc from 'fast-check';
import { expect, it } from 'vitest';
import { buildArrow } from '../../src/arrow/build.ts';
import { dragCoefficient } from '../../src/arrow/drag/drag.ts';
import { spinPerMetre } from '../../src/arrow/lift/spin.ts';
import type { ArrowParts, Vanes } from '../../src/arrow/parts/parts.ts';
import { si } from '../../src/quantities/quantity.ts';

/** Each run builds an arrow, about a millisecond. */
const runs = { seed: 20_250_301, numRuns: 100 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const oneOf = <T extends string>(...words: readonly T[]) => fc.constantFrom(...words);

const vanesOf = fc.record({
  count: fc.integer({ min: 3, max: 4 }),
  mass: between(0.1e-3, 1e-3).map(si<'kg'>),
  rootChord: between(0.03, 0.1).map(si<'m'>),
  tipChord: between(0.005, 0.03).map(si<'m'>),
  height: between(0.006, 0.016).map(si<'m'>),
  thickness: between(0.2e-3, 1e-3).map(si<'m'>),
  fromNock: between(0.01, 0.04).map(si<'m'>),
  angle: between(0.005, 0.1).map(si<'rad'>),
  turn: oneOf('right', 'left'),
});

const partsOf: fc.Arbitrary<ArrowParts & { readonly vanes: Vanes }> = fc.record({
  shaft: fc.record({
    length: between(0.6, 0.8).map(si<'m'>),
    outerDiameter: between(0.0053, 0.0095).map(si<'m'>),
    innerDiameter: between(0.003, 0.005).map(si<'m'>),
    massPerLength: between(0.012, 0.035).map(si<'kg/m'>),
  }),
  insert: fc.record({ mass: between(0, 6e-3).map(si<'kg'>), length: between(0.01, 0.04).map(si<'m'>) }),
  point: fc.record({
    mass: between(4e-3, 20e-3).map(si<'kg'>),
    shape: oneOf('field', 'bullet', 'blunt', 'mechanical'),
    length: between(0.01, 0.05).map(si<'m'>),
  }),
  nock: fc.record({ mass: between(0.3e-3, 2e-3).map(si<'kg'>) }),
  vanes: vanesOf,
});

const reynoldsOf = between(8000, 60_000);
const layerOf = oneOf('laminar', 'transition', 'turbulent');

it('an arrow is slender, its margin and moments belong together, and all of it is finite', () => {
  fc.assert(
    fc.property(partsOf, (parts) => {
      const { flying, staticMargin, length } = buildArrow({ parts });
      const attitude = flying.attitude;
      if (attitude === null || staticMargin === null || length === null)
        throw new Error('parts tell all of it');
      expect(attitude.axialInertia).toBeGreaterThan(0);
      // A shaft is a hundred diameters long: its inertia across is thousands of times that along.
      expect(attitude.transverseInertia / attitude.axialInertia).toBeGreaterThan(500);
      expect(flying.balance).toBeGreaterThan(0);
      expect(flying.balance).toBeLessThan(length);
      expect(Math.abs(-attitude.firstMoment / attitude.normalSlope / staticMargin - 1)).toBeLessThan(
        1e-9 /* relative, rounding in sums of moments that cancel */,
      );
      // Cauchy and Schwarz on slopes that are all positive.
      expect(attitude.secondMoment * attitude.normalSlope).toBeGreaterThanOrEqual(attitude.firstMoment ** 2);
    }),
    runs,
  );
});

it('mirrored vanes spin the other way, and nothing else changes', () => {
  fc.assert(
    fc.property(partsOf, reynoldsOf, (parts, reynolds) => {
      const turn = parts.vanes.turn === 'right' ? 'left' : 'right';
      const one = buildArrow({ parts });
      const other = buildArrow({ parts: { ...parts, vanes: { ...parts.vanes, turn } } });
      const [a, b] = [one.flying.attitude, other.flying.attitude];
      if (a === null || b === null) throw new Error('parts tell the attitude');
      expect(b).toEqual({ ...a, spinPerMetre: -a.spinPerMetre });
      expect(Math.sign(a.spinPerMetre)).toBe(parts.vanes.turn === 'right' ? 1 : -1);
      expect(other.flying.drag.at(reynolds)).toBe(one.flying.drag.at(reynolds));
      expect({ ...other.flying, attitude: null, drag: null }).toEqual({
        ...one.flying,
        attitude: null,
        drag: null,
      });
    }),
    runs,
  );
});

it('a heavier point moves the balance forward and the margin out', () => {
  fc.assert(
    fc.property(partsOf, (parts) => {
      const light = buildArrow({ parts });
      const heavy = buildArrow({
        parts: { ...parts, point: { ...parts.point, mass: si(parts.point.mass + 1e-3) } },
      });
      expect(heavy.flying.mass - light.flying.mass).toBeCloseTo(1e-3, 12);
      expect(heavy.flying.balance).toBeGreaterThan(light.flying.balance);
      expect(heavy.staticMargin ?? 0).toBeGreaterThan(light.staticMargin ?? 0);
      expect(heavy.frontOfCentre ?? 0).toBeGreaterThan(light.frontOfCentre ?? 0);
    }),
    runs,
  );
});

it('taller vanes drag more and steady more', () => {
  fc.assert(
    fc.property(partsOf, layerOf, reynoldsOf, (parts, layer, reynolds) => {
      const taller = { ...parts, vanes: { ...parts.vanes, height: si<'m'>(parts.vanes.height * 1.1) } };
      expect(dragCoefficient(taller, layer, reynolds)).toBeGreaterThan(
        dragCoefficient(parts, layer, reynolds),
      );
      expect(buildArrow({ parts: taller }).staticMargin ?? 0).toBeGreaterThan(
        buildArrow({ parts }).staticMargin ?? 0,
      );
    }),
    runs,
  );
});

it('an arrow drawn larger, at the same Reynolds number, has the same coefficients', () => {
  fc.assert(
    fc.property(partsOf, layerOf, reynoldsOf, between(0.5, 2), (parts, layer, reynolds, f) => {
      const grow = (length: number) => si<'m'>(f * length);
      const { shaft, insert, point, nock, vanes } = parts;
      const larger: ArrowParts = {
        shaft: {
          ...shaft,
          length: grow(shaft.length),
          outerDiameter: grow(shaft.outerDiameter),
          innerDiameter: grow(shaft.innerDiameter),
        },
        insert,
        point: { ...point, length: grow(point.length) },
        nock: { ...nock, length: grow(0.00635) },
        vanes: {
          ...vanes,
          rootChord: grow(vanes.rootChord),
          tipChord: grow(vanes.tipChord),
          height: grow(vanes.height),
          thickness: grow(vanes.thickness),
          fromNock: grow(vanes.fromNock),
        },
      };
      const ratio = dragCoefficient(larger, layer, reynolds) / dragCoefficient(parts, layer, reynolds);
      expect(Math.abs(ratio - 1)).toBeLessThan(1e-9 /* relative, rounding */);
      const slope = (of: ArrowParts) => buildArrow({ parts: of }).flying.attitude?.normalSlope ?? 0;
      expect(Math.abs(slope(larger) / slope(parts) - 1)).toBeLessThan(1e-9 /* relative, rounding */);
    }),
    runs,
  );
});

it('settled spin lies between no slip at the tip and no slip at the root, and is proportional to the angle', () => {
  fc.assert(
    fc.property(partsOf, ({ vanes, shaft }) => {
      const fin = { ...vanes, sweep: 0, rootRadius: shaft.outerDiameter / 2 };
      const spin = spinPerMetre(fin, vanes.angle);
      expect(spin).toBeGreaterThan(vanes.angle / (fin.rootRadius + fin.height));
      expect(spin).toBeLessThan(vanes.angle / fin.rootRadius);
      expect(Math.abs(spinPerMetre(fin, 2 * vanes.angle) / (2 * spin) - 1)).toBeLessThan(
        1e-12 /* relative, rounding */,
      );
    }),
    runs,
  );
});

it('the drag of any such arrow stays between 0.8 and 12 and has no jump', () => {
  fc.assert(
    fc.property(partsOf, layerOf, reynoldsOf, (parts, boundaryLayer, reynolds) => {
      const { at } = buildArrow({ parts, choices: { boundaryLayer } }).flying.drag;
      expect(at(reynolds)).toBeGreaterThan(0.8);
      expect(at(reynolds)).toBeLessThan(12);
      // 1 in Reynolds number is about 2 mm/s: no part of a coefficient of 1e-3 can hang on it.
      expect(Math.abs(at(reynolds + 1) - at(reynolds))).toBeLessThan(1e-3 /* of the coefficient */);
    }),
    runs,
  );
});
