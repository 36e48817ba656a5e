/**
 * Text that every renderer can carry: control characters become blanks (a line break would move the pen in a PDF, most
 * are not allowed in XML at all), half surrogates and non-characters become the replacement character.
 */
export const printableText = (text: string): string =>
  text.replace(/\p{Cc}/gu, ' ').replace(/[\p{Cs}\uFFFE\uFFFF]/gu, '\uFFFD');
