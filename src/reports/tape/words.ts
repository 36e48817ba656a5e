import type { MarkUncertainty } from '../../calibration/mark-uncertainty.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { NeighbourStrip } from '../../sight/tape.ts';
import { reachNote } from '../marks/words.ts';
import type { TapeFindings } from './findings.ts';

/** What the sheet holds: its ranges and its length. */
export const lengthWords = ({ first, last, length }: TapeFindings, unit: 'yd' | 'm'): string =>
  `${first.label} to ${last.label} ${unit}, ${formatQuantity(length, 'mm', 1)} long`;

export const PRINT_WORDS = 'Print at 100 % ("actual size") and lay a ruler on the check bars before cutting.';

/** Why the tape is shorter than was asked for, a sentence each; none when it is not. */
export const shortNotes = ({ endsBefore, beyond }: TapeFindings, units: DisplayUnits): readonly string[] => [
  ...(endsBefore === null
    ? []
    : [
        `The tape ends before ${formatQuantity(endsBefore, units.range, 0)}: from there on the arrow or its vanes ` +
          'would touch the sight.',
      ]),
  ...(beyond === null ? [] : [reachNote(beyond, units)]),
];

/** What one standard uncertainty of the marks is on the target. */
export function surenessWords(sureness: readonly MarkUncertainty[] | null, units: DisplayUnits): string {
  if (sureness === null) return 'No mark ties the scale to the arrow yet.';
  const told = sureness.map(
    ({ range, onTargetSd }) =>
      `${formatQuantity(onTargetSd, units.smallLength, 1)} at ${formatQuantity(range, units.range, 0)}`,
  );
  return `Good to ± ${told.join(', ')} on the target (one standard uncertainty).`;
}

/** What sets a neighbour apart, short enough for the head of a narrow strip. */
export const neighbourName = ({ faster }: NeighbourStrip, { speed }: DisplayUnits): string =>
  `${faster > 0 ? '+' : '−'}${formatQuantity(Math.abs(faster), speed, 0)}`;
