import { type DisplayUnit, toSi } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { type OldTape, oldTape } from '../../sight/old-tape.ts';
import { QuestionError } from '../asked/question-error.ts';

/** The units of the columns, as the rows of a tape have them. */
const RANGE_UNITS = ['yd', 'm', 'ft'] as const satisfies readonly DisplayUnit[];
const ALONG_UNITS = ['mm', 'cm', 'in', 'm'] as const satisfies readonly DisplayUnit[];
const WRITE =
  'Write the rows of a tape: "range (yd),along (mm)" in the first line, then "20,0.000" and so on.';

/**
 * An old tape from rows as `tape` gives them to a spreadsheet: comma-separated, a first line that names range and along with
 * their units in brackets, in any order, among others or alone.
 *
 * @throws QuestionError naming the line that cannot be read
 */
export function oldTapeFrom(text: string): OldTape {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\r|\n/)
    .map((line, i) => ({ line: line.trim(), number: i + 1 }))
    .filter(({ line }) => line !== '');
  const [header, ...rows] = lines;
  if (header === undefined) throw new QuestionError('{against}: the file is empty', WRITE);
  const names = header.line.split(',').map((field) => field.trim().replace(/^"|"$/g, ''));
  const range = columnOf(names, 'range', RANGE_UNITS);
  const along = columnOf(names, 'along', ALONG_UNITS);
  const places = rows.map(({ line, number }) => {
    const fields = line.split(',').map((field) => field.trim());
    const read = ({ index, unit, name }: Column): number => {
      const field = fields[index];
      const value = field === undefined || field === '' ? Number.NaN : Number(field);
      if (Number.isFinite(value)) return toSi(value, unit);
      throw new QuestionError(`{against}: line ${number} has "${field ?? ''}" for ${name}`, WRITE);
    };
    return { range: si<'m'>(read(range)), along: si<'m'>(read(along)) };
  });
  if (places.length < 2)
    throw new QuestionError('{against}: the file has fewer than two rows of a tape', WRITE);
  const old = oldTape(places);
  const back = old.places.find(({ along: here }, i) => i > 0 && here <= (old.places[i - 1]?.along ?? here));
  if (back === undefined) return old;
  const wrong = places.findIndex((place) => place.range === back.range);
  throw new QuestionError(
    `{against}: line ${rows[wrong]?.number ?? 2} does not lie beyond the range before it`,
    'Longer ranges have a larger "along".',
  );
}

interface Column {
  readonly name: string;
  readonly index: number;
  readonly unit: DisplayUnit;
}

function columnOf(names: readonly string[], name: string, units: readonly DisplayUnit[]): Column {
  for (const [index, field] of names.entries()) {
    const unit = units.find((each) => field === `${name} (${each})`);
    if (unit !== undefined) return { name, index, unit };
  }
  throw new QuestionError(`{against}: the first line has no column "${name} (${units[0]})"`, WRITE);
}
