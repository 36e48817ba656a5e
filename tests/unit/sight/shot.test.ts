import { describe, expect, it } from 'vitest';
import { launchAngle } from '../../../src/sight/geometry.ts';
import { shotRows, straightLaunch } from '../../../src/sight/shot.ts';
import { draglessElevation } from './dragless-elevation.ts';
import { dragless, inventedRig, yards } from './invented-rig.ts';

describe('straightLaunch', () => {
  it('without drag rises by the closed form, for the zero range and for any other', () => {
    expect(Math.abs(launchAngle(straightLaunch(dragless)) - draglessElevation(yards(20)))).toBeLessThan(
      1e-8 /* rad */,
    );
    expect(Math.abs(launchAngle(straightLaunch(dragless, 70)) - draglessElevation(70))).toBeLessThan(
      1e-8 /* rad */,
    );
  });
  it('goes nowhere sideways with the bow upright', () => {
    const { position, velocity } = straightLaunch(inventedRig, 50);
    expect([position[2], velocity[2]]).toEqual([0, 0]);
  });
});

describe('shotRows', () => {
  const launch = straightLaunch(dragless);
  const rows = shotRows(dragless.conditions, launch, [10, 50, 90]);
  const [v, g, m] = [85.344, 9.80665, 0.0291595];

  it('without drag has the parabola of the textbook: drop g t^2/2 below the launch line, speed by energy', () => {
    for (const row of rows) {
      const time = (row.range - launch.position[0]) / launch.velocity[0];
      expect(Math.abs(row.time - time)).toBeLessThan(1e-9 /* s */);
      expect(Math.abs(row.drop - (g * time ** 2) / 2)).toBeLessThan(1e-7 /* m */);
      const rise = row.height - launch.position[1];
      expect(Math.abs(row.speed ** 2 - (v ** 2 - 2 * g * rise))).toBeLessThan(1e-6 /* m2/s2 of 7284 */);
    }
  });

  it('has the kinetic energy and momentum of its mass at that speed', () => {
    for (const { speed, energy, momentum } of rows) {
      expect(Math.abs(energy - (m * speed * speed) / 2)).toBeLessThan(1e-12 /* J of 106 */);
      expect(Math.abs(momentum - m * speed)).toBeLessThan(1e-14 /* kg m/s of 2.5 */);
    }
    // By hand at the launch speed: 0.0291595 x 85.344^2/2 = 106.19 J and 0.0291595 x 85.344 = 2.4886 kg m/s.
    const [near] = shotRows(dragless.conditions, launch, [launch.position[0] + 1e-6]);
    expect(near?.energy).toBeCloseTo(106.19, 2);
    expect(near?.momentum).toBeCloseTo(2.4886, 4);
  });

  it('comes to the height aimed at in the zero range', () => {
    const [row] = shotRows(inventedRig.conditions, straightLaunch(inventedRig), [inventedRig.zeroRange]);
    expect(Math.abs(row?.height ?? Number.NaN)).toBeLessThan(1e-7 /* m */);
    expect(row?.lateral).toBe(0);
  });
});
