import { describe, expect, it } from 'vitest';
import { type DaySetting, onDay } from '../../../src/calibration/day-setting.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { inventedRig } from '../sight/invented-rig.ts';

const { conditions } = inventedRig;
const rig = {
  ...inventedRig,
  conditions: { ...conditions, arrow: { ...conditions.arrow, dragScale: 0.9 } },
};
const cold: DaySetting = {
  air: { ...conditions.air, density: si(1.35) },
  wind: { ...conditions.wind, tail: si(2) },
  freeFall: si<'m/s2'>(9.79),
  cant: si(0.05),
  warmer: -20,
  arrow: null,
};

describe('a rig on a day', () => {
  it('is in its air, wind and weight, held as it was, and slower by as many degrees as it is colder', () => {
    const found = onDay(rig, cold, 0.14);
    expect(found.conditions).toEqual({ ...rig.conditions, air: cold.air, wind: cold.wind, freeFall: 9.79 });
    expect(found.launchSpeed).toBeCloseTo(85.344 - 2.8, 12 /* m/s */);
    expect(found.cant).toBe(0.05);
    expect([found.geometry, found.scale]).toEqual([rig.geometry, rig.scale]);
  });

  it('shoots its own arrow, at its share of the speed, with the drag of both factors', () => {
    const flying = { ...conditions.arrow, mass: si<'kg'>(0.033), dragScale: 1.2 };
    const arrow = { flying, freeFlight: si<'m'>(1.1), speedRatio: 0.95, speedRatioSd: 0.01, dragSd: 0.05 };
    const found = onDay(rig, { ...cold, arrow }, 0.14);
    expect(found.conditions.arrow).toEqual({ ...flying, dragScale: 0.9 * 1.2 });
    expect(found.conditions.air).toBe(cold.air);
    expect(found.launchSpeed).toBeCloseTo(0.95 * (85.344 - 2.8), 12 /* m/s */);
    expect(found.geometry).toEqual({ ...rig.geometry, freeFlight: 1.1 });
    expect(found.cant).toBe(0.05);
  });
});
