import { type Claim, KINDS, type Kind, worst, worstClaim } from './claim.ts';

/** Two significant digits, plain where that reads well. */
const short = (value: number): string => {
  if (value === 0) return '0';
  if (value >= 0.001 && value < 1000) return String(Number(value.toPrecision(2)));
  return value.toExponential(0).replace('e+', 'e');
};

/** Below a thousandth of the limit stands rounding, which another machine may do otherwise. */
const shown = (error: number, allowed: number): string =>
  error < allowed / 1000 ? `under ${short(allowed / 1000)}` : short(error);

/** The error of a claim's worst case, and what is allowed there, as numbers in the claim's unit. */
function worstOf(claim: Claim): { readonly error: string; readonly allowed: string; readonly unit: string } {
  const { error, allowed } = worst(claim);
  const unit = claim.unit === '1' ? '' : ` ${claim.unit}`;
  return { error: shown(error, allowed), allowed: short(allowed), unit };
}

const row = (cells: readonly string[]): string =>
  `| ${cells.map((text) => text.replaceAll('|', '\\|')).join(' | ')} |`;
const markdown = (columns: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(columns), row(columns.map(() => '---')), ...rows.map(row)].join('\n');

/** A row for every kind of truth: how many cases, and the claim that comes nearest to its limit. */
function kindsTable(claims: readonly Claim[]): string {
  const rows = KINDS.map(({ kind, name, notCovered }) => {
    const held = claims.filter((claim) => claim.kind === kind);
    const nearest = worstClaim(held);
    const { error, allowed, unit } = worstOf(nearest);
    const cases = held.reduce((sum, claim) => sum + claim.cases.length, 0);
    return [name, String(cases), `${error}${unit}, ${allowed} allowed: ${nearest.claim}`, notCovered];
  });
  return markdown(['held to', 'cases', 'worst error', 'what it does not cover'], rows);
}

/** A row for every claim of a kind, with the case that comes nearest to its limit. */
function claimsTable(claims: readonly Claim[], kind: Kind): string {
  const rows = claims
    .filter((claim) => claim.kind === kind)
    .map((claim) => {
      const { error, allowed, unit } = worstOf(claim);
      const cases = String(claim.cases.length);
      return [claim.claim, claim.source, cases, `${error}${unit}`, `${allowed}${unit}`, claim.notCovered];
    });
  return markdown(['claim', 'held to', 'cases', 'worst error', 'allowed there', 'not covered'], rows);
}

const MARKS = ['<!-- accuracy -->', '<!-- /accuracy -->'] as const;
const marked = (table: string): string => [MARKS[0], table, MARKS[1]].join('\n');

/** The text of `reference/ACCURACY.md`. */
export const accuracyPage = (claims: readonly Claim[]): string =>
  `${[
    '# How right is it?',
    [
      'Everything below is checked by `npm test` against something that this program did not make. `npm run accuracy`',
      'writes this page and the table of the README, and a test holds both to what the program computes now. An error is',
      "that of the claim's worst case: the one that comes nearest to what its source, or a stated reason, allows. Where it",
      'says "computed", another program computed it, or we did from the source\'s own formula, apart from the program.',
    ].join('\n'),
    marked(kindsTable(claims)),
    ...KINDS.flatMap(({ kind, name }) => [
      `## ${name.charAt(0).toUpperCase()}${name.slice(1)}`,
      claimsTable(claims, kind),
    ]),
  ].join('\n\n')}\n`;

/** A document with the table of kinds between its two marks brought up to date. @throws Error without the marks */
export function withKinds(document: string, claims: readonly Claim[]): string {
  const [begin, end] = [document.indexOf(MARKS[0]), document.indexOf(MARKS[1])];
  if (begin < 0 || end < begin) throw new Error(`no ${MARKS.join(' ... ')} in the document`);
  return document.slice(0, begin) + marked(kindsTable(claims)) + document.slice(end + MARKS[1].length);
}
