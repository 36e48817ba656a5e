import type { Measurement } from '../../calibration/measurement.ts';
import type { Verdict } from '../../calibration/verdict.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import type { Session } from '../session.ts';
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
    // Nearer than a target stands, a speed is that of a chronograph at the bow.
    const place = measurement.range < AT_THE_BOW ? `at the bow${dayWords(measurement)}` : `at ${range}`;
    return `${what} ${place}: ${off} from the model, ` + `${studentised.toFixed(1)} standard errors.`;
  });

const AT_THE_BOW = 3; // m

const dayWords = ({ day }: Measurement): string => (day === null ? '' : ` on ${day}`);

/** How sure the marks are, near, half-way and far. */
export function tapeLine({ sureness }: FitFindings, units: DisplayUnits): string {
  const told = sureness.flatMap(({ range, now }) => (now === null ? [] : [{ range, now }]));
  if (told.length < sureness.length)
    return 'No mark ties the numbers of the scale to the arrow yet, so a reading may be anything.';
  const [near, halfWay, far] = [0, Math.floor(told.length / 2), told.length - 1].map((i) => {
    const { range, now } = at(told, i);
    return `${formatQuantity(now, units.smallLength, 1)} at ${formatQuantity(range, units.range, 0)}`;
  });
  return `The marks are good to ± ${near}, ${halfWay} and ${far} on the target (one standard uncertainty).`;
}

/** Where to shoot next, and what it would bring. */
export function nextLine({ next }: FitFindings, units: DisplayUnits): string {
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
    ([verdict, meaning]) => `${verdict}: ${meaning}`,
  );
  return `${words.join('; ')}.`.replace(/^./, (first) => first.toUpperCase());
}

const VERDICTS: readonly (readonly [Verdict, string])[] = [
  ['measured', 'your marks decide it'],
  ['mostly prior', 'your marks hardly change what was known of it before'],
  ['not separable', 'your marks would decide it if they could tell it from another one'],
];

/** The closest tie between two parameters; empty when there is none. */
export function tieLine(session: Session, { tie }: FitFindings): string {
  if (tie === null) return '';
  const words = parameterWords(session);
  return `Strongest correlation: ${words[tie.one].name} with ${words[tie.other].name}, ${tie.correlation.toFixed(2)}.`;
}
