import { flyer } from '../../flight/trajectory.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { bracketedRoot } from '../../numerics/root.ts';
import { INCH, YARD } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import { impact, pinForHit } from '../../sight/zero.ts';

/** How well a hole is read, and a short range stepped off; assumed. */
const HOLE_SD = INCH / 4;
const DISTANCE_SD = INCH;
/** The second crossing is looked for no farther. */
const FARTHEST = 140 * YARD;
/** A crossing is found to this, m. */
const TOLERANCE = 1e-4;
/** Straight ahead: the path is looked at in height alone. */
const NO_WINDAGE = 0;

/** What was known of the bow: standard uncertainties of peep height (m), launch speed (m/s) and drag (share). */
export interface BowUncertainty {
  readonly peepHeight: number;
  readonly speed: number;
  readonly drag: number;
}

export interface CloseStart {
  readonly far: Metres;
  /**
   * Where the arrow of the far mark crosses the line of sight for the first time; null when it is still rising at the
   * far one.
   */
  readonly near: Metres | null;
  readonly centredAt: Metres | null;
  /** Where an arrow centred there comes back to the line of sight; null when it does not within 140 yd. */
  readonly farForCentred: Metres | null;
  /** How high the first long shot hits; 0 when centred at the right distance. */
  readonly farHeight: Metres;
  readonly farHeightSd: Metres;
  readonly parts: readonly { readonly name: string; readonly height: Metres }[];
}

/**
 * The short range at which a centred arrow starts a long one, and how far the long one may then be off.
 *
 * @throws NumericalError when the arrow does not get to the far range
 */
export function closeStart(
  rig: Rig,
  far: Metres,
  centredAt: Metres | null,
  known: BowUncertainty,
): CloseStart {
  const level: Rig = { ...rig, cant: si(0) };
  const near = marksFor(level, [far]).marks[0]?.nearCrossing ?? null;
  const place = near ?? centredAt;
  const parts = place === null ? [] : errorParts(level, place, far, known);
  return {
    far,
    near,
    centredAt,
    farForCentred: centredAt === null ? null : secondCrossing(level, centredAt),
    farHeight: centredAt === null ? si(0) : heightAt(level, pinFor(level, centredAt), far),
    farHeightSd: si(Math.hypot(...parts.map(({ height }) => height))),
    parts,
  };
}

const pinFor = (rig: Rig, range: number): number => pinForHit(rig, range, NO_WINDAGE).down;

const heightAt = (rig: Rig, pin: number, range: number): Metres =>
  si(impact(flyer(rig.conditions), rig, { down: pin, windage: NO_WINDAGE }, range).height);

/** A small travel of the pin, for the ratio of heights at two ranges, m. */
const PIN_STEP = 1e-5;

/** How far the far shot is off for each thing that is not known, with the arrow centred at the near range. */
function errorParts(rig: Rig, near: number, far: number, known: BowUncertainty): CloseStart['parts'] {
  const pin = pinFor(rig, near);
  const [low, high] = [near, far].map(
    (range) => (heightAt(rig, pin + PIN_STEP, range) - heightAt(rig, pin, range)) / PIN_STEP,
  );
  const ratio = high === undefined || low === undefined ? Number.NaN : high / low;
  const centred = heightAt(rig, pin, far);
  const missed = (other: Rig, place: number): Metres =>
    si(Math.abs(heightAt(other, pinFor(other, place), far) - centred));
  const { arrow } = rig.conditions;
  const peep = si<'m'>(rig.geometry.peepHeight + known.peepHeight);
  const drag = arrow.dragScale * (1 + known.drag);
  return [
    { name: 'hole', height: si(Math.abs(ratio) * HOLE_SD) },
    { name: 'distance', height: missed(rig, near + DISTANCE_SD) },
    {
      name: 'peep height',
      height: missed({ ...rig, geometry: { ...rig.geometry, peepHeight: peep } }, near),
    },
    { name: 'speed', height: missed({ ...rig, launchSpeed: si(rig.launchSpeed + known.speed) }, near) },
    {
      name: 'drag',
      height: missed(
        { ...rig, conditions: { ...rig.conditions, arrow: { ...arrow, dragScale: drag } } },
        near,
      ),
    },
  ];
}

/** Farther away the crossing is looked for in steps, m: a path that comes back does so over many of them. */
const STRIDE = 5;

function secondCrossing(rig: Rig, centredAt: number): Metres | null {
  const flight = flyer(rig.conditions);
  const pin = { down: pinFor(rig, centredAt), windage: NO_WINDAGE };
  const height = (range: number): number => impact(flight, rig, pin, range).height;
  try {
    let risen = false;
    for (let range = centredAt + STRIDE; range < FARTHEST + STRIDE; range += STRIDE) {
      const end = Math.min(range, FARTHEST);
      const now = height(end);
      if (now > 0) risen = true;
      else if (risen) return si(bracketedRoot(height, end - STRIDE, end, { tolerance: TOLERANCE }));
      else return null;
    }
  } catch (error) {
    if (!(error instanceof NumericalError)) throw error;
  }
  return null;
}
