import { describe, expect, it } from 'vitest';
import { bladeFin, signedAngle, vaneFin } from '../../../../src/arrow/lift/fins.ts';
import { liftingSurfaces } from '../../../../src/arrow/lift/lifting.ts';
import { finArea, meanChord } from '../../../../src/arrow/lift/trapezoid-fin.ts';
import type { ArrowParts, PointShape, Turn } from '../../../../src/arrow/parts/parts.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, INCH, ridgeCampParts, ridgeCampVanes } from '../ridge-camp-arrow.ts';

const near = (value: number, byHand: number): void =>
  expect(Math.abs(value - byHand)).toBeLessThan(1e-12 /* rounding */);

describe('fins', () => {
  it('a vane has an upright rear edge unless its sweep is given', () => {
    const upright = vaneFin(ridgeCampVanes, 0.003);
    near(upright.sweep / INCH, 2.1 - 0.9);
    near(vaneFin({ ...ridgeCampVanes, sweep: si(0.5 * INCH) }, 0.003).sweep / INCH, 0.5);
    near(finArea(upright) / INCH ** 2, 0.75);
    near(meanChord(upright) / INCH, 1.5);
  });

  it.each<[Turn, number]>([
    ['right', 0.05],
    ['left', -0.05],
    ['none', 0],
  ])('vanes that turn %s have the signed angle %d', (turn, angle) =>
    expect(signedAngle({ ...ridgeCampVanes, angle: si(0.05), turn })).toBeCloseTo(angle, 15),
  );

  it('usual blades are three triangles 1.1 in long, 1.125 in across over all and 0.03 in thick', () => {
    const { fin, count, thickness } =
      bladeFin({ ...fieldPoint, shape: 'fixed_blade' }, 0.125 * INCH) ?? expect.fail('no blades');
    expect(count).toBe(3);
    near(thickness / INCH, 0.03);
    near(fin.height / INCH, 0.4375); // 0.5625 - 0.125
    expect([fin.rootChord / INCH, fin.tipChord, fin.sweep / INCH].map((x) => +x.toFixed(12))).toEqual([
      1.1, 0, 1.1,
    ]);
    near(fin.rootRadius / INCH, 0.125);
  });

  it('blades on a point of another shape do not count', () => {
    const blades = {
      count: 2,
      length: si<'m'>(0.03),
      cuttingDiameter: si<'m'>(0.03),
      thickness: si<'m'>(0.001),
    };
    expect(bladeFin({ ...fieldPoint, blades }, 0.003)).toBeNull();
  });
});

describe('liftingSurfaces', () => {
  const parts = (shape: PointShape): ArrowParts => ({ ...ridgeCampParts, point: { ...fieldPoint, shape } });

  // Behind the tip: a cone 2/3 of its length, an ogive 0.466, a flat face 0 (Barrowman, 1966).
  it.each<[PointShape, number]>([
    ['field', 2 / 3],
    ['mechanical', 2 / 3],
    ['fixed_blade', 2 / 3],
    ['bullet', 0.466],
    ['blunt', 0],
  ])(
    'a %s point 1.3 in long lifts %d of it behind its tip, by 2 whatever its shape (Munk)',
    (shape, share) => {
      const { nose } = liftingSurfaces(parts(shape));
      near(nose.place / INCH, 28.75 + 1.3 - 1.3 * share);
      expect(nose.slope).toBe(2);
    },
  );

  it('vanes in free air feel all of the dynamic pressure, and no wake', () => {
    const free = { boundaryLayer: 'transition', lossesCounted: false } as const;
    const { vanes, wake } = liftingSurfaces(parts('fixed_blade'), free);
    expect(vanes?.immersion).toBe(1);
    expect(wake).toBeNull();
  });

  it('vanes stand in the layer that is asked for: the thicker, the less they feel', () => {
    const felt = (boundaryLayer: 'laminar' | 'transition' | 'turbulent') =>
      liftingSurfaces(ridgeCampParts, { boundaryLayer, lossesCounted: true }).vanes?.immersion;
    expect(felt('turbulent')).toBeLessThan(felt('transition') ?? Number.NaN);
    expect(felt('transition')).toBe(liftingSurfaces(ridgeCampParts).vanes?.immersion);
  });

  it('a wake needs blades and vanes', () => {
    expect(liftingSurfaces(parts('fixed_blade')).wake).not.toBeNull();
    expect(liftingSurfaces({ ...parts('fixed_blade'), vanes: undefined }).wake).toBeNull();
    expect(liftingSurfaces({ ...parts('fixed_blade'), vanes: undefined }).vanes).toBeNull();
    expect(liftingSurfaces(parts('field')).wake).toBeNull();
  });

  it('blades stand straight, ahead of the layer', () => {
    const { blades } = liftingSurfaces(parts('fixed_blade'));
    expect([blades?.angle, blades?.immersion, blades?.count]).toEqual([0, 1, 3]);
  });
});
