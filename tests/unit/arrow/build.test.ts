import { expect, it } from 'vitest';
import { buildArrow } from '../../../src/arrow/build.ts';
import { massProperties } from '../../../src/arrow/parts/mass-properties.ts';
import type { ArrowParts } from '../../../src/arrow/parts/parts.ts';
import { arrowLength, piecesOf } from '../../../src/arrow/parts/pieces.ts';
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

const point = { mass: si<'kg'>(0.0293), diameter: si<'m'>(0.006) };

it('totals alone tell nothing of parts, lift and stiffness', () =>
  expect(buildArrow({ totals: point })).toMatchObject({
    parts: null,
    length: null,
    frontOfCentre: null,
    centreOfPressure: null,
    staticMargin: null,
    stiffness: null,
    pieces: [],
    surfaces: null,
    differences: [],
    boundaryLayer: 'transition',
    flying: { mass: 0.0293, diameter: 0.006, dragScale: 1, attitude: null, sideForce: 0 },
  }));

it('totals alone put the balance 18 in from the groove, and vanes half an inch high on the shaft', () => {
  const { flying, assumptions } = buildArrow({ totals: point });
  expect(flying.balance / INCH).toBeCloseTo(18, 12);
  expect(flying.fletchRadius / INCH).toBeCloseTo(3 / 25.4 + 0.5, 12);
  expect(assumptions).toEqual([
    'vanes of a plain hunting arrow',
    'drag of a plain hunting arrow',
    'balance of a plain hunting arrow',
  ]);
});

it('front-of-centre of totals alone needs balance and length: (0.45 - 0.75/2)/0.75 = 10 %', () => {
  const [balance, length] = [si<'m'>(0.45), si<'m'>(0.75)];
  const both = buildArrow({ totals: { ...point, balance, length } });
  expect(both.frontOfCentre).toBeCloseTo(0.1, 14);
  expect([both.length, both.flying.balance]).toEqual([0.75, 0.45]);
  expect(both.assumptions).not.toContain('balance of a plain hunting arrow');
  expect(buildArrow({ totals: { ...point, length } }).frontOfCentre).toBeNull();
  expect(buildArrow({ totals: { ...point, balance } }).frontOfCentre).toBeNull();
});

it('choices go into the arrow, from parts and from totals', () => {
  for (const known of [{ parts: ridgeCampParts }, { totals: point }]) {
    const usual = buildArrow(known);
    const chosen = buildArrow({ ...known, choices: { boundaryLayer: 'laminar', sideForce: 0.3 } });
    expect([usual.boundaryLayer, chosen.boundaryLayer]).toEqual(['transition', 'laminar']);
    expect([usual.flying.sideForce, chosen.flying.sideForce]).toEqual([0, 0.3]);
    // A laminar shaft costs about 1 on the section less than one that turns at 5e5.
    expect(chosen.flying.drag.at(36_000)).toBeLessThan(usual.flying.drag.at(36_000) - 0.8);
    const sum = chosen
      .dragTerms?.('transition', 36_000)
      .reduce((total, { coefficient }) => total + coefficient, 0);
    expect(Math.abs((sum ?? Number.NaN) / usual.flying.drag.at(36_000) - 1)).toBeLessThan(
      1e-4 /* relative: the curve is a table */,
    );
  }
});

it('the vanes stand in the layer unless they are asked for in free air', () => {
  const immersion = (liftLossesCounted?: boolean) =>
    buildArrow({ parts: ridgeCampParts, choices: { liftLossesCounted } }).surfaces?.vanes?.immersion;
  expect(immersion(false)).toBe(1);
  expect(immersion()).toBeLessThan(0.95);
  expect(immersion()).toBe(immersion(true));
});

it('what was measured as the parts have it is no difference', () => {
  const { mass, balance } = added;
  const totals = {
    mass,
    balance,
    diameter: ridgeCampParts.shaft.outerDiameter,
    length: arrowLength(ridgeCampParts),
  };
  expect(buildArrow({ parts: ridgeCampParts, totals }).differences).toEqual([]);
});

it('each measured total stands beside what the parts say', () => {
  const totals = {
    mass: si<'kg'>(0.03),
    balance: si<'m'>(0.46),
    diameter: si<'m'>(0.0065),
    length: si<'m'>(0.735),
  };
  const arrow = buildArrow({ parts: ridgeCampParts, totals });
  expect(arrow.differences.map(({ what, measured }) => [what, measured])).toEqual(Object.entries(totals));
  const [mass, balance, diameter, length] = arrow.differences.map(({ fromParts }) => fromParts);
  expect((mass ?? Number.NaN) / GRAIN).toBeCloseTo(454.75, 9);
  expect((balance ?? Number.NaN) / INCH).toBeCloseTo(18.0233, 3);
  expect((diameter ?? Number.NaN) / INCH).toBeCloseTo(0.246, 12);
  expect((length ?? Number.NaN) / INCH).toBeCloseTo(28.75, 12);
  expect(arrow.length).toBe(0.735);
  expect(arrow.flying.diameter).toBe(0.0065);
});

it('a bare shaft clears by its own radius, and has a stiffness only where its spine was measured', () => {
  const { deflection: _, ...unmeasured } = ridgeCampParts.shaft;
  const bare = buildArrow({ parts: { ...ridgeCampParts, shaft: unmeasured, vanes: undefined } });
  expect(bare.flying.fletchRadius / INCH).toBeCloseTo(0.123, 12);
  expect(bare.stiffness).toBeNull();
});

it('described blades are not assumed', () => {
  const blades = {
    count: 2,
    length: si<'m'>(0.03),
    cuttingDiameter: si<'m'>(0.03),
    thickness: si<'m'>(0.001),
  };
  const { assumptions, flying } = buildArrow({
    parts: { ...ridgeCampParts, point: { ...fieldPoint, shape: 'fixed_blade', blades } },
  });
  expect(assumptions).toEqual([]);
  expect(flying.attitude?.fins?.blades?.count).toBe(2);
});

it('coefficients by Reynolds number are taken as a curve, with parts and without', () => {
  const dragCoefficient = [
    { reynolds: 2e4, coefficient: 2 },
    { reynolds: 4e4, coefficient: 2.5 },
  ];
  for (const known of [{ parts: ridgeCampParts, totals: {} }, { totals: point }]) {
    const { flying, dragFrom } = buildArrow({ ...known, totals: { ...known.totals, dragCoefficient } });
    expect([flying.drag.at(1e4), flying.drag.at(2e4), flying.drag.at(4e4)]).toEqual([2, 2, 2.5]);
    expect(dragFrom).toBe('given');
  }
});

it.each([
  ['mass', /arrow mass/, { diameter: si<'m'>(0.006) }],
  ['diameter', /shaft diameter/, { mass: si<'kg'>(0.03) }],
])('without a %s it says which is missing', (_, says, totals) =>
  expect(() => buildArrow({ totals })).toThrow(says),
);

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
