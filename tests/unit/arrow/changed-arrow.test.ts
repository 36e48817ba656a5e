import { describe, expect, it } from 'vitest';
import { buildArrow } from '../../../src/arrow/build.ts';
import { changedArrow } from '../../../src/arrow/changed-arrow.ts';
import { dragCoefficient } from '../../../src/arrow/drag/drag.ts';
import type { ArrowParts } from '../../../src/arrow/parts/parts.ts';
import { si } from '../../../src/quantities/quantity.ts';

const grains = (count: number) => si<'kg'>(count * 64.79891e-6);
const inches = (count: number) => si<'m'>(count * 0.0254);

const parts: ArrowParts = {
  shaft: {
    length: inches(28),
    outerDiameter: inches(0.246),
    innerDiameter: inches(0.166),
    massPerLength: si((9 * 64.79891e-6) / 0.0254),
  },
  insert: { mass: grains(20), length: inches(1) },
  point: { mass: grains(100), shape: 'field', length: inches(1.2) },
  nock: { mass: grains(10), length: inches(0.25) },
  vanes: {
    count: 3,
    mass: grains(7),
    rootChord: inches(2.1),
    tipChord: inches(0.9),
    height: inches(0.5),
    thickness: inches(0.03),
    fromNock: inches(1),
    angle: si(0.05),
    turn: 'right',
  },
};
const heavier: ArrowParts = { ...parts, point: { ...parts.point, mass: grains(150) } };

describe('changedArrow', () => {
  it('without measured totals is the arrow of the changed parts', () => {
    const changed = changedArrow({ base: buildArrow({ parts }), parts: heavier });
    const fresh = buildArrow({ parts: heavier });
    expect(Math.abs(changed.flying.mass - fresh.flying.mass)).toBeLessThan(1e-15 /* kg */);
    expect(Math.abs(changed.flying.balance - fresh.flying.balance)).toBeLessThan(1e-15 /* m */);
    expect(changed.dragFrom).toBe('parts');
  });

  it('keeps what the base weighed beyond its parts, and where: hand arithmetic of mass and balance', () => {
    // Parts: shaft 252, insert 20, point 100, nock 10, vanes 21 = 403 gr; the base weighs 408 gr and balances 17.0 in from the
    // nock. A point of 150 gr adds 50 gr at 0.25 + 28 + 1.2/4 = 28.55 in: 458 gr at (408 x 17 + 50 x 28.55)/458 = 18.2610 in.
    const base = buildArrow({ parts, totals: { mass: grains(408), balance: inches(17) } });
    const { flying, frontOfCentre } = changedArrow({ base, parts: heavier });
    expect(Math.abs(flying.mass / 64.79891e-6 - 458)).toBeLessThan(1e-9 /* gr */);
    expect(Math.abs(flying.balance / 0.0254 - (408 * 17 + 50 * 28.55) / 458)).toBeLessThan(1e-9 /* in */);
    expect(Math.abs(flying.balance / 0.0254 - 18.261)).toBeLessThan(5e-4 /* in: print of the hand figure */);
    // Front-of-centre (18.2610 - 14.125)/28.25 = 14.641 %.
    expect(Math.abs((frontOfCentre ?? 0) - 0.14641)).toBeLessThan(2e-5 /* of the length */);
  });

  it('totals measured on the changed arrow win', () => {
    const base = buildArrow({ parts, totals: { mass: grains(408) } });
    const { flying } = changedArrow({ base, parts: heavier, totals: { mass: grains(460) } });
    expect(flying.mass).toBe(grains(460));
    expect(flying.balance).toBe(changedArrow({ base, parts: heavier }).flying.balance);
  });

  it('a coefficient given for the base changes as the build-up does, and stays when only mass changes', () => {
    const base = buildArrow({ parts, totals: { dragCoefficient: 2.4 } });
    const same = changedArrow({ base, baseDrag: 2.4, parts: heavier });
    expect(Math.abs(same.flying.drag.at(35_000) - 2.4)).toBeLessThan(
      1e-12 /* of the coefficient, rounding */,
    );
    const taller = { ...parts, vanes: { ...(parts.vanes ?? expect.fail()), height: inches(0.6) } };
    const ratio =
      buildArrow({ parts: taller }).flying.drag.at(35_000) / buildArrow({ parts }).flying.drag.at(35_000);
    const changed = changedArrow({ base, baseDrag: 2.4, parts: taller });
    expect(ratio).toBeGreaterThan(1.01);
    expect(Math.abs(changed.flying.drag.at(35_000) / 2.4 / ratio - 1)).toBeLessThan(
      1e-3 /* the build-up is tabulated */,
    );
    expect(changed.dragFrom).toBe('given');
  });

  it('a table of coefficients is scaled point by point', () => {
    const table = [
      { reynolds: 20_000, coefficient: 2 },
      { reynolds: 40_000, coefficient: 2.5 },
    ];
    const base = buildArrow({ parts, totals: { dragCoefficient: table } });
    const changed = changedArrow({ base, baseDrag: table, parts: heavier });
    expect(Math.abs(changed.flying.drag.at(20_000) - 2)).toBeLessThan(
      1e-12 /* of the coefficient, rounding */,
    );
    expect(Math.abs(changed.flying.drag.at(40_000) - 2.5)).toBeLessThan(
      1e-12 /* of the coefficient, rounding */,
    );
  });

  const shorter: ArrowParts = { ...parts, shaft: { ...parts.shaft, length: inches(27) } };

  it('a length measured on the base goes with the shaft: 28.5 in for 28.25 by its parts, cut by an inch', () => {
    const base = buildArrow({ parts, totals: { length: inches(28.5) } });
    expect((changedArrow({ base, parts: shorter }).length ?? Number.NaN) / 0.0254).toBeCloseTo(27.5, 12);
    expect(changedArrow({ base, parts: shorter, totals: { length: inches(27.4) } }).length).toBe(
      inches(27.4),
    );
  });

  it('a balance measured on the changed arrow wins, beside a carried mass', () => {
    const base = buildArrow({ parts, totals: { mass: grains(408) } });
    const { flying } = changedArrow({ base, parts: heavier, totals: { balance: inches(18) } });
    expect(flying.balance).toBe(inches(18));
    expect(flying.mass / 64.79891e-6).toBeCloseTo(458, 9);
  });

  it('a diameter measured on the changed arrow wins', () => {
    const changed = changedArrow({ base: buildArrow({ parts }), parts, totals: { diameter: inches(0.3) } });
    expect(changed.flying.diameter).toBe(inches(0.3));
    expect(changed.parts?.shaft.outerDiameter).toBe(inches(0.3));
  });

  it('of a base known by its totals alone nothing is carried', () => {
    const base = buildArrow({
      totals: {
        mass: grains(500),
        diameter: inches(0.25),
        balance: inches(15),
        length: inches(30),
        dragCoefficient: 3,
      },
    });
    const changed = changedArrow({ base, parts });
    const fresh = buildArrow({ parts });
    expect(changed.flying.mass).toBe(fresh.flying.mass);
    expect(changed.flying.balance).toBe(fresh.flying.balance);
    expect(changed.length).toBe(fresh.length);
    expect(changed.dragFrom).toBe('parts');
    // Of a base without build-up there is no ratio: a coefficient given for it stays.
    expect(changedArrow({ base, baseDrag: 3, parts }).flying.drag.at(35_000)).toBe(3);
  });

  it('a coefficient measured on the changed arrow wins over the scaled one', () => {
    const base = buildArrow({ parts, totals: { dragCoefficient: 2.4 } });
    const changed = changedArrow({ base, baseDrag: 2.4, parts: shorter, totals: { dragCoefficient: 2.2 } });
    expect(changed.flying.drag.at(35_000)).toBe(2.2);
  });

  it('a coefficient scales by the build-up at a Reynolds number of 35 000, a table by that at each of its own', () => {
    const ratio = (reynolds: number): number =>
      dragCoefficient(shorter, 'turbulent', reynolds) / dragCoefficient(parts, 'transition', reynolds);
    const changedBy = (baseDrag: number | { reynolds: number; coefficient: number }[]) =>
      changedArrow({
        base: buildArrow({ parts, totals: { dragCoefficient: baseDrag } }),
        baseDrag,
        parts: shorter,
        choices: { boundaryLayer: 'turbulent' },
      }).flying.drag;
    expect(changedBy(2.4).at(50_000) / 2.4 / ratio(35_000)).toBeCloseTo(1, 12);
    const table = changedBy([
      { reynolds: 20_000, coefficient: 2 },
      { reynolds: 60_000, coefficient: 2.5 },
    ]);
    expect(table.at(20_000) / 2 / ratio(20_000)).toBeCloseTo(1, 12);
    expect(table.at(60_000) / 2.5 / ratio(60_000)).toBeCloseTo(1, 12);
  });

  it('keeps what was carried when a coefficient is scaled, and what was measured', () => {
    const base = buildArrow({ parts, totals: { mass: grains(408), dragCoefficient: 2.4 } });
    const { flying } = changedArrow({ base, baseDrag: 2.4, parts: heavier, totals: { balance: inches(18) } });
    expect(flying.mass / 64.79891e-6).toBeCloseTo(458, 9);
    expect(flying.balance).toBe(inches(18));
  });
});
