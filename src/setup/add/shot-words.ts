import type { UnitSystem } from '../../quantities/display-units.ts';

/** One thing that was said of a shot, as it is to be typed into the file. */
export interface ShotWords {
  readonly range?: string;
  readonly reading?: string;
  readonly arrows?: string;
  readonly group?: string;
  readonly lateral?: string;
  readonly vertical?: string;
  readonly speed?: string;
  readonly date?: string;
  readonly note?: string;
}

/** What was said and cannot be understood. */
export class ShotWordsError extends Error {
  readonly code = 'shot-words';
  /** The part that could not be understood. */
  readonly found: string;
  /** What to write instead, a sentence or two. */
  readonly write: string;

  constructor(found: string, write: string) {
    super(`"${found}" cannot be understood. ${write}`);
    this.name = 'ShotWordsError';
    this.found = found;
    this.write = write;
  }
}

const EXAMPLE = 'Write, for example, "60 yd 31.9 6 arrows 5 in 1 in low", or "281 fps" for a speed.';

const NUMBER = String.raw`(?:\d+[ -]\d+\/\d+|\d+\/\d+|\d+(?:[.,]\d+)?\s?[\u00bc-\u00be\u215b-\u215e]?|\.\d+)`;
const INCHES = String.raw`inches|inch|ins|in\b\.?|"|\u201d|\u2033|''`;
const LONGER = String.raw`yards|yard|yds|yd\b\.?|y\b|feet|foot|ft\b\.?|'|meters?|metres?`;
const LENGTH = String.raw`${NUMBER}\s*(?:${INCHES}|${LONGER}|mm\b|cm\b|m\b)`;
const SPEED = String.raw`${NUMBER}\s*(?:fps|ft\/s(?:ec)?|f\/s|m\/s|mps)`;
const SET = 'reading|setting|sight|mark|read|set to|set at|set|at|on';
const SIDE = 'left|right|low|high|above|below|[lr](?![a-z])';

const at = (source: string): RegExp => new RegExp(`^(?:${source})`, 'i');

type Said = { -readonly [Key in keyof ShotWords]: ShotWords[Key] };

/** A pattern at the start of what is left, and what it says; false when that was said before. */
interface Rule {
  readonly pattern: RegExp;
  readonly take: (said: Said, part: (name: string) => string, system: UnitSystem) => boolean;
}

/** Set what is not set yet. */
function set(said: Said, key: keyof ShotWords, value: string): boolean {
  if (said[key] !== undefined) return false;
  said[key] = value.trim();
  return true;
}

const sideOf = (word: string): 'lateral' | 'vertical' =>
  /^[lr]/i.test(word) && !/^low$/i.test(word) ? 'lateral' : 'vertical';

const RULES: readonly Rule[] = [
  {
    pattern: at(String.raw`(?:on\s+)?(?<date>\d{4}-\d{2}-\d{2})`),
    take: (said, part) => set(said, 'date', part('date')),
  },
  { pattern: at(String.raw`note:?\s+(?<note>.+)`), take: (said, part) => set(said, 'note', part('note')) },
  {
    pattern: at(String.raw`(?:speed\s*)?(?<speed>${SPEED})`),
    take: (said, part) => set(said, 'speed', part('speed')),
  },
  {
    pattern: at(
      String.raw`(?<arrows>\d+|one|two|three|four|five|six|seven|eight|nine|ten|twelve)\s*(?:arrows?|shots?)\b`,
    ),
    take: (said, part) => set(said, 'arrows', part('arrows')),
  },
  {
    pattern: at(String.raw`(?<size>${LENGTH}|${NUMBER}(?=\s*[a-z]))\s*(?:to the |too )?(?<side>${SIDE})\b`),
    take: (said, part) => set(said, sideOf(part('side')), `${part('size')} ${part('side')}`),
  },
  {
    pattern: at(String.raw`(?<side>left|right|low|high)\s*(?:by\s+)?(?<size>${LENGTH})`),
    take: (said, part) => set(said, sideOf(part('side')), `${part('size')} ${part('side')}`),
  },
  {
    pattern: at(
      String.raw`(?:group\s*(?:of\s+|size\s+)?|at\s+|from\s+)?(?<length>${LENGTH})(?:\s*groups?\b)?`,
    ),
    take: (said, part) => set(said, said.range === undefined ? 'range' : 'group', part('length')),
  },
  {
    pattern: at(String.raw`(?:(?:${SET})\s*:?\s*)?(?<number>[-\u2212]?${NUMBER})(?![\w"'])`),
    take: (said, part, system) => {
      if (said.range !== undefined) return set(said, 'reading', part('number').replace('\u2212', '-'));
      return set(said, 'range', `${part('number').trim()} ${system === 'metric' ? 'm' : 'yd'}`);
    },
  },
];

/**
 * What was said of a shot, part by part: `60 yd 31.9 6 arrows 5 in 1 in low`. The first length is the range and the second the
 * group; a bare number is the range where none was said yet, in the unit of the system, and then the reading.
 *
 * @throws ShotWordsError for a part that cannot be understood, or that is said twice
 */
export function shotWords(text: string, system: UnitSystem): ShotWords {
  const said: Said = {};
  let rest = text.trim();
  while (rest !== '') {
    const taken = RULES.map((rule) => ({ rule, match: rule.pattern.exec(rest) })).find(
      ({ match }) => match !== null,
    );
    if (taken?.match === undefined || taken.match === null) throw new ShotWordsError(rest, EXAMPLE);
    const { rule, match } = taken;
    if (!rule.take(said, (name) => match.groups?.[name] ?? '', system))
      throw new ShotWordsError(match[0].trim(), `It says something that was said before. ${EXAMPLE}`);
    rest = rest
      .slice(match[0].length)
      .replace(/^[\s,;]+(?:and\s+)?/, '')
      .trim();
  }
  if (Object.keys(said).length === 0) throw new ShotWordsError(text, EXAMPLE);
  return said;
}
