import { gridPoint } from '../../advice/builds/vary.ts';
import { type Cell, cellText, type Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import { caution, isLight, lightArrow } from '../cautions.ts';
import { listed } from '../listed.ts';
import type { Caution } from '../report.ts';
import type { VariedKey } from './axes.ts';
import type { Cell as Combination } from './cells.ts';
import type { VaryFindings } from './findings.ts';

/** A key as a heading: what it is about, without the sections everything arrow-like stands in. */
export const heading = (name: string): string =>
  name.replace(/^(arrow\.parts|arrow|launch)\./, '').replace(/[._]/g, ' ');

/** What the first and the last combination of a sweep that have an answer come to. */
export function verdictWords({ axes, cells }: VaryFindings, { columns, rows }: Table): string {
  const answered = rows.filter((_, i) => !('failure' in at(cells, i)));
  const [first, last] = [answered[0], answered.at(-1)];
  if (first === undefined || last === undefined) return 'None of these combinations has an answer.';
  const keys = axes.length;
  const spoken = (row: readonly Cell[], i: number): string => cellText(row[i], at(columns, i));
  const unitOf = (i: number): string => (at(columns, i).unit === '' ? '' : ` ${at(columns, i).unit}`);
  // The table tells a key that is set from the same thing shown by "set" in its name.
  const span = (i: number): string => {
    const [from, to] = [spoken(first, i), spoken(last, i)];
    return `${i < keys ? heading(at(axes, i).name) : at(columns, i).name} ${from === to ? from : `${from} to ${to}`}${unitOf(i)}`;
  };
  const over = axes.map((_, i) => span(i));
  const changed = columns.flatMap((_, i) => {
    const isTold = first === last || spoken(first, i) !== spoken(last, i);
    // A key that is shown as well is told once.
    return i < keys || !isTold || over.includes(span(i)) ? [] : [span(i)];
  });
  const told =
    changed.length === 0 ? 'nothing else that is shown changes' : listed(changed.slice(0, MOST_TOLD));
  return `${capital(over.join(', '))}: ${told}.`;
}
/** Of the columns, in a first line. */
const MOST_TOLD = 4;
const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** What becomes of the launch speed while other things are varied. */
export const speedWords = (axes: readonly VariedKey[]): string =>
  axes.some(({ name }) => name.startsWith('launch.'))
    ? 'The launch speed is what the sweep sets.'
    : 'The launch speed follows from the energy of the bow, v = √(2E/(m + K)); where they are varied, that ' +
      'goes as draw weight times power stroke.';

/** Why some combinations have no answer; empty when all have. */
export function failureLines({ axes, cells }: VaryFindings): string {
  const failures = cells.flatMap((cell, i) =>
    'failure' in cell ? [`${gridPoint(axes, i).join(', ')}: ${cell.failure}.`] : [],
  );
  if (failures.length === 0) return '';
  const more = failures.length - MOST_FAILURES;
  return [
    `"-": no answer for ${failures.length} of ${cells.length} combinations, because of what they set ` +
      'together with the rest of the file:',
    ...failures.slice(0, MOST_FAILURES),
    more > 0 ? `${more} more.` : '',
  ]
    .filter((line) => line !== '')
    .join('\n');
}
/** One kind of failure repeats itself. */
const MOST_FAILURES = 3;

/** Combinations too light for the bow. */
export function lightCautions(cells: readonly Combination[]): readonly Caution[] {
  const light = cells.filter((cell) => {
    const perDraw = 'failure' in cell ? null : cell.facts.massPerDraw;
    return perDraw !== null && isLight(perDraw);
  });
  if (light.length === 0) return [];
  return [caution(`${light.length} of ${cells.length} combinations are light: ${lightArrow()}`)];
}
