import { ownSpread } from '../../calibration/own-spread.ts';
import type { LateralMark } from '../../calibration/sideways/lateral-mark.ts';
import { DEGREE } from '../../quantities/exact.ts';
import { si } from '../../quantities/quantity.ts';
import type { MarkEntry, SetupFile } from '../schema/schema.ts';
import { centreSdOf } from './assemble-marks.ts';
import { defaultOf } from './defaults.ts';
import { statedSd } from './stated-sd.ts';

/** A cant held on purpose by eye or by a pocket inclinometer is that sure, rad. @source common practice, no source */
const HELD_CANT_SD = 0.25 * DEGREE;
/** Upright and end for end are held by the level itself. */
const BY_LEVEL = [0, Math.PI, -Math.PI];

/** Whatever holds a setup file. */
interface HasMarks {
  readonly setup: Pick<SetupFile, 'marks'>;
}

/** Of the vanes that shot a group, right positive; null when they were the arrow's own. */
function turnOf({ turn }: MarkEntry): 1 | -1 | null {
  if (turn === undefined) return null;
  return turn === 'right' ? 1 : -1;
}

/** The groups of a setup file whose left and right was written down; none when the marks are left aside. */
export function lateralMarks({ setup }: HasMarks, leftAside: boolean): readonly LateralMark[] {
  if (leftAside) return [];
  return (setup.marks ?? []).flatMap((entry): readonly LateralMark[] => {
    if (entry.lateral === undefined) return [];
    const cant = entry.cant ?? si<'rad'>(0);
    const byLevel = BY_LEVEL.some((angle) => Math.abs(angle - cant) < 1e-9);
    return [
      {
        range: entry.range,
        lateral: entry.lateral,
        sd: statedSd.markLateral(entry) ?? centreSdOf(entry),
        turn: turnOf(entry),
        cant,
        cantSd: statedSd.markCant(entry) ?? si(byLevel ? 0 : HELD_CANT_SD),
      },
    ];
  });
}

/** Standard deviation of one arrow per metre of range from the file's groups, or the usual one. */
export function archerSpread({ setup }: HasMarks): number {
  const usual = defaultOf('marks.arrow_spread');
  return ownSpread(
    (setup.marks ?? []).map(({ range, arrows, group }) => ({
      range,
      arrows: arrows ?? defaultOf('marks.arrows'),
      group: group ?? null,
      arrowSdPerRange: usual,
    })),
    usual,
  );
}
