import { DIRECTION_SIGNS } from '../../documents/page/printable-text.ts';

/**
 * Text for a terminal without what would steer it: a title or a note of a file from elsewhere may hold escape codes, or a
 * carriage return by which a terminal writes over the line. Line ends and tabs stay, those of a CSV file too.
 */
export const withoutControls = (text: string): string =>
  text
    .replace(DIRECTION_SIGNS, '')
    .replace(/\r\n|\p{Cc}/gu, (found) => (found === '\r\n' || /[\t\n]/.test(found) ? found : ' '));

/** A JSON document with what JSON lets through and a terminal obeys written as codes, which mean the same to a program. */
export const escapedControls = (json: string): string =>
  json.replace(
    /[\u007F-\u009F\u2028\u2029\u202A-\u202E\u2066-\u2069]/gu,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
