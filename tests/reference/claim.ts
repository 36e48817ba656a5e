/** One comparison of ours with an outside number; `error` and `allowed` are in the claim's unit, both not negative. */
export interface Case {
  readonly name: string;
  readonly error: number;
  /** What the source's printed digits, or a stated reason, allow. */
  readonly allowed: number;
}

/** What kind of truth a claim is held to, the best for an archer first, and what the whole kind cannot show. */
export const KINDS = [
  {
    kind: 'measured',
    name: 'measured arrows and bows',
    notCovered:
      'heads and vanes of hunting arrows, their drag, their lift and the wake of blades: never measured here; compound bows, ' +
      'spin, swing and groups: no measurement of one could be read',
  },
  {
    kind: 'law',
    name: 'published laws and tables',
    notCovered: 'whether a law of plates, rockets or still air holds for an arrow in flight',
  },
  {
    kind: 'definition',
    name: 'definitions, trade standards and NIST',
    notCovered: 'any arrow: these say that units, ratings and the fit are computed rightly',
  },
  {
    kind: 'program',
    name: 'independent programs',
    notCovered:
      'a force that both programs leave out or describe wrongly; the programs share the laws of lift of slender bodies and fins',
  },
  {
    kind: 'practice',
    name: 'common practice, no source',
    notCovered: 'any one archer and bow',
  },
] as const;
export type Kind = (typeof KINDS)[number]['kind'];

/** One row of the accuracy table: a thing the tool says, held to something nobody here made. */
export interface Claim {
  readonly kind: Kind;
  readonly claim: string;
  readonly source: string;
  /** The unit of the errors: '%', 'm', 'digits of print', ... */
  readonly unit: string;
  readonly cases: readonly Case[];
  readonly notCovered: string;
}

/** How near a case comes to its limit: 1 at the limit, more beyond it. */
const share = ({ error, allowed }: Case): number => error / allowed;

/** The case that comes nearest to its limit, or goes furthest beyond it. @throws Error for a claim without cases */
export const worst = ({ claim, cases }: Claim): Case => {
  const first = cases.toSorted((a, b) => share(b) - share(a))[0];
  if (first === undefined) throw new Error(`${claim}: no cases`);
  return first;
};

/** The claim whose worst case comes nearest to its limit. @throws Error for none */
export const worstClaim = (claims: readonly Claim[]): Claim => {
  const first = claims.toSorted((a, b) => share(worst(b)) - share(worst(a)))[0];
  if (first === undefined) throw new Error('no claims');
  return first;
};
