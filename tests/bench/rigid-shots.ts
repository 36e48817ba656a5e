import { launchFromEye } from '../../src/flight/launch.ts';
import { CLEAN, rigidLaunch } from '../../src/flight/rigid-launch.ts';
import { rigidFlyer } from '../../src/flight/rigid-trajectory.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { si } from '../../src/quantities/quantity.ts';
import { huntingArrow } from '../unit/flight/hunting-arrow.ts';
import { conditionsOf } from '../unit/flight/point-arrow.ts';

export const RANGE = 91.44; // m

/** Rigid flights to 100 yd at the usual tolerance, each with its own speed and bad start; the sum of their heights. */
export function rigidShots(from: number, to: number): number {
  const flight = rigidFlyer(conditionsOf(huntingArrow().flying));
  let sum = 0;
  for (let index = from; index < to; index++) {
    const { normal } = randomStream(1, index);
    const launch = launchFromEye(si(85.344 + 0.3 * normal()), si(0.03));
    const start = { ...CLEAN, tailLeft: si<'rad'>(0.01 * normal()), tailUp: si<'rad'>(0.01 * normal()) };
    sum += flight.states(rigidLaunch(launch, start), [RANGE])[0]?.[0] ?? Number.NaN;
  }
  return sum;
}
