import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { launchLineHeight } from '../../../src/flight/launch.ts';
import { rigidLaunch } from '../../../src/flight/rigid-launch.ts';
import { flyRigid } from '../../../src/flight/rigid-trajectory.ts';
import { fly } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { assemble } from '../../../src/setup/assemble/assemble.ts';
import { readSetup } from '../../../src/setup/read.ts';
import { launchThrough } from '../../../src/sight/geometry.ts';
import { pinForHit } from '../../../src/sight/zero.ts';

const END = 91.44; // m

describe.each(['mountain-hunt', 'field-course'])('examples/%s', (name) => {
  const path = `examples/${name}/setup.yaml`;
  const { rig } = assemble(readSetup(readFileSync(path, 'utf8'), path));
  // The Earth's turning moves both models alike, and further than the spin does.
  const conditions = { ...rig.conditions, place: null };
  const launch = launchThrough(rig.geometry, pinForHit(rig, rig.zeroRange, 0), si(0), rig.launchSpeed);
  const [everyday] = fly(conditions, launch, [END]);
  const [rigid] = flyRigid(conditions, rigidLaunch(launch), [END], { tolerance: 1e-9 });

  it('both models drop alike at 100 yd out of a clean launch, to 0.5 %', () => {
    const drop = (height = Number.NaN) => launchLineHeight(launch, END) - height;
    expect(Math.abs(drop(rigid?.height) / drop(everyday?.height) - 1)).toBeLessThan(0.005 /* relative */);
  });

  it('both drift alike by the spin, to 15 %, and to the side of their helical', () => {
    const [a, b] = [everyday?.lateral ?? Number.NaN, rigid?.lateral ?? Number.NaN];
    expect(Math.sign(b)).toBe(-Math.sign(conditions.arrow.attitude?.spinPerMetre ?? 0));
    expect(Math.abs(b / a - 1)).toBeLessThan(0.15 /* relative */);
  });
});
