import type { Rig } from '../sight/rig.ts';
import type { CalibrationProblem } from './fit.ts';
import { type Beside, besideOf, namedValues, parametersOf, priorOf, TRAVEL_SCALE } from './parameters.ts';
import { isSightMark, type SightMark, travelOf, withWritten, writtenPer } from './sight-mark.ts';
import { wouldReadBy } from './would-read.ts';

/** Two marks of which the farther one has the higher pin. */
export interface Backwards {
  readonly near: SightMark;
  readonly far: SightMark;
}

/** A step back counts when it is more than this many standard uncertainties of the two groups. */
const SURE = 3;
/** Ranges as near as this are one, m. */
const SAME_RANGE = 0.5;

/**
 * Marks that run back against their ranges, each beside the next nearer ones: readings beside readings and lines on the strip
 * beside lines, of whatever days.
 *
 * Nearer than the range whose mark is highest on the sight marks turn back, as they should, and another day's air and hold move a
 * mark: only pairs count of which the bow as measured, each on its day, says that the pin goes down from the nearer to the
 * farther, by at least half of what the groups leave uncertain.
 *
 * @throws NumericalError when the arrow of the rig does not get to a range
 */
export function backwards({
  rig,
  priors,
  measurements,
}: Pick<CalibrationProblem, 'rig' | 'priors' | 'measurements'>): readonly Backwards[] {
  const names = parametersOf(priors);
  const values = namedValues(
    names.map((name) => priorOf(priors, name).value),
    names,
  );
  const beside = besideOf(values);
  // Another arrow has another order of marks.
  const marks = measurements.filter(isSightMark).filter(({ setting }) => (setting?.arrow ?? null) === null);
  return KINDS.flatMap((kind) =>
    pairs(
      marks
        .filter((mark) => mark.kind === kind)
        .toSorted((a, b) => a.range - b.range)
        .map((mark) => placeOf(rig, beside, mark)),
    ),
  );
}

const KINDS = ['mark', 'pencil'] as const;

/** A mark's pin, m of travel: where it was, where the rig says it should be, and how far the group leaves that open. */
interface Place {
  readonly mark: SightMark;
  readonly expected: number;
  readonly shot: number;
  readonly sd: number;
}

const pairs = (places: readonly Place[]): readonly Backwards[] =>
  places.flatMap((after): readonly Backwards[] => {
    const nearer = places.filter(({ mark }) => mark.range < after.mark.range - SAME_RANGE);
    const next = Math.max(...nearer.map(({ mark }) => mark.range));
    return nearer
      .filter(({ mark }) => mark.range > next - SAME_RANGE)
      .filter((before) => runsBack(before, after))
      .map((before) => ({ near: before.mark, far: after.mark }));
  });

function runsBack(before: Place, after: Place): boolean {
  const unsure = SURE * Math.hypot(before.sd, after.sd);
  const goesDown = after.expected - before.expected > unsure / 2;
  return goesDown && after.shot - before.shot < -unsure;
}

function placeOf(rig: Rig, beside: Beside, mark: SightMark): Place {
  const scale = rig.scale ?? TRAVEL_SCALE;
  const { written, heightPer } = wouldReadBy(rig, beside, mark);
  const expected = travelOf(scale, withWritten(mark, written), beside.tapeRatio);
  const heightPerTravel = heightPer * writtenPer(scale, mark, beside.tapeRatio);
  return {
    mark,
    expected,
    shot: travelOf(scale, mark, beside.tapeRatio),
    sd: Math.abs(mark.sd / heightPerTravel),
  };
}
