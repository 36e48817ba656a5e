import type { UnitSystem } from '../../quantities/display-units.ts';
import { canonical } from '../canonical/canonical.ts';
import type { KeyPath } from '../key-path.ts';
import { readSetup } from '../read.ts';
import type { LimitKey } from '../schema/limits.ts';
import { readQuantity } from '../schema/quantity-leaf.ts';
import { withValues } from '../write.ts';
import { readYaml } from '../yaml/yaml-text.ts';
import { type ShotWords, ShotWordsError, shotWords } from './shot-words.ts';
import { withEntry, withEntryOf } from './with-entry.ts';

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
 * @param day  the name of the day that it belongs to, in `days`; one that is not there yet is begun. Without it the shot
 *   stands at the top of the file
 * @throws ShotWordsError for words that cannot be understood; SetupError for a file that has faults, or would have with them
 */
export function addShot(
  text: string,
  name: string,
  words: string,
  { units, day }: { readonly units: UnitSystem; readonly day?: string | undefined },
): Added {
  const { days = [] } = readSetup(text, name);
  const said = shotWords(words, units);
  const under =
    day === undefined ? null : { name: day.trim(), index: days.findIndex(({ date }) => date === day.trim()) };
  if (under !== null && said.date !== undefined)
    throw new ShotWordsError(said.date, 'The day that it belongs to has a name already.');
  const added =
    said.speed === undefined ? withMark(text, said, under) : withSpeed(text, said, said.speed, under);
  readSetup(added.text, name);
  return added;
}

/** A day of `days`; its place is -1 where it is not there yet. */
interface Under {
  readonly name: string;
  readonly index: number;
}

/** The text with an entry more in a list at the top of the file, or of a day. */
function inList(text: string, list: 'marks' | 'speeds', entry: Entry, under: Under | null): Added {
  const told = phrases(entry);
  if (under === null) return { ...withEntry(text, writtenPath(text, [list]), entry), understood: told };
  const understood = [dayPhrase(under), ...told];
  if (under.index >= 0)
    return { ...withEntry(text, writtenPath(text, ['days', under.index, list]), entry), understood };
  const days = writtenPath(text, ['days']);
  return { ...withEntryOf(text, days, ['date', under.name], [list, entry]), understood };
}

const dayPhrase = ({ name, index }: Under): string => `${index < 0 ? 'new ' : ''}day ${name}`;

function withMark(text: string, said: ShotWords, under: Under | null): Added {
  if (said.range === undefined)
    throw new ShotWordsError(Object.values(said).join(', '), 'Say the range as well, as in "60 yd 31.9".');
  const entry = Object.fromEntries(
    KEYS.map((key) => [key, said[key] === undefined ? undefined : asRead('marks', key, said[key])] as const),
  );
  return inList(text, 'marks', entry, under);
}

function withSpeed(text: string, said: ShotWords, speed: string, under: Under | null): Added {
  const other = Object.entries(said).find(([key]) => !['speed', 'range', 'date'].includes(key));
  if (other !== undefined) throw new ShotWordsError(other[1], 'A speed takes a range and a date only.');
  if (said.range !== undefined) {
    const entry = {
      range: asRead('speeds', 'range', said.range),
      speed: asRead('speeds', 'speed', speed),
      date: said.date,
    };
    return inList(text, 'speeds', entry, under);
  }
  if (said.date !== undefined)
    throw new ShotWordsError(said.date, 'The speed at the bow has no date of its own in the file.');
  const value = asRead('launch', 'speed', speed);
  if (under !== null && under.index < 0)
    throw new ShotWordsError(
      speed,
      `There is no day "${under.name}" in the file yet: say a mark of it first.`,
    );
  const path = writtenPath(text, under === null ? ['launch', 'speed'] : ['days', under.index, 'speed']);
  const written = withValues(text, [{ path, value }]);
  const { line } = readYaml(written).locate(path);
  const told = under === null ? [] : [dayPhrase(under)];
  return { text: written, line, entry: `speed: ${value}`, understood: [...told, `launch speed ${value}`] };
}

type Entry = Readonly<Record<string, string | undefined>>;

const phrases = (entry: Entry): readonly string[] =>
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

/** A place by the names that the file has for it. */
const writtenPath = (text: string, path: KeyPath): KeyPath => canonical(readYaml(text).value).writtenAt(path);
