import { describe, expect, it } from 'vitest';
import { settledDrift } from '../../../../src/advice/lean/settled-drift.ts';
import { launchFromEye } from '../../../../src/flight/launch.ts';
import { fly } from '../../../../src/flight/trajectory.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { inventedRig } from '../../sight/invented-rig.ts';
import { spinningRig, withArrow } from '../invented-bow.ts';

/** The spin settles at once, so that what is left of the difference is the drag's. */
const { attitude } = spinningRig.conditions.arrow;
const settledAtOnce = withArrow(spinningRig, {
  attitude: attitude === null ? null : { ...attitude, spinUp: si(0.02) },
});

/** Drift over the drop of the same flight, right positive. */
function flownRatio(sideForce: number): number {
  const [state] = fly(
    withArrow(settledAtOnce, { sideForce }).conditions,
    launchFromEye(si(85.344), si(0)),
    [91.44],
  );
  return (state?.lateral ?? 0) / -(state?.height ?? 0);
}

describe('settledDrift', () => {
  const { conditions, launchSpeed } = settledAtOnce;
  const found = settledDrift(conditions, launchSpeed) ?? expect.fail();

  it('is 1.30e-4 to the left for the arrow of the independent figure, to its last digit', () =>
    expect(Math.abs(found.gyroscopic + 1.3e-4)).toBeLessThan(0.005e-4 /* half of the last printed digit */));

  it('is what the flight does, to 1 %: the drag acts on drift and drop a little differently', () => {
    expect(Math.abs(flownRatio(0) / found.gyroscopic - 1)).toBeLessThan(0.01 /* relative */);
    expect(Math.abs((flownRatio(1) - flownRatio(0)) / found.shaftForceCeiling - 1)).toBeLessThan(
      0.01 /* relative */,
    );
  });

  it('is nothing to say about an arrow of which only the mass is known', () =>
    expect(settledDrift(inventedRig.conditions, launchSpeed)).toBeNull());
});
