import { gridPoint } from '../../advice/builds/vary.ts';
import { caution, isLight, lightArrow } from '../cautions.ts';
import type { Caution } from '../report.ts';
import type { VariedKey } from './axes.ts';
import type { Cell } from './cells.ts';
import type { VaryFindings } from './findings.ts';

/** A key as a heading: what it is about, without the sections everything arrow-like stands in. */
export const heading = (name: string): string =>
  name.replace(/^(arrow\.parts|arrow|launch)\./, '').replace(/[._]/g, ' ');

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
export function lightCautions(cells: readonly Cell[]): readonly Caution[] {
  const light = cells.filter((cell) => {
    const perDraw = 'failure' in cell ? null : cell.facts.massPerDraw;
    return perDraw !== null && isLight(perDraw);
  });
  if (light.length === 0) return [];
  return [caution(`${light.length} of ${cells.length} combinations are light: ${lightArrow()}`)];
}
