import type { Verdict } from '../../calibration/verdict.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { isDraft } from '../refuse-contradiction.ts';
import type { Session } from '../session.ts';
import { lostWords } from '../sureness-words.ts';
import { areTied } from '../told-spread.ts';
import { VERDICT_WORDS } from '../verdict-words.ts';
import { findingWords } from './finding-words.ts';
import { type FitFindings, NEXT_ARROWS } from './findings.ts';
import { parameterWords } from './parameter-words.ts';

/** What stands out, a line each. */
export const findingLines = (session: Session, { symptoms, isUnreadable }: FitFindings): readonly string[] =>
  symptoms.map((symptom) =>
    symptom.kind === 'no marks' && isUnreadable ? UNREADABLE : findingWords(session, symptom),
  );

const UNREADABLE =
  'The marks cannot be used yet (see the warning): these numbers come from your measurements alone, so ' +
  'the uncertainties are large.';

/** Chronograph readings and drops beside the model, a line each. */
export const otherLines = ({ others }: FitFindings, units: DisplayUnits): readonly string[] =>
  others.map(({ measurement, residual, studentised }) => {
    const range = formatQuantity(measurement.range, units.range, 0);
    const off =
      measurement.kind === 'speed'
        ? formatQuantity(residual, units.speed, 1)
        : formatQuantity(residual, units.smallLength, 2);
    const what = measurement.kind === 'speed' ? 'Speed' : 'Drop';
    const isAtBow = measurement.kind === 'speed' && measurement.isAtBow === true;
    const place = isAtBow ? `at the bow on ${measurement.day}` : `at ${range}`;
    return `${what} ${place}: ${off} from the model, ` + `${studentised.toFixed(1)} standard errors.`;
  });

/** How sure the marks are, near, half-way and far. */
export function tapeLine({ sureness, marks, pencil }: FitFindings, units: DisplayUnits): string {
  const told = sureness.flatMap(({ range, now }) => (now === null ? [] : [{ range, now }]));
  if (!areTied(sureness.map(({ now }) => now ?? UNKNOWN)))
    return marks.length === 0 && pencil.length > 0
      ? 'No pencil line ties the strip to the arrow yet, so a place on it may be anything.'
      : 'No mark ties the numbers of the scale to the arrow yet, so a reading may be anything.';
  const [near, halfWay, far] = [0, Math.floor(told.length / 2), told.length - 1].map((i) => {
    const { range, now } = at(told, i);
    return `${formatQuantity(now, units.smallLength, 1)} at ${formatQuantity(range, units.range, 0)}`;
  });
  const lost = sureness.find(({ now }) => now === null);
  return (
    `The marks are good to ± ${near}, ${halfWay} and ${far} on the target (one standard error).` +
    lostWords(lost, units)
  );
}

const UNKNOWN = Number.POSITIVE_INFINITY;

/** Where nothing was shot yet, a far group would be on no target. */
function beginLine(begin: readonly Metres[], { range }: DisplayUnits): string {
  const [first, ...then] = begin.map((one) => formatQuantity(one, range, 0));
  const after = then.map((one) => `, then at ${one}`).join('');
  return `Shoot ${NEXT_ARROWS} arrows at ${first}${after}; with those written down this answer says where to go on.`;
}

const CHECK_FIRST =
  'Before you shoot on, check what is named above against what you wrote down at the range, and correct the file.';

/** Where to shoot next, and what it would bring. */
export function nextLine(session: Session, { next }: FitFindings): string {
  const { units } = session;
  if (isDraft(session)) return CHECK_FIRST;
  if (next.begin.length > 0) return beginLine(next.begin, units);
  const where = `Shoot next at ${formatQuantity(next.range, units.range, 0)}`;
  if (!next.isTold.after)
    return (
      `${where}: ${NEXT_ARROWS} arrows there. Even then a reading may be anything until you shoot a second ` +
      'range, far from the first.'
    );
  const from = next.isTold.now ? `from ${formatQuantity(next.rmsNow, units.smallLength, 1)} ` : '';
  return (
    `${where}: ${NEXT_ARROWS} arrows there would bring the average error of the marks ${from}to ` +
    `${formatQuantity(next.rmsAfter, units.smallLength, 1)}.`
  );
}

/** What the verdicts of the table mean, of those that stand in it; nothing when nothing was shot. */
export function verdictLine({ measurements, parameters }: FitFindings): string {
  if (measurements === 0) return '';
  const found = new Set(parameters.filter(({ isShown }) => isShown).map(({ verdict }) => verdict));
  const words = VERDICTS.filter(([verdict]) => found.has(verdict)).map(
    ([verdict, meaning]) => `${VERDICT_WORDS[verdict]}: ${meaning}`,
  );
  return `From ${words.join('; ')}.`;
}

const VERDICTS: readonly (readonly [Verdict, string])[] = [
  ['measured', 'your marks decide it'],
  ['mostly prior', 'your ruler and chronograph decide it, and your marks hardly change it'],
  ['not separable', 'your marks would decide it if they could tell it from another number'],
];

/** The closest tie between two parameters; empty when there is none. */
export function tieLine(session: Session, { tie }: FitFindings): string {
  if (tie === null) return '';
  const words = parameterWords(session);
  return (
    `Your marks tell ${words[tie.one].name} and ${words[tie.other].name} apart least (correlation ` +
    `${tie.correlation.toFixed(2)}).`
  );
}
