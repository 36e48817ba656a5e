/** One comparison of ours with an outside number; `error` and `allowed` are in the claim's unit, both not negative. */
export interface Case {
  readonly name: string;
  readonly error: number;
  /** What the source's printed digits, or a stated reason, allow. */
  readonly allowed: number;
}

/** One row of the accuracy table: a thing the tool says, held to something nobody here made. */
export interface Claim {
  readonly claim: string;
  readonly source: string;
  /** The unit of the errors: '%', 'm', 'digits of print', ... */
  readonly unit: string;
  readonly cases: readonly Case[];
  readonly notCovered: string;
}

/** The case that comes nearest to its limit, or goes furthest beyond it. */
export const worst = (claim: Claim): Case => {
  const sorted = claim.cases.toSorted((a, b) => b.error / b.allowed - a.error / a.allowed);
  const first = sorted[0];
  if (first === undefined) throw new Error(`${claim.claim}: no cases`);
  return first;
};
