import type { MarkUncertainty } from '../../calibration/mark-uncertainty.ts';
import { NARROWEST_WITH_NEAR } from '../../documents/tape/strip-grid.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { NeighbourStrip } from '../../sight/tape.ts';
import { reachNotes } from '../reach-words.ts';
import type { Session } from '../session.ts';
import { surenessWords } from '../sureness-words.ts';
import type { TapeFindings } from './findings.ts';

/** What the sheet holds: its ranges and its length. */
export const lengthWords = (
  { first, last, length }: TapeFindings,
  unit: 'yd' | 'm',
  name: string | null,
): string =>
  `${name === null ? '' : `${name} `}${first.label} to ${last.label} ${unit}, ${formatQuantity(length, 'mm', 1)} long`;

export const DRAW_WORDS = 'Nothing is drawn yet: --out tape.pdf writes the sheet.';
export const PRINT_WORDS = 'Print at 100 % ("actual size") and lay a ruler on the check bars before cutting.';

/** Why the tape is shorter than was asked for, a sentence each; none when it is not. */
export function shortNotes(
  { endsBefore, sliderEndsBefore, sliderTooLow, placeEndsBefore, nearLeftOut, ...reach }: TapeFindings,
  units: DisplayUnits,
  unit: 'yd' | 'm',
): readonly string[] {
  const before = (range: Metres): string => `The tape ends before ${formatQuantity(range, unit, 0)}:`;
  return [
    ...(endsBefore === null
      ? []
      : [`${before(endsBefore)} from there on the arrow or its vanes would touch the sight.`]),
    ...reachNotes(reach, units),
    ...(sliderEndsBefore === null
      ? []
      : [`${before(sliderEndsBefore)} the slider goes no lower (sight.travel_length).`]),
    ...(sliderTooLow
      ? ['Some near ranges are left out: the slider goes no higher (sight.travel_above_zero).']
      : []),
    ...(nearLeftOut
      ? [
          `Ranges so near that marks turn back are not drawn: they need a tape ${NARROWEST_WITH_NEAR} mm wide ` +
            '(sight.tape.width).',
        ]
      : []),
    ...(placeEndsBefore === null
      ? []
      : [`${before(placeEndsBefore)} its place on the sight is no longer (sight.tape.length).`]),
  ];
}

/** How good the marks of a tape are, in its own unit. */
export const goodTo = (session: Session, sure: readonly MarkUncertainty[], unit: 'yd' | 'm'): string =>
  surenessWords(
    sure,
    { ...session.units, range: unit },
    { calibrated: session.calibrated, from: session.calibration.rig.zeroRange },
  );

/** The answer in a sentence or two: how far the tape can be trusted. */
export const verdictWords = (good: string, provenTo: Metres | null, unit: 'yd' | 'm'): string =>
  good +
  (provenTo === null
    ? ''
    : ` Ticks beyond ${formatQuantity(provenTo, unit, 0)} are hollow: nothing was shot near them. Prove them first.`);

/** What hollow ticks say. */
export const unprovenWords = (unit: 'yd' | 'm'): string =>
  `hollow: more than ${unit === 'yd' ? '20 yd' : '18 m'} beyond the last range that was shot; prove it first`;

/** How many decimals tell the steps of speed apart: within a twentieth of a step. */
function stepDigits(step: number): number {
  const near = (digits: number): boolean => Math.abs(Number(step.toFixed(digits)) - step) <= 0.05 * step;
  return [0, 1, 2].find(near) ?? 3;
}

/** The build and the place that a tape is for; null for the tape of the setup as it is, or of air that has no name. */
function standingName({ build, place }: Session): string | null {
  const names = [build, place].flatMap((one) => (one === null || one.name === null ? [] : [one.name]));
  return names.length === 0 ? null : names.join(', ');
}

/** The same with the pin of a slider that has several. */
export function tapeName(session: Session, pin: number | null): string | null {
  const standing = standingName(session);
  if (pin === null) return standing;
  const name = pin === 1 ? 'top pin' : `pin ${pin}`;
  return standing === null ? name : `${standing}, ${name}`;
}

/** What sets a neighbour apart, short enough for a narrow strip. */
export function neighbourName({ faster }: NeighbourStrip, step: number, { speed }: DisplayUnits): string {
  const digits = stepDigits(fromSi(step, speed));
  return `${faster > 0 ? '+' : '−'}${formatQuantity(Math.abs(faster), speed, digits)}`;
}

/** When to take a neighbour. */
export const neighbourHint = ({ faster }: NeighbourStrip): string =>
  `far shots ${faster > 0 ? 'high' : 'low'}: try this`;

export const NEARBY_WORDS =
  'Nearby speeds: where far shots land low with the tape, try a strip on its left; where they land high, one on its right.';
