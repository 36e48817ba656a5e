/**
 * Signs without a shape that turn the direction of all that follows, so that a line may read other than it is. The script of a
 * letter already says its direction.
 */
export const DIRECTION_SIGNS = /[\u202A-\u202E\u2066-\u2069]/gu;

/**
 * Text that every renderer can carry: control characters become blanks (a line break would move the pen in a PDF, most
 * are not allowed in XML at all), half surrogates and non-characters become the replacement character, and signs that
 * turn the direction of writing are left out.
 */
export const printableText = (text: string): string =>
  text
    .replace(DIRECTION_SIGNS, '')
    .replace(/\p{Cc}/gu, ' ')
    .replace(/[\p{Cs}\uFFFE\uFFFF]/gu, '\uFFFD');

/** What stands for a character that a typeface lacks: an open box, so that nothing vanishes unseen. */
export const LACKING_SIGN = '\u25AF';

/** Text with a box for every character that the typeface lacks; joiners and selectors, which have no shape, are left out. */
export function textInTypeface(
  text: string,
  has: (codePoint: number) => boolean,
): { readonly text: string; readonly lacking: readonly string[] } {
  const characters = Array.from(text);
  const lacks = (character: string): boolean => {
    const codePoint = character.codePointAt(0);
    return codePoint === undefined || !has(codePoint);
  };
  if (!characters.some(lacks)) return { text, lacking: [] };
  const shapeless = (character: string): boolean => /[\p{Cf}\p{Variation_Selector}]/u.test(character);
  const kept = characters.filter((character) => !(lacks(character) && shapeless(character)));
  return {
    text: kept.map((character) => (lacks(character) ? LACKING_SIGN : character)).join(''),
    lacking: kept.filter(lacks),
  };
}
