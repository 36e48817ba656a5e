import { expect, it } from 'vitest';
import { buildArrow } from '../../../src/arrow/build.ts';
import { massProperties } from '../../../src/arrow/parts/mass-properties.ts';
import type { ArrowParts } from '../../../src/arrow/parts/parts.ts';
import { piecesOf } from '../../../src/arrow/parts/pieces.ts';
import { DomainError } from '../../../src/quantities/domain-error.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { fieldPoint, GRAIN, INCH, ridgeCampParts, ridgeCampVanes } from './ridge-camp-arrow.ts';

const added = massProperties(piecesOf(ridgeCampParts));

it('from parts alone nothing is assumed and nothing differs', () => {
  const arrow = buildArrow({ parts: ridgeCampParts });
  expect(arrow.flying.mass).toBe(added.mass);
  expect(arrow.flying.balance).toBe(added.balance);
  expect([arrow.differences, arrow.assumptions, arrow.dragFrom]).toEqual([[], [], 'parts']);
  expect(arrow.flying.fletchRadius / INCH).toBeCloseTo(0.123 + 0.5, 9);
  expect(arrow.stiffness).toBeCloseTo(8.488, 3);
});

it('a measured mass wins, scales the inertias and is reported beside the sum', () => {
  const mass = si<'kg'>(452 * GRAIN);
  const { flying, differences } = buildArrow({ parts: ridgeCampParts, totals: { mass } });
  expect(flying.mass).toBe(mass);
  expect(differences).toEqual([{ what: 'mass', measured: mass, fromParts: added.mass }]);
  expect((flying.attitude?.axialInertia ?? 0) / added.axialInertia).toBeCloseTo(452 / 454.75, 9);
  expect((flying.attitude?.transverseInertia ?? 0) / added.transverseInertia).toBeCloseTo(452 / 454.75, 9);
});

it('a measured balance wins and moves the margin with it', () => {
  const balance = si<'m'>(17.9 * INCH);
  const plain = buildArrow({ parts: ridgeCampParts });
  const arrow = buildArrow({ parts: ridgeCampParts, totals: { balance } });
  expect(arrow.flying.balance).toBe(balance);
  expect(arrow.centreOfPressure).toBe(plain.centreOfPressure);
  expect((plain.staticMargin ?? 0) - (arrow.staticMargin ?? 0)).toBeCloseTo(added.balance - balance, 12);
  expect(arrow.differences).toEqual([{ what: 'balance', measured: balance, fromParts: added.balance }]);
});

it('a measured diameter replaces the listed one everywhere', () => {
  const diameter = si<'m'>(0.25 * INCH);
  const arrow = buildArrow({ parts: ridgeCampParts, totals: { diameter } });
  expect(arrow.flying.diameter).toBe(diameter);
  expect(arrow.parts?.shaft.outerDiameter).toBe(diameter);
  expect(arrow.differences.map(({ what }) => what)).toEqual(['diameter']);
});

it('a measured length counts for front-of-centre', () => {
  const arrow = buildArrow({
    parts: ridgeCampParts,
    totals: { balance: si(18 * INCH), length: si(28.5 * INCH) },
  });
  expect(100 * (arrow.frontOfCentre ?? 0)).toBeCloseTo(13.16, 2);
  expect(arrow.differences.map(({ what }) => what)).toEqual(['balance', 'length']);
});

it('a given coefficient replaces the build-up, which stays to be looked at', () => {
  const arrow = buildArrow({ parts: ridgeCampParts, totals: { dragCoefficient: 2.4 } });
  expect(arrow.flying.drag.at(3e4)).toBe(2.4);
  expect(arrow.dragFrom).toBe('given');
  expect(arrow.dragTerms?.('transition', 3e4).length).toBeGreaterThan(4);
});

it('mass, diameter and a coefficient make a point that flies', () => {
  const arrow = buildArrow({ totals: { mass: si(0.0293), diameter: si(0.00625), dragCoefficient: 2.4 } });
  expect(arrow.flying.attitude).toBeNull();
  expect(arrow.flying.drag.at(3e4)).toBe(2.4);
  expect(arrow.dragTerms).toBeNull();
  expect(arrow.assumptions).toEqual(['vanes of a plain hunting arrow', 'balance of a plain hunting arrow']);
  expect(arrow.frontOfCentre).toBeNull();
});

it('mass and diameter alone get the drag of a plain hunting arrow, and it says so', () => {
  const arrow = buildArrow({ totals: { mass: si(0.0293), diameter: si(0.246 * INCH), balance: si(0.45) } });
  const plain = buildArrow({ parts: ridgeCampParts });
  expect(arrow.dragFrom).toBe('assumed');
  expect(arrow.assumptions).toContain('drag of a plain hunting arrow');
  expect(arrow.flying.balance).toBe(0.45);
  // The example differs from the plain arrow by its wrap and its bore, which do not drag.
  expect(arrow.flying.drag.at(36_000)).toBeCloseTo(plain.flying.drag.at(36_000), 12);
});

it('blades that were not described are the usual ones, and it says so', () => {
  const arrow = buildArrow({ parts: { ...ridgeCampParts, point: { ...fieldPoint, shape: 'fixed_blade' } } });
  expect(arrow.assumptions).toEqual(['usual three blades']);
  expect(arrow.staticMargin).toBeLessThan(buildArrow({ parts: ridgeCampParts }).staticMargin ?? 0);
});

it('a bare shaft has no spin of its own and its centre of pressure ahead', () => {
  const arrow = buildArrow({ parts: { ...ridgeCampParts, vanes: undefined } });
  expect(arrow.flying.attitude?.spinPerMetre).toBe(0);
  expect(arrow.flying.attitude?.spinUp).toBe(Number.POSITIVE_INFINITY);
  expect(arrow.staticMargin).toBeLessThan(0);
});

it('the shaft can be left out of the spin', () => {
  const strips = buildArrow({ parts: ridgeCampParts, choices: { shaftSlowsSpin: false } });
  const whole = buildArrow({ parts: ridgeCampParts });
  expect(strips.flying.attitude?.spinPerMetre).toBeGreaterThan(whole.flying.attitude?.spinPerMetre ?? 0);
});

it("the shaft's moments are integrals along it from the balance point", () => {
  const { flying } = buildArrow({ parts: ridgeCampParts });
  const [B0, B1, B2] = flying.attitude?.shaftMoments ?? [0, 0, 0];
  const [rear, front] = [0.25 * INCH - flying.balance, 28.75 * INCH - flying.balance];
  expect(B0).toBeCloseTo(front - rear, 12);
  expect(B1).toBeCloseTo((front ** 2 - rear ** 2) / 2, 12);
  expect(B2).toBeCloseTo((front ** 3 - rear ** 3) / 3, 12);
});

const changed = (change: Partial<ArrowParts>): ArrowParts => ({ ...ridgeCampParts, ...change });
const { shaft } = ridgeCampParts;

it.each([
  ['no mass', () => buildArrow({ totals: { diameter: si(0.006) } })],
  ['no diameter', () => buildArrow({ totals: { mass: si(0.03) } })],
  ['a mass of 0', () => buildArrow({ parts: ridgeCampParts, totals: { mass: si(0) } })],
  [
    'a bore wider than the shaft',
    () => buildArrow({ parts: changed({ shaft: { ...shaft, innerDiameter: si(0.01) } }) }),
  ],
  ['a shaft of no length', () => buildArrow({ parts: changed({ shaft: { ...shaft, length: si(0) } }) })],
  ['a point of no length', () => buildArrow({ parts: changed({ point: { ...fieldPoint, length: si(0) } }) })],
  [
    'a negative wrap',
    () => buildArrow({ parts: changed({ others: [{ name: 'wrap', mass: si(-1), fromNock: si(0) }] }) }),
  ],
  ['nine vanes', () => buildArrow({ parts: changed({ vanes: { ...ridgeCampVanes, count: 9 } }) })],
  [
    'vanes beyond the shaft',
    () => buildArrow({ parts: changed({ vanes: { ...ridgeCampVanes, fromNock: si(0.8) } }) }),
  ],
  [
    'vanes at 30 degrees',
    () => buildArrow({ parts: changed({ vanes: { ...ridgeCampVanes, angle: si(0.52) } }) }),
  ],
  [
    'blades inside the shaft',
    () =>
      buildArrow({
        parts: changed({
          point: {
            ...fieldPoint,
            shape: 'fixed_blade',
            blades: { count: 3, length: si(0.03), cuttingDiameter: si(0.005), thickness: si(0.001) },
          },
        }),
      }),
  ],
])('buildArrow with %s throws', (_, run) => expect(run).toThrow(DomainError));
