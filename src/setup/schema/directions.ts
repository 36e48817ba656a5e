import type { LimitKey } from './limits.ts';

/** The words on the two sides of zero. */
interface Sides {
  readonly positive: readonly string[];
  readonly negative: readonly string[];
}

const LEFT_RIGHT: Sides = { positive: ['right', 'r'], negative: ['left', 'l'] };
const HIGH_LOW: Sides = { positive: ['high', 'above', 'up'], negative: ['low', 'below', 'down'] };
const UPHILL: Sides = { positive: ['uphill', 'up'], negative: ['downhill', 'down'] };

/** Which word stands for which sign, by what the key itself counts as positive. */
const SIDES: Readonly<Partial<Record<LimitKey, Sides>>> = {
  'marks.lateral': LEFT_RIGHT,
  'marks.vertical': HIGH_LOW,
  'marks.cant': LEFT_RIGHT,
  'bow.cant': LEFT_RIGHT,
  'sight.lean': LEFT_RIGHT,
  'drops.drop': { positive: HIGH_LOW.negative, negative: HIGH_LOW.positive },
  slope: UPHILL,
  'sight.zero_slope': UPHILL,
  latitude: { positive: ['north', 'n'], negative: ['south', 's'] },
  'wind.up': { positive: ['up', 'rising'], negative: ['down', 'sinking'] },
};

/** Bearings that the wind comes from, as the limits of `wind.from` count them. */
const WIND_FROM: Readonly<Record<string, number>> = {
  ahead: 0,
  front: 0,
  right: 90,
  behind: 180,
  back: 180,
  left: 270,
};
const COMPASS: Readonly<Record<string, number>> = {
  n: 0,
  north: 0,
  ne: 45,
  northeast: 45,
  e: 90,
  east: 90,
  se: 135,
  southeast: 135,
  s: 180,
  south: 180,
  sw: 225,
  southwest: 225,
  w: 270,
  west: 270,
  nw: 315,
  northwest: 315,
};
const DEGREES_AN_HOUR = 30;

/** Left and right, and high and low, stand under two keys of a mark. */
const OTHER_WAY: Readonly<Partial<Record<LimitKey, LimitKey>>> = {
  'marks.lateral': 'marks.vertical',
  'marks.vertical': 'marks.lateral',
};

/** What to write for a hit that is under the other key of its mark, `lateral: 1 in low`; undefined when it is under its own. */
export function underOtherWay(key: LimitKey, typed: string): string | undefined {
  const other = OTHER_WAY[key];
  const found = other === undefined ? undefined : directed(other, typed);
  if (other === undefined || found === undefined) return undefined;
  const size = found.text.replace(/^[+-]\s*/, '');
  return `"${other.replace('marks.', '')}: ${found.sign < 0 ? '-' : ''}${size}" in its place`;
}

/** A text without the word that says which way, and what the word says. */
export interface Directed {
  readonly text: string;
  readonly sign: 1 | -1;
  /** Whether a sign stands before the number as well, so that the two may contradict each other. */
  readonly signedTwice: boolean;
}

/** A quantity with a word for its sign, `1 in low`; undefined when it has none, or none that this key knows. */
export function directed(key: LimitKey, typed: string): Directed | undefined {
  const sides = SIDES[key];
  if (sides === undefined) return undefined;
  const text = typed.trim();
  const after =
    /^(?<body>[+-]?[\d.,\u00bc-\u00be\u2150-\u215e].*?)[\s,]*(?:\bto the\s+|\btoo\s+)?(?<word>[a-z]+)$/i.exec(
      text,
    );
  const before =
    /^(?:too\s+)?(?<word>[a-z]+)[\s:]+(?:by\s+)?(?<body>[+-]?[\d.,\u00bc-\u00be\u2150-\u215e].*)$/i.exec(
      text,
    );
  for (const { word = '', body = '' } of [after?.groups ?? {}, before?.groups ?? {}]) {
    const sign = signOf(sides, word.toLowerCase());
    if (sign !== undefined) return { text: body.trim(), sign, signedTwice: /^[+-]/.test(body) };
  }
  return undefined;
}

function signOf({ positive, negative }: Sides, word: string): 1 | -1 | undefined {
  if (positive.includes(word)) return 1;
  return negative.includes(word) ? -1 : undefined;
}

/** A bearing in words or by the clock, `left`, `9 o'clock`, as degrees; undefined when it is neither. */
export function bearing(key: LimitKey, typed: string): string | undefined {
  if (key !== 'wind.from' && key !== 'azimuth') return undefined;
  const text = typed.trim().toLowerCase();
  const hour = /^(\d{1,2})(?::00)?\s*(?:o['\u2019]?\s?clock)$/.exec(text)?.[1];
  if (key === 'wind.from' && hour !== undefined && Number(hour) >= 1 && Number(hour) <= 12)
    return `${(Number(hour) % 12) * DEGREES_AN_HOUR} deg`;
  const word = /^(?:(?:from|the|due)\s+)*([a-z-]+)(?:\s+(?:side|wind))?$/.exec(text)?.[1]?.replace('-', '');
  const words = key === 'wind.from' ? WIND_FROM : COMPASS;
  return word !== undefined && Object.hasOwn(words, word) ? `${words[word]} deg` : undefined;
}
