/**
 * Text for a terminal without what would steer it: a title or a note of a file from elsewhere may hold escape codes. Line ends
 * and tabs stay.
 */
export const withoutControls = (text: string): string =>
  text.replace(/\p{Cc}/gu, (character) => (/[\t\n\r]/.test(character) ? character : ' '));
