/**
 * The error of an estimate as a sum over causes: how much one standard deviation of each independent cause moves it.
 * Estimates that share a cause err together, and what they share leaves their difference. A cause is named
 * `kind:particulars`.
 */
export type ErrorForm = ReadonlyMap<string, number>;

/** A cause that an estimate does not name does not move it. */
function sizeOf(form: ErrorForm, name: string): number {
  const size = form.get(name);
  return size === undefined ? 0 : size;
}

/** An error with one cause of its own. */
export const cause = (name: string, sd: number): ErrorForm => new Map([[name, sd]]);

/** Σ factor · form. */
export function combined(terms: readonly (readonly [factor: number, form: ErrorForm])[]): ErrorForm {
  const sum = new Map<string, number>();
  for (const [factor, form] of terms)
    for (const [name, size] of form) sum.set(name, sizeOf(sum, name) + factor * size);
  return sum;
}

export const scaled = (factor: number, form: ErrorForm): ErrorForm => combined([[factor, form]]);

/** Σ a_k b_k over the causes that two estimates share. */
export function covariance(a: ErrorForm, b: ErrorForm): number {
  let sum = 0;
  for (const [name, size] of a) sum += size * sizeOf(b, name);
  return sum;
}

export const standardError = (form: ErrorForm): number => Math.sqrt(covariance(form, form));

/** The kind of cause with the largest share of the variance, and that share; null when there is no error. */
export function mainCause(form: ErrorForm): { readonly kind: string; readonly share: number } | null {
  const total = covariance(form, form);
  const byKind = new Map<string, number>();
  for (const [name, size] of form) {
    const [kind = name] = name.split(':', 1);
    byKind.set(kind, sizeOf(byKind, kind) + size ** 2);
  }
  const [largest] = [...byKind].toSorted(([, a], [, b]) => b - a);
  return largest === undefined || !(total > 0) ? null : { kind: largest[0], share: largest[1] / total };
}
