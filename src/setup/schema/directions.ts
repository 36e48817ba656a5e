import type { LimitKey } from './limits.ts';

/** Which sign a word stands for where right and high are positive. */
const SIGNS: Readonly<Partial<Record<LimitKey, Readonly<Record<string, '' | '-'>>>>> = {
  'marks.lateral': { right: '', left: '-' },
  'marks.vertical': { high: '', above: '', up: '', low: '-', below: '-', down: '-' },
};

/** Bearings that the wind comes from, as the limits of `wind.from` count them. */
const BEARINGS: Readonly<Record<string, string>> = {
  ahead: '0 deg',
  front: '0 deg',
  right: '90 deg',
  behind: '180 deg',
  back: '180 deg',
  left: '270 deg',
};

/** What to write for a quantity whose direction was given as a word; undefined when it was not. */
export function insteadOfDirection(key: LimitKey, text: string): string | undefined {
  if (key === 'wind.from') {
    const word = /^(?:(?:from|the)\s+)*([a-z]+)(?:\s+(?:side|wind))?$/i.exec(text.trim())?.[1]?.toLowerCase();
    return word !== undefined && Object.hasOwn(BEARINGS, word) ? BEARINGS[word] : undefined;
  }
  const signs = SIGNS[key];
  const [, number, unit, word] = /^\+?(\d*\.?\d+)\s*([a-z"']*)\s+([a-z]+)$/i.exec(text.trim()) ?? [];
  if (signs === undefined || word === undefined || !Object.hasOwn(signs, word.toLowerCase()))
    return undefined;
  return `${signs[word.toLowerCase()]}${number} ${unit === '' || unit === '"' ? 'in' : unit}`;
}
