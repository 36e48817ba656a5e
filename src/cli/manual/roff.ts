/**
 * The language of manual pages, as far as ours needs it.
 *
 * A backslash begins an escape and a point or an apostrophe at the beginning of a line a request; a bare hyphen is printed as a
 * typographic one, which nobody could paste into a shell; and what is not ASCII needs its code.
 *
 * @source man-pages(7), groff_char(7) and groff_man_style(7)
 */
export const roffText = (text: string): string =>
  text
    .replaceAll('\\', String.raw`\e`)
    .replaceAll('-', String.raw`\-`)
    .replaceAll('"', String.raw`\(dq`)
    .replaceAll("'", String.raw`\(aq`)
    .replaceAll('^', String.raw`\(ha`)
    .replaceAll('~', String.raw`\(ti`)
    .replaceAll('`', String.raw`\(ga`)
    .replace(/[^\p{ASCII}]/gu, coded)
    .replace(/^\./gm, String.raw`\&.`);

const coded = (character: string): string =>
  `\\[u${character.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0')}]`;

/**
 * The beginning of a page, which has no date so that the same program gives the same bytes. Words are not divided, since an
 * option in two halves cannot be found, and lines are ragged, since stretched ones read badly in a terminal.
 */
export const pageHead = (name: string, version: string): string =>
  `.TH ${roffText(name.toUpperCase())} 1 "" "${roffText(`${name} ${version}`)}"\n.nh\n.ad l`;

/** A heading of the page, and one below it. */
export const section = (title: string): string => `.SH ${title}`;
export const subsection = (title: string): string => `.SS ${roffText(title)}`;

/** Ways to write a command, a line each. */
export const usages = (lines: readonly string[]): string =>
  lines.map((line) => `.B ${roffText(line)}`).join('\n.br\n');

/** Running text; the formatter breaks its lines. */
export const paragraph = (text: string): string => `.PP\n${roffText(text)}`;

/** A term with its explanation indented below. */
export const term = (name: string, what: string): string => `.TP\n.B ${roffText(name)}\n${roffText(what)}`;

/** Lines that stay as they are, such as what is typed into a shell. */
export const asTyped = (lines: readonly string[]): string =>
  ['.PP', '.nf', '.RS 4', ...lines.map(roffText), '.RE', '.fi'].join('\n');

/** The parts of a page one below the other. Below a heading a paragraph begins of itself, and asking for one is a fault. */
export const pageOf = (parts: readonly string[]): string =>
  `${parts.join('\n')}\n`.replace(/^(\.S[HS] .*\n)\.PP\n/gm, '$1');
