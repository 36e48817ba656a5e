import type { LateralUnknown } from '../../calibration/sideways/lateral-mark.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { Session } from '../session.ts';

/** A cause of a sideways miss as an archer reads it: its name, and a number of it in its unit. */
export interface CauseWords {
  readonly name: string;
  readonly unit: string;
  readonly digits: number;
  readonly of: (value: number) => number;
}

/** How each cause is shown. */
export function causeWords({
  units: { smallLength, range },
  calibration,
}: Session): Readonly<Record<LateralUnknown, CauseWords>> {
  const inDegrees = (value: number): number => fromSi(value, 'deg');
  const perHundred = 100 / fromSi(1, range);
  const speed = calibration.rig.launchSpeed;
  return {
    windage: {
      name: 'windage (straight)',
      unit: `${symbolOf(smallLength)} at 100 ${symbolOf(range)}`,
      of: (value) => fromSi(value * perHundred, smallLength),
      digits: smallLength === 'in' ? 2 : 0,
    },
    offset: {
      name: 'offset at the bow',
      unit: symbolOf(smallLength),
      of: (value) => fromSi(value, smallLength),
      digits: smallLength === 'in' ? 2 : 1,
    },
    plumb: { name: 'level error', unit: '°', of: inDegrees, digits: 2 },
    side_force: { name: 'side force of the spin', unit: 'of ceiling', of: (value) => value, digits: 2 },
    tail_left: { name: 'tail left at launch', unit: '°', of: inDegrees, digits: 1 },
    turning: { name: 'nock travel at launch', unit: 'rad/s', of: (value) => value * speed, digits: 1 },
  };
}
