import { at } from '../numerics/at.ts';
import { marksFor } from '../sight/marks.ts';
import type { Rig } from '../sight/rig.ts';
import { travelAt } from '../sight/scale.ts';
import type { CalibrationProblem } from './fit.ts';
import type { ShotMark } from './measurement.ts';
import { TRAVEL_SCALE } from './parameters.ts';

/** Two marks of which the farther one has the higher pin. */
export interface Backwards {
  readonly near: ShotMark;
  readonly far: ShotMark;
}

/** A step back counts when it is more than this many standard uncertainties of the two groups. */
const SURE = 3;

/**
 * Marks whose readings run back against their ranges, each beside the next nearer one.
 *
 * Nearer than the range whose mark is highest on the sight marks turn back, as they should: only pairs count of which the bow as
 * measured says that the pin goes down from the nearer to the farther, by at least half of what the groups leave uncertain.
 *
 * @throws NumericalError when the arrow of the rig does not get to a range
 */
export function backwards({
  rig,
  measurements,
}: Pick<CalibrationProblem, 'rig' | 'measurements'>): readonly Backwards[] {
  const marks = measurements
    // Another arrow has another order of marks.
    .filter((shot): shot is ShotMark => shot.kind === 'mark' && (shot.setting?.arrow ?? null) === null)
    .toSorted((a, b) => a.range - b.range);
  if (rig.scale === null || marks.length < 2) return [];
  const places = marks.map((mark) => placeOf(rig, mark));
  return marks.slice(1).flatMap((far, i): readonly Backwards[] => {
    const near = at(marks, i);
    const [before, after] = [at(places, i), at(places, i + 1)];
    const unsure = SURE * Math.hypot(before.sd, after.sd);
    const goesDown = after.expected - before.expected > unsure / 2;
    return goesDown && after.shot - before.shot < -unsure ? [{ near, far }] : [];
  });
}

/** Of the pin, m of travel: where it was, where the rig says it should be, and how far the group leaves that open. */
function placeOf(rig: Rig, { range, reading, vertical, sd }: ShotMark) {
  const { travel, heightPerTravel } = at(marksFor(rig, [range]).marks, 0);
  const scale = rig.scale ?? TRAVEL_SCALE;
  return {
    expected: travel as number,
    // A group that hit high wants the pin higher, which is less travel.
    shot: travelAt(scale, reading) - vertical / heightPerTravel,
    sd: Math.abs(sd / heightPerTravel),
  };
}
