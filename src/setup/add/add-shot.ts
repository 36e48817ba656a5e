import type { UnitSystem } from '../../quantities/display-units.ts';
import { canonical } from '../canonical/canonical.ts';
import { readSetup } from '../read.ts';
import type { LimitKey } from '../schema/limits.ts';
import { readQuantity } from '../schema/quantity-leaf.ts';
import { withValues } from '../write.ts';
import { readYaml } from '../yaml/yaml-text.ts';
import { type ShotWords, ShotWordsError, shotWords } from './shot-words.ts';
import { withEntry } from './with-entry.ts';

/** A setup file with what was said put into it. */
export interface Added {
  readonly text: string;
  /** As it was understood, a phrase each: "range 60 yd", "reading 31.9". */
  readonly understood: readonly string[];
  /** The line of the file that is new or changed, from 1, and what stands there. */
  readonly line: number;
  readonly entry: string;
}

const KEYS = ['range', 'reading', 'arrows', 'group', 'lateral', 'vertical', 'date', 'note'] as const;

/**
 * A setup file with a mark, a speed down range or the speed at the bow added in the archer's words.
 *
 * @param name of the file, for messages
 * @throws ShotWordsError for words that cannot be understood; SetupError for a file that has faults, or would have with them
 */
export function addShot(text: string, name: string, words: string, system: UnitSystem): Added {
  readSetup(text, name);
  const said = shotWords(words, system);
  const added = said.speed === undefined ? withMark(text, said) : withSpeed(text, said, said.speed);
  readSetup(added.text, name);
  return added;
}

function withMark(text: string, said: ShotWords): Added {
  if (said.range === undefined)
    throw new ShotWordsError(Object.values(said).join(', '), 'Say the range as well, as in "60 yd 31.9".');
  const entry = Object.fromEntries(
    KEYS.map((key) => [key, said[key] === undefined ? undefined : asRead('marks', key, said[key])] as const),
  );
  const { text: written, line, entry: typed } = withEntry(text, listName(text, 'marks'), entry);
  return { text: written, line, entry: typed, understood: phrases(entry) };
}

function withSpeed(text: string, said: ShotWords, speed: string): Added {
  const other = Object.entries(said).find(([key]) => !['speed', 'range', 'date'].includes(key));
  if (other !== undefined) throw new ShotWordsError(other[1], 'A speed takes a range and a date only.');
  if (said.range !== undefined) {
    const entry = {
      range: asRead('speeds', 'range', said.range),
      speed: asRead('speeds', 'speed', speed),
      date: said.date,
    };
    const { text: written, line, entry: typed } = withEntry(text, listName(text, 'speeds'), entry);
    return { text: written, line, entry: typed, understood: phrases(entry) };
  }
  if (said.date !== undefined)
    throw new ShotWordsError(said.date, 'The speed at the bow has no date of its own in the file.');
  const value = asRead('launch', 'speed', speed);
  const path = writtenPath(text, ['launch', 'speed']);
  const written = withValues(text, [{ path, value }]);
  const { line } = readYaml(written).locate(path);
  return { text: written, line, entry: `speed: ${value}`, understood: [`launch speed ${value}`] };
}

const phrases = (entry: Readonly<Record<string, string | undefined>>): readonly string[] =>
  Object.entries(entry).flatMap(([key, value]) => (value === undefined ? [] : [`${key} ${value}`]));

/** A value as it is to be typed; what cannot be read is refused with the file. */
function asRead(section: string, key: string, value: string): string {
  const known = LIMIT_KEYS.find((each) => each === `${section}.${key}`);
  if (known === undefined) return value;
  const outcome = readQuantity(known, value);
  return outcome.refusal === undefined && outcome.readAs !== undefined ? outcome.readAs : value;
}

const LIMIT_KEYS: readonly LimitKey[] = [
  'marks.range',
  'marks.reading',
  'marks.arrows',
  'marks.group',
  'marks.lateral',
  'marks.vertical',
  'speeds.range',
  'speeds.speed',
  'launch.speed',
];

const writtenPath = (text: string, path: readonly string[]) =>
  canonical(readYaml(text).value).writtenAt(path);

/** A list by the name that the file has for it. */
const listName = (text: string, list: string): string => String(writtenPath(text, [list])[0]);
