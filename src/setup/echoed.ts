import { LINE_END } from './line-end.ts';

/** A key of the file is never longer; this much shows which one was meant. */
export const LONGEST_KEY = 40;
/** Enough of a value to find it again. */
const LONGEST_VALUE = 80;

/** A text cut to so many characters, its last one then showing that it goes on. */
export const shortened = (text: string, most: number): string =>
  text.length <= most ? text : `${[...text.slice(0, most - 1)].join('').trimEnd()}…`;

/** What stands between two quotation marks may be as long as the file, and so may a text without a space. */
const QUOTED = /"[^"]*"/g;
const UNBROKEN = /\S{200,}/g;

/** A message with what it quotes of the file cut short and on one line. */
export const echoed = (message: string): string =>
  message
    .split(LINE_END)
    .map((line, i, { length }) => {
      const ended = i === length - 1 ? line : line.trimEnd();
      return i === 0 ? ended : ended.trimStart();
    })
    .join(' ')
    .replace(QUOTED, (quoted) => `"${shortened(quoted.slice(1, -1), LONGEST_VALUE)}"`)
    .replace(UNBROKEN, (word) => shortened(word, LONGEST_VALUE));
