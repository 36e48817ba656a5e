import { type Metres, si } from '../../quantities/quantity.ts';
import type { FlyingArrow } from '../flying-arrow.ts';
import { AS_COUNTED, withLift } from '../varied-arrow.ts';

/** Step of the central differences, of the factors on what fins lift. */
const STEP = 0.01;

/** Balance point minus centre of pressure; positive when stable. Null for an arrow that flies as a point. */
const staticMarginOf = ({ attitude }: FlyingArrow): Metres | null =>
  attitude === null ? null : si(-attitude.firstMoment / attitude.normalSlope);

/**
 * Standard uncertainty of the static margin: of the laws of lift of vanes (with the shaft's layer) and blades, and of what the
 * wake of blades takes, each by itself. Where the balance point is, is taken as known.
 *
 * @returns null where only the sums of the lift are known, or nothing
 */
export function staticMarginSd(arrow: FlyingArrow): Metres | null {
  const fins = arrow.attitude === null ? undefined : arrow.attitude.fins;
  if (fins === undefined) return null;
  const changes = (['vanes', 'blades', 'wake'] as const).map((fin) => {
    const [more, less] = [STEP, -STEP].map((by) =>
      staticMarginOf(withLift(arrow, { ...AS_COUNTED, [fin]: 1 + by })),
    );
    return more === null || less === null || more === undefined || less === undefined
      ? 0
      : (fins.uncertainty[fin] * (more - less)) / (2 * STEP);
  });
  return si(Math.hypot(...changes));
}
