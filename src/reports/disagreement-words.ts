import type { Disagreement, Explained } from '../calibration/disagreement.ts';
import { type WrongMark, wrongMark } from '../calibration/likely-slip.ts';
import type { Backwards } from '../calibration/mark-order.ts';
import type { Measurement } from '../calibration/measurement.ts';
import type { OneNumber } from '../calibration/one-number.ts';
import { isSightMark, type SightMark, writtenOf } from '../calibration/sight-mark.ts';
import { formatQuantity } from '../quantities/format.ts';
import { listed } from './listed.ts';
import { measuredAt, measurementName, said, writtenWords } from './measurement-name.ts';
import type { Session } from './session.ts';

/** What the measurements of a setup have against one another, a sentence or several; empty when they agree. */
export function disagreementWords(session: Session): string {
  const { disagreement } = session;
  if (disagreement?.isContradiction !== true) return '';
  const { explanations, together, worst } = disagreement;
  const [first, second] = explanations;
  if (first !== undefined && second === undefined) return aloneWords(session, disagreement, first);
  const order = orderWords(session, disagreement.order);
  if (first !== undefined)
    return (
      `${order}The shot marks contradict one another or what was measured. Any one of these would explain it: ` +
      `${amongWords(session, explanations)} Check these first.`
    );
  if (together.length > 0) return togetherWords(session, disagreement);
  return (
    `${order}The shot marks contradict one another or what was measured, and no single mark or number explains it. ` +
    `Farthest from the rest: ${listed(worst.map((one) => measurementName(session, one)))}. Check every reading and ` +
    'range, or shoot them again.'
  );
}

/** Marks that are left out of the fit, beside what the others say of them. */
export function leftOutMarks({ disagreement, assembly }: Session): readonly WrongMark[] {
  if (disagreement?.isContradiction !== true || disagreement.rest === null) return [];
  const { rest } = disagreement;
  const all = assembly.problem.measurements;
  const gone = all.filter((one) => !rest.problem.measurements.includes(one));
  return gone.flatMap((one) => (isSightMark(one) ? [wrongMark(rest, one, all)] : []));
}

function aloneWords(session: Session, { order }: Disagreement, found: Explained): string {
  const { explanation, calibration } = found;
  const { assembly } = session;
  if (explanation.kind !== 'mark')
    return `The shot marks contradict what was measured. ${numberWords(session, explanation)}`;
  const { measurement } = explanation;
  if (!isSightMark(measurement))
    return (
      `${capital(measurementName(session, measurement))} contradicts the rest: without it everything else agrees. ` +
      'It is left out; check it or measure it again.'
    );
  const wrong = wrongMark(calibration, measurement, assembly.problem.measurements);
  const backwards = order.find(({ near, far }) => near === measurement || far === measurement);
  const what =
    backwards === undefined
      ? `${capital(measurementName(session, measurement))} does not belong with the rest, which agree: it would ` +
        `${WOULD[measurement.kind]} ${wouldWords(wrong)}; ${wasWritten(session, measurement)}. ${slipWords(session, wrong)}`
      : `${backwardsWords(session, backwards)}. ${slipWords(session, wrong)}At ${measuredAt(session, measurement)} ` +
        `${wouldWords(wrong)} would fit. `;
  return `${what}${capital(measurementName(session, measurement))} is left out of the fit: correct it, or shoot it again.`;
}

const WOULD = { mark: 'read', pencil: 'be at' } as const;

function togetherWords(session: Session, { together }: Disagreement): string {
  const wrong = new Map(leftOutMarks(session).map((one) => [one.mark as Measurement, one]));
  const each = together.map((one) => {
    const found = wrong.get(one);
    const beside =
      found === undefined ? '' : ` (${wouldWords(found)} would fit, ${wasWritten(session, found.mark)})`;
    return `${measurementName(session, one)}${beside}`;
  });
  return (
    `Several marks do not belong with the rest, which agree: ${listed(each)}. They are left out of the fit: correct ` +
    'them, or shoot them again.'
  );
}

/** Several explanations, numbered; marks that a usual slip explains come first. */
const amongWords = (session: Session, explanations: readonly Explained[]): string =>
  explanations
    .map((one) => oneOfWords(session, one))
    .toSorted((a, b) => Number(b.includes(SLIP)) - Number(a.includes(SLIP)))
    .map((words, i) => `(${i + 1}) ${words}`)
    .join('; ')
    .replace(/[^?]$/, '$&.');
/** What stands before a slip. */
const SLIP = ' was written: ';

function oneOfWords(session: Session, { explanation, calibration }: Explained): string {
  if (explanation.kind !== 'mark') return lowered(numberWords(session, explanation)).replace(/[.]$/, '');
  const { measurement } = explanation;
  const name = `${measurementName(session, measurement)} is wrong`;
  if (!isSightMark(measurement)) return name;
  const wrong = wrongMark(calibration, measurement, session.assembly.problem.measurements);
  const slip = slipWords(session, wrong).trim();
  return (
    `${name} (${wouldWords(wrong)} would fit, ${wasWritten(session, measurement)}` +
    `${slip === '' ? '' : `: ${lowered(slip)}`})`
  );
}

function numberWords({ units }: Session, cause: OneNumber): string {
  switch (cause.kind) {
    case 'travel per unit':
      return (
        `All marks fit if one unit of the scale is ${formatQuantity(cause.value, 'mm', 2)} of pin travel, where ` +
        `${formatQuantity(cause.stated, 'mm', 2)} was written: is the wheel geared?`
      );
    case 'reading at zero':
      return (
        `All marks fit if the scale reads ${said(cause.value, 1)} at the zero range, where ${said(cause.stated, 1)} was ` +
        'written.'
      );
    case 'direction':
      return (
        `All marks fit if the numbers grow as the pin goes ${cause.increases}: write "increases: ${cause.increases}" ` +
        'in the scale.'
      );
    case 'other unit':
      return otherUnitWords(cause.written);
    case 'launch speed':
      return (
        `All marks fit with a launch speed of ${formatQuantity(cause.value, units.speed, 0)}, where ` +
        `${formatQuantity(cause.stated, units.speed, 0)} was written: was it measured with this arrow and this draw weight?`
      );
    case 'travel ratio':
      return (
        `All marks fit if the strip runs ${said(cause.value, 2)} times the pin, where ${said(cause.stated, 2)} was written ` +
        'as "travel_ratio": is it on a part that is geared?'
      );
    case 'line of zero':
      return (
        `All marks fit if the line of the zero range were ${formatQuantity(Math.abs(cause.value), 'mm', 1)} ` +
        `${cause.value > 0 ? 'nearer to the lines of longer ranges' : 'farther from the lines of longer ranges'}: ` +
        'were the lines ' +
        'measured from that line?'
      );
    case 'strip turned':
      return (
        'All marks fit if the lines were measured the other way: "on_tape" is positive from the line of the zero range to ' +
        'those of longer ranges.'
      );
  }
}

export const otherUnitWords = (written: 'yd' | 'm'): string =>
  written === 'yd'
    ? 'All marks fit better if their ranges were metres, not yards: what did the rangefinder count in?'
    : 'All marks fit better if their ranges were yards, not metres: what did the rangefinder count in?';

/** A slip as a question, with a blank after it. */
function slipWords(session: Session, { mark, slip }: WrongMark): string {
  switch (slip?.kind) {
    case undefined:
      return '';
    case 'height turned':
      return 'Was the group as far on the other side of the aim? ';
    case 'height in another unit':
      return slip.really === 'cm'
        ? 'Was the height of the group measured in centimetres, not inches? '
        : 'Was the height of the group measured in inches, not centimetres? ';
    case 'digits swapped':
      return `Digits swapped, for ${writtenWords(mark, slip.meant)}? `;
    case 'one digit':
      return `One digit wrong, for ${writtenWords(mark, slip.meant)}? `;
    case 'other unit':
      return slip.unit === 'm'
        ? 'Was the target so many metres away, not yards? '
        : 'Was the target so many yards away, not metres? ';
    case 'reading of another range':
      return (
        `Is that the ${mark.kind === 'mark' ? 'reading' : 'line'} of ` +
        `${formatQuantity(slip.range, session.units.range, 0)}? `
      );
  }
}

const orderWords = (session: Session, order: readonly Backwards[]): string =>
  order.map((pair) => `${backwardsWords(session, pair)}. `).join('');

/** The farther range has the lower pin on every sight. */
const backwardsWords = (session: Session, { near, far }: Backwards): string =>
  `${far.kind === 'mark' ? 'Reading' : 'The pencil line'} ${writtenOn(far)} at ${measuredAt(session, far)} lies above ` +
  `${writtenOn(near)} at ${measuredAt(session, near)}`;

const writtenOn = (mark: SightMark): string => writtenWords(mark, writtenOf(mark));

/** What the file says of a mark, with the height of its group where it gives one. */
function wasWritten({ units }: Session, mark: SightMark): string {
  const { vertical } = mark;
  const side = vertical > 0 ? 'high' : 'low';
  const height =
    vertical === 0 ? '' : ` for a group ${formatQuantity(Math.abs(vertical), units.smallLength, 1)} ${side}`;
  return `${writtenOn(mark)}${height} was written`;
}

/** A reading surer than this is told to a tenth, as 'it would read 72.9'. */
const HALF_A_NUMBER = 5;
function wouldWords({ mark: { kind }, wouldRead, wouldReadSd }: WrongMark): string {
  const times = kind === 'mark' ? 1 : 1000;
  const told = (times * wouldRead).toFixed(times * wouldReadSd < HALF_A_NUMBER ? 1 : 0);
  return kind === 'mark' ? told : `${told} mm`;
}

const lowered = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
