import { describe, expect, it } from 'vitest';
import type { Arrow } from '../../../src/arrow/arrow.ts';
import { buildArrow } from '../../../src/arrow/build.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { CLEAN, type Disturbance, rigidLaunch } from '../../../src/flight/rigid-launch.ts';
import { flyRigid } from '../../../src/flight/rigid-trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from './hunting-arrow.ts';
import { conditionsOf } from './point-arrow.ts';

const INCH = 0.0254; // m
const DEGREE = Math.PI / 180;
const level = launchFromEye(si(85.344), si(0));

/** The hunting arrow with blades 1.1 in long and 1.8 in across, as many as told, without helical. */
function withBlades(count: number, turn: 'right' | 'none' = 'none'): Arrow {
  const { parts, flying } = huntingArrow({ shape: 'fixed_blade', turn });
  if (parts === null) throw new Error('an arrow from parts');
  const blades = {
    count,
    length: si<'m'>(1.1 * INCH),
    cuttingDiameter: si<'m'>(1.3 * INCH),
    thickness: si<'m'>(8e-4),
  };
  return buildArrow({
    parts: { ...parts, point: { ...parts.point, blades } },
    totals: { mass: flying.mass, balance: flying.balance, dragCoefficient: 2.5 },
    choices: { liftLossesCounted: false },
  });
}

/** Where it hits at 100 yd, from a clean start of the same arrow, in: right and high. */
function miss(
  arrow: Arrow,
  disturbance: Partial<Disturbance>,
  standing: number | null,
): readonly [number, number] {
  // Without weight, so that nothing but the blades can turn a sideways start up or down.
  const conditions = { ...conditionsOf(arrow.flying), freeFall: 0 };
  const shot = (start: Disturbance) =>
    flyRigid(conditions, rigidLaunch(level, start, si(standing ?? 0)), [91.44], {
      bladesStand: standing !== null,
      tolerance: 1e-9,
    })[0] ?? expect.fail('no state');
  const [off, clean] = [shot({ ...CLEAN, ...disturbance }), shot(CLEAN)];
  return [(off.lateral - clean.lateral) / INCH, (off.height - clean.height) / INCH];
}

const left = { tailLeft: si<'rad'>(DEGREE) };

describe('two blades as they stand', () => {
  const two = withBlades(2);

  it('upright they steer a tail to the left more than on average, flat less, and in between on either side', () => {
    const [upright, flat, average] = [
      miss(two, left, 0),
      miss(two, left, Math.PI / 2),
      miss(two, left, null),
    ];
    expect(Math.abs(upright[0])).toBeGreaterThan(Math.abs(average[0]));
    expect(Math.abs(flat[0])).toBeLessThan(Math.abs(average[0]));
    // Standing straight they push sideways or not at all.
    expect(Math.abs(upright[1])).toBeLessThan(1e-6 /* in */);
    expect(Math.abs(flat[1])).toBeLessThan(1e-6 /* in */);
  });

  it('leaning 45 deg they turn a miss to the side into one up or down, the other way round for the other lean', () => {
    const [one, other] = [miss(two, left, Math.PI / 4), miss(two, left, -Math.PI / 4)];
    expect(Math.abs(one[1])).toBeGreaterThan(0.3 /* in */);
    expect(other[1]).toBeCloseTo(-one[1], 6);
    expect(other[0]).toBeCloseTo(one[0], 6);
  });

  it('turned by half a turn they stand as before', () => {
    const spun = withBlades(2, 'right');
    const [a, b] = [miss(spun, left, 0.4), miss(spun, left, 0.4 + Math.PI)];
    expect(a[0]).toBeCloseTo(b[0], 6);
    expect(a[1]).toBeCloseTo(b[1], 6);
  });

  it('a quarter turn of blades and start together turns the miss by a quarter turn, where nothing falls', () => {
    const weightless = { ...conditionsOf(two.flying), freeFall: 0 };
    const shot = (start: Partial<Disturbance>, roll: number) =>
      flyRigid(weightless, rigidLaunch(level, { ...CLEAN, ...start }, si(roll)), [91.44], {
        bladesStand: true,
      })[0] ?? expect.fail('no state');
    const [sideways, upwards] = [shot(left, 0.3), shot({ tailUp: si(-DEGREE) }, 0.3 - Math.PI / 2)];
    expect(upwards.height).toBeCloseTo(sideways.lateral, 5);
    expect(upwards.lateral).toBeCloseTo(-sideways.height, 5);
  });

  it('three blades are the same however they stand', () => {
    const three = withBlades(3);
    const [average, standing] = [miss(three, left, null), miss(three, left, 0.7)];
    expect(standing[0]).toBeCloseTo(average[0], 4);
  });
});
