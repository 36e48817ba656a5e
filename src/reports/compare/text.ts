import type { Fact, RowValue } from '../../advice/builds/build-readings.ts';
import { type Contrast, type Difference, relativeStiffness } from '../../advice/builds/comparison.ts';
import type { Uncertain } from '../../advice/builds/uncertain-readings.ts';
import type { Io } from '../../cli/io.ts';
import { plotSize } from '../../cli/output/plot-size.ts';
import { paragraphs } from '../../cli/output/present.ts';
import { plotText } from '../../documents/plot/terminal-plot.ts';
import { renderTableText } from '../../documents/render/text.ts';
import { numberText } from '../../documents/table/number-text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Column, Table } from '../../documents/table/table.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import { cautionLines } from '../cautions.ts';
import { headLines } from '../head.ts';
import { bowLines } from './bow-words.ts';
import { buildChanges } from './build-changes.ts';
import { buildTable, dragTable } from './build-tables.ts';
import { compareCautions } from './cautions.ts';
import { factTable, rangeTable, withError } from './difference-tables.ts';
import type { Compared } from './findings.ts';
import { GROUP } from './groups.ts';
import { markPlot } from './plots.ts';
import { factWording, rowWording, type Wording } from './wording.ts';

/** What the first lines are about: numbers of a build, and numbers at the farthest range. */
const TOLD_FACTS: readonly Fact[] = ['launchSpeed', 'launchEnergy', 'launchMomentum', 'dragCoefficient'];
const TOLD_ROWS: readonly RowValue[] = ['drop', 'windDrift', 'energy'];

/** Differences below this share of the number are left out of the sentences; the tables have them. */
const MATTERS = 0.005;

export function compareText(compared: Compared, io: Io): string {
  const { session, comparison, files } = compared;
  const { units } = session;
  const { base, others, questions } = comparison;
  const builds = [base, ...others.map(({ readings }) => readings)];
  return paragraphs([
    files.length === 0 ? '' : `Wrote ${files.join(', ')}.`,
    ...others.map((contrast) => verdictLines(compared, contrast)),
    headLines(session).join('\n'),
    surroundingsLine(compared),
    ...others.flatMap((contrast) => [
      `${contrast.readings.build.name}, against ${base.build.name}${changes(compared, contrast)}`,
      renderTableText(factTable(base, contrast, units)),
      renderTableText(rangeTable(questions.ranges, contrast, units)),
    ]),
    `real: a difference of this size comes by chance or ignorance once in twenty times or less. *: cannot be told apart. ±: one standard error of the
difference; what both builds share (the bow, the chronograph, the laws of drag) has cancelled. Without ±: as the parts are written; the laws of
lift and spin behind margin, swing and spin are good to about a tenth, alike for all builds.
with the mark of now: where that build hits when nothing on the sight or the bow is touched, low negative. wind drift: by ${formatQuantity(questions.crosswind, units.windSpeed, units.windSpeed === 'mph' ? 0 : 1)} from the side.`,
    bowLines(session, base),
    groupLines(compared),
    renderTableText(dragTable(builds)),
    ...builds.flatMap((readings) => [
      `${readings.build.name}${speedWords(readings.build.speedFrom)}`,
      renderTableText(buildTable(questions.ranges, readings, units)),
    ]),
    `guess short, long: how far a guess of the range may be off, everything else right, before a ring of ${formatQuantity(questions.ring, units.smallLength, 0)} is missed.
highest: of the path above the line of sight with that range's mark set. drop: below the launch line, sighted in at ${formatQuantity(base.build.rig.zeroRange, units.range, 0)}.`,
    plotText(markPlot(comparison, units), plotSize(io)),
    stiffnessLines(compared),
    cautionLines(compareCautions(compared)),
  ]);
}

/** Files may be about different days; then part of what differs is the day's. */
export function surroundingsLine({ sessions }: Compared): string {
  const days = new Set(
    sessions.map(({ setup: { air, wind, slope } }) =>
      JSON.stringify([air ?? null, wind ?? null, slope ?? null]),
    ),
  );
  return days.size === 1
    ? ''
    : 'The files name different air, wind or slope: part of every difference by range comes from there.';
}

/** What a listed build changes, to stand behind its name. */
function changes({ sessions }: Compared, { readings }: Contrast): string {
  for (const { setup, units } of sessions) {
    const entry = setup.builds?.find(({ name }) => name === readings.build.name);
    if (entry !== undefined) return `: ${buildChanges(entry, units)}`;
  }
  return '';
}

const speedWords = (from: string): string =>
  ({
    calibrated: ': speed calibrated by the shot marks',
    chronographed: ': speed chronographed',
    rated: ': speed from the rating of the bow',
    'bow energy': ': speed from the energy of the bow',
  })[from] ?? '';

/** Groups of a dozen with each build, and whether one is really tighter. */
function groupLines({ comparison, groups, session: { units } }: Compared): string {
  const { base, others, questions } = comparison;
  if (groups.every((found) => found === null)) return '';
  const builds = [base, ...others.map(({ readings }) => readings)];
  const wording = rowWording('drop', units);
  const table: Table = {
    title: `Group of ${GROUP}, corner to corner, of a sorted dozen from a steady bow and a perfect aim`,
    columns: [
      rangeColumn(questions.ranges, units),
      ...builds.map(({ build }, i): Column => ({ name: i === 0 ? 'now' : build.name, unit: wording.unit })),
    ],
    rows: questions.ranges.map((range, k) => [
      fromSi(range, units.range),
      ...groups.map((found, i) => {
        const paired = found?.[k];
        if (paired === undefined) return null;
        const size = numberText(wording.shown(paired.group), wording.digits + 1);
        return i === 0
          ? size
          : `${size} (${withError(paired.difference, { ...wording, digits: wording.digits + 1 })})`;
      }),
    ]),
    notes: [
      'In brackets: against now, shot with the same random differences. What they vary in: quillpath scatter --help.',
    ],
  };
  return renderTableText(table);
}

/** In words and first: what is real, then what cannot be told. */
function verdictLines({ session, comparison }: Compared, contrast: Contrast): string {
  const { units } = session;
  const last = contrast.rows.at(-1);
  const range = rangeWords(comparison.questions.ranges.at(-1) ?? 0, units);
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
  const real = found.filter(({ difference, share }) => difference.real && share > MATTERS);
  const open = found.filter(
    ({ difference: { real: isReal, value, sd } }) => !isReal && (value !== 0 || sd !== 0),
  );
  const words = ({ wording, difference, where }: (typeof found)[number]): string =>
    `${wording.label}${where} ${withError({ ...difference, real: true }, wording)} ${wording.unit}`.trimEnd();
  const name = contrast.readings.build.name;
  return [
    real.length === 0
      ? `${name}: nothing that matters differs for certain.`
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
  { smallLength }: Compared['session']['units'],
): string {
  const digits = smallLength === 'in' ? 1 : 0;
  const how = real ? '' : ', which is no more than the error';
  return `With the marks of now it hits ${formatQuantity(Math.abs(value), smallLength, digits)} ${value < 0 ? 'low' : 'high'} at ${range} (± ${formatQuantity(sd, smallLength, digits)})${how}.`;
}

function stiffnessLines({ comparison: { base, others } }: Compared): string {
  const found = others.flatMap((contrast) => {
    const ratio = relativeStiffness(contrast);
    const percent = (value: number): string => `${(100 * value).toFixed(0)} %`;
    return ratio === null
      ? []
      : [`${contrast.readings.build.name} ${percent(ratio.free)} and ${percent(ratio.pushed)}`];
  });
  if (base.facts.bendingFrequency === null || found.length === 0) return '';
  return `Stiffness of the cut shaft with its point and nock, relative to ${base.build.name}, flying free and under the push of the string: ${found.join('; ')}.
Free: the square of the first bending frequency. Pushed: the thrust on the middle of the shaft against its buckling load, which weight at the nock does
not raise. They say which build acts weaker from the same bow, not which spine is right: choose that by the shaft maker's chart, and prove it by
shooting bare shafts or broadheads.`;
}
