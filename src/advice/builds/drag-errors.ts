import type { Arrow } from '../../arrow/arrow.ts';
import { DRAG_UNCERTAINTY } from '../../arrow/drag/drag.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import type { Rig } from '../../sight/rig.ts';
import type { Candidate } from './candidate.ts';
import { cause, combined, covariance, type ErrorForm, scaled } from './error-form.ts';

/** Share of each term of the build-up in the drag at launch. */
type Shares = ReadonlyMap<string, number>;

/** The relative error of a base arrow's drag before any mark, in a form that other builds can share. */
export interface DragPrior {
  readonly form: ErrorForm;
  readonly shares: Shares | null;
  /** Relative uncertainty of each term's law. */
  readonly lawSd: number;
}

/**
 * The relative error of a drag that was built up: every term's law is off by a factor of its own, the same for all arrows.
 * Two builds of one shape therefore err alike, and two of different shape differ by what their terms differ.
 *
 * @param sd of the whole, relative
 */
export function dragPrior(name: string, arrow: Arrow, rig: Rig, sd: number): DragPrior {
  const shares = sharesOf(arrow, rig);
  if (shares === null || arrow.dragFrom === 'given') {
    const lawSd = shares === null ? 0 : DRAG_UNCERTAINTY / lengthOf(shares);
    return { form: cause(`given drag:${name}`, sd), shares, lawSd };
  }
  const lawSd = sd / lengthOf(shares);
  return { form: lawForm(shares, lawSd), shares, lawSd };
}

/** The same for a candidate, relative to its base. */
export function candidateDrag(base: DragPrior, { name, arrow, rig, ownDragSd }: Candidate): ErrorForm {
  if (ownDragSd !== null) return cause(`given drag:${name}`, ownDragSd);
  const shares = sharesOf(arrow, rig);
  if (shares === null || base.shares === null) return base.form;
  const law = lawForm(shares, base.lawSd);
  return arrow.dragFrom === 'given'
    ? combined([
        [1, base.form],
        [1, law],
        [-1, lawForm(base.shares, base.lawSd)],
      ])
    : law;
}

/** How far one error follows another: the slope of the best straight line of `a` on `b`. */
export const regression = (a: ErrorForm, b: ErrorForm): number => covariance(a, b) / covariance(b, b);

const lawForm = (shares: Shares, lawSd: number): ErrorForm =>
  scaled(lawSd, new Map([...shares].map(([name, share]) => [`drag law:${name}`, share])));

const lengthOf = (shares: Shares): number =>
  Math.sqrt([...shares.values()].reduce((sum, share) => sum + share * share, 0));

function sharesOf(arrow: Arrow, { conditions: { air }, launchSpeed }: Rig): Shares | null {
  const { dragTerms, boundaryLayer, flying } = arrow;
  const terms = dragTerms?.(boundaryLayer, reynoldsNumber(air, launchSpeed, flying.diameter));
  if (terms === undefined) return null;
  const total = terms.reduce((sum, { coefficient }) => sum + coefficient, 0);
  return new Map(terms.map(({ name, coefficient }) => [name, coefficient / total]));
}
