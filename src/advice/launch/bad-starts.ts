import { CLEAN, type Disturbance } from '../../flight/rigid-launch.ts';
import type { Radians, RadiansPerSecond } from '../../quantities/quantity.ts';

export type StartName = 'clean' | 'tail left' | 'tail high' | 'nock travel left';

/** How far off, and how fast across, the tail is as the arrow leaves. */
export interface BadStart {
  readonly angle: Radians;
  readonly rate: RadiansPerSecond;
}

/** The starts every arrow is asked about, the clean one first. */
export const badStarts = ({ angle, rate }: BadStart): readonly (readonly [StartName, Disturbance])[] => [
  ['clean', CLEAN],
  ['tail left', { ...CLEAN, tailLeft: angle }],
  ['tail high', { ...CLEAN, tailUp: angle }],
  ['nock travel left', { ...CLEAN, tailLeftRate: rate }],
];
