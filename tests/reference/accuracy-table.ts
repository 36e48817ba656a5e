import { type Claim, worst } from './claim.ts';

/** Two significant digits, plain where that reads well. */
const short = (value: number): string => {
  if (value === 0) return '0';
  if (value >= 0.001 && value < 1000) return String(Number(value.toPrecision(2)));
  return value.toExponential(0).replace('e+', 'e');
};

/** Below a thousandth of the limit stands rounding, which another machine may do otherwise. */
const shown = (error: number, allowed: number): string =>
  error < allowed / 1000 ? `under ${short(allowed / 1000)}` : short(error);

const cell = (text: string): string => text.replaceAll('|', '\\|');

/** The accuracy table as Markdown: for each claim the case that comes nearest to its limit. */
export function accuracyTable(claims: readonly Claim[]): string {
  const rows = claims.map((claim) => {
    const { error, allowed } = worst(claim);
    const unit = claim.unit === '1' ? '' : ` ${claim.unit}`;
    return `| ${[claim.claim, claim.source, String(claim.cases.length), `${shown(error, allowed)}${unit}`, `${short(allowed)}${unit}`, claim.notCovered].map(cell).join(' | ')} |`;
  });
  return [
    '| claim | held to | cases | worst error | allowed there | not covered |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
  ].join('\n');
}

const MARKS = ['<!-- accuracy:begin -->', '<!-- accuracy:end -->'] as const;

/** What stands between the two marks of a document. */
export function shownTable(document: string): string {
  const [begin, end] = MARKS.map((mark) => document.indexOf(mark));
  if (begin === undefined || end === undefined || begin < 0 || end < begin)
    throw new Error(`no ${MARKS.join(' ... ')} in the document`);
  return document.slice(begin + MARKS[0].length, end).trim();
}

/** The document with another table between the marks. */
export const withTable = (document: string, table: string): string =>
  document.replace(
    /(<!-- accuracy:begin -->)[\s\S]*(<!-- accuracy:end -->)/,
    (_, begin: string, end: string) => `${begin}\n${table}\n${end}`,
  );
