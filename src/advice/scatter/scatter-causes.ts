import type { BuildFaults } from '../../arrow/lift/build-faults.ts';
import { randomStream } from '../../numerics/random.ts';
import {
  type Kilograms,
  type Metres,
  type MetresPerSecond,
  type Radians,
  type RadiansPerSecond,
  si,
} from '../../quantities/quantity.ts';

/** Standard deviations of what differs from arrow to arrow and from shot to shot. */
export interface Variation {
  readonly mass: Kilograms;
  readonly balance: Metres;
  /** Of the bow and the release, for one and the same arrow. */
  readonly speed: MetresPerSecond;
  /** Sag of the shaft's middle, in each of two directions square to one another. */
  readonly bend: Metres;
  /** Of the angle of one vane. */
  readonly vane: Radians;
  /** Lean of the point, in each of two directions. */
  readonly head: Radians;
  /** Rate at which the tail moves across as the arrow leaves, in each of two directions. */
  readonly nockTravel: RadiansPerSecond;
}

export type Cause = keyof Variation;

export const CAUSES: readonly Cause[] = ['mass', 'balance', 'speed', 'bend', 'vane', 'head', 'nockTravel'];

/** How one arrow and its shot differ from the nominal ones. */
export interface Difference {
  readonly mass: number;
  readonly balance: number;
  readonly speed: number;
  readonly faults: BuildFaults;
  readonly tailUpRate: number;
  readonly tailLeftRate: number;
}

/**
 * The differences of arrow number `index`: normal with the given standard deviations, lengthwise places round the shaft by
 * two equal components. The same seed and index give the same arrow whatever the other arrows, the thread, or the causes
 * asked about.
 *
 * @param only the one cause that is let vary; null for all
 */
export function differenceOf(
  variation: Variation,
  only: Cause | null,
  seed: number,
  index: number,
): Difference {
  const { normal, uniform } = randomStream(seed, index);
  const sd = (cause: Cause): number => (only === null || only === cause ? variation[cause] : 0);
  // Every number is drawn every time, so that one cause alone has the numbers it has among all.
  const [mass, balance, speed] = [normal(), normal(), normal()];
  const [bendUp, bendRight] = [normal(), normal()];
  const [headUp, headRight] = [normal(), normal()];
  const [vane, vaneAt] = [normal(), uniform()];
  const [rising, left] = [normal(), normal()];
  return {
    mass: sd('mass') * mass,
    balance: sd('balance') * balance,
    speed: sd('speed') * speed,
    faults: {
      bend: { sag: si(sd('bend') * Math.hypot(bendUp, bendRight)), at: si(Math.atan2(bendRight, bendUp)) },
      head: { tilt: si(sd('head') * Math.hypot(headUp, headRight)), at: si(Math.atan2(headRight, headUp)) },
      vane: { error: si(sd('vane') * vane), at: si(2 * Math.PI * vaneAt) },
    },
    tailUpRate: sd('nockTravel') * rising,
    tailLeftRate: sd('nockTravel') * left,
  };
}
