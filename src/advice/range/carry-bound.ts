import type { Arrow } from '../../arrow/arrow.ts';
import { builtUpDrag } from '../../arrow/drag/drag-curve.ts';
import { assumedParts } from '../../arrow/parts/assumed-arrow.ts';
import { carry } from '../../flight/carry.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { type Metres, type MetresPerSecond, si } from '../../quantities/quantity.ts';

/**
 * Share of the drag that is left when its build-up is wrong by two of its standard uncertainties, for an arrow that carries
 * farther than it should.
 */
const LEAST_DRAG = 0.7;
/** The told distance is rounded up to a whole number of these, m or yd. */
export const CARRY_STEP = 10;

/**
 * A distance that the arrow will not carry beyond, over level ground: the longer of the carries with 30 % less drag than the
 * conditions have, and with the layer of air laminar all along the shaft, as slim and smooth arrows may have it. A drag
 * coefficient that was given holds for the layer as it is.
 *
 * @param arrow whose drag the conditions have, with its scale
 */
export function carryBound(
  { parts, dragFrom, flying }: Pick<Arrow, 'parts' | 'dragFrom' | 'flying'>,
  conditions: FlightConditions,
  speed: MetresPerSecond,
): Metres {
  const { arrow } = conditions;
  const slippery = carry(
    { ...conditions, arrow: { ...arrow, dragScale: LEAST_DRAG * arrow.dragScale } },
    speed,
  ).distance;
  if (dragFrom === 'given') return slippery;
  const drag = builtUpDrag(parts ?? assumedParts(flying.diameter), 'laminar');
  const laminar = carry(
    { ...conditions, arrow: { ...arrow, drag, dragScale: Math.min(1, arrow.dragScale) } },
    speed,
  );
  return si(Math.max(slippery, laminar.distance));
}
