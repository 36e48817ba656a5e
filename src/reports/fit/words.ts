import { findings } from '../../calibration/diagnose.ts';
import { PARAMETERS } from '../../calibration/parameters.ts';
import type { Verdict } from '../../calibration/verdict.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { isToldSpread } from '../told-spread.ts';
import { findingWords } from './finding-words.ts';
import { type FitFindings, NEXT_ARROWS } from './findings.ts';
import { parameterWords } from './parameter-words.ts';
import { shownParameters } from './tables.ts';

/** What stands out, a line each. */
export const findingLines = ({ session }: FitFindings): readonly string[] =>
  findings(session.calibration).map((finding) => findingWords(session, finding));

/** Chronograph readings and drops beside the model, a line each. */
export function otherLines({ session, others }: FitFindings): string {
  const { units } = session;
  return others
    .map(({ measurement, residual, studentised }) => {
      const range = formatQuantity(measurement.range, units.range, 0);
      const off =
        measurement.kind === 'speed'
          ? formatQuantity(residual, units.speed, 1)
          : formatQuantity(residual, units.smallLength, 2);
      return `${measurement.kind === 'speed' ? 'Speed' : 'Drop'} at ${range}: ${off} from the model, ${studentised.toFixed(1)} standard errors.`;
    })
    .join('\n');
}

/** How sure the marks are, near, half-way and far. */
export function tapeLine({ session, ranges, next }: FitFindings): string {
  const { units } = session;
  if (!next.now.every(isToldSpread))
    return 'No mark ties the numbers of the scale to the arrow yet: a reading may be anything.';
  const at = (i: number): string => {
    const [sd, range] = [next.now.at(i), ranges.at(i)];
    return sd === undefined || range === undefined
      ? ''
      : `${formatQuantity(sd, units.smallLength, 1)} at ${formatQuantity(range, units.range, 0)}`;
  };
  return `The marks are good to ± ${at(0)}, ${at(Math.floor(ranges.length / 2))} and ${at(-1)} on the target (one standard uncertainty).`;
}

/** Where to shoot next, and what it would bring. */
export function nextLine({ session, next }: FitFindings): string {
  const { units } = session;
  const where = `Shoot next at ${formatQuantity(next.range, units.range, 0)}`;
  if (!isToldSpread(next.rmsAfter))
    return `${where}: ${NEXT_ARROWS} arrows there. Even then a reading may be anything until a second range, far from the first, is shot.`;
  const from = isToldSpread(next.rmsNow) ? `from ${formatQuantity(next.rmsNow, units.smallLength, 1)} ` : '';
  return `${where}: ${NEXT_ARROWS} arrows there would bring the average error of the marks ${from}to ${formatQuantity(next.rmsAfter, units.smallLength, 1)}.`;
}

/** What the verdicts of the table mean, of those that stand in it; nothing when nothing was shot. */
export function verdictLine({ session }: FitFindings): string {
  if (session.calibration.residuals.length === 0) return '';
  const found = new Set(shownParameters(session).map(({ verdict }) => verdict));
  const words = VERDICTS.filter(([verdict]) => found.has(verdict)).map(
    ([verdict, meaning]) => `${verdict}: ${meaning}`,
  );
  return `${words.join('; ')}.`.replace(/^./, (first) => first.toUpperCase());
}
const VERDICTS: readonly (readonly [Verdict, string])[] = [
  ['measured', 'your marks decide it'],
  ['mostly prior', 'your marks hardly change what was known of it before'],
  ['not separable', 'your marks would decide it, could they tell it from another one'],
];

/** The strongest tie between two parameters, when it is strong. */
export function correlationLine({ session }: FitFindings): string {
  const { correlations } = session.calibration;
  const words = parameterWords(session);
  const pairs = PARAMETERS.flatMap((a, i) =>
    PARAMETERS.slice(i + 1).map((b, k) => ({ a, b, value: correlations[i]?.[i + 1 + k] ?? 0 })),
  );
  const strongest = pairs.toSorted((p, q) => Math.abs(q.value) - Math.abs(p.value))[0];
  if (strongest === undefined || Math.abs(strongest.value) < STRONG) return '';
  return `Strongest correlation: ${words[strongest.a].name} with ${words[strongest.b].name}, ${strongest.value.toFixed(2)}.`;
}
const STRONG = 0.5;
