import type { Arrow } from '../../arrow/arrow.ts';
import { builtUpDrag } from '../../arrow/drag/drag-curve.ts';
import type { FlyingArrow } from '../../arrow/flying-arrow.ts';
import { assumedParts } from '../../arrow/parts/assumed-arrow.ts';
import type { ArrowParts } from '../../arrow/parts/parts.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
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
  const { arrow, air } = conditions;
  const slippery: Drag = { drag: arrow.drag, dragScale: LEAST_DRAG * arrow.dragScale };
  const drags = [
    slippery,
    ...(dragFrom === 'given' ? [] : [laminarDrag(parts ?? assumedParts(flying.diameter), arrow.dragScale)]),
  ];
  const reynolds = SPEEDS.map((share) => reynoldsNumber(air, share * speed, flying.diameter));
  const carries = leastOf(drags, reynolds).map(
    (drag) => carry({ ...conditions, arrow: { ...arrow, ...drag } }, speed).distance,
  );
  return si(Math.max(...carries));
}

type Drag = Pick<FlyingArrow, 'drag' | 'dragScale'>;

/** Spacing of its Reynolds numbers: enough for a distance that is rounded up to tens. */
const DRAG_STEP = 2000;

const laminarDrag = (parts: ArrowParts, dragScale: number): Drag => ({
  drag: builtUpDrag(parts, 'laminar', DRAG_STEP),
  dragScale: Math.min(1, dragScale),
});

/** Shares of the launch speed at which drags are compared: an arrow comes down with more than half of it. */
const SPEEDS = [0.25, 0.4, 0.55, 0.7, 0.85, 1];

/** Those of the drags that may carry farthest: one that is the least at every speed leaves the others behind. */
function leastOf(drags: readonly Drag[], reynolds: readonly number[]): readonly Drag[] {
  const isLeast = (one: Drag): boolean =>
    reynolds.every((number) =>
      drags.every(
        ({ drag, dragScale }) => one.dragScale * one.drag.at(number) <= dragScale * drag.at(number),
      ),
    );
  const least = drags.find(isLeast);
  return least === undefined ? drags : [least];
}
