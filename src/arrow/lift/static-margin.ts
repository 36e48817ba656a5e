import { type Metres, si } from '../../quantities/quantity.ts';
import type { FlyingArrow } from '../flying-arrow.ts';
import { AS_COUNTED, withLift } from '../varied-arrow.ts';

/** Step of the central differences, of the factors on what fins lift. */
const STEP = 0.01;

/** Balance point minus centre of pressure; positive when stable. */
const staticMarginOf = ({ attitude }: FlyingArrow): number =>
  attitude === null ? Number.NaN : -attitude.firstMoment / attitude.normalSlope;

/**
 * Standard uncertainty of the static margin: of the laws of lift of vanes (with the shaft's layer) and blades, and of what the
 * wake of blades takes, each by itself. Where the balance point is, is taken as known.
 *
 * @returns null where only the sums of the lift are known, or nothing
 */
export function staticMarginSd(arrow: FlyingArrow): Metres | null {
  const fins = arrow.attitude?.fins;
  if (fins === undefined) return null;
  const changes = (['vanes', 'blades', 'wake'] as const).map((fin) => {
    const marginAt = (factor: number) => staticMarginOf(withLift(arrow, { ...AS_COUNTED, [fin]: factor }));
    return (fins.uncertainty[fin] * (marginAt(1 + STEP) - marginAt(1 - STEP))) / (2 * STEP);
  });
  return si(Math.hypot(...changes));
}
