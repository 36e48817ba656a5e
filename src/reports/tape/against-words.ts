import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import type { OldMark } from '../../sight/old-tape.ts';
import { byLength, type Field } from '../field.ts';
import { heightWords } from '../side-words.ts';
import type { AgainstFindings } from './against.ts';

/** What to do with an old tape, range by range. */
export const againstFields = (unit: 'yd' | 'm'): readonly Field<OldMark>[] => [
  { key: 'range_m', name: 'range', unit, digits: 0, of: ({ range }) => range },
  { key: 'use_m', name: 'number to use', unit, digits: 1, of: ({ use }) => use },
  {
    key: 'height_m',
    name: 'its own number hits',
    unit: 'smallLength',
    digits: byLength(1, 0),
    of: ({ height }) => height,
  },
];

export const AGAINST_NOTE =
  'number to use: on the tape that is on the sight, laid with its zero range where it belongs; "-" where it does not reach. ' +
  'its own number hits: low (-) or high, when the range itself is set on it.';

/** Less than this, m on the target, nobody sees. */
const UNSEEN = 0.0254;

/** How far an old tape holds, and what to do at the end. */
export function againstWords(
  { name, marks }: AgainstFindings,
  units: DisplayUnits,
  unit: 'yd' | 'm',
): string {
  const inUnits = { ...units, range: unit };
  const told = marks.filter((mark): mark is OldMark & { readonly height: number } => mark.height !== null);
  const off = told.find(({ height }) => Math.abs(height) > UNSEEN);
  const last = told.at(-1);
  const within = formatQuantity(UNSEEN, units.smallLength, units.smallLength === 'in' ? 0 : 0);
  const capital = name.charAt(0).toUpperCase() + name.slice(1);
  if (last === undefined) return `${capital} has none of these ranges.`;
  if (off === undefined)
    return `${capital} is within ${within} of the new one up to ${formatQuantity(last.range, unit, 0)}: keep it.`;
  const before = told.filter(({ range }) => range < off.range).at(-1);
  const holds =
    before === undefined
      ? `${capital} is off from ${formatQuantity(off.range, unit, 0)} on`
      : `${capital} is within ${within} up to ${formatQuantity(before.range, unit, 0)}`;
  const use =
    last.use === null ? 'it does not reach that far' : `set ${fromSi(last.use, unit).toFixed(1)} on it`;
  return (
    `${holds}; at ${formatQuantity(last.range, inUnits.range, 0)} its own number hits ` +
    `${heightWords(last.height, units)}: ${use}.`
  );
}
