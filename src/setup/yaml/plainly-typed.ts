/** Blanks that pages and word processors put where a person types spaces. */
const WIDE_BLANKS =
  /^[ \u00a0\u2000-\u200a\u202f\u3000]*[\u00a0\u2000-\u200a\u202f\u3000][ \u00a0\u2000-\u200a\u202f\u3000]*/gm;
/** Dashes that they make of the hyphen before an entry of a list. */
const LONG_DASH = /^( *)[\u2010-\u2014\u2212](?= )/gm;

/**
 * A text as the reader of sections and lists needs it: with spaces and hyphens in front of its lines. Every character stays in
 * its place, so that what is found in it is found in the text as well.
 */
export const plainlyTyped = (text: string): string =>
  text.replace(WIDE_BLANKS, (blanks) => ' '.repeat(blanks.length)).replace(LONG_DASH, '$1-');
