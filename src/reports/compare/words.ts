import type { Fact, RowValue } from '../../advice/builds/build-readings.ts';
import { type Contrast, type Difference, relativeStiffness } from '../../advice/builds/comparison.ts';
import type { Uncertain } from '../../advice/builds/uncertain-readings.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import { at } from '../../numerics/at.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { buildChanges } from './build-changes.ts';
import { isSame, withError } from './difference-tables.ts';
import { factWording, rowWording, type Wording } from './fields.ts';
import { type CompareFindings, differentDays } from './findings.ts';

/** What the first lines are about: numbers of a build, and numbers at the farthest range. */
const TOLD_FACTS: readonly Fact[] = ['launchSpeed', 'launchEnergy', 'launchMomentum', 'dragCoefficient'];
const TOLD_ROWS: readonly RowValue[] = ['drop', 'windDrift', 'energy'];

/** Differences below this share of the number are left out of the sentences; the tables have them. */
const MATTERS = 0.005;

/** Files may be about different days; then part of what differs is the day's. Empty when they are not. */
export const surroundingsLine = (found: CompareFindings): string =>
  differentDays(found)
    ? 'The files have different air, wind or slope, and part of every difference by range comes from that.'
    : '';

/** What a listed build changes, to stand behind its name. */
export function changes({ sessions }: CompareFindings, { readings }: Contrast): string {
  for (const { setup, units } of sessions) {
    const entry = setup.builds?.find(({ name }) => name === readings.build.name);
    if (entry !== undefined) return `: ${buildChanges(entry, units)}`;
  }
  return '';
}

export const speedWords = (from: string): string =>
  ({
    calibrated: ': speed calibrated by the shot marks',
    chronographed: ': speed chronographed',
    rated: ': speed from the rating of the bow',
    'bow energy': ': speed from the energy of the bow',
  })[from] ?? '';

/** What the columns of the differences mean, a line each. */
export function differenceLegend({ comparison, session: { units } }: CompareFindings): string {
  const wind = formatQuantity(
    comparison.questions.crosswind,
    units.windSpeed,
    units.windSpeed === 'mph' ? 0 : 1,
  );
  return [
    'real: a difference of this size is unlikely (5 % or less) to be chance or measurement error.',
    '*: cannot be told apart.',
    '±: one standard error of the difference; what both builds share (the bow, the chronograph, the laws of drag and',
    'lift) cancels, and each shape of head is off by 40 % of its own drag. Without ±: from the parts as written; the',
    'law of spin is good to about 10 %, in the same way for all builds. Heights count how the arrow leaves the string:',
    'its first swing, and a nock that travels up or down at 0.25 ft/s, which nobody has measured.',
    'with the present mark: where the build hits if sight and bow are left alone, low negative.',
    `wind drift: by ${wind} from the side.`,
  ].join('\n');
}

/** What the columns of a build mean, a line each. */
export function buildLegend({
  comparison: { base, questions },
  session: { units },
}: CompareFindings): string {
  const ring = formatQuantity(questions.ring, units.smallLength, 0);
  const zero = formatQuantity(base.build.rig.zeroRange, units.range, 0);
  return [
    'guess short, long: how far a guess of the range may be off, with everything else right,',
    `before a ring of ${ring} is missed.`,
    "highest: of the path above the line of sight with that range's mark set.",
    `drop: below the launch line, sighted in at ${zero}.`,
  ].join('\n');
}

/** In words and first: what is real, then what cannot be told. */
export function verdictLines({ session, comparison }: CompareFindings, contrast: Contrast): string {
  const { units } = session;
  const { questions } = comparison;
  const last = contrast.rows.at(-1);
  const range = rangeWords(at(questions.ranges, questions.ranges.length - 1), units);
  const found: { wording: Wording; difference: Difference; where: string; share: number }[] = [];
  const add = (
    difference: Difference | null,
    known: Uncertain | null | undefined,
    wording: Wording,
    where: string,
  ) => {
    if (difference === null || known === null || known === undefined) return;
    found.push({ wording, difference, where, share: Math.abs(difference.value / known.value) });
  };
  for (const fact of TOLD_FACTS)
    add(contrast.facts[fact], contrast.readings.facts[fact], factWording(fact, units), '');
  for (const key of TOLD_ROWS)
    add(last?.[key] ?? null, contrast.readings.rows.at(-1)?.[key], rowWording(key, units), ` at ${range}`);
  const shown = found.filter(({ difference, wording }) => !isSame(difference, wording));
  const real = shown.filter(({ difference, share }) => difference.real && share > MATTERS);
  const open = shown.filter(({ difference }) => !difference.real);
  const words = ({ wording, difference, where }: (typeof found)[number]): string =>
    `${wording.label}${where} ${withError({ ...difference, real: true }, wording)} ${wording.unit}`.trimEnd();
  const name = contrast.readings.build.name;
  return [
    real.length === 0
      ? `${name}: no difference that matters is certain.`
      : `${name}: really different in ${real.map(words).join('; ')}.`,
    open.length === 0 ? '' : `Cannot be told apart: ${open.map(words).join('; ')}.`,
    last === undefined ? '' : markWords(last.withBaseMark, range, units),
  ]
    .filter((line) => line !== '')
    .join('\n');
}

function markWords(
  { value, sd, real }: Difference,
  range: string,
  { smallLength }: CompareFindings['session']['units'],
): string {
  const digits = smallLength === 'in' ? 1 : 0;
  const how = real ? '' : ', less than twice its error: it cannot be told from nothing';
  return (
    `With the present marks it hits ${formatQuantity(Math.abs(value), smallLength, digits)} ` +
    `${value < 0 ? 'low' : 'high'} at ${range} (± ${formatQuantity(sd, smallLength, digits)})${how}.`
  );
}

export function stiffnessLines({ comparison: { base, others } }: CompareFindings): string {
  const found = others.flatMap((contrast) => {
    const ratio = relativeStiffness(contrast);
    const percent = (value: number): string => `${(100 * value).toFixed(0)} %`;
    return ratio === null
      ? []
      : [`${contrast.readings.build.name} ${percent(ratio.free)} and ${percent(ratio.pushed)}`];
  });
  if (base.facts.bendingFrequency === null || found.length === 0) return '';
  return [
    `Stiffness of the cut shaft with its point and nock, relative to ${base.build.name}, flying free and under the ` +
      `push of the string: ${found.join('; ')}.`,
    'Free: the square of the first bending frequency. Pushed: the thrust on the middle of the shaft against its',
    'buckling load, which weight at the nock does not raise. They say which build acts weaker from the same bow, not',
    "which spine is right: choose that by the shaft maker's chart, and check it by shooting bare shafts or broadheads.",
  ].join('\n');
}
