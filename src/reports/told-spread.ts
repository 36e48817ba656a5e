/** An error on the target wider than this tells no archer anything. */
const WIDEST = 2; // m

/** Whether a standard uncertainty on the target (m) is worth printing. */
export const isToldSpread = (sd: number): boolean => sd < WIDEST;

/** With so many marks known, those that are not known are only too far out. */
const ENOUGH = 3;

/**
 * Whether the numbers of the scale are tied to the arrow, as marks that were shot tie them.
 *
 * @param sds standard uncertainties on the target, m, of marks from the zero on
 */
export function areTied(sds: readonly number[]): boolean {
  const known = sds.filter(isToldSpread).length;
  return known === sds.length || known >= ENOUGH;
}
