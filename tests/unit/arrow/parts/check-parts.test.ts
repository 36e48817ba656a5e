import { describe, expect, it } from 'vitest';
import type { ArrowTotals } from '../../../../src/arrow/arrow.ts';
import { requireParts, requireTotals } from '../../../../src/arrow/parts/check-parts.ts';
import type { ArrowParts, Blades, Vanes } from '../../../../src/arrow/parts/parts.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, INCH, ridgeCampParts, ridgeCampVanes } from '../ridge-camp-arrow.ts';

const { shaft, nock } = ridgeCampParts;
const withParts = (change: Partial<ArrowParts>): ArrowParts => ({ ...ridgeCampParts, ...change });
const withVanes = (change: Partial<Vanes>): ArrowParts =>
  withParts({ vanes: { ...ridgeCampVanes, ...change } });
const blades: Blades = {
  count: 3,
  length: si(1.1 * INCH),
  cuttingDiameter: si(1.125 * INCH),
  thickness: si(0.03 * INCH),
};
const withBlades = (change: Partial<Blades>): ArrowParts =>
  withParts({ point: { ...fieldPoint, shape: 'fixed_blade', blades: { ...blades, ...change } } });
const { NaN: unknown, POSITIVE_INFINITY: endless } = Number;

/** What takes a number, the numbers it takes and those it refuses, of which `says` is in the sentence. */
interface Limit {
  readonly says: RegExp;
  readonly of: (value: number) => ArrowParts;
  readonly taken: readonly number[];
  readonly refused: readonly number[];
}

const positive = { taken: [1e-6], refused: [0, -1e-6, unknown, endless] };
const notNegative = { taken: [0, 1e-6], refused: [-1e-6, unknown, endless] };
const count = { taken: [1, 8], refused: [0, 9, 2.5, unknown] };

const limits: readonly Limit[] = [
  {
    says: /shaft length/,
    of: (length) => withParts({ vanes: undefined, shaft: { ...shaft, length: si(length) } }),
    ...positive,
  },
  {
    says: /shaft diameter/,
    of: (outer) => withParts({ shaft: { ...shaft, outerDiameter: si(outer), innerDiameter: si(outer / 2) } }),
    ...positive,
  },
  {
    says: /shaft mass per length/,
    of: (massPerLength) => withParts({ shaft: { ...shaft, massPerLength: si(massPerLength) } }),
    ...positive,
  },
  {
    says: /shaft inner diameter/,
    of: (inner) => withParts({ shaft: { ...shaft, innerDiameter: si(inner) } }),
    taken: [0, 0.2459 * INCH],
    refused: [-1e-6, 0.246 * INCH, 0.3 * INCH, unknown],
  },
  { says: /nock mass/, of: (mass) => withParts({ nock: { ...nock, mass: si(mass) } }), ...notNegative },
  {
    says: /nock length/,
    of: (length) => withParts({ nock: { ...nock, length: si(length) } }),
    ...notNegative,
  },
  {
    says: /point mass/,
    of: (mass) => withParts({ point: { ...fieldPoint, mass: si(mass) } }),
    ...notNegative,
  },
  {
    says: /point length/,
    of: (length) => withParts({ point: { ...fieldPoint, length: si(length) } }),
    ...positive,
  },
  {
    says: /insert mass/,
    of: (mass) => withParts({ insert: { mass: si(mass), length: si(INCH) } }),
    ...notNegative,
  },
  {
    says: /collar mass/,
    of: (mass) => withParts({ collar: { mass: si(mass), length: si(INCH) } }),
    ...notNegative,
  },
  {
    says: /mass of wrap/,
    of: (mass) => withParts({ others: [{ name: 'wrap', mass: si(mass), fromNock: si(0.1) }] }),
    ...notNegative,
  },
  {
    says: /place of wrap/,
    of: (fromNock) => withParts({ others: [{ name: 'wrap', mass: si(0.001), fromNock: si(fromNock) }] }),
    taken: [-0.01, 0, 0.8],
    refused: [unknown, endless],
  },
  { says: /number of blades/, of: (value) => withBlades({ count: value }), ...count },
  { says: /blade length/, of: (length) => withBlades({ length: si(length) }), ...positive },
  {
    says: /blade height/,
    of: (across) => withBlades({ cuttingDiameter: si(across) }),
    taken: [0.25 * INCH],
    refused: [0.246 * INCH, 0.2 * INCH, unknown],
  },
  { says: /number of vanes/, of: (value) => withVanes({ count: value }), ...count },
  { says: /vane mass/, of: (mass) => withVanes({ mass: si(mass) }), ...notNegative },
  { says: /vane root chord/, of: (rootChord) => withVanes({ rootChord: si(rootChord) }), ...positive },
  { says: /vane tip chord/, of: (tipChord) => withVanes({ tipChord: si(tipChord) }), ...notNegative },
  { says: /vane height/, of: (height) => withVanes({ height: si(height) }), ...positive },
  { says: /vane thickness/, of: (thickness) => withVanes({ thickness: si(thickness) }), ...notNegative },
  {
    says: /vane angle/,
    of: (angle) => withVanes({ angle: si(angle) }),
    taken: [0, 0.349], // 0.349 rad is 20 degrees
    refused: [-1e-6, 0.35, 1, unknown],
  },
  {
    // The front of a vane 2 in long lies between the groove and the shaft's end, 28.75 in from it.
    says: /front of the vanes/,
    of: (fromNock) => withVanes({ rootChord: si(2 * INCH), fromNock: si(fromNock * INCH) }),
    taken: [-1.99, 26.74],
    refused: [-2, -3, 26.75, 30, unknown],
  },
];

describe.each(limits)('requireParts, $says', ({ says, of, taken, refused }) => {
  it.each([...taken])('takes %d', (value) => expect(() => requireParts(of(value))).not.toThrow());
  it.each([...refused])('refuses %d and says which', (value) => {
    expect(() => requireParts(of(value))).toThrow(DomainError);
    expect(() => requireParts(of(value))).toThrow(says);
  });
});

describe.each<[keyof ArrowTotals, RegExp]>([
  ['mass', /arrow mass/],
  ['diameter', /shaft diameter/],
  ['balance', /balance point/],
  ['length', /arrow length/],
])('requireTotals, %s', (total, says) => {
  it('takes what is above 0, and nothing at all', () => {
    expect(() => requireTotals({ [total]: 1e-6 })).not.toThrow();
    expect(() => requireTotals({ [total]: undefined })).not.toThrow();
  });
  it.each(positive.refused)('refuses %d and says which', (value) => {
    expect(() => requireTotals({ [total]: value })).toThrow(says);
  });
});
