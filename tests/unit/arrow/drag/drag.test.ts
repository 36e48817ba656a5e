import { expect, it } from 'vitest';
import { type BoundaryLayer, immersion } from '../../../../src/arrow/drag/boundary-layer.ts';
import { dragCoefficient, dragTerms } from '../../../../src/arrow/drag/drag.ts';
import { builtUpDrag, constantDrag, tabulatedDrag } from '../../../../src/arrow/drag/drag-curve.ts';
import { finSlope } from '../../../../src/arrow/lift/normal-force.ts';
import { bodyInterference, spinPerMetre } from '../../../../src/arrow/lift/spin.ts';
import type { ArrowParts, PointShape } from '../../../../src/arrow/parts/parts.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { DEGREE, fieldPoint, INCH, ridgeCampParts, ridgeCampVanes } from '../ridge-camp-arrow.ts';

/** 281 ft/s in standard sea-level air: 85.65 x 0.0062484 / 1.4607e-5. */
const HUNTING = 36_640;
const layers: readonly BoundaryLayer[] = ['laminar', 'transition', 'turbulent'];
const without = (parts: ArrowParts): ArrowParts => ({ ...parts, vanes: undefined });
const coefficient = (parts: ArrowParts, name: string, layer: BoundaryLayer = 'transition') =>
  dragTerms(parts, layer, HUNTING).find((term) => term.name === name)?.coefficient ?? 0;

it('a common hunting arrow has 2 to 2.6 on its section', () => {
  const sum = dragCoefficient(ridgeCampParts, 'transition', HUNTING);
  expect(sum).toBeGreaterThan(2);
  expect(sum).toBeLessThan(2.6);
});

it('turbulence from the tip costs more than a late transition, and that more than a laminar shaft', () => {
  const [laminar = 0, transition = 0, turbulent = 0] = layers.map((layer) =>
    dragCoefficient(ridgeCampParts, layer, HUNTING),
  );
  expect(laminar).toBeLessThan(transition);
  expect(transition).toBeLessThan(turbulent);
});

it('the sum is the sum of its terms, each with a Reynolds number, an area and a source', () => {
  const terms = dragTerms(ridgeCampParts, 'transition', HUNTING);
  const sum = terms.reduce((total, term) => total + term.coefficient, 0);
  expect(dragCoefficient(ridgeCampParts, 'transition', HUNTING)).toBe(sum);
  for (const term of terms) {
    expect(term.coefficient).toBeGreaterThanOrEqual(0);
    expect(term.reynolds).toBeGreaterThan(0);
    expect(term.area).toBeGreaterThan(0);
    expect(term.source).not.toBe('');
  }
});

it("the shaft's Reynolds number is on its length, the vanes' on their mean chord", () => {
  const terms = new Map(dragTerms(ridgeCampParts, 'transition', HUNTING).map((term) => [term.name, term]));
  // 28.5 in shaft + 1.3 in point + 0.25 in nock; mean chord 1.5 in; diameter 0.246 in.
  expect(terms.get('shaft-friction')?.reynolds).toBeCloseTo((HUNTING * 30.05) / 0.246, 3);
  expect(terms.get('vane-friction')?.reynolds).toBeCloseTo((HUNTING * 1.5) / 0.246, 3);
});

it('a bare shaft has no vane terms and keeps its laminar layer to the end', () => {
  const names = dragTerms(without(ridgeCampParts), 'laminar', HUNTING).map(({ name }) => name);
  expect(names).toEqual(['shaft-friction', 'point', 'base']);
  expect(coefficient(without(ridgeCampParts), 'shaft-friction', 'laminar')).toBeLessThan(
    coefficient(ridgeCampParts, 'shaft-friction', 'laminar'),
  );
});

it('points rank bullet, field, mechanical, blunt', () => {
  const shapes: readonly PointShape[] = ['bullet', 'field', 'mechanical', 'blunt'];
  const drags = shapes.map((shape) =>
    coefficient({ ...ridgeCampParts, point: { ...fieldPoint, shape } }, 'point'),
  );
  expect(drags).toEqual(drags.toSorted((a, b) => a - b));
  expect(new Set(drags).size).toBe(4);
});

it('fixed blades cost by their area', () => {
  const bladed = (count: number) =>
    coefficient(
      {
        ...ridgeCampParts,
        point: {
          ...fieldPoint,
          shape: 'fixed_blade',
          blades: {
            count,
            length: si(1.1 * INCH),
            cuttingDiameter: si(1.125 * INCH),
            thickness: si(0.03 * INCH),
          },
        },
      },
      'blades',
    );
  expect(bladed(2)).toBeGreaterThan(0.1);
  expect(bladed(4) / bladed(2)).toBeCloseTo(2, 12);
});

it('a collar thicker than the shaft costs, one no thicker does not', () => {
  const collar = { mass: si<'kg'>(0.001), length: si<'m'>(0.0127) };
  const flush = { ...collar, diameter: ridgeCampParts.shaft.outerDiameter };
  expect(coefficient({ ...ridgeCampParts, collar }, 'collar')).toBeGreaterThan(0.1);
  expect(coefficient({ ...ridgeCampParts, collar: flush }, 'collar')).toBe(0);
});

it('square edges cost more than round ones', () => {
  const edges = (leadingEdge: 'square' | 'round', trailingEdge: 'square' | 'round' | 'tapered') =>
    coefficient({ ...ridgeCampParts, vanes: { ...ridgeCampVanes, leadingEdge, trailingEdge } }, 'vane-edges');
  expect(edges('square', 'square')).toBeGreaterThan(edges('round', 'square'));
  expect(edges('round', 'round') / edges('round', 'square')).toBeCloseTo(0.5, 12);
  expect(edges('round', 'tapered')).toBe(0);
});

it('the helical costs vane lift times incidence, strip by strip, to 1e-6', () => {
  const fin = {
    rootChord: 2.1 * INCH,
    tipChord: 0.9 * INCH,
    height: 0.5 * INCH,
    sweep: 1.2 * INCH,
    rootRadius: 0.123 * INCH,
  };
  const angle = 3 * DEGREE;
  const spin = spinPerMetre(fin, angle, bodyInterference(fin));
  const section = (Math.PI / 4) * (0.246 * INCH) ** 2;
  const n = 4000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const share = (i + 0.5) / n;
    const chord = fin.rootChord + (fin.tipChord - fin.rootChord) * share;
    const incidence = angle - spin * (fin.rootRadius + share * fin.height);
    sum += (incidence ** 2 * chord * fin.height) / n;
  }
  const slope = finSlope(fin, 0.75 * INCH ** 2);
  expect(coefficient(ridgeCampParts, 'helical') / ((3 * slope * sum) / section)).toBeCloseTo(1, 6);
});

it('straight vanes cost nothing for a helical', () => {
  const straight: ArrowParts = { ...ridgeCampParts, vanes: { ...ridgeCampVanes, turn: 'none' } };
  expect(coefficient(straight, 'helical')).toBe(0);
});

it("a vane stands partly in the shaft's layer, a taller one less so", () => {
  const body = { length: 0.76, diameter: 0.00625, trip: 0.68 };
  for (const layer of layers) {
    const shares = [0.002, 0.006, 0.0127, 0.05].map((height) =>
      immersion(body, layer, HUNTING, 0.68, height),
    );
    expect(shares).toEqual(shares.toSorted((a, b) => a - b));
    expect(shares.every((share) => share > 0 && share < 1)).toBe(true);
  }
});

it("the layer's thickness makes up for the friction ahead of it", () => {
  // A vane exactly as tall as the layer feels the mean of f^2, 7/9; find that height and check the momentum it stands for.
  const body = { length: 0.76, diameter: 0.00625, trip: 0.68 };
  let [low, high] = [1e-4, 0.05];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (immersion(body, 'turbulent', HUNTING, 0.68, middle) < 7 / 9) low = middle;
    else high = middle;
  }
  // About 8 mm: a plate's would be 0.37 x / R^(1/5) = 12 mm, and the cylinder's spreads over a growing girth.
  expect(low).toBeGreaterThan(0.006);
  expect(low).toBeLessThan(0.012);
});

it.each(layers)(
  'the %s curve is the build-up to 2e-4 above a Reynolds number of 6000, 5e-5 above 12 000',
  (layer) => {
    const curve = builtUpDrag(ridgeCampParts, layer);
    for (let reynolds = 6000; reynolds < 100_000; reynolds += 333)
      expect(
        Math.abs(curve.at(reynolds) / dragCoefficient(ridgeCampParts, layer, reynolds) - 1),
      ).toBeLessThan(2e-4 /* relative */);
  },
);

it('the curve is smooth: its slope does not jump, from rest to far beyond any arrow', () => {
  const { at } = builtUpDrag(ridgeCampParts, 'transition');
  const slope = (x: number, side: number) => (at(x + side) - at(x)) / side;
  for (let x = 0; x <= 102_000; x += 500) {
    expect(Number.isFinite(at(x))).toBe(true);
    expect(Math.abs(slope(x, 1e-3) - slope(x, -1e-3))).toBeLessThan(1e-6 /* per unit of Reynolds number */);
  }
  expect(Number.isFinite(at(1e7))).toBe(true);
});

it('a given coefficient is the same at every speed', () => {
  expect([0, 1e4, 1e6].map(constantDrag(2.4).at)).toEqual([2.4, 2.4, 2.4]);
});

it('a table is met at its points and held beyond its ends', () => {
  const { at } = tabulatedDrag([
    { reynolds: 1e4, coefficient: 1.5 },
    { reynolds: 2e4, coefficient: 1.6 },
    { reynolds: 3e4, coefficient: 2.6 },
  ]);
  expect([0, 1e4, 2e4, 3e4, 1e5].map(at)).toEqual([1.5, 1.5, 1.6, 2.6, 2.6]);
  expect(tabulatedDrag([{ reynolds: 1e4, coefficient: 1.5 }]).at(5)).toBe(1.5);
});

it('air at rest has no drag coefficient', () => {
  expect(() => dragTerms(ridgeCampParts, 'transition', 0)).toThrow(DomainError);
  expect(() => dragTerms(ridgeCampParts, 'transition', Number.NaN)).toThrow(DomainError);
});

it('a drag coefficient of 0, an empty table and nonsense throw', () => {
  expect(() => constantDrag(0)).toThrow(DomainError);
  expect(() => constantDrag(Number.NaN)).toThrow(DomainError);
  expect(() => tabulatedDrag([])).toThrow(DomainError);
  expect(() => tabulatedDrag([{ reynolds: 1, coefficient: 50 }])).toThrow(DomainError);
});
